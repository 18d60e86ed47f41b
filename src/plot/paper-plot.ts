import uPlot from 'uplot';
import { multiples, stepDecimals } from './nice-step.ts';
import { FOOT_PX, HEAD_PX, type PaperFrame, xOf } from './paper-frame.ts';
import type { PenStyle } from './pen-style.ts';
import { decimals } from './reading-format.ts';
import { timeStep } from './ruled-paper.ts';

type Paint = (ctx: CanvasRenderingContext2D, frame: PaperFrame) => void;

/** What uPlot asks for when it draws. */
export interface PaperPainter {
  /** The drawing at hand; undefined: none yet. */
  frame(): PaperFrame | undefined;
  /** Under the axis, and over it. */
  readonly paintPaper: Paint;
  readonly paintInk: Paint;
}

/** Width of a figure's character, for keeping times within the paper's edges [px at size 1]. */
const CHARACTER_PX = 7.4;

/** The plot under the tape: scales, time axis, cursor line, marked span. It has no series of its own and takes no pointer. */
export function makePaperPlot(
  root: HTMLElement,
  width: number,
  height: number,
  style: PenStyle,
  painter: PaperPainter,
): uPlot {
  const px = (length: number): number => Math.round(length * style.size);
  const none = (): null => null;
  const plot = new uPlot(
    {
      width,
      height,
      pxAlign: 0, // lines glide with the paper
      padding: [px(HEAD_PX), 0, 0, 0],
      legend: { show: false },
      cursor: {
        y: false,
        points: { show: false },
        drag: { x: false, y: false, setScale: false },
        bind: {
          mousedown: none,
          mouseup: none,
          click: none,
          dblclick: none,
          mousemove: none,
          mouseleave: none,
          mouseenter: none,
        },
      },
      scales: {
        x: { time: false, range: (_, min, max) => [min, max] },
        y: { range: (_, min, max) => [min, max] },
      },
      series: [{}],
      axes: [
        {
          scale: 'x',
          side: 2,
          size: px(FOOT_PX),
          gap: px(5),
          font: style.label,
          stroke: style.soft,
          grid: { show: false }, // ruled with finer lines, see ruled-paper.ts
          ticks: { size: px(5), width: style.size, stroke: style.soft },
          incrs: () => [stepNow(painter)], // the ruling's own step: uPlot need not search
          space: 1,
          splits: (_, __, min, max) => multiples(Math.max(0, min), max, stepNow(painter)),
          values: (_, splits) => timeFigures(splits, painter.frame()),
        },
        { scale: 'y', show: false },
      ],
      hooks: {
        drawClear: [(u) => scaled(u, painter.frame(), painter.paintPaper)],
        draw: [(u) => scaled(u, painter.frame(), painter.paintInk)],
      },
    },
    [[]],
    root,
  );
  plot.root.setAttribute('aria-hidden', 'true');
  return plot;
}

function stepNow(painter: PaperPainter): number {
  const frame = painter.frame();
  return frame ? timeStep(frame) : 1;
}

/** Times under the paper; those that its edges would cut are left out. */
function timeFigures(splits: readonly number[], frame: PaperFrame | undefined): (string | null)[] {
  if (!frame) return splits.map(() => null);
  const places = stepDecimals(timeStep(frame));
  return splits.map((timeS) => {
    const text = `${decimals(timeS, places)} s`;
    const half = (text.length * CHARACTER_PX * frame.style.size) / 2;
    const x = xOf(frame, timeS);
    return x < half || x > frame.widthPx - half ? null : text;
  });
}

/** Paints in CSS pixels; uPlot keeps count of the canvas's state, so it gets it back as it was. */
function scaled(plot: uPlot, frame: PaperFrame | undefined, paint: Paint): void {
  if (!frame) return;
  const { ctx } = plot;
  ctx.save();
  ctx.scale(uPlot.pxRatio, uPlot.pxRatio);
  paint(ctx, frame);
  ctx.restore();
}
