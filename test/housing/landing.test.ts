import { describe, expect, it } from 'vitest';
import type { Landing } from '../../src/contract/event.ts';
import type { Quaternion } from '../../src/contract/geometry.ts';
import type { FreeMotion, PadSpec } from '../../src/contract/motion.ts';
import { newKinematics } from '../../src/housing/kinematics.ts';
import { fromRotationVector, quaternion, rotate } from '../../src/numerics/quaternion.ts';
import { cross, norm, scale, vector } from '../../src/numerics/vector.ts';
import reference from '../reference/drop_cushion.json' with { type: 'json' };
import { Bench, BOX, STANDARD_GRAVITY as G, TICK_S } from './bench.ts';
import { solve } from './reference-solver.ts';

const M = BOX.mass;
const HALF_HEIGHT = BOX.size[1] / 2;
const LEVEL: Quaternion = [0, 0, 0, 1];

function pad(stiffness: number, dampingRatio = 0, more: Partial<PadSpec> = {}): PadSpec {
  return { stiffness, damping: 2 * dampingRatio * Math.sqrt(stiffness * M), friction: 0, ...more };
}

/** Let go off the tick, the lowest corner at `heightM`. */
function drop(heightM: number, on: PadSpec, tickS = TICK_S, attitude = LEVEL, more: Partial<FreeMotion> = {}): Bench {
  const lowest = new Bench([], { attitude, position: [0, 0, 0] });
  lowest.step();
  const below = lowest.housing.lowest(lowest.at(0));
  return new Bench([{ kind: 'free', from: LET_GO_S, pad: on, ...more }], {
    tickS,
    attitude,
    position: [0, heightM - below, 0],
  });
}
const LET_GO_S = 0.0123;

/** The box stands on a corner, its centre of mass above it. */
function onCorner(): Quaternion {
  const arm = Float64Array.from(BOX.size);
  scale(-1 / norm(arm), arm, arm);
  const turn = vector();
  cross(arm, [0, -1, 0], turn);
  const sine = norm(turn);
  scale(Math.asin(sine) / sine, turn, turn);
  if (arm[1]! > 0) throw new Error('the corner must lie below');
  const q = quaternion();
  fromRotationVector(turn, q);
  return [q[0]!, q[1]!, q[2]!, q[3]!];
}

/** Peak [m/s²] of y″ = g − 2ζωy′ − ω²y from y = 0, y′ = v: its solution, looked at finely while the pad pushes. */
function linearPeak(omega: number, zeta: number, v: number): number {
  const damped = omega * Math.sqrt(1 - zeta * zeta);
  const sag = G / (omega * omega);
  let peak = 0;
  for (let i = 0; i <= 1e5; i++) {
    const t = ((i / 1e5) * 4) / omega;
    const e = Math.exp(-zeta * omega * t);
    const sine = (v - zeta * omega * sag) / damped;
    const y = sag + e * (-sag * Math.cos(damped * t) + sine * Math.sin(damped * t));
    const rate =
      e *
      ((sag * damped - zeta * omega * sine) * Math.sin(damped * t) +
        (damped * sine + zeta * omega * sag) * Math.cos(damped * t));
    peak = Math.max(peak, omega * omega * y + 2 * zeta * omega * rate);
  }
  return peak;
}

describe('a flat drop onto an undamped pad', () => {
  // R. D. Mindlin, "Dynamics of Package Cushioning", Bell System Technical Journal 24 (1945) 353–461, part I (from memory)
  it.for([
    [0.3, 2e4],
    [0.05, 700],
    [1.3, 3e5],
  ] as const)('from %d m onto %d N/m peaks at 1 + √(1 + 2hk/mg) for (2/ω)(π − arctan(vω/g))', ([h, k]) => {
    const bench = drop(h, pad(k));
    bench.runTo(LET_GO_S + Math.sqrt((2 * h) / G) + 8 / Math.sqrt(k / M));
    const landing = bench.landings()[0]!;
    const peak = 1 + Math.sqrt(1 + (2 * h * k) / (M * G));
    const omega = Math.sqrt(k / M);
    const v = Math.sqrt(2 * G * h);
    // fourth order with steps of at most 0.05/ω: measured 3e-9
    expect(Math.abs(landing.peakMS2 / G / peak - 1)).toBeLessThan(2e-8);
    expect(Math.abs((landing.contactS * omega) / (2 * (Math.PI - Math.atan((v * omega) / G))) - 1)).toBeLessThan(1e-7);
    expect(Math.abs(landing.touchS - LET_GO_S - Math.sqrt((2 * h) / G))).toBeLessThan(1e-13);
    expect(Math.abs(landing.areaMS - 2 * v)).toBeLessThan(1e-7 * v);
    expect(Math.abs(bench.first('lift-off').verticalSpeedMS - v)).toBeLessThan(1e-7 * v);
  });
});

