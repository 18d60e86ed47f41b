/** What is written on the paper beside the lines: values that left it, names of further lines, their scales, notes, the sketch. */
import { haloText } from './halo-text.ts';
import type { LineLayer } from './line-layer.ts';
import { type PaperFrame, xOf, yOf } from './paper-frame.ts';
import type { Sketch } from './paper-view.ts';
import { FURTHER } from './pen-style.ts';
import { type ReadingUnit, sizeText } from './reading-format.ts';
import type { TextWidths } from './text-widths.ts';

interface Written {
  readonly left: number;
  readonly right: number;
  readonly y: number;
  readonly x: number;
  readonly text: string;
}

/** The same value written for another line this near is not repeated [px]. */
const REPEATED_PX = 24;

/** Rows in which values beside the edge may stand, and their distance [px at size 1]. */
const ROWS = 3;
const ROW_PX = 18;

/** Beside every place where a line leaves the paper: an arrow and how far it went. */
export function writeOvershoots(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  layers: readonly LineLayer[],
  widths: TextWidths,
): void {
  const { style } = frame;
  const taken: Written[] = [];
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  for (const layer of layers) {
    if (!layer.onPenScale) continue;
    for (let i = 0; i < layer.overshootCount; i++) {
      const { timeS, value, edge } = layer.overshoots[i]!;
      const text = overshootText(value, edge, frame.view.unit);
      const x = xOf(frame, timeS);
      if (taken.some((other) => other.text === text && Math.abs(other.x - x) < REPEATED_PX)) continue;
      const place = freePlace(frame, x, widths.of(ctx, style.note, text), edge, taken);
      if (place === undefined) continue;
      taken.push({ ...place, x, text });
      ctx.font = style.note;
      haloText(ctx, frame.style, text, place.left, place.y, layer.line.kind === 'mass' ? style.ink : style.soft);
    }
  }
}

/** Texts of values that stand at the edge now: the same for as long as they are in view. */
const texts = new Map<number, string>();
let textsUnit = '';

function overshootText(valueMS2: number, edge: 1 | -1, unit: ReadingUnit): string {
  if (textsUnit !== unit || texts.size > 400) texts.clear();
  textsUnit = unit;
  let size = texts.get(valueMS2);
  if (size === undefined) {
    size = sizeText(valueMS2, unit);
    texts.set(valueMS2, size);
  }
  return `${edge > 0 ? '↑' : '↓'} ${size}`;
}

function freePlace(
  frame: PaperFrame,
  x: number,
  width: number,
  edge: 1 | -1,
  taken: readonly Written[],
): Pick<Written, 'left' | 'right' | 'y'> | undefined {
  const { size } = frame.style;
  const away = 8 * size;
  for (let row = 0; row < ROWS; row++) {
    const inward = (11 + row * ROW_PX) * size;
    const y = edge > 0 ? frame.topPx + inward : frame.bottomPx - inward;
    for (const left of [x + away, x - away - width]) {
      const box = { left, right: left + width, y };
      const fits = left >= 3 && box.right <= frame.widthPx - 4;
      if (fits && taken.every((other) => other.y !== y || other.right + 6 < left || box.right + 6 < other.left))
        return box;
    }
  }
  return undefined;
}

/** Further lines are named at their newest end, next to the nib. */
export function writeEndNames(ctx: CanvasRenderingContext2D, frame: PaperFrame, layers: readonly LineLayer[]): void {
  const { style } = frame;
  ctx.font = style.label;
  ctx.textAlign = 'right';
  ctx.textBaseline = 'middle';
  let lastY = -Infinity;
  const named = layers.filter((layer) => layer.line.kind in FURTHER && !Number.isNaN(layer.endYPx));
  named.sort((a, b) => a.endYPx - b.endYPx);
  for (const layer of named) {
    const { name } = FURTHER[layer.line.kind as keyof typeof FURTHER];
    const wanted = Math.min(
      Math.max(layer.endYPx - 10 * style.size, frame.topPx + 10 * style.size),
      frame.bottomPx - 6 * style.size,
    );
    const y = Math.max(wanted, lastY + 15 * style.size);
    lastY = y;
    haloText(ctx, frame.style, name, frame.nibXPx - 10 * style.size, y, style.text);
  }
}

/** Room for one scale at the left [px at size 1]. */
const SCALE_PX = 58;

