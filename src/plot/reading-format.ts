/** How readings are written on the paper. */
import { formatQuantity } from '../units/format.ts';
import { G_N } from '../units/standard-gravity.ts';

export type ReadingUnit = 'g_n' | 'm/s2';

/** m/s² in one unit of the scale. */
export function unitSize(unit: ReadingUnit): number {
  return unit === 'g_n' ? G_N : 1;
}

export function unitName(unit: ReadingUnit): string {
  return unit === 'g_n' ? 'g' : 'm/s²';
}

/** A reading [m/s²] with its sign and unit: "+2.42 g", "−0.310 g", "16.0 m/s²" with a plus. */
export function readingText(valueMS2: number, unit: ReadingUnit): string {
  return signed(valueMS2, formatQuantity(valueMS2, 'acceleration', unitName(unit)));
}

/** The size of a reading that left the paper, for beside its arrow: "33.4 g". */
export function sizeText(valueMS2: number, unit: ReadingUnit): string {
  return formatQuantity(Math.abs(valueMS2), 'acceleration', unitName(unit));
}

/** Puts a plus before what is above zero; the minus is there already. */
export function signed(value: number, text: string): string {
  return value > 0 ? `+${text}` : text;
}

/** A value with a fixed number of decimals and the minus of print; no sign before zero. */
export function decimals(value: number, places: number): string {
  const text = Math.abs(value).toFixed(places);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** A plain number whose unit is named elsewhere: three significant digits. */
export function threeDigits(value: number): string {
  return formatQuantity(value, 'dimensionless');
}