// drop_cushion.json: the equations stated there, solved with SciPy; closed forms where undamped. Twelve digits
describe('drops with rebounds (test/reference/drop_cushion.json)', () => {
  it.for(reference.cases)('from $h_m m onto a pad of $cushion_hz Hz and ζ = $cushion_zeta', (c) => {
    const omega = 2 * Math.PI * c.cushion_hz;
    const bench = drop(c.h_m, pad(M * omega * omega, c.cushion_zeta));
    const last = c.contacts.at(-1)!;
    bench.runTo(LET_GO_S + last.t_touch_s + last.contact_s + 0.001);
    const landings = bench.landings();
    expect(landings.length).toBe(c.contacts.length);
    c.contacts.forEach((contact, i) => {
      const landing = landings[i]!;
      const off = bench.events.filter((e) => e.kind === 'lift-off')[i]!;
      const near = (found: number, expected: number): void => {
        expect(Math.abs(found / expected - 1)).toBeLessThan(3e-7);
      };
      near(landing.touchS - LET_GO_S, contact.t_touch_s);
      near(landing.contactS, contact.contact_s);
      near(landing.peakMS2 / G, contact.peak_f_over_g);
      near(landing.depthM, contact.max_compression_m);
      near(off.verticalSpeedMS, contact.v_out_m_per_s);
      // a maximum is flat: its instant is known to the root of what its height is known to
      expect(Math.abs(landing.peakS - landing.touchS - contact.t_peak_after_touch_s) * omega).toBeLessThan(2e-3);
    });
  });
});

describe('the peak does not depend on the tick', () => {
  const height = 0.3;
  const v = Math.sqrt(2 * G * height);
  const attitudes = [
    ['flat', LEVEL, 1],
    ['on one corner', onCorner(), 4],
  ] as const;
  for (const [how, attitude, share] of attitudes) {
    for (const zeta of [0, 0.15, 0.4]) {
      it.for([1e-3, 1 / 7300, 1e-4, 2e-5])(`${how}, ζ = ${zeta}, tick %d s`, (tickS) => {
        // stiff enough that on one corner the next, 15 mm higher, stays clear
        const k = 1e5;
        const bench = drop(height, pad(k, zeta), tickS, attitude);
        bench.runTo(0.3);
        while (bench.landings().length === 0) bench.step();
        const landing = bench.landings()[0]!;
        // on one corner k/4 and c/4 carry the mass: ω and ζ are both halved
        const omega = Math.sqrt(k / M / share);
        const peak = linearPeak(omega, zeta / Math.sqrt(share), v);
        // measured 2e-7 where the pieces are longest
        expect(Math.abs(landing.peakMS2 / peak - 1)).toBeLessThan(6e-7);
      });
    }
  }
});

