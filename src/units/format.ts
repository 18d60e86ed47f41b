import { findUnit, QUANTITIES, type QuantityKind, type Unit, type UnitFamily } from './unit-table.ts';

const MINUS = '\u2212';
const NARROW_NO_BREAK_SPACE = '\u202f';
const SIGNIFICANT_DIGITS = 3;
/** Decimal exponents within which a number is written out; beyond, as ×10ⁿ. */
const WRITTEN_OUT = { from: -4, to: 5 } as const;

/**
 * An SI value for people: three significant digits, the unit whose number lies between 1 and 1000 where there
 * is one, a minus sign (U+2212), a narrow no-break space (U+202F) before the unit; never "−0". The degree sign
 * alone follows without a space (SI Brochure, 9th ed., 5.4.3). `unit` asks for another family than the first
 * of the kind: formatQuantity(a, 'acceleration', 'g') → "1.02 g", "5.00 mg". What is missing (NaN) is "—".
 * Rounding is to the nearest, from the exact decimal value of what is rounded.
 */
export function formatQuantity(value: number, kind: QuantityKind, unit?: string): string {
  if (Number.isNaN(value)) return '—';
  const family = familyFor(kind, unit);
  const inFamily = ((value - family.offset) * family.per) / family.times;
  if (!Number.isFinite(inFamily)) return inFamily > 0 ? '∞' : `${MINUS}∞`;
  const [mantissa = '', exponentText = ''] = Math.abs(inFamily)
    .toExponential(SIGNIFICANT_DIGITS - 1)
    .split('e');
  const exponent = Number(exponentText);
  const chosen = inFamily === 0 ? plainest(family.units) : fitting(family.units, exponent);
  const shift = inFamily === 0 ? 0 : exponent - chosen.exponent;
  const sign = inFamily < 0 ? MINUS : '';
  return `${sign}${written(mantissa.replace('.', ''), shift)}${spaced(chosen.symbol)}`;
}

function familyFor(kind: QuantityKind, symbol: string | undefined): UnitFamily {
  if (symbol === undefined) return QUANTITIES[kind].families[0]!;
  const found = findUnit(kind, symbol);
  if (!found) throw new RangeError(`“${symbol}” is not a unit of ${kind}`);
  return found.family;
}

/** The unit for zero: that without a prefix. */
function plainest(units: readonly Unit[]): Unit {
  return units.find((each) => each.exponent === 0) ?? units[0]!;
}

/** The largest unit that leaves at least one digit before the point; the smallest when none does. */
function fitting(units: readonly Unit[], exponent: number): Unit {
  let best: Unit | undefined;
  let smallest = units[0]!;
  for (const each of units) {
    if (each.typedOnly) continue;
    if (each.exponent < smallest.exponent) smallest = each;
    if (each.exponent <= exponent && !(best && best.exponent >= each.exponent)) best = each;
  }
  return best ?? smallest;
}

/** d.dd·10^shift from the digits ddd. */
function written(digits: string, shift: number): string {
  if (shift < WRITTEN_OUT.from || shift > WRITTEN_OUT.to)
    return `${digits[0]}.${digits.slice(1)}×10${superscript(shift)}`;
  if (shift < 0) return `0.${'0'.repeat(-shift - 1)}${digits}`;
  if (shift < SIGNIFICANT_DIGITS - 1) return `${digits.slice(0, shift + 1)}.${digits.slice(shift + 1)}`;
  const whole = digits.padEnd(shift + 1, '0');
  // Four digits stand together, more in groups of three (SI Brochure, 9th ed., 5.4.4).
  return whole.length > 4 ? `${whole.slice(0, -3)}${NARROW_NO_BREAK_SPACE}${whole.slice(-3)}` : whole;
}

function superscript(exponent: number): string {
  const digits = String(Math.abs(exponent)).replace(/[0-9]/gu, (digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]!);
  return exponent < 0 ? `⁻${digits}` : digits;
}

function spaced(symbol: string): string {
  return symbol === '' || symbol === '°' ? symbol : `${NARROW_NO_BREAK_SPACE}${symbol}`;
}
