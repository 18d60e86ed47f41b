import { expect, it } from 'vitest';
import { rowWriter, sampleLine } from '../../src/scenario/csv.ts';
import { elementSpec, runSpec } from '../support/run-spec.ts';
import { chance } from './support/chance.ts';

const run = runSpec({ elements: [elementSpec({ name: 'a' }), elementSpec({ name: 'b', readout: { rate: 10 } })] });

it('the header names every column with its unit, the read-out only where there is one', () => {
  expect(rowWriter(run).header).toBe(
    'time_s,px_m,py_m,pz_m,a_specific_force_m_s2,a_deflection_m,a_velocity_m_s,b_specific_force_m_s2,b_deflection_m,b_velocity_m_s,b_reported_g,b_sample_time_s\n',
  );
});

it('a row has 17 significant digits, and nothing where there is no sample yet', () => {
  const values = Float64Array.of(0.1, 0, -1 / 3, 1e-9, 9.80665, 2 ** 60, 1, -1e-300, 5, 6, Number.NaN, Number.NaN);
  const fields = rowWriter(run).row(values).trimEnd().split(',');
  expect(fields.slice(0, 4)).toEqual([
    '0.10000000000000001',
    '0.0000000000000000',
    '-0.33333333333333331',
    '1.0000000000000001e-9',
  ]);
  expect(fields.slice(10)).toEqual(['', '']);
  for (const field of fields.slice(0, 10))
    expect(
      field
        .replace(/e.*/, '')
        .replace(/^-?0\.0*(?=[1-9])/, '')
        .replace(/[-.]/g, ''),
    ).toMatch(/^\d{17}$/);
});

// IEEE 754-2019, 5.12.2: 17 significant decimal digits give every binary64 back.
it('every written number reads back as the same double (10 000 of seed 3)', () => {
  const random = chance(3);
  for (let n = 0; n < 10_000; n++) {
    const value = (random.unit() - 0.5) * 2 ** random.whole(-300, 300);
    expect(Number(sampleLine('a', value, 1).split(',')[1])).toBe(value);
  }
});

it('a value that is not finite is not written', () => {
  const values = new Float64Array(12).fill(1);
  values[5] = Number.NaN;
  expect(() => rowWriter(run).row(values)).toThrow('a_deflection_m is NaN at 1 s: the run has left the finite numbers');
});
