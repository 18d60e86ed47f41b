import { describe, expect, it } from 'vitest';
import { exactText, quantityText, readField, splitQuantity } from '../../src/units/quantity-text.ts';
import { G_N } from '../../src/units/standard-gravity.ts';

const SPACE = '\u00a0';

describe('quantities as the page prints them', () => {
  it.each([
    [0.025, 'mass', undefined, `25.0${SPACE}g`],
    [0.4, 'length', undefined, `0.400${SPACE}m`],
    [0.00379, 'length', undefined, `3.79${SPACE}mm`],
    [0.286, 'time', undefined, `0.286${SPACE}s`],
    [0.0195, 'time', undefined, `19.5${SPACE}ms`],
    [1.25, 'time', undefined, `1.25${SPACE}s`],
    [-0.84 * G_N, 'acceleration', 'g', `\u22120.840${SPACE}g`],
    [0.02 * G_N, 'acceleration', 'g', `0.0200${SPACE}g`],
    [0.001 * G_N, 'acceleration', 'g', `1.00${SPACE}mg`],
    [33 * G_N, 'acceleration', 'g', `33.0${SPACE}g`],
    [9.81, 'acceleration', undefined, `9.81${SPACE}m/s²`],
    [Math.PI / 6, 'angle', undefined, '30.0°'],
    [0.118, 'dimensionless', undefined, '0.118'],
  ] as const)('%f as %s (%s) is “%s”', (value, kind, unit, text) => {
    expect(quantityText(value, kind, unit)).toBe(text);
  });

  it('prints what is exact without idle noughts', () => {
    expect(exactText(0.005, 'mass')).toBe(`5${SPACE}g`);
    expect(exactText(0.1, 'mass')).toBe(`100${SPACE}g`);
    expect(exactText(20_000, 'frequency')).toBe(`20${SPACE}kHz`);
    expect(exactText(1.2, 'dimensionless')).toBe('1.2');
    expect(exactText(0.02, 'percent')).toBe(`2${SPACE}%`);
    expect(exactText(0.05, 'length')).toBe(`50${SPACE}mm`);
  });

  it('parts the number from its unit, not from its own thousands', () => {
    expect(splitQuantity(`25.0${SPACE}g`)).toEqual({ number: '25.0', unit: 'g' });
    expect(splitQuantity('30.0°')).toEqual({ number: '30.0', unit: '°' });
    expect(splitQuantity('0.118')).toEqual({ number: '0.118', unit: '' });
    expect(splitQuantity('123\u202f000')).toEqual({ number: '123\u202f000', unit: '' });
  });
});

describe('a field', () => {
  const mass = { label: 'mass', kind: 'mass', low: 0.005, high: 0.1 } as const;

  it('takes the unit that is typed, and the one that is shown when none is', () => {
    expect(readField('50 g', mass, 'g')).toEqual({ value: 0.05 });
    expect(readField('0,05 kg', mass, 'g')).toEqual({ value: 0.05 });
    expect(readField('50', mass, 'g')).toEqual({ value: 0.05 });
  });

  it('takes its ends', () => {
    expect(readField('5 g', mass, 'g')).toEqual({ value: 0.005 });
    expect(readField('100 g', mass, 'g')).toEqual({ value: 0.1 });
  });

  it('says what it found and what is allowed when it refuses', () => {
    expect(readField('300 g', mass, 'g')).toEqual({
      reason: `Mass lies between 5${SPACE}g and 100${SPACE}g here; 300${SPACE}g is too much.`,
    });
    const little = readField('50 mg', { ...mass, limitReason: 'A lighter one is moved by the air.' }, 'g');
    expect('reason' in little && little.reason).toMatch(
      /50\.0.mg is too little\. A lighter one is moved by the air\.$/u,
    );
    expect(readField('two', mass, 'g')).toHaveProperty('reason');
    expect(readField('5 m', mass, 'g')).toHaveProperty('reason');
  });

  it('reads again what it printed, within the rounding to three digits', () => {
    for (const value of [0.00512, 0.0249, 0.0999]) {
      const { unit } = splitQuantity(quantityText(value, 'mass'));
      const read = readField(quantityText(value, 'mass'), mass, unit);
      expect('value' in read && Math.abs(read.value - value) / value).toBeLessThanOrEqual(0.005);
    }
  });
});
