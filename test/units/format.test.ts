import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../../src/units/format.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import { G_N } from '../../src/units/standard-gravity.ts';
import { QUANTITIES, type QuantityKind } from '../../src/units/unit-table.ts';
import { seeded, whole } from '../recording/seeded.ts';

const NARROW = '\u202f';
const MINUS = '\u2212';
/** With plain spaces and hyphens, so that the expectations can be read. */
const plain = (text: string): string => text.replaceAll(NARROW, ' ').replaceAll(MINUS, '-');

/** Every kind in the unit of each of its families. */
const KINDS_AND_UNITS = (Object.keys(QUANTITIES) as QuantityKind[]).flatMap((kind) =>
  QUANTITIES[kind].families.map(({ units }) => [kind, units[0]!.symbol] as const),
);

function parsed(text: string, kind: QuantityKind): number {
  const result = parseQuantity(text, kind);
  if ('error' in result) throw new Error(result.error);
  return result.value;
}

describe('printing a quantity', () => {
  it('puts a narrow no-break space before the unit and a real minus sign before the number', () => {
    expect(formatQuantity(0.0038, 'length')).toBe('3.80\u202fmm');
    expect(formatQuantity(-0.0038, 'length')).toBe('\u22123.80\u202fmm');
  });

  it.each<[number, QuantityKind, string | undefined, string]>([
    [0.0038, 'length', undefined, '3.80 mm'],
    [0.248, 'length', undefined, '248 mm'], // cm is understood, not chosen
    [1, 'length', undefined, '1.00 m'],
    [2.5e-7, 'length', undefined, '250 nm'],
    [4500, 'length', undefined, '4.50 km'],
    [0.65, 'time', undefined, '650 ms'],
    [36.61, 'time', undefined, '36.6 s'],
    [5400, 'time', undefined, '5400 s'],
    [5400, 'time', 'h', '1.50 h'],
    [8.1, 'frequency', undefined, '8.10 Hz'],
    [12345, 'frequency', undefined, '12.3 kHz'],
    [0.5, 'mass', undefined, '500 g'],
    [1.5, 'mass', undefined, '1.50 kg'],
    [2e-9, 'mass', undefined, '2.00 µg'],
    [9.80665, 'acceleration', undefined, '9.81 m/s²'],
    [0.049, 'acceleration', undefined, '49.0 mm/s²'],
    [9.80665, 'acceleration', 'g', '1.00 g'],
    [-0.0490333, 'acceleration', 'g', '-5.00 mg'],
    [41.1406 * G_N, 'acceleration', 'g', '41.1 g'],
    [1222 * G_N, 'acceleration', 'g', '1220 g'],
    [Math.PI / 8, 'angle', undefined, '22.5°'],
    [-Math.PI, 'angle', undefined, '-180°'],
    [0.0123, 'angle', 'rad', '12.3 mrad'],
    [2 * Math.PI, 'angular rate', 'r/min', '60.0 r/min'],
    [20000, 'stiffness', undefined, '20.0 kN/m'],
    [131.25, 'stiffness', undefined, '131 N/m'],
    [10, 'damping', undefined, '10.0 N·s/m'],
    [3.132, 'speed', undefined, '3.13 m/s'],
    [10, 'speed', 'km/h', '36.0 km/h'],
    [293.15, 'temperature', undefined, '20.0 °C'],
    [293.15, 'temperature', 'K', '293 K'],
    [0.05, 'percent', undefined, '5.00 %'],
    [1.5, 'percent', undefined, '150 %'],
    [0.05, 'dimensionless', undefined, '0.0500'],
    [0.656, 'dimensionless', undefined, '0.656'],
    [1e4, 'dimensionless', undefined, '10 000'],
    [123456, 'dimensionless', undefined, '123 000'],
    [1e-9, 'dimensionless', undefined, '1.00×10⁻⁹'],
    [6.02e23, 'dimensionless', undefined, '6.02×10²³'],
    [1e-20, 'length', undefined, '1.00×10⁻⁸ pm'],
  ])('%d as %s in %s reads %s', (value, kind, unit, text) => {
    expect(plain(formatQuantity(value, kind, unit))).toBe(text);
  });

  it('changes the prefix where rounding fills the digits', () => {
    expect(plain(formatQuantity(0.9994, 'length'))).toBe('999 mm');
    expect(plain(formatQuantity(0.9996, 'length'))).toBe('1.00 m');
    expect(plain(formatQuantity(9.9951e-4, 'time'))).toBe('1.00 ms');
    expect(plain(formatQuantity(-999.6, 'stiffness'))).toBe('-1.00 kN/m');
  });

  it('prints 0 in the unit without a prefix, and never −0', () => {
    for (const zero of [0, -0]) {
      expect(plain(formatQuantity(zero, 'length'))).toBe('0.00 m');
      expect(plain(formatQuantity(zero, 'acceleration', 'g'))).toBe('0.00 g');
      expect(plain(formatQuantity(zero, 'percent'))).toBe('0.00 %');
      expect(plain(formatQuantity(zero, 'angle'))).toBe('0.00°');
    }
    expect(plain(formatQuantity(273.15, 'temperature'))).toBe('0.00 °C');
  });

  it('has a sign of its own for what is missing and what is unbounded', () => {
    expect(formatQuantity(Number.NaN, 'length')).toBe('—');
    expect(formatQuantity(Number.POSITIVE_INFINITY, 'length')).toBe('∞');
    expect(plain(formatQuantity(Number.NEGATIVE_INFINITY, 'length'))).toBe('-∞');
  });

  it('refuses a unit of another kind', () => {
    expect(() => formatQuantity(1, 'length', 's')).toThrow('“s” is not a unit of length');
  });

  it.each(KINDS_AND_UNITS)('%s in %j can be read back, and then prints alike, seed 11', (kind, unit) => {
    const random = seeded(11);
    const { offset } = QUANTITIES[kind].families.find(({ units }) => units[0]!.symbol === unit)!;
    for (let n = 0; n < 400; n += 1) {
      const sign = random() < 0.5 ? -1 : 1;
      const value = sign * (1 + 9 * random()) * 10 ** whole(random, offset ? -1 : -15, 9) + offset;
      const text = formatQuantity(value, kind, unit);
      const back = parsed(text, kind);
      // Three digits: half a unit of the third is at most 1/200 of the value; the conversions add a few roundings.
      const error = Math.abs(back - value) / Math.abs(value - offset);
      if (!(error <= 0.005 * (1 + 1e-9)) || formatQuantity(back, kind, unit) !== text)
        expect.unreachable(`${value} printed as ${text}, read as ${back}`);
      if (
        !/^\u2212?(?:[0-9]{1,3}(?:\u202f[0-9]{3})+|[0-9]{4}|[0-9.]{3,8})(?:×10⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)?(?:\u202f\S+|°)?$/u.test(
          text,
        )
      )
        expect.unreachable(`${value} printed as ${text}`);
      if (sign > 0 !== !text.startsWith(MINUS)) expect.unreachable(`${value} printed as ${text}`);
    }
  });

  it.each(KINDS_AND_UNITS)(
    '%s in %j keeps its number between 1 and 1000 while a prefix is left, seed 12',
    (kind, unit) => {
      const random = seeded(12);
      const { times, per, offset, units } = QUANTITIES[kind].families.find((each) => each.units[0]!.symbol === unit)!;
      const exponents = units.filter(({ typedOnly }) => !typedOnly).map(({ exponent }) => exponent);
      const [lowest, highest] = [Math.min(...exponents), Math.max(...exponents) + 3];
      for (let n = 0; n < 200; n += 1) {
        const inFamily = (1 + 8.9 * random()) * 10 ** whole(random, lowest, highest - 1);
        const text = plain(formatQuantity((inFamily * times) / per + offset, kind, unit));
        const number = Number.parseFloat(text);
        if (!(number >= 1 && number < 1000) || text.includes('×')) expect.unreachable(text);
        if (text.replace(/ .*|°/gu, '').replace(/[^0-9]/gu, '').length !== 3) expect.unreachable(text);
      }
    },
  );
});
