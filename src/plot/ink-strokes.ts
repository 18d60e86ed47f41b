/** Strokes of pen and pencil on a canvas. All lengths CSS px; the canvas is scaled by the caller. */
import { type FastRun, SWEPT_PX } from './fast-swings.ts';
import type { Polyline, Projection } from './polyline.ts';
import type { Trace } from './trace.ts';

/** Pace [px of line per px of paper] up to which each of the ink's widths is taken; the last one beyond. */
const PACES = [1.5, 4, 9];
/** Steps of less than this along the paper [px] join neighbouring columns and are drawn as the line before them. */
const JOINT_PX = 0.05;

let paceOf = new Uint8Array(1024);

/** A solid line that thins where the pen runs fast. */
export function strokeInk(
  ctx: CanvasRenderingContext2D,
  line: Polyline,
  widths: readonly number[],
  colour: string,
): void {
  const { x, y, count } = line;
  if (paceOf.length < count) paceOf = new Uint8Array(count + 1024);
  let used = 0;
  let pace = 0;
  for (let i = 1; i < count; i++) {
    const dx = x[i]! - x[i - 1]!;
    const dy = Math.abs(y[i]! - y[i - 1]!);
    if (dx > JOINT_PX) {
      const rate = dy / dx;
      pace = rate < PACES[0]! ? 0 : rate < PACES[1]! ? 1 : rate < PACES[2]! ? 2 : 3;
    }
    paceOf[i] = pace;
    used |= 1 << pace;
  }
  ctx.setLineDash(SOLID);
  ctx.lineJoin = 'round';
  ctx.lineCap = 'round';
  ctx.strokeStyle = colour;
  for (let k = 0; k < widths.length; k++) {
    if ((used & (1 << k)) === 0) continue;
    ctx.lineWidth = widths[k]!;
    ctx.beginPath();
    let drawn = 0; // index of the last point of this path
    for (let i = 1; i < count; i++) {
      if (paceOf[i] !== k) continue;
      const toX = x[i]!;
      const fromX = x[i - 1]!;
      if (Number.isNaN(toX) || Number.isNaN(fromX)) continue; // a separator
      if (drawn !== i - 1 || i === 1) ctx.moveTo(fromX, y[i - 1]!);
      ctx.lineTo(toX, y[i]!);
      drawn = i;
    }
    ctx.stroke();
  }
}

const SOLID: number[] = [];

/** A line of one width; every stroke after the first begins its dashes anew. */
export function strokeDashed(
  ctx: CanvasRenderingContext2D,
  line: Polyline,
  width: number,
  colour: string,
  dash: readonly number[],
  phase: number,
): void {
  ctx.setLineDash(dash as number[]); // the canvas copies it
  ctx.lineJoin = 'round';
  ctx.lineCap = 'butt';
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.lineDashOffset = phase;
  let open = false;
  for (let i = 0; i <= line.count; i++) {
    const x = i < line.count ? line.x[i]! : NaN;
    if (Number.isNaN(x)) {
      if (open) {
        ctx.stroke();
        ctx.lineDashOffset = 0;
      }
      open = false;
    } else if (open) {
      ctx.lineTo(x, line.y[i]!);
    } else {
      ctx.beginPath();
      ctx.moveTo(x, line.y[i]!);
      open = true;
    }
  }
  ctx.setLineDash(SOLID);
  ctx.lineDashOffset = 0;
}

/** The area that a line sweeps where it is too fast to be a line: between the largest and smallest values nearby. */
export function fillSwept(
  ctx: CanvasRenderingContext2D,
  trace: Trace,
  run: FastRun,
  on: Projection,
  colour: string,
  opacity: number,
  dash: readonly number[],
): void {
  ctx.fillStyle = colour;
  ctx.globalAlpha = opacity;
  ctx.beginPath();
  traceEdge(ctx, trace, run, on, 1);
  traceEdge(ctx, trace, run, on, -1);
  ctx.closePath();
  ctx.fill();
  ctx.globalAlpha = 1;
  ctx.setLineDash(dash as number[]); // lines are told apart by their dashes also where they are areas
  ctx.strokeStyle = colour;
  ctx.lineWidth = 1.2;
  ctx.stroke();
  ctx.setLineDash(SOLID);
}

/** The upper edge of the values from left to right (+1), the lower from right to left (−1); one point a pixel or so. */
function traceEdge(ctx: CanvasRenderingContext2D, trace: Trace, run: FastRun, on: Projection, side: 1 | -1): void {
  const { timeS, value } = trace;
  const wideS = SWEPT_PX / on.pxPerS;
  const first = side > 0 ? run.from : run.to - 1;
  let near = first; // the first vertex that is still near
  let stepS = -Infinity;
  for (let i = first; i >= run.from && i < run.to; i += side) {
    const last = i + side < run.from || i + side >= run.to;
    if (Math.abs(timeS[i]! - stepS) * on.pxPerS < 1 && !last) continue;
    stepS = timeS[i]!;
    while (Math.abs(timeS[near]! - stepS) > wideS) near += side;
    let edge = value[near]!;
    for (let j = near; j >= run.from && j < run.to && side * (timeS[j]! - stepS) <= wideS; j += side)
      if (side * value[j]! > side * edge) edge = value[j]!;
    const y = on.zeroYPx - edge * on.pxPerUnit;
    ctx.lineTo((stepS - on.fromS) * on.pxPerS, Math.min(Math.max(y, on.topPx), on.bottomPx));
  }
}
