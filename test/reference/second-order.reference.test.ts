/**
 * The figures by which a second-order system is known, measured at runs: steps, sine shakes in their steady state,
 * ring-downs. Tables computed with NumPy from the closed forms stated in them: step_characteristics.json,
 * frequency_response.json, ring_down.json.
 */
import { describe, expect, it } from 'vitest';
import frequency from './frequency_response.json' with { type: 'json' };
import ringDown from './ring_down.json' with { type: 'json' };
import { highestPoint, type Rows, rowsOf, scenario, worstShare } from './scenario-run.ts';
import steps from './step_characteristics.json' with { type: 'json' };

const X = [1, 0, 0] as const;
const F0 = 10;
const W0 = 2 * Math.PI * F0;

describe('a step of acceleration', () => {
  const A = 5;
  const RATE = 4999;
  /** Row at which the push begins; off the tick. */
  const LEAD = 36;
  const table = steps.rows.filter(({ zeta }) => zeta >= 0.05);
  const elements = table.map(({ zeta }, i) => ({ name: `e${i}`, axis: X, naturalFrequency: F0, dampingRatio: zeta }));
  const motions = [
    { kind: 'held', from: 0 },
    { kind: 'push', from: LEAD / RATE, axis: X, acceleration: A, within: 0 },
  ];
  let rows: Rows;
  /** −ω₀²x/A and its slope from the step on. */
  function response(i: number): { readonly y: Float64Array; readonly slope: Float64Array } {
    rows ??= rowsOf(scenario({ duration: 1.6, record: { rate: RATE }, elements, motions }));
    const scaled = (column: string) =>
      rows
        .column(column)
        .slice(LEAD)
        .map((value) => (-W0 * W0 * value) / A);
    return { y: scaled(`e${i}_deflection_m`), slope: scaled(`e${i}_velocity_m_s`) };
  }
  /** Instant of the last crossing (first if `first`) of a level, by the cubic between rows, times ω₀. */
  function crossing({ y, slope }: { y: Float64Array; slope: Float64Array }, level: number, first = true): number {
    const d = 1 / RATE;
    const indices = [...y.keys()].slice(1).filter((i) => (y[i - 1]! - level) * (y[i]! - level) < 0);
    const i = first ? indices[0]! : indices.at(-1)!;
    const cubic = (u: number): number =>
      y[i - 1]! * (1 + 2 * u) * (1 - u) ** 2 +
      slope[i - 1]! * d * u * (1 - u) ** 2 +
      y[i]! * u * u * (3 - 2 * u) +
      slope[i]! * d * u * u * (u - 1);
    let low = 0;
    let high = 1;
    for (let k = 0; k < 50; k += 1) {
      const middle = (low + high) / 2;
      if ((cubic(middle) - level) * (y[i - 1]! - level) > 0) low = middle;
      else high = middle;
    }
    return (i - 1 + low) * d * W0;
  }

  // K. Ogata, Modern Control Engineering, chapter on transient response (from memory); rows are ω₀d = 0.0126 apart, so
  // the cubic between them errs by (ω₀d)⁴/384 = 7e-11 of the step; the table has ten digits.
  it('overshoots by 100·exp(−πζ/√(1 − ζ²)) per cent: 16.30 % at ζ 0.5, 4.599 % at 0.7', () => {
    table.forEach(({ zeta, percent_overshoot }, i) => {
      const { y, slope } = response(i);
      const overshoot = zeta < 1 ? highestPoint(y, slope, 1 / RATE) - 1 : Math.max(0, ...y) - 1;
      if (zeta < 1) expect(Math.abs(overshoot - percent_overshoot! / 100)).toBeLessThan(2e-10);
      else expect(overshoot).toBeLessThan(1e-14);
    });
  });

  it('peaks after π/(ω₀√(1 − ζ²))', () => {
    table.forEach(({ zeta, peak_time_x_w0 }, i) => {
      if (zeta >= 1) return;
      const { slope } = response(i);
      const k = slope.findIndex((value, index) => index > 0 && value < 0);
      const share = slope[k - 1]! / (slope[k - 1]! - slope[k]!);
      // At the peak v″ = −2ζω₀v′, so the chord's crossing errs by d²/8·2ζω₀ at most.
      expect(Math.abs(((k - 1 + share) / RATE) * W0 - peak_time_x_w0!)).toBeLessThan((zeta * (W0 / RATE) ** 2) / 4);
    });
  });

  it('rises from 10 to 90 % and settles within 2 and 5 % in the times of the table', () => {
    table.forEach((row, i) => {
      const line = response(i);
      const rise = crossing(line, 0.9) - crossing(line, 0.1);
      expect(Math.abs(rise - row.rise_time_10_90_x_w0)).toBeLessThan(1e-8);
      for (const [band, time] of [
        [0.02, row.settling_time_2pc_x_w0],
        [0.05, row.settling_time_5pc_x_w0],
      ] as const) {
        if (time > 1.5 * W0) continue; // not settled within the run
        const last = Math.max(
          ...[1 - band, 1 + band].map((level) => {
            const value = crossing(line, level, false);
            return Number.isNaN(value) ? 0 : value;
          }),
        );
        expect(Math.abs(last - time)).toBeLessThan(1e-7);
      }
    });
  });
});

