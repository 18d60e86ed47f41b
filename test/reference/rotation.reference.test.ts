/**
 * Elements mounted off the centre of rotation, in runs. rotation_offset.json: computed with NumPy from f = a + α × r + ω × (ω × r) − g
 * written out in components, and with an adaptive Runge–Kutta solver (SciPy) for the elements; twelve digits.
 */
import { describe, expect, it } from 'vitest';
import type { ElementSpec } from '../../src/contract/run.ts';
import { Element, type ElementState } from '../../src/element/element.ts';
import { solve } from '../housing/reference-solver.ts';
import { elementSpec } from '../support/run-spec.ts';
import vectors from './rotation_offset.json' with { type: 'json' };
import { STANDARD_GRAVITY as G, lookAt, rowsOf, scenario, TICK_S, worstShare } from './scenario-run.ts';

/** Largest slope of S, 30u²(1 − u)² at u = ½; there S = ½. */
const STEEPEST = 1.875;

const radial = { name: 'radial', axis: [1, 0, 0] };
const tangential = { name: 'tangential', axis: [0, 0, -1] }; // right-handed about +y: x moves toward −z
const upright = { name: 'upright', axis: [0, 1, 0] };

const mounted = (at: readonly number[]) =>
  [radial, tangential, upright].map((element) => ({ ...element, at, naturalFrequency: 30, dampingRatio: 0.7 }));

describe('a housing spun about the vertical', () => {
  it.for(vectors.spin_about_vertical.cases)(
    'feels at r = $r_m m with ω = $omega_rad_s rad/s and α = $alpha_rad_s2 rad/s² what the table says',
    ({ r_m: r, omega_rad_s: omega, alpha_rad_s2: alpha, f_body_m_per_s2: felt }) => {
      const spin = { kind: 'spin', axis: [0, 3, 0] };
      // At half of an easing to (or from) 2ω both ω and the steepest α stand at once.
      const within = alpha === 0 ? 0.3 : (2 * omega * STEEPEST) / Math.abs(alpha);
      const motions =
        alpha === 0
          ? [{ ...spin, from: 0, rate: omega, within }]
          : alpha > 0
            ? [{ ...spin, from: 0, rate: 2 * omega, within }]
            : [
                { ...spin, from: 0, rate: 2 * omega, within: 0.1 },
                { ...spin, from: 0.1003, rate: 0, within },
              ];
      const instant = alpha === 0 ? 0.3777 : motions.at(-1)!.from + within / 2;
      const run = scenario({ duration: 20, tick: 0.00337, elements: mounted([r, 0, 0]), motions });
      lookAt(run, [instant], ({ elements }) => {
        elements.forEach(({ specificForce }, i) => {
          // ω²r of 99 m/s² to rounding of the easing's argument.
          expect(Math.abs(specificForce - felt[i]!)).toBeLessThan(2e-10);
        });
      });
    },
  );
});

describe('a housing spun about a horizontal axis', () => {
  it('feels −ω²r + g sin θ outward and g cos θ along the circle at every angle of the table', () => {
    const { r_m: r, omega_rad_s: omega, rows } = vectors.spin_about_horizontal;
    const within = 0.1;
    const element = { at: [r, 0, 0], naturalFrequency: 30, dampingRatio: 0.7 };
    const elements = [
      { ...element, name: 'outward', axis: [1, 0, 0] },
      { ...element, name: 'along', axis: [0, 1, 0] },
    ];
    const motions = [
      { kind: 'held', from: 0 },
      { kind: 'spin', from: 0.01234, axis: [0, 0, 1], rate: omega, within },
    ];
    // By t the arm along x has turned by ω(t − within/2).
    const instants = rows.map(([degrees]) => 0.01234 + within / 2 + ((degrees! + 360) / 180) * (Math.PI / omega));
    lookAt(scenario({ duration: 4, elements, motions }), instants, (snapshot, i) => {
      const [, outward, along] = rows[i]!;
      expect(Math.abs(snapshot.elements[0]!.specificForce - outward!)).toBeLessThan(1e-10);
      expect(Math.abs(snapshot.elements[1]!.specificForce - along!)).toBeLessThan(1e-10);
    });
  });
});

