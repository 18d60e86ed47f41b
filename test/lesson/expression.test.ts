import { describe, expect, it } from 'vitest';
import { ExpressionFault, parseExpression } from '../../src/lesson/expression.ts';

const KNOWN: Readonly<Record<string, number>> = { height: 0.4, gravity: 9.80665, answer: 9, zero: 0 };
const value = (text: string): number => parseExpression(text).value((name) => KNOWN[name] ?? Number.NaN);

describe('formulas', () => {
  it.each([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['10 - 4 - 3', 3],
    ['16 / 4 / 2', 2],
    ['-2 * -3', 6],
    ['2 − 5', -3],
    ['1.5e-3', 0.0015],
    ['sqrt(2 * height / gravity)', Math.sqrt(0.8 / 9.80665)],
    ['abs(-3) + min(1, 2) + max(1, 2)', 6],
    ['exp(ln(7))', 7],
    ['2 * pi', 2 * Math.PI],
    // Units: g_n = 9.80665 m/s² exactly (3rd CGPM, 1901); ° and % by their definitions.
    ['1 g', 9.80665],
    ['g', 9.80665],
    ['50 mg', 0.4903325],
    ['9.8 m/s²', 9.8],
    ['30 ms', 0.03],
    ['5 cm', 0.05],
    ['8 Hz', 8],
    ['3 m/s', 3],
    ['90 °', Math.PI / 2],
    ['5 %', 0.05],
    ['5 % * gravity', 0.05 * 9.80665],
    ['2 / 4 s', 0.5],
    // Comparisons.
    ['1 < 2', 1],
    ['2 <= 2', 1],
    ['2 < 2', 0],
    ['3 > 4', 0],
    ['3 >= 4', 0],
    ['answer > 0.9 g and answer < 1.1 g', 1],
    ['answer < 0.9 g or answer > 1.1 g', 0],
    ['1 > 2 and 1 < 2 or 1 < 2', 1],
    ['1 < 2 or 1 > 2 and 1 > 2', 1],
    ['(1 < 2 or 1 > 2) and 1 > 2', 0],
  ])('%s = %d', (text, expected) => {
    expect(Math.abs(value(text) - expected)).toBeLessThanOrEqual(4e-16 * Math.max(1, Math.abs(expected)));
  });

  it('tell the names that they ask for, constants and functions apart', () => {
    expect(parseExpression('sqrt(2 * height / gravity) + pi * g + height').names).toEqual(['height', 'gravity']);
  });

  it('what is not known is not a number, and no comparison with it holds', () => {
    expect(value('unknown + 1')).toBeNaN();
    for (const text of ['unknown < 1', 'unknown > 1', 'unknown <= 1', 'unknown >= 1']) expect(value(text)).toBe(0);
  });

  it.each([
    ['', 'an empty formula'],
    ['1 +', 'breaks off'],
    ['(1 + 2', '“)” missing'],
    ['1 2', '“2”'],
    ['3 furlongs', 'no unit'],
    ['sqrt 2', '“(” missing'],
    ['sqrt(1, 2)', 'sqrt of 2 values; it takes 1'],
    ['min(1)', 'min of 1 values; it takes 2'],
    ['1 ; 2', 'no part of a formula'],
    ['constructor("x")', 'no part of a formula'],
    ['a.b', 'no part of a formula'],
    ['a = 1', 'no part of a formula'],
    ['1 < 2 < 3', '“<”'],
    ['and 1', '“and” where a number or a name should stand'],
  ])('%j is refused: %s', (text, reason) => {
    expect(() => parseExpression(text)).toThrow(ExpressionFault);
    expect(() => parseExpression(text)).toThrow(reason);
  });

  it('a name of the language is a name like any other', () => {
    expect(parseExpression('constructor + toString').names).toEqual(['constructor', 'toString']);
  });
});
