import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import './graph.css';
import { type GraphFrame, graphX, linesAndPoints, paintGraphInk, paintGraphPaper } from './graph-painter.ts';
import { nearestIndex } from './graph-path.ts';
import { type AxisScale, extentOf, roundRange, ruling, valueAtShare } from './graph-scale.ts';
import type { GraphAxis, GraphCursor, GraphOptions, GraphView } from './graph-view.ts';
import { niceStep } from './nice-step.ts';
import { type PenStyle, penStyle } from './pen-style.ts';
import type { Polyline } from './polyline.ts';
import { threeDigits } from './reading-format.ts';
import { TextWidths } from './text-widths.ts';

/** Room for figures and names of the axes [px at size 1]. */
const LEFT_PX = 50;
const NAME_PX = 20;
const FOOT_PX = 26;
const HEAD_PX = 12;
const RIGHT_PX = 16;
/** Room that a figure needs along its axis [px at size 1]. */
const ACROSS_PX = 62;
const UP_PX = 26;
/** Arrow keys move the cursor this far [px]; Page keys ten times as far. */
const KEY_PX = 4;

/**
 * An XY graph on the same paper as the tape: linear or logarithmic axes, lines told apart by dash and the name
 * at their end, points with bars, bands, markers, a cursor for pointer and keys. uPlot holds scales and axes.
 */
export class Graph {
  readonly #host: HTMLElement;
  readonly #options: GraphOptions;
  readonly #root: HTMLElement;
  readonly #handle: HTMLElement;
  readonly #slip: HTMLElement;
  readonly #observer: ResizeObserver;
  readonly #abort = new AbortController();
  readonly #widths = new TextWidths();
  readonly #paths: Polyline[] = [];
  #plot: uPlot | undefined;
  #key = '';
  #frame: GraphFrame | undefined;
  #cursorX: number | undefined;

  constructor(host: HTMLElement, options: GraphOptions = {}) {
    this.#host = host;
    this.#options = options;
    this.#root = document.createElement('div');
    this.#root.className = 'graph-paper';
    this.#root.setAttribute('role', 'figure');
    this.#handle = document.createElement('div');
    this.#handle.className = 'graph-paper-hand';
    this.#handle.tabIndex = 0;
    this.#handle.setAttribute('role', 'slider');
    this.#handle.setAttribute('aria-label', 'Cursor on the graph');
    this.#handle.setAttribute('aria-valuenow', '0');
    this.#slip = document.createElement('div');
    this.#slip.className = 'graph-paper-slip';
    this.#slip.setAttribute('aria-hidden', 'true');
    this.#slip.hidden = true;
    this.#root.append(this.#slip, this.#handle);
    host.append(this.#root);
    const { signal } = this.#abort;
    this.#handle.addEventListener('pointermove', (event) => this.#point(event), { signal });
    this.#handle.addEventListener('pointerdown', (event) => this.#point(event), { signal });
    this.#handle.addEventListener(
      'pointerleave',
      (event) => {
        if (event.pointerType !== 'touch' && document.activeElement !== this.#handle) this.#putCursor(undefined);
      },
      { signal },
    );
    this.#handle.addEventListener('keydown', (event) => this.#keys(event), { signal });
    this.#observer = new ResizeObserver(() => this.#redraw());
    this.#observer.observe(this.#root);
    document.fonts.addEventListener(
      'loadingdone',
      () => {
        this.#widths.forget();
        this.#redraw();
      },
      { signal },
    );
  }

  draw(view: GraphView): void {
    const width = this.#root.clientWidth;
    const height = this.#root.clientHeight;
    if (width < 80 || height < 60) return;
    const style = this.#styleFor(view);
    const { size } = style;
    const box = {
      leftPx: (LEFT_PX + NAME_PX) * size,
      topPx: HEAD_PX * size,
      widthPx: width - (LEFT_PX + NAME_PX + RIGHT_PX) * size,
      heightPx: height - (HEAD_PX + FOOT_PX + NAME_PX) * size,
    };
    const x = axisScale(view.x, view.lines.map((line) => line.x).concat(view.points.map((points) => points.x)));
    const y = axisScale(
      view.y,
      linesAndPoints(view).flatMap((each) => ('form' in each ? [each.y, each.low ?? [], each.high ?? []] : [each.y])),
    );
    this.#frame = {
      view,
      style,
      x,
      y,
      box,
      xRuling: ruling(x, box.widthPx, ACROSS_PX * size),
      yRuling: ruling(y, box.heightPx, UP_PX * size),
      pixelRatio: uPlot.pxRatio,
    };
    this.#root.setAttribute('aria-label', view.title);
    this.#plot ??= this.#makePlot(view, style, width, height);
    const plot = this.#plot;
    plot.batch(() => {
      if (plot.width !== width || plot.height !== height) plot.setSize({ width, height });
      plot.setScale('x', { min: x.from, max: x.to });
      plot.setScale('y', { min: y.from, max: y.to });
    });
    this.#showCursor();
  }