describe('a housing turned about one room axis after another', () => {
  // R = R_z(θ)·R_x(φ), any text on rotations: gravity stands in the housing along Rᵀ(0, 1, 0) = (sin θ, cos θ cos φ, −cos θ sin φ).
  it('carries gravity to the axes where the product of the turns puts it', () => {
    const phi = 0.9;
    const rate = 1.3;
    const element = { naturalFrequency: 30, dampingRatio: 0.7 };
    const elements = [
      { ...element, name: 'x', axis: [1, 0, 0] },
      { ...element, name: 'y', axis: [0, 1, 0] },
      { ...element, name: 'z', axis: [0, 0, 1] },
    ];
    const motions = [
      { kind: 'tilt', from: 0, to: { axis: [1, 0, 0], angle: phi }, over: 0.31 },
      { kind: 'spin', from: 0.4003, axis: [0, 0, 1], rate, within: 0.2 },
    ];
    lookAt(
      scenario({ duration: 3, elements, motions }),
      [0.9, 2.1].map((t) => 0.4003 + t),
      ({ timeS, elements: seen }) => {
        const theta = rate * (timeS - 0.4003 - 0.1);
        const up = [Math.sin(theta), Math.cos(theta) * Math.cos(phi), -Math.cos(theta) * Math.sin(phi)];
        seen.forEach(({ specificForce }, i) => expect(Math.abs(specificForce - G * up[i]!)).toBeLessThan(1e-12 * G));
      },
    );
  });
});

/** Takes an element through a specific force and a spin ω⊥² given as functions of time; x at equal instants from 0. */
function drive(
  changed: Partial<ElementSpec>,
  force: (timeS: number) => number,
  spinSquared: (timeS: number) => number,
  stepS: number,
  count: number,
): number[] {
  // The parabola over a tick errs as h⁴.
  const tickS = TICK_S / 4;
  const element = new Element(elementSpec(changed), { seed: 1, index: 0, temperatureK: 293.15, tickS });
  element.settle(0, 0);
  const state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
  const found = [0];
  for (let tick = 0; found.length < count; tick += 1) {
    const t0 = tick * tickS;
    element.beginTick(tick);
    const middle = t0 + tickS / 2;
    const end = t0 + tickS;
    element.advance(
      0,
      tickS,
      force(t0),
      force(middle),
      force(end),
      spinSquared(t0),
      spinSquared(middle),
      spinSquared(end),
    );
    element.endTick();
    while (found.length < count && found.length * stepS <= end) {
      element.at(found.length * stepS - t0, state);
      found.push(state.deflection);
    }
  }
  return found;
}

const still = () => 0;

describe('an element that points outward while the spin grows as ω = αt', () => {
  it.for(vectors.spin_up_radial_element.cases)('of $f0_hz Hz, ζ = $zeta, at $r_m m, α = $alpha_rad_s2 rad/s²', (c) => {
    const spinSquared = (t: number): number => (c.alpha_rad_s2 * t) ** 2;
    const force = (t: number): number => -spinSquared(t) * c.r_m;
    const spec = { naturalFrequency: c.f0_hz, dampingRatio: c.zeta };
    const fixed = drive(spec, force, still, c.dt, c.n);
    expect(worstShare(fixed, c.x_m_field_at_rest_point)).toBeLessThan(1e-9);
    const moving = drive({ ...spec, fieldAtMass: true }, force, spinSquared, c.dt, c.n);
    expect(worstShare(moving, c.x_m_field_at_mass)).toBeLessThan(1e-9);
  });
});

