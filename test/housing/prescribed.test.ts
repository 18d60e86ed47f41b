/** The stated laws themselves; that what is felt follows from the path is in hand-over.test.ts. */
import { describe, expect, it } from 'vitest';
import type { MotionSpec } from '../../src/contract/motion.ts';
import type { Kinematics } from '../../src/housing/kinematics.ts';
import { rotate } from '../../src/numerics/quaternion.ts';
import { dot, norm, vector } from '../../src/numerics/vector.ts';
import { Bench, STANDARD_GRAVITY as G } from './bench.ts';

const AXIS = [2 / 7, -3 / 7, 6 / 7] as const;

/** S(u), written out. */
function S(u: number): number {
  return u <= 0 ? 0 : u >= 1 ? 1 : 10 * u ** 3 - 15 * u ** 4 + 6 * u ** 5;
}

function at(motions: readonly MotionSpec[], timeS: number): Kinematics {
  const bench = new Bench(motions);
  bench.runTo(timeS);
  return bench.at(timeS);
}

/** Displacement along the axis from the start at [0, 1, 0]. */
function along(k: Kinematics): number {
  return AXIS[0] * k.position[0]! + AXIS[1] * (k.position[1]! - 1) + AXIS[2] * k.position[2]!;
}

describe('held', () => {
  it('a housing at rest reads g along the axis that points up, and nothing else', () => {
    const k = at([{ kind: 'held', from: 0, within: 0.2 }], 0.3);
    expect(Array.from(k.specificForce)).toEqual([0, G, 0]);
    expect(Array.from(k.velocity)).toEqual([0, 0, 0]);
    expect(Array.from(k.position)).toEqual([0, 1, 0]);
  });

  it('upside down it reads −g there', () => {
    const bench = new Bench([], { attitude: [1, 0, 0, 0] });
    bench.step();
    expect(bench.at(0).specificForce[1]).toBe(-G);
  });

  it('brakes as v₀(1 − S(t/T)), turning likewise, and then stands exactly still', () => {
    const T = 0.13;
    const from = 0.3;
    const motions: MotionSpec[] = [
      { kind: 'push', from: 0, axis: AXIS, acceleration: 4, within: 0.05 },
      { kind: 'free', from: 0.2, spin: [0, 5, 0] },
      { kind: 'held', from, within: T },
    ];
    const start = at(motions, from);
    for (const u of [0.2, 0.5, 0.9]) {
      const k = at(motions, from + u * T);
      for (let i = 0; i < 3; i++)
        expect(Math.abs(k.velocity[i]! - start.velocity[i]! * (1 - S(u)))).toBeLessThan(2e-15);
      expect(Math.abs(k.angularVelocity[1]! - 5 * (1 - S(u)))).toBeLessThan(2e-14);
    }
    const still = at(motions, from + T + 0.01);
    expect(norm(still.velocity)).toBe(0);
    expect(norm(still.angularVelocity)).toBe(0);
    // ∫(1 − S) = 1/2: half of v₀T further
    for (let i = 0; i < 3; i++) {
      const way = start.position[i]! + (start.velocity[i]! * T) / 2;
      expect(Math.abs(still.position[i]! - way)).toBeLessThan(1e-15);
    }
    const turned = 2 * Math.atan2(still.attitude[1]!, still.attitude[3]!);
    expect(Math.abs(turned - 5 * (0.1 + T / 2))).toBeLessThan(1e-12);
  });

  it('a moving housing cannot be held within no time: the fault names the speed', () => {
    const bench = new Bench([
      { kind: 'free', from: 0 },
      { kind: 'held', from: 0.1, within: 0 },
    ]);
    expect(() => bench.runTo(0.2)).toThrow(/time > 0 s to come to rest, got 0 at 0\.98/);
  });

  it('trembles by its amplitude once four periods are over', () => {
    const tremor = { frequency: 8, amplitude: 0.1, axis: [0, 1, 0] } as const;
    const motions: MotionSpec[] = [{ kind: 'held', from: 0, within: 0.2, tremor }];
    for (const t of [0.53, 0.6, 0.71]) {
      const expected = G + 0.1 * Math.sin(2 * Math.PI * 8 * t);
      expect(Math.abs(at(motions, t).specificForce[1]! - expected)).toBeLessThan(1e-13);
    }
  });
});

