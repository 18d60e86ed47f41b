import { describe, expect, it } from 'vitest';
import { KINDS, printed, usual } from '../../src/lesson/quantity.ts';
import { parseQuantity } from '../../src/units/parse.ts';

describe('a number of a lesson is printed in its own unit', () => {
  it.each([
    [0.1, usual('acceleration'), '0.010 g'],
    [9.80665, usual('acceleration'), '1.00 g'],
    [0.99995 * 9.80665, usual('acceleration'), '1.00 g'],
    [-0.8542 * 9.80665, usual('acceleration'), '−0.854 g'],
    [-1e-9, usual('acceleration'), '0.000 g'],
    [0, usual('acceleration'), '0.000 g'],
    [0.0323, usual('time', 'ms'), '32.3 ms'],
    [0.0323, usual('time'), '0.032 s'],
    [0.601, usual('time', 'ms'), '601 ms'],
    [8000, usual('stiffness'), '8000 N/m'],
    [Math.PI / 2, usual('angle'), '90.0°'],
    [0.7299, usual('percent'), '73.0 %'],
    [5, usual('dimensionless'), '5.00'],
    [9.995, usual('dimensionless'), '9.99'],
    [9.996, usual('dimensionless'), '10.0'],
    [undefined, usual('time'), '—'],
    [Number.NaN, usual('time'), '—'],
    [Number.POSITIVE_INFINITY, usual('time'), 'never'],
  ])('%d → %j', (value, quantity, text) => {
    expect(printed(value, quantity).replaceAll('\u202f', ' ')).toBe(text);
  });

  it.each(KINDS)('and read back again: %s', (kind) => {
    const text = printed(300, usual(kind));
    const parsed = parseQuantity(text, kind);
    expect('value' in parsed).toBe(true);
    if ('value' in parsed) expect(Math.abs(parsed.value / 300 - 1)).toBeLessThan(5e-3);
  });
});