describe('a sine shake in its steady state (frequency_response.json)', () => {
  const A = 3;
  const PER_PERIOD = 64;
  const elementsOf = (zetas: readonly number[]) =>
    zetas.map((zeta, i) => ({ name: `e${i}`, axis: X, naturalFrequency: F0, dampingRatio: zeta }));
  const zetas = [...new Set(frequency.rows.map(([zeta]) => zeta!))];
  const ratios = [...new Set(frequency.rows.map(([, ratio]) => ratio!))];

  /** Amplitude and phase against sin Ωt since the shake began, over whole periods at the end of a run. */
  function fitted(
    values: Float64Array,
    omega: number,
    step: number,
  ): { readonly amplitude: number; readonly phase: number } {
    let inPhase = 0;
    let ahead = 0;
    const first = values.length - PER_PERIOD;
    for (let k = first; k < values.length; k += 1) {
      inPhase += values[k]! * Math.sin(omega * k * step);
      ahead += values[k]! * Math.cos(omega * k * step);
    }
    return { amplitude: (2 * Math.hypot(inPhase, ahead)) / PER_PERIOD, phase: Math.atan2(ahead, inPhase) };
  }

  it.for(ratios)(
    'at %d of the natural frequency has the gain and the phase of the table at every damping ratio',
    (ratio) => {
      const table = zetas.map((zeta) => frequency.rows.find(([z, r]) => z === zeta && r === ratio)!);
      const drive = ratio * F0;
      const period = 1 / drive;
      // Until the free swing has died to 1e-7 of what it was. That takes 40 s for ζ = 0.01, which is looked at near resonance.
      const least = Math.abs(ratio - 1) <= 0.1 ? 0.01 : 0.05;
      const transient = Math.max(4 * period, Math.log(1e7) / (W0 * least));
      const periods = Math.ceil(transient / period) + 5;
      const lead = 3;
      const rows = rowsOf(
        scenario({
          duration: (lead + periods * PER_PERIOD) / (drive * PER_PERIOD),
          // 61 ticks to a period of the shake: the parabola over a tick misses its area by (Ωh)⁴/2880 = 4e-8.
          tick: Math.min(period / 61.3, 0.05),
          record: { rate: drive * PER_PERIOD },
          elements: elementsOf(zetas),
          motions: [
            { kind: 'held', from: 0 },
            { kind: 'shake', from: (lead * period) / PER_PERIOD, axis: X, sine: { frequency: drive, amplitude: A } },
          ],
        }),
      );
      const omega = 2 * Math.PI * drive;
      const step = period / PER_PERIOD;
      const force = fitted(rows.column('e0_specific_force_m_s2').slice(lead), omega, step);
      // What is applied is A sin Ωt, counted from the beginning of the shake.
      expect(Math.abs(force.amplitude / A - 1)).toBeLessThan(1e-12);
      expect(Math.abs(force.phase)).toBeLessThan(1e-12);
      table.forEach(([zeta, , gain, phaseDegrees], i) => {
        if (zeta! < least) return;
        const found = fitted(
          rows
            .column(`e${i}_deflection_m`)
            .slice(lead)
            .map((x) => -W0 * W0 * x),
          omega,
          step,
        );
        expect(Math.abs(found.amplitude / A / gain! - 1)).toBeLessThan(1e-6);
        const degrees = (found.phase * 180) / Math.PI;
        expect(Math.abs(degrees - phaseDegrees! + (degrees - phaseDegrees! > 180 ? -360 : 0))).toBeLessThan(1e-4);
      });
    },
  );
});