describe('shaken', () => {
  it('by a sine: s = −(A/Ω²)·S(t/ease)·sin Ωt', () => {
    const motion = {
      kind: 'shake',
      law: 'sine',
      from: 0,
      axis: AXIS,
      frequency: 12,
      amplitude: 7,
      ease: 0.33,
    } as const;
    const omega = 2 * Math.PI * 12;
    for (const t of [0.05, 0.21, 0.4, 0.77]) {
      const expected = (-7 / omega ** 2) * S(t / 0.33) * Math.sin(omega * t);
      expect(Math.abs(along(at([motion], t)) - expected)).toBeLessThan(5e-16);
    }
    const k = at([motion], 0.77);
    expect(Math.abs(dot(k.acceleration, AXIS) - 7 * Math.sin(omega * 0.77))).toBeLessThan(1e-12);
  });

  /** Off the tick. */
  const OVER = 1.4993;
  const sweep = {
    kind: 'shake',
    law: 'sweep',
    from: 0,
    axis: AXIS,
    fromFrequency: 5,
    toFrequency: 40,
    amplitude: 6,
    over: OVER,
    ease: 0.4,
  } as const;
  const [start, end] = [2 * Math.PI * 5, 2 * Math.PI * 40];
  const laws = {
    linear: (t: number) =>
      [start + ((end - start) * t) / OVER, start * t + ((end - start) * t * t) / (2 * OVER)] as const,
    logarithmic: (t: number) => {
      const rate = Math.log(8) / OVER;
      return [start * Math.exp(rate * t), (start * (Math.exp(rate * t) - 1)) / rate] as const;
    },
  } as const;
  for (const progression of ['linear', 'logarithmic'] as const) {
    it(`by a ${progression} sweep: s = −(A/φ̇²)·S·sin φ`, () => {
      for (const t of [0.1, 0.7, 1.45]) {
        const [omega, phase] = laws[progression](t);
        const expected = (-6 / omega ** 2) * S(t / 0.4) * Math.sin(phase);
        expect(Math.abs(along(at([{ ...sweep, progression }], t)) - expected)).toBeLessThan(2e-15);
      }
    });

    it(`after a ${progression} sweep it holds the end frequency without a jump of speed`, () => {
      const motion = { ...sweep, progression } as const;
      const [, phase] = laws[progression](OVER);
      // past the brake's 0.2 s what was left of the sweep's speed stands as a shift
      const shift = along(at([motion], 2)) + (6 / end ** 2) * Math.sin(phase + end * (2 - OVER));
      for (const t of [1.75, 2.2, 3.1]) {
        const expected = shift - (6 / end ** 2) * Math.sin(phase + end * (t - OVER));
        expect(Math.abs(along(at([motion], t)) - expected)).toBeLessThan(1e-14);
        const a = dot(at([motion], t).acceleration, AXIS);
        expect(Math.abs(a - 6 * Math.sin(phase + end * (t - OVER)))).toBeLessThan(1e-10);
      }
      const bench = new Bench([motion]);
      bench.runTo(OVER);
      const jump = vector();
      const { housing } = bench;
      expect(housing.pieceCount).toBe(2);
      const before = bench.at(OVER - 1e-9);
      const after = bench.at(OVER);
      for (let i = 0; i < 3; i++) jump[i] = after.velocity[i]! - before.velocity[i]!;
      expect(norm(jump)).toBeLessThan(2e-8);
    });
  }
});

describe('led from place to place', () => {
  it('a move covers its distance and ends at rest', () => {
    const motion = { kind: 'move', from: 0, axis: AXIS, distance: 0.4, over: 0.6 } as const;
    expect(Math.abs(along(at([motion], 0.27)) - 0.4 * S(0.45))).toBeLessThan(2e-16);
    const k = at([motion], 0.9);
    expect(Math.abs(along(k) - 0.4)).toBeLessThan(2e-16);
    expect(norm(k.velocity)).toBe(0);
  });

  it('a push is felt as its acceleration beside g, eased in, and keeps the speed there was', () => {
    const push = { kind: 'push', axis: AXIS, acceleration: 3, within: 0.05 } as const;
    const motions: MotionSpec[] = [
      { ...push, from: 0 },
      { ...push, from: 1, acceleration: -3 },
    ];
    const eased = at(motions, 0.02);
    expect(Math.abs(dot(eased.acceleration, AXIS) - 3 * S(0.4))).toBeLessThan(1e-15);
    const full = at(motions, 0.7);
    expect(Math.abs(norm(full.acceleration) - 3)).toBeLessThan(1e-15);
    expect(Math.abs(full.specificForce[1]! - (G + 3 * AXIS[1]))).toBeLessThan(2e-15);
    // 3(1 − 0.025) m/s taken over, then as much taken off again
    expect(Math.abs(dot(at(motions, 1).velocity, AXIS) - 2.925)).toBeLessThan(1e-14);
    expect(Math.abs(dot(at(motions, 2).velocity, AXIS))).toBeLessThan(1e-14);
  });

  it('a push without easing is there at once', () => {
    const k = at([{ kind: 'push', from: 0, axis: [0, 1, 0], acceleration: 2, within: 0 }], 0.5);
    expect(k.acceleration[1]).toBe(2);
    expect(k.position[1]).toBe(1.25);
  });
});

