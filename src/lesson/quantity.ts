import { findUnit, type QuantityKind } from '../units/unit-table.ts';

/** How a number is printed and typed: its kind and the unit in which it is always printed. */
export interface Quantity {
  readonly kind: QuantityKind;
  readonly unit: string;
}

const USUAL_UNIT: Readonly<Record<QuantityKind, string>> = {
  time: 's',
  frequency: 'Hz',
  'angular rate': 'rad/s',
  length: 'm',
  mass: 'kg',
  acceleration: 'g',
  angle: '°',
  stiffness: 'N/m',
  damping: 'N·s/m',
  speed: 'm/s',
  temperature: '°C',
  dimensionless: '',
  percent: '%',
};

/** Kinds by name, for lesson files. */
export const KINDS = Object.keys(USUAL_UNIT) as readonly QuantityKind[];

export function usual(kind: QuantityKind, unit?: string | undefined): Quantity {
  return { kind, unit: unit ?? USUAL_UNIT[kind] };
}

/** Printed for a number that is not known. */
export const UNKNOWN = '—';

const MINUS = '\u2212';
const NARROW_NO_BREAK_SPACE = '\u202f';

/**
 * For people, in the quantity's own unit, so that numbers beside each other compare: three significant digits, at
 * most three decimals ("0.004 g", not "4 mg"). "—" while it is not known, "never" when it never comes.
 */
export function printed(value: number | undefined, { kind, unit }: Quantity): string {
  if (value === undefined || Number.isNaN(value)) return UNKNOWN;
  if (value === Number.POSITIVE_INFINITY) return 'never';
  const found = findUnit(kind, unit);
  if (!found) throw new RangeError(`“${unit}” is not a unit of ${kind}`);
  const { times, per, offset } = found.family;
  const number = (((value - offset) * per) / times) * Number(`1e${-found.unit.exponent}`);
  const size = Math.abs(number);
  // The exponent after rounding to three digits: 0.9999 is 1.00.
  const exponent = Number(size.toExponential(2).split('e')[1]);
  const digits = size === 0 ? '0.000' : size.toFixed(Math.min(3, Math.max(0, 2 - exponent)));
  const sign = number < 0 && Number(digits) !== 0 ? MINUS : '';
  // The degree sign alone follows without a space (SI Brochure, 9th ed., 5.4.3).
  const space = unit === '' || unit === '°' ? '' : NARROW_NO_BREAK_SPACE;
  return `${sign}${digits}${space}${found.unit.symbol}`;
}
