/** The paper itself as far as it moves with the ink: grain, ruling, zero line, stop lines; and the scale beside it. */
import { multiples, niceStep, stepDecimals, stepParts } from './nice-step.ts';
import { type PaperFrame, xOf } from './paper-frame.ts';
import type { ValueMark } from './paper-view.ts';
import { decimals, signed, unitSize } from './reading-format.ts';

/** Room that a time under the paper and a figure beside it need at least [px at size 1]. */
const TIME_ROOM_PX = 84;
const FIGURE_ROOM_PX = 21;
/** Finer ruling than this is left out [px at size 1]. */
const FINE_PX = 8;

export function timeStep(frame: PaperFrame): number {
  return niceStep((TIME_ROOM_PX * frame.style.size) / frame.pxPerS);
}

function pxPerShown(frame: PaperFrame): number {
  return Math.abs(frame.pxPerMS2) * unitSize(frame.view.unit);
}

function valueStep(frame: PaperFrame): number {
  return niceStep((FIGURE_ROOM_PX * frame.style.size) / pxPerShown(frame));
}

/** The paper's main lines as figures for the rule beside it, the highest first; in the unit shown, signs as read. */
export function valueMarks(frame: PaperFrame): ValueMark[] {
  const step = valueStep(frame);
  const places = stepDecimals(step);
  return multiples(-frame.range, frame.range, step)
    .reverse()
    .map((value) => ({
      text: value === 0 ? '0' : signed(value, decimals(value, places)),
      yPx: frame.zeroYPx - value * pxPerShown(frame),
    }));
}

/** Parts of a step that leave lines at least FINE_PX apart: ten, five (or four), two, or none. */
function fineParts(step: number, pxPerUnit: number, finePx: number): number {
  for (const parts of [10, stepParts(step), 2]) if ((step * pxPerUnit) / parts >= finePx) return parts;
  return 1;
}

export function drawRuling(ctx: CanvasRenderingContext2D, frame: PaperFrame): void {
  const { style, topPx, bottomPx, widthPx } = frame;
  const finePx = FINE_PX * style.size;
  const byTime = timeStep(frame);
  const byValue = valueStep(frame);
  const timeParts = fineParts(byTime, frame.pxPerS, finePx);
  const valueParts = fineParts(byValue, pxPerShown(frame), finePx);

  ctx.setLineDash([]);
  ctx.lineWidth = 1;
  ctx.strokeStyle = style.gridFine;
  ctx.beginPath();
  upright(ctx, frame, byTime / timeParts, timeParts);
  level(ctx, frame, byValue / valueParts, valueParts);
  ctx.stroke();

  ctx.strokeStyle = style.gridMain;
  ctx.beginPath();
  upright(ctx, frame, byTime, 0);
  level(ctx, frame, byValue, 0);
  ctx.stroke();

  ctx.strokeStyle = style.zero;
  ctx.lineWidth = Math.max(1 / frame.pixelRatio, 0.8 * style.size);
  const zero = crisp(frame.zeroYPx, frame.pixelRatio);
  ctx.beginPath();
  ctx.moveTo(0, zero);
  ctx.lineTo(widthPx, zero);
  ctx.stroke();

  const { stopMS2 } = frame.view;
  if (stopMS2 === undefined) return;
  ctx.strokeStyle = style.brass;
  ctx.lineWidth = 1.1 * style.size;
  ctx.lineCap = 'butt';
  ctx.setLineDash([1.5 * style.size, 4 * style.size]);
  ctx.lineDashOffset = frame.fromS * frame.pxPerS; // dashes move with the paper
  for (const y of [frame.zeroYPx - stopMS2 * frame.pxPerMS2, frame.zeroYPx + stopMS2 * frame.pxPerMS2]) {
    if (y < topPx || y > bottomPx) continue;
    ctx.beginPath();
    ctx.moveTo(0, crisp(y, frame.pixelRatio));
    ctx.lineTo(widthPx, crisp(y, frame.pixelRatio));
    ctx.stroke();
  }
  ctx.setLineDash([]);
  ctx.lineDashOffset = 0;
}

/** Lines at multiples of a step of time; every `skip`-th is left to the main ruling. They glide: no rounding to pixels. */
function upright(ctx: CanvasRenderingContext2D, frame: PaperFrame, step: number, skip: number): void {
  const last = Math.floor(frame.toS / step + 1e-9);
  for (let k = Math.ceil(frame.fromS / step - 1e-9); k <= last; k++) {
    if (skip > 0 && k % skip === 0) continue;
    const x = xOf(frame, k * step);
    ctx.moveTo(x, frame.topPx);
    ctx.lineTo(x, frame.bottomPx);
  }
}

function level(ctx: CanvasRenderingContext2D, frame: PaperFrame, step: number, skip: number): void {
  const px = step * pxPerShown(frame);
  const last = Math.floor(frame.range / step + 1e-9);
  for (let k = -last; k <= last; k++) {
    if (skip > 0 && k % skip === 0) continue;
    const y = crisp(frame.zeroYPx - k * px, frame.pixelRatio);
    ctx.moveTo(0, y);
    ctx.lineTo(frame.widthPx, y);
  }
}

/** Middle of a device pixel, for a sharp line of one. */
export function crisp(px: number, pixelRatio: number): number {
  return (Math.floor(px * pixelRatio) + 0.5) / pixelRatio;
}

/** Side of the tile of grain [px]: repeats, too large to be noticed. */
const TILE_PX = 256;

/** Flecks and fibres of a sheet, always the same, transparent between them. */
export function makeGrain(colour: string, dark: boolean): HTMLCanvasElement {
  const tile = document.createElement('canvas');
  tile.width = TILE_PX;
  tile.height = TILE_PX;
  const ctx = tile.getContext('2d')!;
  let state = 20011; // any seed
  const chance = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 150; i++) {
    const x = chance() * TILE_PX;
    const y = chance() * TILE_PX;
    const turn = chance() * 3;
    const length = 1 + 5 * chance() * chance();
    ctx.strokeStyle = `rgba(${colour},${((dark ? 0.05 : 0.04) + 0.07 * chance()).toFixed(3)})`;
    ctx.lineWidth = 0.7 + 1.3 * chance();
    ctx.beginPath();
    ctx.moveTo(x, y);
    ctx.lineTo(x + length * (1 - turn / 1.5), y + length * (turn / 3));
    ctx.stroke();
  }
  return tile;
}

/** Lays the grain so that it moves with the paper. */
export function drawGrain(ctx: CanvasRenderingContext2D, frame: PaperFrame, grain: CanvasPattern): void {
  const along = -((frame.fromS * frame.pxPerS) % TILE_PX);
  ctx.save();
  ctx.translate(along, 0);
  ctx.fillStyle = grain;
  ctx.fillRect(-along, 0, frame.widthPx, frame.heightPx);
  ctx.restore();
}