  /** The graph in words. */
  describe(): string {
    const frame = this.#frame;
    if (!frame) return '';
    const { view, x, y } = frame;
    const axes = `${view.x.label} from ${threeDigits(x.from)} to ${threeDigits(x.to)}${lawWord(x)}; ${view.y.label} from ${threeDigits(y.from)} to ${threeDigits(y.to)}${lawWord(y)}.`;
    const lines = linesAndPoints(view).map((each) => {
      const extent = extentOf([each.y], 'linear');
      return extent
        ? `${each.name}: ${each.x.length} points, between ${threeDigits(extent[0])} and ${threeDigits(extent[1])}.`
        : `${each.name}: no points.`;
    });
    const bands = view.bands.map((band) => `${band.name}: ${threeDigits(band.from)} to ${threeDigits(band.to)}.`);
    const markers = view.markers.map((marker) => `${marker.name}: ${threeDigits(marker.at)}.`);
    return [`${view.title}.`, axes, ...lines, ...bands, ...markers].join(' ');
  }

  /** What stands at the cursor; undefined: no cursor. */
  cursor(): GraphCursor | undefined {
    if (!this.#frame || this.#cursorX === undefined) return undefined;
    const at = this.#cursorX;
    const values = linesAndPoints(this.#frame.view).flatMap((each) => {
      const i = 'form' in each ? nearestOf(each.x, at) : nearestIndex(each.x, at);
      return i < 0 || Number.isNaN(each.y[i]!) ? [] : [{ name: each.name, x: each.x[i]!, y: each.y[i]! }];
    });
    return { x: at, values };
  }

  dispose(): void {
    this.#abort.abort();
    this.#observer.disconnect();
    this.#plot?.destroy();
    this.#root.remove();
  }

  #redraw(): void {
    if (this.#frame) this.draw(this.#frame.view);
  }

