/** The random shake's strength and what an element makes of it. All with seed 5. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Rows, rowsOf, scenario } from './scenario-run.ts';

const X = [1, 0, 0] as const;
const meanSquare = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value * value, 0) / values.length;

describe('a random shake of one-sided density S from f₁ to f₂', () => {
  const random = { density: 0.07, from: 5, to: 133 };
  const band = random.to - random.from;
  /** Its 1024 sines fit whole half periods into this span [s]. */
  const span = 1024 / band;
  const rate = 997;
  const zeta = 0.05;
  const f0 = 30;
  let rows: Rows;
  beforeAll(() => {
    rows = rowsOf(
      scenario({
        seed: 5,
        duration: 1 + span,
        record: { rate },
        elements: [{ name: 'e', axis: X, naturalFrequency: f0, dampingRatio: zeta }],
        motions: [{ kind: 'shake', from: 0, axis: X, random }],
      }),
    );
  });
  const first = Math.ceil(1 * rate);
  const count = Math.round(span * rate);

  it('has the mean square S·(f₂ − f₁) over every span of its own period', () => {
    // Parseval: the sines are orthogonal over the span, which the rows miss by less than one of 7976.
    const f = rows.column('e_specific_force_m_s2').slice(first, first + count);
    expect(Math.abs(meanSquare(f) / (random.density * band) - 1)).toBeLessThan(1e-3);
  });

  it('makes a lightly damped element tremble by √(πf₀QS/2) in indicated acceleration', () => {
    // J. W. Miles, "On structural fatigue under random loading", J. Aeronautical Sciences 21 (1954) 753 (from memory): for an
    // infinite band. Of it 5 … 133 Hz leave out below 2 % here, and the bins of ⅛ Hz are far narrower than the resonance of 3 Hz.
    const w0 = 2 * Math.PI * f0;
    const reading = rows
      .column('e_deflection_m')
      .slice(first, first + count)
      .map((x) => w0 * w0 * x);
    const miles = (Math.PI / 2) * f0 * (1 / (2 * zeta)) * random.density;
    expect(Math.abs(meanSquare(reading) / miles - 1)).toBeLessThan(0.03);
  });
});