describe('an element on a rocking arm', () => {
  it.for(vectors.rocking_tangential_element.cases)('of $f0_hz Hz, ζ = $zeta, hanging: $hanging_below_pivot', (c) => {
    const rate = 2 * Math.PI * c.rock_hz;
    const swing = (c.amp_deg / 180) * Math.PI;
    const force = (t: number): number => {
      const theta = swing * Math.sin(rate * t);
      return -c.r_m * rate * rate * theta + (c.hanging_below_pivot ? G : -G) * Math.sin(theta);
    };
    const x = drive({ naturalFrequency: c.f0_hz, dampingRatio: c.zeta }, force, still, c.dt, c.n);
    expect(worstShare(x, c.x_m)).toBeLessThan(1e-9);
  });
});

describe('fieldAtMass in a run', () => {
  // Independent: odex (extrapolation method of E. Hairer, G. Wanner) on the equation of the moving mass in the turning housing.
  it('a spring softened by the spin goes where an independent integrator says', () => {
    const from = 0.10001;
    const rate = 2 * Math.PI;
    const within = 0.5;
    const r = 0.05;
    const w0 = 2 * Math.PI * 3;
    const zeta = 0.2;
    const spec = { axis: [1, 0, 0], at: [r, 0.01, -0.02], naturalFrequency: 3, dampingRatio: zeta };
    const run = scenario({
      duration: 2,
      elements: [
        { ...spec, name: 'moved', fieldAtMass: true },
        { ...spec, name: 'fixed' },
      ],
      motions: [
        { kind: 'held', from: 0 },
        { kind: 'spin', from, axis: [0, 1, 0], rate, within },
      ],
    });
    const omega = (t: number): number => {
      const u = Math.min(t / within, 1);
      return rate * u ** 3 * (10 - 15 * u + 6 * u * u);
    };
    // Along x: centrifugal ω²(r + x); across it Euler's force on the z of the mounting point, αz.
    const alpha = (t: number): number => {
      const u = Math.min(t / within, 1);
      return ((rate * 30) / within) * (u * (1 - u)) ** 2;
    };
    const exact = (moves: number, until: number): number =>
      solve(
        (t, [x, v]) => {
          const f = -(omega(t) ** 2) * r - 0.02 * alpha(t);
          return [v!, -f - 2 * zeta * w0 * v! - (w0 * w0 - moves * omega(t) ** 2) * x!];
        },
        0,
        [0, 0],
        until,
      )[0]!;
    const peak = (rate * rate * r) / (w0 * w0);
    lookAt(
      run,
      [0.3, 0.55, 0.8, 1.4].map((t) => from + t),
      ({ elements, timeS }) => {
        const since = timeS - from;
        // odex does not see the corner at the end of the easing: S has zero slope and curvature there, so it costs it only steps.
        expect(Math.abs(elements[0]!.deflection - exact(1, since)) / peak).toBeLessThan(1e-9);
        expect(Math.abs(elements[1]!.deflection - exact(0, since)) / peak).toBeLessThan(1e-9);
      },
    );
  });

  it('settles under a steady spin at r/(ω₀²/ω² − 1): 12 % further out than the field at the mounting point has it at 1 rev/s and 3 Hz', () => {
    const spec = { axis: [1, 0, 0], at: [0.05, 0, 0], naturalFrequency: 3, dampingRatio: 0.7 };
    const rows = rowsOf(
      scenario({
        duration: 3,
        elements: [
          { ...spec, name: 'moved', fieldAtMass: true },
          { ...spec, name: 'fixed' },
        ],
        motions: [{ kind: 'spin', from: 0, axis: [0, 1, 0], rate: 2 * Math.PI }],
      }),
    );
    const last = (name: string) => rows.column(`${name}_deflection_m`).at(-1)!;
    // Balance of ω₀²x = ω²(r + x), any text on rotating frames.
    expect(Math.abs(last('moved') / (0.05 / (9 - 1)) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(last('fixed') / (0.05 / 9) - 1)).toBeLessThan(1e-9);
  });
});
