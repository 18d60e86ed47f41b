/**
 * Drops onto a cushion, as scenarios: uneven box, ticks of 1/7300 s, rows at 997 Hz, let go off the tick.
 *
 * drop_cushion.json: the equations stated in it, in closed form where undamped, else by an adaptive Runge–Kutta solver (SciPy);
 * ten to twelve digits. R. D. Mindlin, "Dynamics of Package Cushioning", Bell System Technical Journal 24 (1945) 353–461,
 * part I (located; formulas from memory): peak 1 + √(1 + 2hk/W) g, contact (2/ω)(π − arctan(v₀ω/g)).
 */
import { describe, expect, it } from 'vitest';
import type { LiftOffEvent, RunEvent, TouchEvent } from '../../src/contract/event.ts';
import type { World } from '../../src/world/world.ts';
import { solve } from '../housing/reference-solver.ts';
import vectors from './drop_cushion.json' with { type: 'json' };
import { BOX, STANDARD_GRAVITY as G, highestPoint, lookAt, rowsOf, scenario, TICK_S } from './scenario-run.ts';

/** Off the tick and between rows. */
const LET_GO_S = 0.04321;
const UP = [0, 1, 0] as const;

function eventsOf<K extends RunEvent['kind']>(world: World, kind: K): Extract<RunEvent, { kind: K }>[] {
  return world.events.all.filter((event): event is Extract<RunEvent, { kind: K }> => event.kind === kind);
}

function drop(
  heightM: number,
  pad: object,
  parts: object = {},
): { elements: object[]; motions: object[]; duration: number } {
  return {
    elements: [],
    duration: 100,
    motions: [
      { from: 0, kind: 'held' },
      { from: LET_GO_S, kind: 'free', height: heightM, pad, ...parts },
    ],
  };
}

describe('drops with rebounds (drop_cushion.json)', () => {
  it.for(vectors.cases)(
    'from $h_m m onto a cushion of $cushion_hz Hz, ζ = $cushion_zeta: element, contacts, speeds',
    (c) => {
      const omega = 2 * Math.PI * c.cushion_hz;
      const pad = { stiffness: BOX.mass * omega * omega, damping: 2 * c.cushion_zeta * omega * BOX.mass };
      const element = { name: 'z', axis: UP, at: [0.03, 0.02, -0.07], naturalFrequency: c.f0_hz, dampingRatio: c.zeta };
      const run = scenario({ ...drop(c.h_m, pad), elements: [element] });
      const instants = c.x_m.map((_, k) => LET_GO_S + c.t0 + k * c.dt);
      const x: number[] = [];
      const reading: number[] = [];
      const world = lookAt(run, instants, ({ elements }) => {
        x.push(elements[0]!.deflection);
        reading.push(elements[0]!.reading);
      });
      // Scaled by the largest value: at the landings tens of g. Measured 4e-10 of it, the digits of the file; a row on a jump
      // of the force may see either side, which deflection does not feel.
      const largest = Math.max(...c.x_m.map(Math.abs));
      c.x_m.forEach((expected, k) => {
        expect(Math.abs(x[k]! - expected)).toBeLessThan(3e-8 * largest);
        const indicated = c.indicated_minus_w0sq_x_m_per_s2[k]!;
        expect(Math.abs(reading[k]! - indicated)).toBeLessThan(3e-8 * largest * (2 * Math.PI * c.f0_hz) ** 2);
      });

      const last = c.contacts.at(-1)!;
      world.runTo(LET_GO_S + last.t_touch_s + last.contact_s + 0.001);
      const touches = eventsOf(world, 'touch');
      const offs = eventsOf(world, 'lift-off');
      expect(offs.length).toBe(c.contacts.length);
      offs.forEach((off, i) => {
        const contact = c.contacts[i]!;
        const { landing } = off;
        const near = (found: number, expected: number): void =>
          expect(Math.abs(found / expected - 1)).toBeLessThan(3e-7);
        near(touches[i]!.timeS - LET_GO_S, contact.t_touch_s);
        near(-touches[i]!.verticalSpeedMS, contact.v_in_m_per_s);
        near(landing.contactS, contact.contact_s);
        near(landing.peakMS2 / G, contact.peak_f_over_g);
        near(landing.depthM, contact.max_compression_m);
        near(off.verticalSpeedMS, contact.v_out_m_per_s);
        near(landing.areaMS, contact.v_in_m_per_s + contact.v_out_m_per_s);
      });
    },
  );

  it.for(vectors.cases)('while falling from $h_m m the rows read exactly zero, and the fall takes √(2h/g)', (c) => {
    const run = scenario({
      ...drop(c.h_m, { stiffness: 5000 }),
      elements: [
        { name: 'z', axis: [0.6, 0.64, 0.48], at: [0.06, 0.03, 0.1], naturalFrequency: 20, dampingRatio: 0.1 },
      ],
      duration: LET_GO_S + c.t_fall_s + 0.01,
    });
    const rows = rowsOf(run);
    const felt = rows.column('z_specific_force_m_s2');
    let falling = 0;
    rows.column('time_s').forEach((timeS, k) => {
      if (timeS < LET_GO_S) expect(Math.abs(felt[k]! - 0.64 * G)).toBeLessThan(1e-14);
      else if (timeS < LET_GO_S + c.t_fall_s) {
        expect(felt[k]).toBe(0);
        falling += 1;
      } else expect(felt[k]).toBeGreaterThan(0);
    });
    expect(falling).toBeGreaterThan(60);
  });
});