describe('a ring-down (ring_down.json)', () => {
  it.for(ringDown.linear.cases)('at $f0_hz Hz and ζ = $zeta follows the record and its logarithmic decrement', (c) => {
    const rows = rowsOf(
      scenario({
        duration: (c.n - 1) / c.fs_hz,
        record: { rate: c.fs_hz },
        elements: [
          { name: 'e', axis: X, naturalFrequency: c.f0_hz, dampingRatio: c.zeta, start: { deflection: c.x0 } },
        ],
        motions: [{ kind: 'held', from: 0 }],
      }),
    );
    const x = rows.column('e_deflection_m');
    expect(worstShare(x, c.clean)).toBeLessThan(2e-11);
    // S. S. Rao, Mechanical Vibrations, free damped vibration (from memory): δ = 2πζ/√(1 − ζ²)
    expect(Math.abs(c.log_decrement - (2 * Math.PI * c.zeta) / Math.sqrt(1 - c.zeta ** 2))).toBeLessThan(1e-11);
    const v = rows.column('e_velocity_m_s');
    const perPeriod = c.fs_hz / c.fd_hz;
    const heights = [1, 2].map((period) => {
      const around = (array: Float64Array) =>
        array.slice(Math.floor((period - 0.25) * perPeriod), Math.ceil((period + 0.25) * perPeriod) + 1);
      return highestPoint(around(x), around(v), 1 / c.fs_hz);
    });
    // Cubics between rows 0.13 to 0.25 rad apart err by (ωd)⁴/384 at most.
    expect(Math.abs(Math.log(heights[0]! / heights[1]!) - c.log_decrement)).toBeLessThan(
      ((2 * Math.PI) / perPeriod) ** 4 / 384,
    );
  });

  it.for(ringDown.duffing.cases)(
    'on a hardening spring, κx₀²/ω₀² = $hardening_k3_x0_squared_over_w0_squared and ζ = $zeta, follows the record',
    (c) => {
      const rows = rowsOf(
        scenario({
          duration: (c.n - 1) * c.dt,
          record: { rate: 1 / c.dt },
          elements: [
            {
              name: 'e',
              axis: X,
              naturalFrequency: c.f0_hz,
              dampingRatio: c.zeta,
              cubicStiffness: c.k3_over_m_per_m2_s2,
              start: { deflection: c.x0_m },
            },
          ],
          motions: [{ kind: 'held', from: 0 }],
        }),
      );
      // The vectors' own integration keeps its energy to 3e-12, their phase after 8 periods to a few 1e-10.
      expect(worstShare(rows.column('e_deflection_m'), c.x_m)).toBeLessThan(1e-9);
      expect(worstShare(rows.column('e_velocity_m_s'), c.v_m_per_s)).toBeLessThan(1e-9);
    },
  );

  // A. H. Nayfeh, D. T. Mook, Nonlinear Oscillations, Duffing's equation (from memory): T = 4K(m)/√(ω₀² + κA²)
  it.for(ringDown.duffing.cases.filter(({ period_exact_s }) => period_exact_s !== undefined))(
    'undamped on a hardening spring swings in $period_exact_s s',
    (c) => {
      const rows = rowsOf(
        scenario({
          duration: 20.1 * c.period_exact_s!,
          record: { rate: 997 },
          elements: [
            {
              name: 'e',
              axis: X,
              naturalFrequency: c.f0_hz,
              dampingRatio: 0,
              cubicStiffness: c.k3_over_m_per_m2_s2,
              start: { deflection: c.x0_m },
            },
          ],
          motions: [{ kind: 'held', from: 0 }],
        }),
      );
      const v = rows.column('e_velocity_m_s');
      const turns = [...v.keys()].slice(2).filter((i) => v[i - 1]! > 0 && v[i]! <= 0);
      const instants = turns.map((i) => (i - 1 + v[i - 1]! / (v[i - 1]! - v[i]!)) / 997);
      const period = (instants[19]! - instants[0]!) / 19;
      // The chord between rows errs by no more than (ωd)²/8 of a row, 6e-9 s, at either end of 19 periods.
      expect(Math.abs(period / c.period_exact_s! - 1)).toBeLessThan(5e-8);
    },
  );
});