describe('a tangent cushion', () => {
  const k = 4000;
  const D = 0.03;
  const h = 0.8;

  it('takes up the fall by its depth: mg(h + d) = (4kD²/π²) ln(1/cos(πd/2D))', () => {
    // Mindlin 1945, class C; the energy is the integral of the force above (from memory)
    const bench = drop(h, pad(k, 0, { thickness: D }));
    while (bench.landings().length === 0) bench.step();
    const { depthM, peakMS2 } = bench.landings()[0]!;
    expect(depthM).toBeGreaterThan(0.9 * D);
    const taken = ((4 * k * D * D) / Math.PI ** 2) * Math.log(1 / Math.cos((Math.PI * depthM) / (2 * D)));
    expect(Math.abs(taken / (M * G * (h + depthM)) - 1)).toBeLessThan(1e-6);
    const force = ((2 * k * D) / Math.PI) * Math.tan((Math.PI * depthM) / (2 * D));
    expect(Math.abs((peakMS2 * M) / force - 1)).toBeLessThan(1e-5);
  });

  it('with damping follows the reference solution', () => {
    const on = pad(k, 0.2, { thickness: D });
    const bench = drop(h, on);
    const touchS = LET_GO_S + Math.sqrt((2 * h) / G);
    const acceleration = (y: number, rate: number): number =>
      (((2 * k * D) / Math.PI) * Math.tan((Math.PI * y) / (2 * D)) + on.damping * rate) / M;
    for (const since of [0.002, 0.006, 0.011]) {
      bench.runTo(touchS + since);
      const state = bench.at(touchS + since);
      const [y, rate] = solve((_, [x, u]) => [u!, G - acceleration(x!, u!)], 0, [0, Math.sqrt(2 * G * h)], since);
      expect(Math.abs(HALF_HEIGHT - state.position[1]! - y!)).toBeLessThan(1e-7 * D);
      expect(Math.abs(state.velocity[1]! + rate!)).toBeLessThan(1e-7 * Math.sqrt(2 * G * h));
      expect(Math.abs(state.specificForce[1]! / acceleration(y!, rate!) - 1)).toBeLessThan(1e-6);
    }
  });
});

