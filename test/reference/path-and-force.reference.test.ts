/**
 * In every ready-made scenario, what is felt is what the path does: the second difference of the path equals R·f + g, at the
 * centre of mass and at every element's mounting point. An identity of the calculus, no published source is needed.
 * With spacing e (Numerov): p₊ − 2p + p₋ = e²(a₊ + 10a + a₋)/12, error e⁶p⁗″/240.
 */
import { describe, expect, it } from 'vitest';
import { type Kinematics, newKinematics } from '../../src/housing/kinematics.ts';
import { specificForceAlong } from '../../src/housing/specific-force.ts';
import { rotate } from '../../src/numerics/quaternion.ts';
import { vector } from '../../src/numerics/vector.ts';
import { NAMED_SCENARIOS } from '../../src/scenario/named.ts';
import { World } from '../../src/world/world.ts';
import { runOf } from './scenario-run.ts';

type Point = readonly [number, number, number];

function placeOf(k: Kinematics, at: Point, out: Float64Array): void {
  rotate(k.attitude, at, out);
  for (let i = 0; i < 3; i += 1) out[i]! += k.position[i]!;
}

/** R·f + g at a point. */
function accelerationOf(k: Kinematics, at: Point, gravity: number, out: Float64Array): void {
  out[0] = specificForceAlong(k, at, [1, 0, 0]);
  out[1] = specificForceAlong(k, at, [0, 1, 0]);
  out[2] = specificForceAlong(k, at, [0, 0, 1]);
  rotate(k.attitude, out, out);
  out[1]! -= gravity;
}

describe('the second difference of the path is R·f + g', () => {
  it.for(NAMED_SCENARIOS.map(({ id, scenario }) => [id, scenario] as const))('in %s', ([id, scenario]) => {
    // Ready-made runs keep their ticks; every so many of them are looked at.
    const run = runOf(scenario);
    const world = new World(run);
    const e = run.tick / 4;
    const every = Math.max(1, Math.floor(run.duration / run.tick / 2500));
    const k = [newKinematics(), newKinematics(), newKinematics()] as const;
    const points: Point[] = [[0, 0, 0], run.elements[0]!.at, [0.05, -0.02, 0.08]];
    const p = k.map(() => vector());
    const a = k.map(() => vector());
    const errors: number[] = [];
    let largest = 0;
    while (world.timeS < run.duration) {
      world.step();
      if (world.tick % every !== 0 || world.housing.pieceCount > 1) continue;
      k.forEach((moment, i) => world.kinematicsAt((i + 1) * e, moment));
      let worst = 0;
      for (const at of points) {
        k.forEach((moment, i) => {
          placeOf(moment, at, p[i]!);
          accelerationOf(moment, at, world.gravity, a[i]!);
        });
        for (let i = 0; i < 3; i += 1) {
          const path = (p[0]![i]! - 2 * p[1]![i]! + p[2]![i]!) / (e * e);
          const force = (a[0]![i]! + 10 * a[1]![i]! + a[2]![i]!) / 12;
          worst = Math.max(worst, Math.abs(path - force));
          largest = Math.max(largest, Math.abs(force));
        }
      }
      errors.push(worst);
    }
    expect(errors.length).toBeGreaterThan(1000);
    // Rounding of places of a metre or two in a second difference, 4ε·|p|/e², plus what fourth order leaves over in contact and in
    // a hand's limited pull: measured below 4e-7 of the largest acceleration.
    const limit = (16 * Number.EPSILON) / (e * e) + 1e-6 * largest;
    // Where a corner on the pad changes between sticking and sliding, the force of friction has a corner in time that does
    // not cut the tick: a few looks of thousands, none off by more than 0.3 % of the landing's peak.
    const excused = id === 'corner-landing' ? errors.length * 0.002 : 0;
    expect(errors.filter((error) => !(error <= limit)).length).toBeLessThanOrEqual(excused);
    expect(Math.max(...errors)).toBeLessThan(excused > 0 ? 3e-3 * largest : limit);
  });
});
