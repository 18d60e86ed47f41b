/** Ranges, ruling and figures of a graph's axes. */
import { multiples, niceStep, stepDecimals, stepParts } from './nice-step.ts';
import { decimals } from './reading-format.ts';

export interface AxisScale {
  readonly law: 'linear' | 'logarithmic';
  readonly from: number;
  readonly to: number;
}

export interface Ruling {
  /** Lines that have a figure, and finer ones. */
  readonly main: readonly number[];
  readonly fine: readonly number[];
  /** Figures of the main lines; empty where there is no room. */
  readonly figures: readonly string[];
}

/** Room beyond the data, as a share of its extent [–]. */
const MARGIN = 0.05;
/** Finer ruling than this is left out [px]. */
const FINE_PX = 8;

/** Smallest and largest number of several lists that an axis can show; undefined: none. */
export function extentOf(
  lists: readonly ArrayLike<number>[],
  law: AxisScale['law'],
): readonly [number, number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  for (const list of lists)
    for (let i = 0; i < list.length; i++) {
      const value = list[i]!;
      if (!Number.isFinite(value) || (law === 'logarithmic' && value <= 0)) continue;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  return low <= high ? [low, high] : undefined;
}

/** A range that holds an extent: with a margin to round numbers, logarithmic ones to 1, 2 or 5 times a power of ten. */
export function roundRange(
  extent: readonly [number, number] | undefined,
  law: AxisScale['law'],
): readonly [number, number] {
  if (extent === undefined) return law === 'linear' ? [0, 1] : [1, 10];
  const [low, high] = extent;
  if (law === 'logarithmic') {
    const to = niceStep(high);
    const below = niceStep(1 / low); // 1-2-5 is its own inverse: 1/2 is 5·10⁻¹
    const from = 1 / below;
    return from < to ? [from, to] : [from / 2, to * 2];
  }
  const size = high - low || Math.abs(high) || 1;
  const step = niceStep(size / 20);
  const from = Math.floor((low - MARGIN * size) / step) * step;
  const to = Math.ceil((high + MARGIN * size) / step) * step;
  // Data on one side of zero gets zero for its end, rather than a margin beyond it.
  return [low >= 0 && from < 0 ? 0 : from, high <= 0 && to >= 0 ? 0 : to];
}

/** Place of a value along an axis: 0 at its beginning, 1 at its end. */
export function shareOf(scale: AxisScale, value: number): number {
  if (scale.law === 'linear') return (value - scale.from) / (scale.to - scale.from);
  return Math.log10(value / scale.from) / Math.log10(scale.to / scale.from);
}

export function valueAtShare(scale: AxisScale, share: number): number {
  if (scale.law === 'linear') return scale.from + share * (scale.to - scale.from);
  return scale.from * (scale.to / scale.from) ** share;
}

export function ruling(scale: AxisScale, lengthPx: number, figurePx: number): Ruling {
  return scale.law === 'linear'
    ? linearRuling(scale, lengthPx, figurePx)
    : logarithmicRuling(scale, lengthPx, figurePx);
}

function linearRuling({ from, to }: AxisScale, lengthPx: number, figurePx: number): Ruling {
  const pxPerUnit = lengthPx / (to - from);
  const step = niceStep(figurePx / pxPerUnit);
  const main = multiples(from, to, step);
  const parts = [10, stepParts(step), 2].find((each) => (step * pxPerUnit) / each >= FINE_PX) ?? 1;
  const fine = parts === 1 ? [] : multiples(from, to, step / parts);
  return { main, fine, figures: main.map((value) => (value === 0 ? '0' : plainFigure(value, step))) };
}

function plainFigure(value: number, step: number): string {
  return Math.abs(value) >= 1e5 || step < 1e-4 ? powerFigure(value) : decimals(value, stepDecimals(step));
}

/** Decades, with their 2 and 5 where there is room; the other whole multiples as fine lines. */
function logarithmicRuling({ from, to }: AxisScale, lengthPx: number, figurePx: number): Ruling {
  const decadePx = lengthPx / Math.log10(to / from);
  const leads = decadePx * Math.log10(2) >= figurePx ? [1, 2, 5] : [1];
  const every = Math.max(1, Math.ceil(figurePx / decadePx));
  const main: number[] = [];
  const fine: number[] = [];
  for (let power = Math.floor(Math.log10(from)) - 1; power <= Math.ceil(Math.log10(to)); power++) {
    for (let lead = 1; lead <= 9; lead++) {
      const value = Number(`${lead}e${power}`);
      if (value < from * (1 - 1e-9) || value > to * (1 + 1e-9)) continue;
      if (leads.includes(lead) && power % every === 0) main.push(value);
      else if (decadePx * Math.log10((lead + 1) / lead) >= FINE_PX / 2) fine.push(value);
    }
  }
  return {
    main,
    fine,
    figures: main.map((value) => (value >= 1e-3 && value < 1e5 ? String(value) : powerFigure(value))),
  };
}

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** m×10ⁿ, or 10ⁿ alone. */
function powerFigure(value: number): string {
  const [lead = '', power = ''] = Math.abs(value).toExponential().split('e');
  const raised = [...power].map((c) => (c === '-' ? '⁻' : c === '+' ? '' : SUPERSCRIPTS[Number(c)])).join('');
  return `${value < 0 ? '−' : ''}${lead === '1' ? '' : `${lead}×`}10${raised}`;
}
