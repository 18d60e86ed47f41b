import type { PaperScale } from '../contract/view.ts';
import { G_N } from '../units/standard-gravity.ts';

export interface RuleTick {
  readonly yPx: number;
  /** Number to print, "+2", "0", "−1"; undefined on a mark without one. */
  readonly text?: string;
  readonly length: 'number' | 'half' | 'fine';
}

/** Closest that two printed numbers may stand [px]. */
const NUMBER_SPACING_PX = 21;
/** Closest that two marks may stand [px]. */
const MARK_SPACING_PX = 4;

/**
 * Marks of the pen's rule for a paper scale. Numbers stand at 1, 2 or 5 times a power of ten, as close as can be read;
 * between them ten or five marks where there is room. A scale turned round (negative) turns the numbers with it.
 */
export function ruleTicks(scale: PaperScale, unit: 'g' | 'm/s²'): readonly RuleTick[] {
  const pxPerUnit = scale.pxPerMS2 * (unit === 'g' ? G_N : 1);
  const step = niceStep(NUMBER_SPACING_PX / Math.abs(pxPerUnit));
  const parts = [10, 5, 2, 1].find((count) => (step * Math.abs(pxPerUnit)) / count >= MARK_SPACING_PX) ?? 1;
  const end1 = (scale.zeroYPx - scale.topYPx) / pxPerUnit;
  const end2 = (scale.zeroYPx - scale.bottomYPx) / pxPerUnit;
  const fine = step / parts;
  const first = Math.ceil(Math.min(end1, end2) / fine);
  const last = Math.floor(Math.max(end1, end2) / fine);
  const ticks: RuleTick[] = [];
  for (let index = first; index <= last; index += 1) {
    const yPx = scale.zeroYPx - index * fine * pxPerUnit;
    if (index % parts === 0) ticks.push({ yPx, text: signedText((index / parts) * step), length: 'number' });
    else ticks.push({ yPx, length: parts % 2 === 0 && index % (parts / 2) === 0 ? 'half' : 'fine' });
  }
  return ticks;
}

/** Smallest of 1, 2, 5 · 10ⁿ that is at least `least`. */
function niceStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  const digit = [1, 2, 5, 10].find((candidate) => candidate * decade >= least * (1 - 1e-9)) ?? 10;
  return Number((digit * decade).toPrecision(1));
}

function signedText(value: number): string {
  const rounded = Number(value.toPrecision(3));
  if (rounded === 0) return '0';
  return `${rounded > 0 ? '+' : '−'}${Math.abs(rounded)}`;
}
