import type { SampleView } from '../contract/tape.ts';
import { G_N } from '../units/standard-gravity.ts';
import { BEYOND_PX, type PaperFrame, xOf, yOf } from './paper-frame.ts';

/** Distance of samples [px at size 1] under which dots become rings, so that they do not hide calm ink. */
const RING_PX = 6;
/** Distance under which each becomes a speck, and under which the specks are thinned [px at size 1]. */
const SPECK_PX = 3;
const THIN_PX = 1.4;
/** Thinned: the smallest and the largest of every column this wide [px at size 1]. */
const COLUMN_PX = 3;
/** Side of a speck [px at size 1]: narrower than the ink, which shows on both sides of it. */
const SPECK_SIDE_PX = 1.4;

let extremes = new Float64Array(0);

/** What the sensor reports: every sample a dot, or steps that hold each until the next. */
export function drawSamples(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  form: 'dots' | 'steps',
): void {
  const first = Math.max(samples.first, samples.firstAtOrAfter(frame.fromS) - 1);
  const end = samples.firstAtOrAfter(Math.min(frame.view.endS, frame.toS) + 1e-9);
  if (end <= first) return;
  const { size } = frame.style;
  const across = xOf(frame, samples.timeS(end - 1)) - xOf(frame, samples.timeS(first));
  const apart = end - first > 1 ? across / (end - first - 1) : Infinity;
  if (apart < THIN_PX * size) drawThinned(ctx, frame, samples, first, end, across);
  else if (apart < SPECK_PX * size && form === 'dots') drawSpecks(ctx, frame, samples, first, end);
  else if (form === 'steps') drawSteps(ctx, frame, samples, first, end);
  else drawDots(ctx, frame, samples, first, end);
}

function drawDots(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  first: number,
  end: number,
): void {
  const { style } = frame;
  const near = RING_PX * style.size;
  ctx.setLineDash([]);
  ctx.fillStyle = style.paper;
  addDots(ctx, frame, samples, first, end, style.dotRadius + 0.85 * style.size, near, false);
  ctx.fill();
  ctx.fillStyle = style.dot;
  addDots(ctx, frame, samples, first, end, style.dotRadius, near, false);
  ctx.fill();
  ctx.strokeStyle = style.dot;
  ctx.lineWidth = 1.1 * style.size;
  addDots(ctx, frame, samples, first, end, 1.55 * style.size, near, true);
  ctx.stroke();
  drawClipped(ctx, frame, samples, first, end);
}

/** Adds the samples that have a neighbour within `near` [px] on both sides, or the others. */
function addDots(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  first: number,
  end: number,
  radius: number,
  near: number,
  within: boolean,
): void {
  const top = frame.topPx - BEYOND_PX;
  const bottom = frame.bottomPx + BEYOND_PX;
  ctx.beginPath();
  let x = NaN;
  let y = NaN;
  let nearBefore = false;
  for (let k = first; k <= end; k++) {
    const nextX = k < end ? xOf(frame, samples.timeS(k)) : NaN;
    const nextY = k < end ? yOf(frame, samples.valueG(k) * G_N) : NaN;
    const nearAfter = Math.abs(nextX - x) < near && Math.abs(nextY - y) < near;
    // The newest has one neighbour only: it is a ring as soon as that is near.
    if (k > first && (nearBefore && (nearAfter || k === end)) === within) {
      if (y < top) triangle(ctx, x, top, radius, -1);
      else if (y > bottom) triangle(ctx, x, bottom, radius, 1);
      else {
        ctx.moveTo(x + radius, y);
        ctx.arc(x, y, radius, 0, 2 * Math.PI);
      }
    }
    nearBefore = nearAfter;
    x = nextX;
    y = nextY;
  }
}

/** A sample beyond the paper's edge: points to where it is. */
function triangle(ctx: CanvasRenderingContext2D, x: number, y: number, radius: number, down: 1 | -1): void {
  ctx.moveTo(x - 1.3 * radius, y - down * 1.6 * radius);
  ctx.lineTo(x + 1.3 * radius, y - down * 1.6 * radius);
  ctx.lineTo(x, y + down * 0.6 * radius);
  ctx.closePath();
}

