import { describe, expect, it } from 'vitest';
import type { MotionSpec, RecordedMotion } from '../../src/contract/motion.ts';
import { newKinematics } from '../../src/housing/kinematics.ts';
import { specificForceAlong } from '../../src/housing/specific-force.ts';
import { Bench, STANDARD_GRAVITY as G } from './bench.ts';
import { wavyRecord } from './every-motion.ts';

const FROM_S = 0.0207;
const DATA = wavyRecord(3);
const LAST_S = DATA.timeS.at(-1)!;
const RECORD = { kind: 'recorded', file: 'r.csv', time: 't', columns: ['a'], unit: 'm/s2', from: FROM_S } as const;

function bench(motion: RecordedMotion): Bench {
  const before: MotionSpec = { kind: 'push', from: 0, axis: [1, 0, 0], acceleration: 5, within: 0 };
  return new Bench([before, motion]);
}

describe('a recorded acceleration', () => {
  const motion: RecordedMotion = { ...RECORD, is: 'acceleration', data: DATA };

  it('is met at every sample, beside gravity', () => {
    const run = bench(motion);
    DATA.timeS.forEach((t, i) => {
      if (i === DATA.timeS.length - 1) return;
      run.runTo(FROM_S + t);
      const k = run.at(FROM_S + t);
      // the instant itself is known to an ulp of run time, 3e-17 s, the slopes are 200 m/s³
      for (const axis of [0, 1, 2]) {
        const found = k.specificForce[axis]! - (axis === 1 ? G : 0);
        expect(Math.abs(found - DATA.valuesMS2[axis]![i]!)).toBeLessThan(2e-13);
      }
    });
  });

  it('moves the housing by the exact integrals of its straight lines', () => {
    const run = bench(motion);
    let v = [5 * FROM_S, 0, 0];
    let p = [2.5 * FROM_S ** 2, 1, 0];
    for (let i = 1; i < DATA.timeS.length; i++) {
      const h = DATA.timeS[i]! - DATA.timeS[i - 1]!;
      // trapezium for the velocity; for the displacement h²(2a₀ + a₁)/6
      p = p.map((x, axis) => {
        const [a, b] = [DATA.valuesMS2[axis]![i - 1]!, DATA.valuesMS2[axis]![i]!];
        return x + h * v[axis]! + (h * h * (2 * a + b)) / 6;
      });
      v = v.map((x, axis) => x + (h * (DATA.valuesMS2[axis]![i - 1]! + DATA.valuesMS2[axis]![i]!)) / 2);
    }
    run.runTo(FROM_S + LAST_S + 0.05);
    const k = run.at(FROM_S + LAST_S + 0.05);
    for (const axis of [0, 1, 2]) {
      expect(Math.abs(k.velocity[axis]! - v[axis]!)).toBeLessThan(1e-14);
      expect(Math.abs(k.position[axis]! - p[axis]! - 0.05 * v[axis]!)).toBeLessThan(1e-14);
    }
    expect(Array.from(k.acceleration)).toEqual([0, 0, 0]);
  });

  it('cuts the ticks at its samples, so that every piece is a straight line', () => {
    const run = bench(motion);
    run.runTo(FROM_S + 0.01);
    const found: number[] = [];
    while (run.timeS < FROM_S + LAST_S) {
      run.step();
      for (let piece = 1; piece < run.housing.pieceCount; piece++) {
        found.push((run.tick - 1) * run.tickS + run.housing.pieceStart(piece) - FROM_S);
      }
    }
    const expected = Array.from(DATA.timeS).filter((t) => t > run.tickS + 0.01 && t < LAST_S - run.tickS);
    for (const t of expected) expect(found.some((x) => Math.abs(x - t) < 1e-15)).toBe(true);
  });

  it('of a single sample moves nothing', () => {
    const data = { timeS: Float64Array.of(0), valuesMS2: [Float64Array.of(7)] };
    const run = bench({ ...RECORD, is: 'acceleration', axis: [0, 1, 0], data });
    run.runTo(0.3);
    expect(Array.from(run.at(0.3).acceleration)).toEqual([0, 0, 0]);
  });
});

describe('a recorded specific force', () => {
  it('is felt as recorded, the same at every point, and its last value stays', () => {
    const run = bench({ ...RECORD, is: 'specificForce', data: DATA });
    const k = newKinematics();
    DATA.timeS.forEach((t, i) => {
      run.runTo(FROM_S + t);
      run.at(FROM_S + t, k);
      for (const axis of [0, 1, 2] as const) {
        const e = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0] as const;
        const found = specificForceAlong(k, [0.05, 0.03, -0.1], e);
        expect(Math.abs(found - DATA.valuesMS2[axis]![i]!)).toBeLessThan(2e-13);
      }
    });
    run.runTo(FROM_S + LAST_S + 1);
    expect(run.at(FROM_S + LAST_S + 1).specificForce[2]).toBe(DATA.valuesMS2[2]!.at(-1));
  });

  it('in one column along a room axis is turned into the housing', () => {
    const run = new Bench([{ ...RECORD, from: 0, is: 'specificForce', axis: [0, 2, 0], data: wavyRecord(1) }], {
      attitude: [Math.SQRT1_2, 0, 0, Math.SQRT1_2],
    });
    run.step();
    // x turned up by a quarter: the room's up is the housing's −z
    const k = run.at(0);
    const value = wavyRecord(1).valuesMS2[0]![0]!;
    expect(Math.abs(k.specificForce[2]! + value)).toBeLessThan(1e-15);
    expect(Math.abs(k.specificForce[1]!)).toBeLessThan(1e-15);
  });

  it('leaves the housing where it is drawn', () => {
    const run = new Bench([{ ...RECORD, from: 0, is: 'specificForce', data: DATA }]);
    run.runTo(0.2);
    expect(Array.from(run.at(0.2).position)).toEqual([0, 1, 0]);
  });
});