describe('a landing on one corner that turns the box', () => {
  const turn = quaternion();
  fromRotationVector([0.31, 0.5, -0.22], turn);
  const attitude: Quaternion = [turn[0]!, turn[1]!, turn[2]!, turn[3]!];
  const I = [
    (M * (BOX.size[1] ** 2 + BOX.size[2] ** 2)) / 12,
    (M * (BOX.size[0] ** 2 + BOX.size[2] ** 2)) / 12,
    (M * (BOX.size[0] ** 2 + BOX.size[1] ** 2)) / 12,
  ] as const;
  const spin = [1.5, -2, 0.7] as const;

  /** The corners in the housing, each with its height over the centre of mass. */
  function corners(q: ArrayLike<number>): [readonly [number, number, number], number][] {
    const arm = vector();
    return Array.from({ length: 8 }, (_, i) => {
      const [x, y, z] = BOX.size.map((edge, axis) => (((i >> axis) & 1) - 0.5) * edge) as [number, number, number];
      rotate(q, [x, y, z], arm);
      return [[x, y, z], arm[1]!];
    });
  }

  it.for([0, 0.2, 3])('follows the reference solution of the rigid body on a spring, µ = %d', (friction) => {
    const on = pad(1e5, 0.15, { friction });
    const bench = drop(0.2, on, TICK_S, attitude, { spin });
    while (!bench.events.some((event) => event.kind === 'touch')) bench.step();
    const touchS = bench.first('touch').timeS;
    const start = bench.at(touchS);
    // which corner it is: the lowest at the touch
    const [corner, lowest] = corners(start.attitude).reduce((a, b) => (b[1] < a[1] ? b : a));
    expect(Math.abs(start.position[1]! + lowest)).toBeLessThan(1e-14);
    // bristle: a spring of k/4 and a damper of half critical, a quarter of it, in series with a slider that gives way at µN
    const kt = on.stiffness / 4;
    const ct = Math.sqrt(on.stiffness * M) / 4;
    // state: position, velocity, attitude, ω in the housing (Euler's equations, not the angular momentum used inside), bristle
    const rates = (_: number, s: readonly number[]): number[] => {
      const [, y, , vx, vy, vz, qx, qy, qz, qw, wx, wy, wz, bendX, bendZ] = s as [number, ...number[]];
      const q = [qx!, qy!, qz!, qw!];
      const r = vector();
      const w = vector();
      const u = vector();
      rotate(q, corner, r);
      rotate(q, [wx!, wy!, wz!], w);
      cross(w, r, u);
      const normal = (on.stiffness / 4) * -(y! + r[1]!) + (on.damping / 4) * -(vy! + u[1]!);
      const [slipX, slipZ] = [vx! + u[0]!, vz! + u[2]!];
      const [stickX, stickZ] = [-kt * bendX! - ct * slipX, -kt * bendZ! - ct * slipZ];
      const share = Math.min(1, (friction * Math.max(0, normal)) / Math.sqrt(stickX * stickX + stickZ * stickZ));
      const force = friction === 0 ? [0, normal, 0] : [share * stickX, normal, share * stickZ];
      const torque = vector();
      cross(r, force, torque);
      rotate([-qx!, -qy!, -qz!, qw!], torque, torque);
      return [
        ...[vx!, vy!, vz!, force[0]! / M, force[1]! / M - G, force[2]! / M],
        0.5 * (qw! * wx! + qy! * wz! - qz! * wy!),
        0.5 * (qw! * wy! + qz! * wx! - qx! * wz!),
        0.5 * (qw! * wz! + qx! * wy! - qy! * wx!),
        -0.5 * (qx! * wx! + qy! * wy! + qz! * wz!),
        (torque[0]! + (I[1] - I[2]) * wy! * wz!) / I[0],
        (torque[1]! + (I[2] - I[0]) * wz! * wx!) / I[1],
        (torque[2]! + (I[0] - I[1]) * wx! * wy!) / I[2],
        friction === 0 ? 0 : -(force[0]! + kt * bendX!) / ct,
        friction === 0 ? 0 : -(force[2]! + kt * bendZ!) / ct,
      ];
    };
    const s0 = [...start.position, ...start.velocity, ...start.attitude, ...start.angularVelocity, 0, 0];
    for (const since of [0.0015, 0.004]) {
      bench.runTo(touchS + since);
      const found = bench.at(touchS + since);
      // still only this corner: the next lower one is clear of the pad
      const heights = corners(found.attitude).map(([, y]) => found.position[1]! + y);
      expect(heights.filter((y) => y < 0).length).toBe(1);
      const s = solve(rates, 0, s0, since, 1e-11);
      const all = [...found.position, ...found.velocity, ...found.attitude, ...found.angularVelocity];
      // ω ~ 30 rad/s, v ~ 2 m/s. Stick and slip are not located, their force has no jump: measured 1e-6 with friction
      const share = friction === 0 ? 1 : 300;
      all.forEach((value, i) => expect(Math.abs(value - s[i]!)).toBeLessThan(share * (i < 10 ? 1e-8 : 2e-7)));
    }
  });

  it('without damping or friction loses no energy through every bounce', () => {
    const bench = drop(0.2, pad(2e4), TICK_S, attitude, { spin });
    const k = newKinematics();
    const energy = (): number => {
      const w = k.angularVelocity;
      const v = norm(k.velocity);
      return (
        0.5 * M * v * v + M * G * k.position[1]! + 0.5 * (I[0] * w[0]! ** 2 + I[1] * w[1]! ** 2 + I[2] * w[2]! ** 2)
      );
    };
    bench.step();
    while (bench.timeS < 0.02) bench.step();
    bench.housing.present(k);
    const start = energy();
    let flights = 0;
    while (bench.timeS < 3) {
      bench.step();
      if (bench.housing.inContact) continue;
      bench.housing.present(k);
      expect(Math.abs(energy() / start - 1)).toBeLessThan(1e-6);
      flights += 1;
    }
    expect(flights).toBeGreaterThan(1000);
    expect(bench.landings().length).toBeGreaterThan(4);
  });
});