/** A bar on the outer side of a sample that stands at the end of the sensor's range. */
function drawClipped(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  first: number,
  end: number,
): void {
  const half = 3.2 * frame.style.size;
  ctx.beginPath();
  let any = false;
  for (let k = first; k < end; k++) {
    if (!samples.clipped(k)) continue;
    const value = samples.valueG(k) * G_N;
    const outward = value * frame.pxPerMS2 > 0 ? -1 : 1;
    const x = xOf(frame, samples.timeS(k));
    const y = yOf(frame, value) + outward * 4.6 * frame.style.size;
    ctx.moveTo(x - half, y);
    ctx.lineTo(x + half, y);
    any = true;
  }
  if (!any) return;
  ctx.strokeStyle = frame.style.dot;
  ctx.lineWidth = 1.4 * frame.style.size;
  ctx.lineCap = 'butt';
  ctx.stroke();
}

function drawSteps(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  first: number,
  end: number,
): void {
  ctx.save();
  clipToBand(ctx, frame);
  ctx.beginPath();
  for (let k = first; k < end; k++) {
    const y = yOf(frame, samples.valueG(k) * G_N);
    ctx.lineTo(xOf(frame, samples.timeS(k)), y);
    const until = k + 1 < end ? samples.timeS(k + 1) : frame.view.endS;
    ctx.lineTo(xOf(frame, until), y);
  }
  ctx.setLineDash([]);
  ctx.lineJoin = 'miter';
  ctx.strokeStyle = frame.style.dot;
  ctx.lineWidth = 1.5 * frame.style.size;
  ctx.stroke();
  ctx.restore();
  drawClipped(ctx, frame, samples, first, end);
}

function clipToBand(ctx: CanvasRenderingContext2D, frame: PaperFrame): void {
  ctx.beginPath();
  ctx.rect(0, frame.topPx - BEYOND_PX, frame.widthPx, frame.bottomPx - frame.topPx + 2 * BEYOND_PX);
  ctx.clip();
}

/** Small dots where the line is steep, specks where it is calm. */
function drawSpecks(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  first: number,
  end: number,
): void {
  const { style } = frame;
  const near = SPECK_PX * style.size;
  ctx.fillStyle = style.dot;
  addDots(ctx, frame, samples, first, end, 0.8 * style.dotRadius, near, false);
  ctx.fill();
  addDots(ctx, frame, samples, first, end, SPECK_SIDE_PX * 0.55 * style.size, near, true);
  ctx.fill();
  drawClipped(ctx, frame, samples, first, end);
}

/** Too many for specks: the smallest and largest of each column of samples, in columns that begin at fixed samples. */
function drawThinned(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  samples: SampleView,
  first: number,
  end: number,
  across: number,
): void {
  const { size } = frame.style;
  const wide = ((end - first) * COLUMN_PX * size) / across;
  let unit = 1;
  while (wide / unit >= 64) unit *= 16; // the levels at which samples keep their extremes
  const each = Math.max(1, Math.round(wide / unit) * unit);
  const start = Math.max(samples.first, Math.floor(first / each) * each);
  const columns = Math.floor((end - start) / each);
  if (columns < 1) return;
  if (extremes.length < 2 * columns) extremes = new Float64Array(2 * columns + 64);
  samples.envelope(start, start + columns * each, columns, extremes);
  ctx.fillStyle = frame.style.dot;
  ctx.beginPath();
  for (let i = 0; i < columns; i++) {
    const x = xOf(frame, samples.timeS(start + i * each + (each >> 1)));
    addSpeck(ctx, frame, x, yOf(frame, extremes[2 * i]! * G_N));
    addSpeck(ctx, frame, x, yOf(frame, extremes[2 * i + 1]! * G_N));
  }
  ctx.fill();
}

function addSpeck(ctx: CanvasRenderingContext2D, frame: PaperFrame, x: number, y: number): void {
  const side = SPECK_SIDE_PX * frame.style.size;
  const within = Math.min(Math.max(y, frame.topPx - BEYOND_PX), frame.bottomPx + BEYOND_PX);
  ctx.rect(x - side / 2, within - side / 2, side, side);
}
