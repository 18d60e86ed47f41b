/** Against test/reference/step_characteristics.json and frequency_response.json, computed with NumPy and SciPy from the
 * textbook formulas of the damped oscillator (K. Ogata, Modern Control Engineering; S. S. Rao, Mechanical Vibrations; from memory). */
import { describe, expect, it } from 'vitest';
import response from '../reference/frequency_response.json' with { type: 'json' };
import step from '../reference/step_characteristics.json' with { type: 'json' };
import { drive, newElement, stateAt, tickOnce } from './drive.ts';

const OMEGA = 20 * Math.PI;

/** Share of its final reading that an element at rest reads a time t after a step of the force. */
function stepReading(zeta: number, phase: number): number {
  const t = phase / OMEGA;
  const element = newElement({ dampingRatio: zeta, start: { deflection: 0, velocity: 0 } }, t);
  element.settle(0, 0);
  tickOnce(element, 0, t, () => 8);
  return stateAt(element, t).reading / 8;
}

describe('after a step', () => {
  for (const row of step.rows) {
    it(`ζ = ${row.zeta}: overshoot, its time, 2 % and 5 % settling are those of the textbook`, () => {
      const { zeta } = row;
      if (zeta < 1) {
        // At the peak the reading is flat, so its rounded time does not matter.
        const peak = stepReading(zeta, row.peak_time_x_w0!);
        expect(Math.abs(100 * (peak - 1) - row.percent_overshoot!)).toBeLessThan(1e-9);
      }
      // Given to 10 digits; the reading changes by at most 1 per ω₀t.
      for (const [share, time] of [
        [0.02, row.settling_time_2pc_x_w0],
        [0.05, row.settling_time_5pc_x_w0],
      ] as const)
        expect(Math.abs(Math.abs(stepReading(zeta, time) - 1) - share)).toBeLessThan(1e-9 * time);
    });
  }
});

describe('under a sine', () => {
  for (const zeta of new Set(response.rows.map((row) => row[0]!))) {
    it(`ζ = ${zeta}: started on its steady swing it stays on it, with the gain and the lag of the textbook`, () => {
      for (const [, r, gain, phaseDeg] of response.rows.filter((row) => row[0] === zeta) as [
        number,
        number,
        number,
        number,
      ][]) {
        const drivenAt = r * OMEGA;
        const lag = (phaseDeg * Math.PI) / 180;
        const amplitude = (-5 * gain) / (OMEGA * OMEGA);
        const spec = {
          dampingRatio: zeta,
          start: { deflection: amplitude * Math.sin(lag), velocity: amplitude * drivenAt * Math.cos(lag) },
        };
        // As a force, the parabola's error is ((Ωh)⁴/720 + (Ωh)⁴/2880) of the sine's, 5.1e-11 here, as long as ωh is small too.
        const h = (2 * Math.PI) / 480 / Math.max(drivenAt, OMEGA);
        const element = newElement(spec, h);
        const ticks = 517;
        drive(element, ticks, h, (t) => 5 * Math.sin(drivenAt * t));
        const exact = amplitude * Math.sin(drivenAt * ticks * h + lag);
        // It rings in by that error, 1/(2ζ)-fold at most, against a swing that may be small; figures have 12 digits.
        const tolerance = (5.1e-11 * Math.max(1, 1 / (2 * zeta))) / Math.min(1, gain) + 1e-11;
        expect(Math.abs(stateAt(element, h).deflection - exact) / Math.abs(amplitude)).toBeLessThan(tolerance);
      }
    });
  }
});
