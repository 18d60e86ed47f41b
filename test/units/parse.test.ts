import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../src/units/parse.ts';
import { G_N } from '../../src/units/standard-gravity.ts';
import { findUnit, QUANTITIES, type QuantityKind } from '../../src/units/unit-table.ts';

const KINDS = Object.keys(QUANTITIES) as QuantityKind[];

function read(text: string, kind: QuantityKind, bareUnit?: string): number {
  const parsed = parseQuantity(text, kind, bareUnit);
  if ('error' in parsed) throw new Error(parsed.error);
  return parsed.value;
}

function errorOf(text: string, kind: QuantityKind): string {
  const parsed = parseQuantity(text, kind);
  return 'error' in parsed ? parsed.error : `no error: ${parsed.value}`;
}

describe('reading a quantity', () => {
  it.each<[string, QuantityKind, number]>([
    ['2 ms', 'time', 0.002],
    ['2ms', 'time', 0.002],
    ['  2   ms ', 'time', 0.002],
    ['1,5 mm', 'length', 0.0015],
    ['.5 s', 'time', 0.5],
    ['5. s', 'time', 5],
    ['+3 m', 'length', 3],
    ['-3 m', 'length', -3],
    ['−3 m', 'length', -3],
    ['0,125 m', 'length', 0.125],
    ['1e-3', 'dimensionless', 0.001],
    ['1E−3 s', 'time', 0.001],
    ['2×10⁻³ m', 'length', 0.002],
    ['2 x 10^-3 m', 'length', 0.002],
    ['1.00·10⁴ N/m', 'stiffness', 1e4],
    ['20 000 N/m', 'stiffness', 20000],
    ['1\u202f234\u202f567,5\u202fHz', 'frequency', 1234567.5],
    ['5 um', 'length', 5e-6],
    ['5 µm', 'length', 5e-6], // U+00B5
    ['5 μm', 'length', 5e-6], // U+03BC
    ['8.1 Hz', 'frequency', 8.1],
    ['3 kHz', 'frequency', 3000],
    ['20 g', 'mass', 0.02],
    ['0.5 kg', 'mass', 0.5],
    ['9.8 m/s²', 'acceleration', 9.8],
    ['9.8 m/s2', 'acceleration', 9.8],
    ['9.8 m / s^2', 'acceleration', 9.8],
    ['20 N/mm', 'stiffness', 20000],
    ['10 N·s/m', 'damping', 10],
    ['10 N s/m', 'damping', 10],
    ['10 N*s/m', 'damping', 10],
    ['5 %', 'percent', 0.05],
    ['5 %', 'dimensionless', 0.05],
    ['0.7', 'dimensionless', 0.7],
    ['12 mm/s', 'speed', 0.012],
    ['300 K', 'temperature', 300],
  ])('%j as %s is %d in SI, exactly', (text, kind, value) => {
    expect(read(text, kind)).toBe(value);
  });

  // NIST Special Publication 811 (2008), appendix B.8, factors as printed (7 digits); g_n exact by definition.
  it.each<[string, QuantityKind, number]>([
    ['1 min', 'time', 60],
    ['1 h', 'time', 3600],
    ['1 km/h', 'speed', 0.2777778],
    ['1 °', 'angle', 0.01745329],
    ['1 deg', 'angle', 0.01745329],
    ['1 r/min', 'angular rate', 0.1047198],
    ['1 g', 'acceleration', 9.80665],
    ['1 rad/s', 'frequency', 0.1591549], // 1/2π, common practice
  ])('%j is worth the published factor', (text, kind, factor) => {
    expect(Math.abs(read(text, kind) / factor - 1)).toBeLessThan(5e-7);
  });

  it('reads °C from the ice point, 273.15 K (SI Brochure, 9th ed., 2.3.1)', () => {
    expect(read('20 °C', 'temperature')).toBe(293.15);
    expect(read('-273,15 °C', 'temperature')).toBe(0);
  });

  it('gives standard gravity its exact value, in every way of writing it', () => {
    for (const text of ['1 g', '1g', '1 gₙ', '1 gn', '1 g_n', '1000 mg', '1e6 µg', '1e6 ug'])
      expect(read(text, 'acceleration')).toBe(G_N);
    expect(read('50 mg', 'acceleration')).toBe(0.05 * G_N);
    expect(read('90°', 'angle')).toBe(Math.PI / 2);
    expect(read('36 km/h', 'speed')).toBe(10);
  });

  it('loses nothing to the power of ten of a prefix', () => {
    for (let n = 1; n < 3000; n += 7) {
      expect(read(`${n}.3 ms`, 'time')).toBe(Number(`${n}.3e-3`));
      expect(read(`${n}.3 nm`, 'length')).toBe(Number(`${n}.3e-9`));
    }
  });

  it('takes the unit of its field for a bare number, and only then', () => {
    expect(read('5', 'length', 'mm')).toBe(0.005);
    expect(read('5 m', 'length', 'mm')).toBe(5);
    expect(read('5', 'percent', '%')).toBe(0.05);
    expect(errorOf('5', 'length')).toBe('“5” has no unit; a length in km, m, cm, mm, µm, nm or pm is needed.');
  });

  it('never gives −0', () => {
    for (const text of ['-0 m', '−0.0 mm', '-0e5 m']) expect(Object.is(read(text, 'length'), 0)).toBe(true);
  });

  it('says what it found and which units are allowed', () => {
    expect(errorOf('', 'mass')).toBe('Nothing was entered; a mass in kg, g, mg, µg or ng is needed.');
    expect(errorOf(' \u00a0', 'mass')).toBe(errorOf('', 'mass'));
    expect(errorOf('heavy', 'mass')).toBe(
      '“heavy” does not begin with a number; a mass in kg, g, mg, µg or ng is needed.',
    );
    expect(errorOf('3 lumps', 'acceleration')).toBe(
      '“lumps” is not understood as a unit here; an acceleration in m/s², mm/s², µm/s², g, mg or µg is needed.',
    );
    expect(errorOf('x', 'dimensionless')).toBe(
      '“x” does not begin with a number; a number without a unit, or in %, is needed.',
    );
    expect(errorOf('5', 'percent')).toBe('“5” has no unit; a percentage in % is needed.');
    expect(errorOf('1e999 m', 'length')).toMatch(/^“1e999 m” is too large a number; /u);
  });

  it('does not guess', () => {
    expect(errorOf('1,250 kg', 'mass')).toBe('“1,250 kg” can mean 1.250 or 1250; please write one of these.');
    expect(read('1,25 kg', 'mass')).toBe(1.25);
    expect(read('1,2500 kg', 'mass')).toBe(1.25);
    for (const text of [
      '1.2.3 m',
      '1,250.5 m',
      '1 2 m',
      '12 34 m',
      '1-2 m',
      '--1 m',
      '1e m',
      'Infinity m',
      'NaN m',
      '0x10 m',
      '1 2',
    ])
      expect(errorOf(text, 'length')).toMatch(/is needed\.$/u);
    // Milli is not mega: the case of a prefix counts.
    expect(read('1 mHz', 'frequency')).toBe(0.001);
    expect(read('1 MHz', 'frequency')).toBe(1e6);
    expect(errorOf('1 Mg', 'mass')).toMatch(/“Mg” is not understood/u);
    expect(errorOf('1 mg', 'length')).toMatch(/“mg” is not understood/u);
  });

  it('has one meaning for each spelling', () => {
    for (const kind of KINDS)
      for (const family of QUANTITIES[kind].families)
        for (const unit of family.units)
          for (const name of [unit.symbol, ...unit.aliases]) expect(findUnit(kind, name)).toEqual({ family, unit });
  });
});