describe('what is felt over a landing', () => {
  it('from let-go to rest adds up to g times the time elapsed', () => {
    const turn = quaternion();
    fromRotationVector([0.2, 0.1, 0.15], turn);
    const bench = drop(0.25, pad(2e4, 0.2, { friction: 0.5 }), TICK_S, [turn[0]!, turn[1]!, turn[2]!, turn[3]!]);
    const k = newKinematics();
    const f = vector();
    let felt = 0;
    const up = (piece: number, tau: number): number => {
      bench.housing.kinematics(piece, tau, k);
      rotate(k.attitude, k.specificForce, f);
      return f[1]!;
    };
    bench.step();
    while (!bench.events.some((event) => event.kind === 'at rest')) {
      bench.step();
      const { housing } = bench;
      const startS = (bench.tick - 1) * bench.tickS;
      for (let piece = 0; piece < housing.pieceCount; piece++) {
        const tau = housing.pieceStart(piece);
        const h = housing.pieceDuration(piece);
        if (startS + tau < LET_GO_S - 1e-12) continue;
        felt += (h * (up(piece, tau) + 4 * up(piece, tau + h / 2) + up(piece, tau + h))) / 6;
      }
    }
    const elapsed = bench.timeS - LET_GO_S;
    bench.housing.present(k);
    // what is left is the speed at rest, below a millimetre per second; Simpson's rule on the pieces errs by far less
    expect(Math.abs(felt - G * elapsed - k.velocity[1]!)).toBeLessThan(1e-8 * G * elapsed);
    expect(Math.abs(k.velocity[1]!)).toBeLessThan(1e-3);
    expect(bench.first('at rest').landing.touchS).toBeLessThan(bench.timeS - 0.05);
  });

  it('over each contact is its change of velocity, however the box turns', () => {
    const turn = quaternion();
    fromRotationVector([0.4, 0, -0.3], turn);
    const bench = drop(0.25, pad(2e4, 0.1, { friction: 0.4 }), TICK_S, [turn[0]!, turn[1]!, turn[2]!, turn[3]!]);
    bench.runTo(0.9);
    const touches = bench.events.filter((event) => event.kind === 'touch');
    const offs = bench.events.filter((event) => event.kind === 'lift-off');
    expect(offs.length).toBeGreaterThan(1);
    offs.forEach((off, i) => {
      const change = off.verticalSpeedMS - touches[i]!.verticalSpeedMS;
      // Simpson's rule on the pieces, friction's corners included: measured 3e-8 of 3 m/s
      expect(Math.abs(off.landing.areaMS - change)).toBeLessThan(1e-7);
    });
  });
});

describe('touch and lift-off inside one tick', () => {
  it('are found however short the contact: 20 ms ticks, 3 ms on the pad', () => {
    const k = 5e5;
    const coarse = drop(0.1, pad(k, 0.1), 0.02);
    const fine = drop(0.1, pad(k, 0.1), 1e-4);
    const marks = (bench: Bench): Landing[] => {
      bench.runTo(0.5);
      return bench.landings().filter((landing) => landing.touchS + landing.contactS < 0.5);
    };
    const found = marks(coarse);
    const expected = marks(fine);
    expect(found.length).toBe(expected.length);
    expect(found.length).toBeGreaterThan(1);
    expect(found[0]!.contactS).toBeLessThan(0.0035);
    found.forEach((landing, i) => {
      expect(Math.abs(landing.touchS - expected[i]!.touchS)).toBeLessThan(1e-8);
      expect(Math.abs(landing.peakMS2 / expected[i]!.peakMS2 - 1)).toBeLessThan(1e-6);
    });
  });
});

describe('a corner that only grazes the pad between two instants at which it is clear of it', () => {
  it('is found: a box turning free of gravity, its corners dipping 0.2 µm, seen every 5 ms', () => {
    // the ends of its steps, 0.00994 rad each, miss the first dip
    const omega = 49.7;
    const [a, b] = BOX.size;
    const radius = Math.sqrt(a * a + b * b) / 2;
    const dip = 2e-7;
    const bench = new Bench(
      [{ kind: 'free', from: 0, spin: [0, 0, omega], pad: { stiffness: 100, damping: 0, friction: 0 } }],
      { gravity: 0, position: [0, radius - dip, 0], tickS: 5e-3 },
    );
    bench.runTo(0.05);
    // the corner at (−a, −b)/2 comes to the bottom after turning by arctan(a/b), and dips from arccos(1 − dip/radius) before
    const touchS = (Math.atan2(a, b) - Math.acos(1 - dip / radius)) / omega;
    expect(Math.abs(bench.first('touch').timeS - touchS)).toBeLessThan(1e-9);
    const landing = bench.first('lift-off').landing;
    expect(Math.abs(landing.depthM / dip - 1)).toBeLessThan(0.01);
    // shorter than a step, which turns by up to 0.01 rad
    expect(landing.contactS * omega).toBeLessThan(0.006);
  });
});
