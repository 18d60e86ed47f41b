import { describe, expect, it } from 'vitest';
import type { HandTarget, MotionSpec } from '../../src/contract/motion.ts';
import {
  HAND_ACCELERATION_MS2,
  HAND_RATE,
  HAND_SPEED_MS,
  HAND_TURN_ACCELERATION,
  HAND_TURN_RATE,
} from '../../src/housing/hand.ts';
import { newKinematics } from '../../src/housing/kinematics.ts';
import { dot, norm } from '../../src/numerics/vector.ts';
import { Bench, STANDARD_GRAVITY as G, TICK_S } from './bench.ts';

const FROM_S = 0.0103;

function led(targets: readonly HandTarget[], tickS = TICK_S, before: readonly MotionSpec[] = []): Bench {
  return new Bench([...before, { kind: 'hand', from: FROM_S, targets }], { tickS });
}

describe('a hand', () => {
  // the response of a critically damped oscillator to a step, 1 − (1 + ωt)e^(−ωt), and to a ramp from rest (any text on
  // vibration; put into ẍ = ω²(T − x) − 2ωẋ to check)
  it('follows a small step as a critically damped pull', () => {
    const bench = led([{ at: FROM_S, position: [0.04, 1, 0], over: 0 }]);
    for (const t of [0.02, 0.07, 0.3]) {
      bench.runTo(FROM_S + t);
      const x = HAND_RATE * t;
      const expected = 0.04 * (1 - (1 + x) * Math.exp(-x));
      const k = bench.at(FROM_S + t);
      expect(Math.abs(k.position[0]! - expected)).toBeLessThan(1e-11);
      expect(Math.abs(k.acceleration[0]! - 0.04 * HAND_RATE ** 2 * (1 - x) * Math.exp(-x))).toBeLessThan(1e-7);
    }
  });

  it('lags a target that runs straight by 2u/ω, and feels nothing but g once it runs along', () => {
    const u = 0.3;
    const bench = led([{ at: FROM_S, position: [u * 2, 1, 0], over: 2 }]);
    for (const t of [0.05, 0.4, 1.9]) {
      bench.runTo(FROM_S + t);
      const e = Math.exp(-HAND_RATE * t);
      const expected = u * t - ((2 * u) / HAND_RATE) * (1 - e) + u * t * e;
      expect(Math.abs(bench.at(FROM_S + t).position[0]! - expected)).toBeLessThan(1e-11);
    }
    expect(Math.abs(bench.at(FROM_S + 1.9).specificForce[1]! - G)).toBeLessThan(1e-12);
    expect(Math.abs(bench.at(FROM_S + 1.9).specificForce[0]!)).toBeLessThan(1e-10);
  });

  it('never exceeds 3 m/s, 30 m/s², 10 rad/s, 100 rad/s², uses them, and arrives', () => {
    const attitude = [0, 0, Math.sin(1.5), Math.cos(1.5)] as const;
    const bench = led([{ at: FROM_S, position: [2, 2, -1], attitude, over: 0 }]);
    const k = newKinematics();
    const most = { speed: 0, acceleration: 0, turnRate: 0, turnAcceleration: 0 };
    bench.runTo(FROM_S);
    while (bench.timeS < 2.5) {
      bench.step();
      for (let piece = 0; piece < bench.housing.pieceCount; piece++) {
        bench.housing.kinematics(piece, bench.housing.pieceStart(piece), k);
        most.speed = Math.max(most.speed, norm(k.velocity));
        most.acceleration = Math.max(most.acceleration, norm(k.acceleration));
        most.turnRate = Math.max(most.turnRate, norm(k.angularVelocity));
        most.turnAcceleration = Math.max(most.turnAcceleration, norm(k.angularAcceleration));
      }
    }
    const close = (found: number, limit: number, share: number): void => {
      expect(found).toBeLessThanOrEqual(limit * (1 + 1e-12));
      expect(found).toBeGreaterThan(share * limit);
    };
    // each speed is approached as e^(−2ωt)
    close(most.speed, HAND_SPEED_MS, 0.999);
    close(most.acceleration, HAND_ACCELERATION_MS2, 0.999_999);
    close(most.turnRate, HAND_TURN_RATE, 0.9);
    close(most.turnAcceleration, HAND_TURN_ACCELERATION, 0.999_999);
    expect(Math.abs(k.position[0]! - 2)).toBeLessThan(1e-9);
    attitude.forEach((q, i) => expect(Math.abs(k.attitude[i]! - q)).toBeLessThan(1e-9));
  });

  it('takes a tumbling box in hand and brings it back to the attitude it was taken in', () => {
    const bench = led([], TICK_S, [{ kind: 'free', from: 0, spin: [40, -25, 11] }]);
    bench.runTo(FROM_S);
    const taken = bench.at(FROM_S);
    bench.runTo(4);
    const k = bench.at(4);
    expect(norm(k.angularVelocity)).toBeLessThan(1e-9);
    expect(Math.abs(Math.abs(taken.attitude.reduce((sum, q, i) => sum + q * k.attitude[i]!, 0)) - 1)).toBeLessThan(
      1e-12,
    );
    for (let i = 0; i < 3; i++) expect(Math.abs(k.position[i]! - taken.position[i]!)).toBeLessThan(1e-9);
  });

  it.for([
    [24, 0],
    [26, 1],
  ] as const)('turns a box that spins at %d rad/s the shorter way: %d whole turn(s) on', ([rate, turns]) => {
    // braked at 100 rad/s² it turns by 24²/200 = 2.88 rad, or by 26²/200 = 3.38: short of half a turn, or past it
    const bench = led([], TICK_S, [{ kind: 'free', from: 0, spin: [0, rate, 0] }]);
    bench.runTo(FROM_S);
    const k = newKinematics();
    let turned = 0;
    while (bench.timeS < 2) {
      bench.step();
      bench.housing.present(k);
      turned += k.angularVelocity[1]! * TICK_S;
    }
    expect(Math.abs(turned / (2 * Math.PI) - turns)).toBeLessThan(0.01);
  });

  it('a new target runs on from where the last one was, and turns about the shortest arc', () => {
    const bench = led([
      { at: FROM_S, position: [1, 1, 0], attitude: [0, Math.SQRT1_2, 0, Math.SQRT1_2], over: 1 },
      { at: FROM_S + 0.5, position: [0.5, 1, 0.5], attitude: [0, 0, 0, 1], over: 0.5 },
    ]);
    // after the first half second the target stands at x = 0.5 and 45°; then it runs along z and turns back
    // what is left of the turning round falls as (1 + ωt)e^(−ωt)
    bench.runTo(FROM_S + 0.97);
    const k = bench.at(FROM_S + 0.97);
    expect(Math.abs(k.velocity[2]! - 1)).toBeLessThan(1e-3);
    expect(Math.abs(k.velocity[0]!)).toBeLessThan(1e-3);
    expect(Math.abs(k.angularVelocity[1]! + Math.PI / 4 / 0.5)).toBeLessThan(1e-3);
  });

  it('goes the same way with ticks of 5 ms and of 20 µs', () => {
    const targets: HandTarget[] = [
      { at: FROM_S, position: [1, 1.4, 0], attitude: [0, 1, 0, 0], over: 0.016 },
      { at: FROM_S + 0.1003, position: [-0.3, 1, 0.2], over: 0.0166 },
      { at: FROM_S + 0.3, position: [0, 0.5, 0], attitude: [0.6, 0, 0, 0.8], over: 0 },
    ];
    const states = [5e-3, 2e-5].map((tickS) => {
      const bench = led(targets, tickS);
      bench.runTo(0.45);
      const k = bench.at(0.45);
      return [...k.position, ...k.velocity, ...k.attitude];
    });
    // limits that begin or cease to act are located: fourth order through all of it, measured 3e-6 of 3 m/s
    states[0]!.forEach((x, i) => expect(Math.abs(x - states[1]![i]!)).toBeLessThan(1e-5));
  });

  it('led live is bit for bit led by a list', () => {
    const targets: HandTarget[] = [
      { at: 0.0201, position: [0.3, 1, 0.1], over: 0.016 },
      { at: 0.0371, position: [0.5, 1.1, 0.1], attitude: [0, 0, 0.6, 0.8], over: 0.017 },
    ];
    const listed = new Bench([{ kind: 'hand', from: 0, targets }]);
    const live = new Bench([{ kind: 'hand', from: 0, targets: [] }]);
    const a = newKinematics();
    const b = newKinematics();
    let given = 0;
    while (listed.timeS < 0.3) {
      listed.step();
      if (live.tick === 0) live.step();
      else {
        const startS = live.timeS;
        const { housing } = live;
        housing.beginTick(startS, TICK_S);
        const next = targets[given];
        if (next !== undefined && next.at < startS + TICK_S) {
          housing.advance(next.at - startS);
          housing.target(next);
          given += 1;
        }
        housing.advance(TICK_S);
        live.tick += 1;
      }
      listed.housing.present(a);
      live.housing.present(b);
      expect(Array.from(b.position)).toEqual(Array.from(a.position));
      expect(Array.from(b.attitude)).toEqual(Array.from(a.attitude));
    }
    expect(given).toBe(2);
    expect(dot(a.position, [1, 0, 0])).toBeGreaterThan(0.4);
  });

  it('a target without a hand is a fault that names the motion', () => {
    const bench = new Bench([]);
    expect(() => bench.housing.target({ at: 0, position: [0, 0, 0], over: 0 })).toThrow(/needs a hand.*held/);
  });
});