describe('turned', () => {
  it('a tilt ends at the attitude asked for, even from full turning, about the shortest arc', () => {
    const to = { axis: [0, 0, 1], angle: 0.7 } as const;
    const k = at(
      [
        { kind: 'free', from: 0, spin: [3, -8, 2] },
        { kind: 'tilt', from: 0.15, to, over: 0.4 },
      ],
      0.7,
    );
    const sign = Math.sign(k.attitude[3]!);
    const expected = [0, 0, Math.sin(0.35), Math.cos(0.35)];
    expected.forEach((q, i) => expect(Math.abs(sign * k.attitude[i]! - q)).toBeLessThan(1e-15));
    expect(norm(k.angularVelocity)).toBe(0);
  });

  it('a slow tilt reads g cos θ and g sin θ: the sine law of every tilt table', () => {
    // from rest the angle is θ·S(t/over)
    const motions: MotionSpec[] = [{ kind: 'tilt', from: 0, to: { axis: [0, 0, 1], angle: Math.PI / 3 }, over: 0.5 }];
    const k = at(motions, 0.6);
    expect(Math.abs(k.specificForce[0]! - G * Math.sin(Math.PI / 3))).toBeLessThan(1e-14);
    expect(Math.abs(k.specificForce[1]! - G * Math.cos(Math.PI / 3))).toBeLessThan(1e-14);
    const under = at(motions, 0.2);
    const angle = (Math.PI / 3) * S(0.4);
    expect(Math.abs(under.specificForce[0]! - G * Math.sin(angle))).toBeLessThan(1e-14);
  });

  it('half a turn finds an axis, and no turn needs none', () => {
    const half = at([{ kind: 'tilt', from: 0, to: [1, 0, 0, 0], over: 0.1 }], 0.2);
    expect(Math.abs(half.specificForce[1]! + G)).toBeLessThan(1e-14);
    const none = at([{ kind: 'tilt', from: 0, to: [0, 0, 0, 1], over: 0.1 }], 0.05);
    expect(Array.from(none.specificForce)).toEqual([0, G, 0]);
  });

  it('a spin reaches its rate and keeps it; from another spin about the same axis it passes over smoothly', () => {
    const motions: MotionSpec[] = [
      { kind: 'spin', from: 0, axis: [0, 1, 0], rate: 4, within: 0.1 },
      { kind: 'spin', from: 0.5, axis: [0, 1, 0], rate: 10, within: 0.2 },
    ];
    expect(Math.abs(at(motions, 0.3).angularVelocity[1]! - 4)).toBeLessThan(1e-14);
    expect(Math.abs(at(motions, 0.57).angularVelocity[1]! - (4 + 6 * S(0.35)))).toBeLessThan(1e-13);
    expect(Math.abs(at(motions, 2).angularVelocity[1]! - 10)).toBeLessThan(1e-13);
  });

  it('spun about a slanting axis, the axis stays where it is in the room', () => {
    const k = at([{ kind: 'spin', from: 0, axis: AXIS, rate: 20, within: 0.1 }], 1.3);
    const axis = vector();
    rotate(k.attitude, k.angularVelocity, axis);
    for (let i = 0; i < 3; i++) expect(Math.abs(axis[i]! / 20 - AXIS[i]!)).toBeLessThan(1e-13);
  });
});

describe('events', () => {
  it('every motion is told at its own instant', () => {
    const bench = new Bench([
      { kind: 'held', from: 0, within: 0.2 },
      { kind: 'tilt', from: 0.0101, to: [0, 0, 0, 1], over: 1 },
      { kind: 'free', from: 0.0302 },
    ]);
    bench.runTo(0.05);
    expect(bench.events.map((event) => [event.timeS, event.kind])).toEqual([
      [0, 'motion'],
      [0.0101, 'motion'],
      [0.0302, 'motion'],
      [0.0302, 'let go'],
    ]);
  });
});
