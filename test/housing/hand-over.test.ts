/**
 * Every motion, taken over from every other in mid-air, turning, off the tick. What the housing says it feels must be
 * what its path does; no published source is needed, the checks are identities of the calculus.
 *
 * With spacing e and values before, at and after an instant, all to fourth order (Numerov and Simpson):
 *     p₊ − 2p + p₋ = e²(a₊ + 10a + a₋)/12,  error e⁶p⁗″/240
 *     p₊ − p₋ = 2e(v₊ + 4v + v₋)/6,  error e⁵v⁗/90,  likewise q with q̇ = ½qω and ω with α
 */
import { describe, expect, it } from 'vitest';
import { type Kinematics, newKinematics } from '../../src/housing/kinematics.ts';
import { specificForceAlong } from '../../src/housing/specific-force.ts';
import { multiply, quaternion, rotate } from '../../src/numerics/quaternion.ts';
import { vector } from '../../src/numerics/vector.ts';
import { Bench, STANDARD_GRAVITY, TICK_S } from './bench.ts';
import { EVERY_MOTION } from './every-motion.ts';

/** Off the centre of mass [m]. */
const POINT = [0.05, -0.02, 0.08] as const;
const E = TICK_S / 4;
/** Where the looks lie: the pieces of a tick are smooth inside. */
const FIRST_S = 0.0413;
const SECOND_S = 0.1729;
const END_S = 0.3301;

/** Largest errors found, each in its own unit. */
interface Errors {
  force: number;
  pointForce: number;
  velocity: number;
  turning: number;
  turningAcceleration: number;
}

const LIMIT: Errors = { force: 2e-6, pointForce: 3e-6, velocity: 3e-11, turning: 2e-10, turningAcceleration: 2e-9 };
const HAND_LIMIT: Errors = {
  force: 3e-4,
  pointForce: 3e-4,
  velocity: 1e-8,
  turning: 3e-8,
  turningAcceleration: 3e-5,
};

function pointOf(k: Kinematics): Float64Array {
  const out = vector();
  rotate(k.attitude, POINT, out);
  for (let i = 0; i < 3; i++) out[i]! += k.position[i]!;
  return out;
}

/** R f + g at the point: the acceleration that the specific force stands for. */
function felt(k: Kinematics, at: readonly [number, number, number]): Float64Array {
  const out = Float64Array.of(
    specificForceAlong(k, at, [1, 0, 0]),
    specificForceAlong(k, at, [0, 1, 0]),
    specificForceAlong(k, at, [0, 0, 1]),
  );
  rotate(k.attitude, out, out);
  out[1]! -= STANDARD_GRAVITY;
  return out;
}

/** q̇ = ½ q ω, ω in the housing. */
function attitudeRate(k: Kinematics): Float64Array {
  const out = quaternion();
  const [x, y, z] = k.angularVelocity;
  multiply(k.attitude, [x! / 2, y! / 2, z! / 2, 0], out);
  return out;
}

/** Largest component of (before + weight·at + after)·scale − whole. */
function residue(
  whole: (i: number) => number,
  parts: readonly ArrayLike<number>[],
  weight: number,
  scale: number,
): number {
  const [before, at, after] = parts as [ArrayLike<number>, ArrayLike<number>, ArrayLike<number>];
  let worst = 0;
  for (let i = 0; i < at.length; i++) {
    worst = Math.max(worst, Math.abs(whole(i) - scale * (before[i]! + weight * at[i]! + after[i]!)));
  }
  return worst;
}