/** Scales of the lines that do not stand on the pen's: at the left, one beside the other, zero on the common zero line. */
export function writeOwnScales(ctx: CanvasRenderingContext2D, frame: PaperFrame, layers: readonly LineLayer[]): void {
  const { style } = frame;
  const half = (frame.bottomPx - frame.topPx) / 2;
  let x = 8 * style.size;
  for (const layer of layers) {
    if (layer.onPenScale || layer.trace.count === 0) continue;
    const further = FURTHER[layer.line.kind as keyof typeof FURTHER];
    ctx.strokeStyle = style.text;
    ctx.lineCap = 'butt';
    ctx.lineWidth = further.widthPx * style.size;
    ctx.setLineDash(further.dash as number[]);
    ctx.beginPath();
    ctx.moveTo(x, frame.topPx);
    ctx.lineTo(x, layer.line.kind === 'height' ? frame.zeroYPx : frame.bottomPx);
    ctx.stroke();
    ctx.setLineDash([]);
    ctx.font = style.label;
    ctx.textAlign = 'left';
    ctx.textBaseline = 'middle';
    for (const share of layer.line.kind === 'height' ? [1, 0.5] : [1, 0.5, -0.5, -1]) {
      const y = frame.zeroYPx - share * half;
      ctx.beginPath();
      ctx.moveTo(x, y);
      ctx.lineTo(x + 5 * style.size, y);
      ctx.stroke();
      const inside = Math.min(Math.max(y, frame.topPx + 7 * style.size), frame.bottomPx - 7 * style.size);
      haloText(
        ctx,
        frame.style,
        scaleFigure(share * layer.ownRange, layer.ownRange, further.unit),
        x + 8 * style.size,
        inside,
        style.text,
      );
    }
    x += SCALE_PX * style.size;
  }
}

/** A figure of a scale, all in the prefix that suits the scale's end: "−1.5 mm/s". */
function scaleFigure(value: number, range: number, unit: string): string {
  const [prefix, size] = range >= 0.01 ? ['', 1] : range >= 1e-5 ? ['m', 1e-3] : ['µ', 1e-6];
  return `${value < 0 ? '−' : ''}${Number((Math.abs(value) / size).toPrecision(3))} ${prefix}${unit}`;
}

export function writeNotes(ctx: CanvasRenderingContext2D, frame: PaperFrame): void {
  const { style, view } = frame;
  if (view.notes.length === 0) return;
  ctx.font = style.note;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  for (const note of view.notes) {
    const x = xOf(frame, note.timeS);
    if (x < 0 || x > frame.widthPx) continue;
    haloText(ctx, frame.style, note.text, x, yOf(frame, note.valueMS2), style.text);
  }
}

/** A learner's line: broad soft pencil with a grain, under everything else. */
export function drawSketch(ctx: CanvasRenderingContext2D, frame: PaperFrame, sketch: Sketch): void {
  const { style } = frame;
  ctx.save();
  ctx.beginPath();
  ctx.rect(0, frame.topPx, frame.widthPx, frame.bottomPx - frame.topPx);
  ctx.clip();
  ctx.beginPath();
  for (let i = 0; i < sketch.timeS.length; i++)
    ctx.lineTo(xOf(frame, sketch.timeS[i]!), yOf(frame, sketch.valueMS2[i]!));
  ctx.strokeStyle = style.soft;
  ctx.lineJoin = 'round';
  ctx.lineCap = 'round';
  ctx.setLineDash([]);
  ctx.globalAlpha = 0.42;
  ctx.lineWidth = 4.2 * style.size;
  ctx.stroke();
  ctx.globalAlpha = 0.55;
  ctx.lineWidth = 1.5 * style.size;
  ctx.lineCap = 'butt';
  ctx.setLineDash([1 * style.size, 1.6 * style.size]);
  ctx.stroke();
  ctx.restore();
}

/** The wet ink under the nib. */
export function drawWetDot(ctx: CanvasRenderingContext2D, frame: PaperFrame, yPx: number): void {
  if (!(yPx >= frame.topPx - 8 && yPx <= frame.bottomPx + 8)) return;
  ctx.fillStyle = frame.style.ink;
  ctx.beginPath();
  ctx.arc(frame.nibXPx, yPx, 2.6 * frame.style.size, 0, 2 * Math.PI);
  ctx.fill();
}