describe('the worked drop of 0.3 m onto 20 kN/m', () => {
  const omega = Math.sqrt(20_000 / BOX.mass);
  const v = Math.sqrt(2 * G * 0.3);

  it('peaks at 1 + √(1 + 2hk/W) = 50.48 g after Mindlin, and the rows show it', () => {
    const elements = [{ name: 'z', axis: UP, naturalFrequency: 500, dampingRatio: 0.7 }];
    const run = { ...drop(0.3, { stiffness: 20_000 }), elements, duration: 0.4 };
    const world = lookAt(scenario(run), [0.4], () => {});
    const [{ landing }] = eventsOf(world, 'lift-off') as [LiftOffEvent];
    expect(landing.peakMS2 / G).toBeCloseTo(50.48, 2);
    expect(Math.abs(landing.peakMS2 / G / (1 + Math.sqrt(1 + (2 * 0.3 * 20_000) / (BOX.mass * G))) - 1)).toBeLessThan(
      1e-7,
    );
    expect(Math.abs(landing.contactS - (2 / omega) * (Math.PI - Math.atan((v * omega) / G)))).toBeLessThan(1e-9);
    // The half-sine approximation stands 2 % lower.
    expect(Math.sqrt((2 * 0.3 * 20_000) / (BOX.mass * G)) / (landing.peakMS2 / G)).toBeCloseTo(0.98, 2);
    const rows = rowsOf(scenario(run));
    // ½(ω·half a row)² below the peak at most.
    expect(Math.max(...rows.column('z_specific_force_m_s2'))).toBeGreaterThan(
      landing.peakMS2 * (1 - (omega / 997 / 2) ** 2 / 2),
    );
  });

  it('gives a twice as stiff element between 1 and 2 times the peak: the maximax of a half-sine, table of shock_spectrum.json', () => {
    // On the pad for half a period of 31.8 Hz; the element of 62.9 Hz has τ/T₀ = 0.99, maximax 1.73 less its start.
    const elements = [{ name: 'z', axis: UP, naturalFrequency: 62.9, dampingRatio: 0 }];
    const rows = rowsOf(
      scenario({ ...drop(0.3, { stiffness: 20_000 }), elements, record: { rate: 9970 }, duration: 0.35 }),
    );
    const w0 = 2 * Math.PI * 62.9;
    const peak = w0 * w0 * highestPoint(rows.column('z_deflection_m'), rows.column('z_velocity_m_s'), 1 / 9970);
    // The mass enters the landing ringing with ±1 g from the release: 1.73·50.5 ± 2 g.
    expect(peak / G).toBeGreaterThan(1.73 * 50.48 - 2);
    expect(peak / G).toBeLessThan(1.74 * 50.48 + 2);
  });
});

/** The box's long diagonal upright, one corner below: as a scenario says it. */
function onCorner(): { readonly axis: number[]; readonly angle: number } {
  const [x, y, z] = BOX.size;
  const length = Math.hypot(x, y, z);
  // The arm (−x, −y, −z)/2 turns to (0, −1, 0) about (−x, −y, −z) × (0, −1, 0) = (−z, 0, x).
  return { axis: [-z, 0, x], angle: Math.acos(y / length) };
}

describe('the peak of a landing, from the event record, at every tick', () => {
  const k = 1e5;
  const height = 0.3;
  const v = Math.sqrt(2 * G * height);

  /** Peak of the felt force by odex: y″ = g − ω²y − 2ζωy′ sampled on a fine grid while the pad pushes. */
  function peakOf(omega: number, zeta: number): number {
    const felt = (y: number, rate: number): number => omega * omega * y + 2 * zeta * omega * rate;
    let state = [0, v];
    let peak = felt(0, v);
    const step = 0.002 / omega;
    for (let i = 0; i < 2000; i += 1) {
      state = solve((_, [y, rate]) => [rate!, G - felt(y!, rate!)], 0, state, step);
      peak = Math.max(peak, felt(state[0]!, state[1]!));
    }
    return peak;
  }

  for (const zeta of [0, 0.15, 0.4]) {
    it.for([
      ['flat', { axis: UP, angle: 0 }, 1],
      ['on one corner', onCorner(), 4],
    ] as const)(`ζ = ${zeta}, %s`, ([, attitude, share]) => {
      // On one corner a quarter of the pad carries the box: ω and ζ are both halved.
      const peak = peakOf(Math.sqrt(k / BOX.mass / share), zeta / Math.sqrt(share));
      const pad = { stiffness: k, damping: 2 * zeta * Math.sqrt(k * BOX.mass) };
      for (const tick of [1e-3, TICK_S, 1e-4, 2e-5]) {
        const elements = [{ name: 'z', axis: UP, naturalFrequency: 100, dampingRatio: 0.7 }];
        const run = { ...drop(height, pad, { attitude }), elements, tick };
        const world = lookAt(scenario(run), [LET_GO_S + v / G + 0.03], () => {});
        const [touch] = eventsOf(world, 'touch') as [TouchEvent];
        expect(Math.abs(touch.timeS - LET_GO_S - v / G)).toBeLessThan(1e-12);
        // Asked for is 1 %; measured 2e-7.
        expect(Math.abs(eventsOf(world, 'lift-off')[0]!.landing.peakMS2 / peak - 1)).toBeLessThan(2e-6);
      }
    });
  }
});