function check(k: readonly [Kinematics, Kinematics, Kinematics], stated: boolean, worst: Errors): void {
  const second = (values: readonly ArrayLike<number>[]) => (i: number) =>
    (values[0]![i]! - 2 * values[1]![i]! + values[2]![i]!) / (E * E);
  const first = (values: readonly ArrayLike<number>[]) => (i: number) => (values[2]![i]! - values[0]![i]!) / (2 * E);
  const positions = k.map((x) => x.position);
  const own = stated ? k.map((x) => x.acceleration) : k.map((x) => felt(x, [0, 0, 0]));
  worst.force = Math.max(worst.force, residue(second(positions), own, 10, 1 / 12));
  if (!stated) {
    const points = k.map((x) => felt(x, POINT));
    worst.pointForce = Math.max(worst.pointForce, residue(second(k.map(pointOf)), points, 10, 1 / 12));
  }
  const velocities = k.map((x) => x.velocity);
  worst.velocity = Math.max(worst.velocity, residue(first(positions), velocities, 4, 1 / 6));
  const turning = residue(first(k.map((x) => x.attitude)), k.map(attitudeRate), 4, 1 / 6);
  worst.turning = Math.max(worst.turning, turning);
  const omega = first(k.map((x) => x.angularVelocity));
  const alpha = residue(
    omega,
    k.map((x) => x.angularAcceleration),
    4,
    1 / 6,
  );
  worst.turningAcceleration = Math.max(worst.turningAcceleration, alpha);
}

/** Largest jump of place, velocity, attitude and angular velocity across an instant, from one tick to the next. */
function jump(bench: Bench, piece: number): number {
  const { housing } = bench;
  const before = newKinematics();
  const after = newKinematics();
  const tau = housing.pieceStart(piece);
  housing.kinematics(piece - 1, tau, before);
  housing.kinematics(piece, tau, after);
  let worst = 0;
  for (const what of ['position', 'velocity', 'attitude', 'angularVelocity'] as const) {
    for (let i = 0; i < before[what].length; i++) {
      worst = Math.max(worst, Math.abs(before[what][i]! - after[what][i]!));
    }
  }
  return worst;
}

describe.for(Object.keys(EVERY_MOTION))('%s', (name) => {
  const worst: Errors = { force: 0, pointForce: 0, velocity: 0, turning: 0, turningAcceleration: 0 };
  let worstJump = 0;
  let jumps = 0;

  it.for(Object.keys(EVERY_MOTION))('taken over from %s keeps its state and feels what its path does', (before) => {
    const bench = new Bench([
      { kind: 'free', from: 0, spin: [2.3, -3.1, 1.7] },
      EVERY_MOTION[before]!(FIRST_S),
      EVERY_MOTION[name]!(SECOND_S),
    ]);
    bench.runTo(SECOND_S - 2 * TICK_S);
    const k = [newKinematics(), newKinematics(), newKinematics()] as const;
    const stated = name === 'recorded specific force';
    while (bench.timeS < END_S) {
      bench.step();
      const { housing } = bench;
      for (let piece = 1; piece < housing.pieceCount; piece++) {
        worstJump = Math.max(worstJump, jump(bench, piece));
        jumps += 1;
      }
      if (housing.pieceCount > 1 || bench.timeS < SECOND_S + TICK_S) continue;
      for (let i = 0; i < 3; i++) housing.kinematics(0, (i + 1) * E, k[i]!);
      check(k, stated, worst);
    }
    expect(jumps).toBeGreaterThan(0);
    // a knot of the path, at most 4e-13 s from where it is taken, or rounding of p ~ 1, v ~ 5, ω ~ 12
    expect(worstJump).toBeLessThan(5e-14);
    // rounding of p ~ 1 in a second difference: 4·1.1e-16/e² = 3.7e-7, beside the fourth-order remainder; rounding 1.1e-16/e =
    // 3e-12 in a first one. The hand is integrated; its limited pull, 30 m/s² and 100 rad/s², swings round at some 100 rad/s,
    // and a fourth-order step seen from inside is third-order in force: (100·h)³/6·30 = 1.3e-5, measured up to 1.1e-4
    const limit = name === 'hand' ? HAND_LIMIT : LIMIT;
    expect(worst.force).toBeLessThan(limit.force);
    expect(worst.pointForce).toBeLessThan(limit.pointForce);
    expect(worst.velocity).toBeLessThan(limit.velocity);
    expect(worst.turning).toBeLessThan(limit.turning);
    expect(worst.turningAcceleration).toBeLessThan(limit.turningAcceleration);
  });
});
