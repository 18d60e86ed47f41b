import { formatQuantity } from './format.ts';
import { parseQuantity } from './parse.ts';
import { G_N } from './standard-gravity.ts';
import type { QuantityKind } from './unit-table.ts';

const NARROW_NO_BREAK_SPACE = '\u202f';
const NO_BREAK_SPACE = '\u00a0';
const MINUS = '\u2212';

/** What a field needs to know about its quantity. Values are SI. */
export interface FieldQuantity {
  /** In a sentence, "drop height". */
  readonly label: string;
  readonly kind: QuantityKind;
  /** Family of units to print in and to take for a bare number; undefined: the kind's first. */
  readonly unit?: string | undefined;
  readonly low: number;
  readonly high: number;
  /** Why nothing beyond the ends is taken, as a sentence. */
  readonly limitReason?: string | undefined;
}

/** From this size up to 1 a value keeps the unit that people think in: "0.286 s", "0.400 m", "0.500 g". SI. */
const KEPT: Readonly<Partial<Record<string, { readonly unit: string; readonly from: number; readonly one: number }>>> =
  {
    time: { unit: 's', from: 0.1, one: 1 },
    length: { unit: 'm', from: 0.1, one: 1 },
    'acceleration in g': { unit: 'g', from: 0.01 * G_N, one: G_N },
  };

/**
 * A value as the page prints it: three significant digits, U+2212, a no-break space before the unit (a narrow one is
 * too fine in the page's faces to part "8.10" from "Hz").
 */
export function quantityText(value: number, kind: QuantityKind, unit?: string): string {
  const kept = KEPT[kind === 'acceleration' && unit === 'g' ? 'acceleration in g' : kind];
  const size = Math.abs(value);
  if (kept !== undefined && (unit === undefined || unit === kept.unit) && size >= kept.from && size < kept.one) {
    return `${value < 0 ? MINUS : ''}${(size / kept.one).toPrecision(3)}${NO_BREAK_SPACE}${kept.unit}`;
  }
  const { number, unit: symbol } = splitQuantity(formatQuantity(value, kind, unit));
  return symbol === '' || symbol === '°' ? number + symbol : `${number}${NO_BREAK_SPACE}${symbol}`;
}

/** A limit or another number that is exact as it stands: "5 g" rather than "5.00 g". */
export function exactText(value: number, kind: QuantityKind, unit?: string): string {
  return quantityText(value, kind, unit)
    .replace(/(\.\d*?)0+(?=\D|$)/, '$1')
    .replace(/\.(?=\D|$)/, '');
}

/** "25.0 g" in two parts, so that the unit can be set in the second voice. */
export function splitQuantity(text: string): { readonly number: string; readonly unit: string } {
  const space = Math.max(text.lastIndexOf(NARROW_NO_BREAK_SPACE), text.lastIndexOf(NO_BREAK_SPACE));
  const tail = text.slice(space + 1);
  // A narrow space also parts groups of digits.
  if (space > 0 && !/^\d/.test(tail)) return { number: text.slice(0, space), unit: tail };
  if (text.endsWith('°')) return { number: text.slice(0, -1), unit: '°' };
  return { number: text, unit: '' };
}

/** A typed value within its limits, or the sentence that says why it is refused. `shownUnit` goes with a bare number. */
export function readField(
  text: string,
  quantity: FieldQuantity,
  shownUnit: string,
): { readonly value: number } | { readonly reason: string } {
  const parsed = parseQuantity(text, quantity.kind, shownUnit);
  if ('error' in parsed) return { reason: parsed.error };
  const { value } = parsed;
  const { low, high, label, kind, unit, limitReason } = quantity;
  if (value >= low && value <= high) return { value };
  const name = label.charAt(0).toUpperCase() + label.slice(1);
  const limits = `${name} lies between ${exactText(low, kind, unit)} and ${exactText(high, kind, unit)} here`;
  const found = quantityText(value, kind, unit);
  const reason = limitReason === undefined ? '' : ` ${limitReason}`;
  return { reason: `${limits}; ${found} is too ${value < low ? 'little' : 'much'}.${reason}` };
}
