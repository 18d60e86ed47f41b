import { findUnit, QUANTITIES, type QuantityKind, symbolsOf } from './unit-table.ts';

/** The SI value, or a sentence for people: what was found, which units are allowed. */
export type Parsed = { readonly value: number } | { readonly error: string };

/**
 * Sign; digits, in groups of three if spaced; decimals after a dot or a comma; then e−3 or ×10⁻³; the rest is
 * the unit. Spaces of all kinds and both minus signs have been made plain before.
 */
const NUMBER =
  /^([+-]?) ?((?:[0-9]{1,3}(?: [0-9]{3})+(?![0-9])|[0-9]+)(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE]([+-]?[0-9]+)| ?[×x*·] ?10(?:\^([+-]?[0-9]+)|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)))? ?(.*)$/u;

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** 1,250 is 1.25 to some and 1250 to others. */
const TWO_MEANINGS = /^[1-9][0-9]{0,2},[0-9]{3}$/u;

/**
 * Reads a quantity as people type it: "2 ms", "1,5 mm", "50 mg", "20 000 N/m", "1e-3 s". A number of decimal
 * digits in a unit that is a power of ten of the SI unit comes out as the double nearest to it. A number
 * without a unit takes `bareUnit` if there is one. Limits are not looked at.
 */
export function parseQuantity(text: string, kind: QuantityKind, bareUnit?: string): Parsed {
  const plain = text.replace(/\s+/gu, ' ').trim().replace(/[−–]/gu, '-');
  if (plain === '') return refused(kind, 'Nothing was entered');
  const match = NUMBER.exec(plain);
  if (!match) return refused(kind, `“${plain}” does not begin with a number`);
  const [, sign = '', digits = '', exponent, power, superscript, rest = ''] = match;
  if (/^[.,0-9]/u.test(rest)) return refused(kind, `“${plain}” is not one number`);
  if (TWO_MEANINGS.test(digits) && exponent === undefined) {
    const [whole = '', decimals = ''] = digits.split(',');
    return { error: `“${plain}” can mean ${whole}.${decimals} or ${whole}${decimals}; please write one of these.` };
  }
  const found = findUnit(kind, rest === '' ? (bareUnit ?? '') : rest);
  if (!found) {
    if (rest === '') return refused(kind, `“${plain}” has no unit`);
    return refused(kind, `“${rest}” is not understood as a unit here`);
  }
  const { family, unit } = found;
  const shift = Number(exponent ?? power ?? plainDigits(superscript ?? '0')) + unit.exponent;
  // The power of ten goes into the text, where it costs no rounding.
  const number = Number(`${sign}${digits.replace(/ /gu, '').replace(',', '.')}e${shift}`);
  // Adding an offset of 0 also turns −0 into 0.
  const value = (number * family.times) / family.per + family.offset;
  if (!Number.isFinite(value)) return refused(kind, `“${plain}” is too large a number`);
  return { value };
}

function refused(kind: QuantityKind, found: string): Parsed {
  const symbols = symbolsOf(kind);
  const { name } = QUANTITIES[kind];
  if (symbols[0] !== '') return { error: `${found}; ${name} in ${listed(symbols)} is needed.` };
  return { error: `${found}; ${name} without a unit, or in ${listed(symbols.slice(1))}, is needed.` };
}

function listed(symbols: readonly string[]): string {
  if (symbols.length === 1) return symbols[0]!;
  return `${symbols.slice(0, -1).join(', ')} or ${symbols.at(-1)}`;
}

function plainDigits(superscript: string): string {
  return superscript
    .replace('⁻', '-')
    .replace('⁺', '+')
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/gu, (digit) => String(SUPERSCRIPTS.indexOf(digit)));
}