  /** Type, sizes, laws and names are uPlot's once and for all: another of them, another plot. */
  #styleFor(view: GraphView): PenStyle {
    const key = [view.theme, view.stage, view.x.law, view.y.law, view.x.label, view.y.label].join('|');
    if (this.#frame && key === this.#key) return this.#frame.style;
    this.#key = key;
    this.#plot?.destroy();
    this.#plot = undefined;
    this.#root.dataset.theme = view.theme;
    this.#root.classList.toggle('is-stage', view.stage);
    const computed = getComputedStyle(this.#host);
    const family = (name: string, otherwise: string): string => computed.getPropertyValue(name).trim() || otherwise;
    return penStyle(view.theme, view.stage, {
      label: family('--font-label', 'sans-serif'),
      book: family('--font-book', 'serif'),
    });
  }

  #makePlot(view: GraphView, style: PenStyle, width: number, height: number): uPlot {
    const px = (length: number): number => Math.round(length * style.size);
    const common = {
      font: style.label,
      labelFont: style.label,
      labelSize: px(NAME_PX),
      stroke: style.soft,
      grid: { show: false },
      space: 1,
      incrs: (_: uPlot, __: number, min: number, max: number) => [niceStep(max - min)], // any will do: splits are the ruling's own
      filter: (_: uPlot, splits: number[]) => splits,
    };
    const plot = new uPlot(
      {
        width,
        height,
        padding: [px(HEAD_PX), px(RIGHT_PX), 0, 0],
        legend: { show: false },
        cursor: { show: false },
        select: { show: false, left: 0, top: 0, width: 0, height: 0 },
        scales: {
          x: { time: false, distr: view.x.law === 'linear' ? 1 : 3, range: (_, min, max) => [min, max] },
          y: { distr: view.y.law === 'linear' ? 1 : 3, range: (_, min, max) => [min, max] },
        },
        series: [{}],
        axes: [
          {
            ...common,
            side: 2,
            size: px(FOOT_PX),
            gap: px(4),
            ticks: { size: px(4), width: 1, stroke: style.soft },
            label: view.x.label,
            splits: () => [...(this.#frame?.xRuling.main ?? [])],
            values: () => [...(this.#frame?.xRuling.figures ?? [])],
          },
          {
            ...common,
            scale: 'y',
            side: 3,
            size: px(LEFT_PX),
            gap: px(4),
            ticks: { size: px(4), width: 1, stroke: style.soft },
            label: view.y.label,
            splits: () => [...(this.#frame?.yRuling.main ?? [])],
            values: () => [...(this.#frame?.yRuling.figures ?? [])],
          },
        ],
        hooks: {
          drawClear: [(u) => this.#scaled(u, paintGraphPaper)],
          draw: [(u) => this.#scaled(u, (ctx, frame) => paintGraphInk(ctx, frame, this.#paths, this.#widths))],
        },
      },
      [[]],
      this.#root,
    );
    plot.root.setAttribute('aria-hidden', 'true');
    return plot;
  }

  #scaled(plot: uPlot, paint: (ctx: CanvasRenderingContext2D, frame: GraphFrame) => void): void {
    if (!this.#frame) return;
    const { ctx } = plot;
    ctx.save();
    ctx.scale(uPlot.pxRatio, uPlot.pxRatio);
    paint(ctx, this.#frame);
    ctx.restore();
  }

  #point(event: PointerEvent): void {
    this.#putCursorAt(event.clientX - this.#root.getBoundingClientRect().left);
  }

  #putCursorAt(px: number): void {
    const frame = this.#frame;
    if (!frame) return;
    const share = Math.min(Math.max((px - frame.box.leftPx) / frame.box.widthPx, 0), 1);
    this.#putCursor(valueAtShare(frame.x, share));
  }

  #keys(event: KeyboardEvent): void {
    const frame = this.#frame;
    if (!frame || event.altKey || event.ctrlKey || event.metaKey) return;
    const { box } = frame;
    const at = this.#cursorX === undefined ? box.leftPx + box.widthPx / 2 : graphX(frame, this.#cursorX);
    const far = event.shiftKey ? 10 : 1;
    const to = {
      ArrowLeft: at - KEY_PX * far,
      ArrowRight: at + KEY_PX * far,
      PageDown: at - KEY_PX * 10,
      PageUp: at + KEY_PX * 10,
      Home: box.leftPx,
      End: box.leftPx + box.widthPx,
    }[event.key];
    if (to !== undefined) this.#putCursorAt(to);
    else if (event.key === 'Escape') this.#putCursor(undefined);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  #putCursor(x: number | undefined): void {
    this.#cursorX = x;
    this.#showCursor();
    this.#options.onCursor?.(this.cursor());
  }

  #showCursor(): void {
    const frame = this.#frame;
    const cursor = this.cursor();
    this.#slip.hidden = !cursor;
    if (!frame || !cursor) {
      this.#handle.setAttribute('aria-valuetext', 'no cursor');
      return;
    }
    const texts = [
      `${frame.view.x.label}: ${threeDigits(cursor.x)}`,
      ...cursor.values.map(({ name, y }) => `${name}: ${threeDigits(y)}`),
    ];
    if (this.#slip.dataset.text !== texts.join('\n')) {
      this.#slip.dataset.text = texts.join('\n');
      this.#slip.replaceChildren(
        ...texts.map((text) => {
          const row = document.createElement('div');
          row.textContent = text;
          return row;
        }),
      );
    }
    const x = graphX(frame, cursor.x);
    this.#root.style.setProperty('--cursor-x', `${x}px`);
    const right = x + 10 + this.#slip.offsetWidth < frame.box.leftPx + frame.box.widthPx;
    this.#slip.classList.toggle('is-left', !right);
    this.#handle.setAttribute('aria-valuemin', String(frame.x.from));
    this.#handle.setAttribute('aria-valuemax', String(frame.x.to));
    this.#handle.setAttribute('aria-valuenow', String(cursor.x));
    this.#handle.setAttribute('aria-valuetext', texts.join('; '));
  }
}

function axisScale(axis: GraphAxis, lists: readonly ArrayLike<number>[]): AxisScale {
  const [from, to] = axis.range === 'automatic' ? roundRange(extentOf(lists, axis.law), axis.law) : axis.range;
  return { law: axis.law, from, to };
}

function lawWord(scale: AxisScale): string {
  return scale.law === 'logarithmic' ? ', logarithmic' : '';
}

/** Index of the nearest of a list in any order; −1: the list is empty. */
function nearestOf(list: ArrayLike<number>, x: number): number {
  let best = -1;
  for (let i = 0; i < list.length; i++) if (best < 0 || Math.abs(list[i]! - x) < Math.abs(list[best]! - x)) best = i;
  return best;
}
