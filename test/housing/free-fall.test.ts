import { describe, expect, it } from 'vitest';
import { Forces } from '../../src/housing/forces.ts';
import { FreeBody } from '../../src/housing/free-body.ts';
import { GroupStep, LAYOUT } from '../../src/housing/group-step.ts';
import { newKinematics } from '../../src/housing/kinematics.ts';
import { rotate } from '../../src/numerics/quaternion.ts';
import { norm, vector } from '../../src/numerics/vector.ts';
import { Bench, BOX, STANDARD_GRAVITY as G, TICK_S } from './bench.ts';
import { solve } from './reference-solver.ts';

const { EXTRA, Q, V, W, X } = LAYOUT;
const [A, B, C] = BOX.size;
const M = BOX.mass;
/** A uniform box, m(b² + c²)/12 (any handbook). */
const I = [(M * (B * B + C * C)) / 12, (M * (A * A + C * C)) / 12, (M * (A * A + B * B)) / 12] as const;

describe('a fall', () => {
  it('is the parabola h − gt²/2 to rounding, whatever the tick', () => {
    for (const tickS of [TICK_S, 1e-3, 1 / 60]) {
      const bench = new Bench([{ kind: 'free', from: 0 }], { tickS, position: [0, 5, 0] });
      bench.runTo(1);
      const k = bench.at(1);
      // one rounding of 5 m a tick
      expect(Math.abs(k.position[1]! - (5 - G / 2))).toBeLessThan(5e-16 / tickS);
      expect(Math.abs(k.velocity[1]! + G)).toBeLessThan(1e-15 / tickS);
      expect(k.position[0]).toBe(0);
      expect(Array.from(k.attitude)).toEqual([0, 0, 0, 1]);
    }
  });

  it('is the same parabola while it spins', () => {
    const bench = new Bench([{ kind: 'free', from: 0, spin: [6, 7, -4] }], { position: [0, 5, 0] });
    bench.runTo(1);
    expect(Math.abs(bench.at(1).position[1]! - (5 - G / 2))).toBeLessThan(1e-11);
  });

  it('in air nears the terminal speed √(2mg/ρC_dA) as tanh, and then feels g', () => {
    // the fall with quadratic drag from rest: v = −v_t tanh(gt/v_t), y = y₀ − (v_t²/g) ln cosh(gt/v_t) (any text on mechanics)
    const airDrag = { area: 0.3, coefficient: 1.05, airDensity: 1.204 };
    const terminal = Math.sqrt((2 * M * G) / (airDrag.airDensity * airDrag.coefficient * airDrag.area));
    for (const tickS of [TICK_S, 1e-2]) {
      const bench = new Bench([{ kind: 'free', from: 0, airDrag }], { tickS, position: [0, 50, 0] });
      for (const t of [0.31, 1.7, 6]) {
        bench.runTo(t);
        const k = bench.at(t);
        const x = (G * t) / terminal;
        expect(Math.abs(k.velocity[1]! + terminal * Math.tanh(x))).toBeLessThan(1e-8);
        expect(Math.abs(k.position[1]! - 50 + (terminal ** 2 / G) * Math.log(Math.cosh(x)))).toBeLessThan(1e-8);
        expect(Math.abs(k.specificForce[1]! - G * Math.tanh(x) ** 2)).toBeLessThan(1e-7);
      }
    }
  });

  it('tells its height and speed as it is let go, off the tick', () => {
    const bench = new Bench([
      { kind: 'push', from: 0, axis: [0, 1, 0], acceleration: 2, within: 0.05 },
      { kind: 'free', from: 0.10007 },
    ]);
    bench.runTo(0.2);
    const letGo = bench.first('let go');
    expect(letGo.timeS).toBe(0.10007);
    // ∫S = 1/2 and ∫∫S = 1/7 over the easing
    const speed = 2 * (0.10007 - 0.025);
    const height = 1 - B / 2 + 2 * (0.05 ** 2 / 7 + 0.025 * 0.05007 + 0.05007 ** 2 / 2);
    expect(Math.abs(letGo.verticalSpeedMS - speed)).toBeLessThan(1e-14);
    expect(Math.abs(letGo.heightM - height)).toBeLessThan(1e-14);
  });

  it('a velocity and spin taken over go on', () => {
    const bench = new Bench([
      { kind: 'spin', from: 0, axis: [0, 1, 0], rate: 9, within: 0.1 },
      { kind: 'free', from: 0.2 },
    ]);
    bench.runTo(1.2);
    const k = bench.at(1.2);
    expect(Math.abs(k.angularVelocity[1]! - 9)).toBeLessThan(1e-12);
    // turned by 9·(0.05 + 0.1) + 9 rad about y
    expect(Math.abs(k.attitude[3]! - Math.cos((9 * 0.15 + 9) / 2))).toBeLessThan(1e-11);
  });
});

/** Euler's equations and the attitude's rate: y = [q, ω in the housing]. */
function torqueFree(_: number, y: readonly number[]): number[] {
  const [qx, qy, qz, qw, wx, wy, wz] = y as [number, number, number, number, number, number, number];
  return [
    0.5 * (qw * wx + qy * wz - qz * wy),
    0.5 * (qw * wy + qz * wx - qx * wz),
    0.5 * (qw * wz + qx * wy - qy * wx),
    -0.5 * (qx * wx + qy * wy + qz * wz),
    ((I[1] - I[2]) * wy * wz) / I[0],
    ((I[2] - I[0]) * wz * wx) / I[1],
    ((I[0] - I[1]) * wx * wy) / I[2],
  ];
}

function angularMomentum(q: Float64Array, w: Float64Array): Float64Array {
  const out = vector(I[0] * w[0]!, I[1] * w[1]!, I[2] * w[2]!);
  rotate(q, out, out);
  return out;
}

describe('a box of unequal sides tumbling free of torque for ten seconds', () => {
  const spins = [
    ['anyhow', [6, 7, -4]],
    ['near its middle axis, which it leaves and comes back to', [10, 0.01, 0.02]],
  ] as const;
  for (const [how, spin] of spins) {
    it.for([1e-4, TICK_S, 1e-3])(`${how}, keeps its angular momentum and follows odex, tick %d s`, (tickS) => {
      const bench = new Bench([{ kind: 'free', from: 0, spin }], { tickS });
      const k = newKinematics();
      bench.step();
      bench.housing.kinematics(0, 0, k);
      const before = angularMomentum(k.attitude, k.angularVelocity);
      let turned = false;
      while (bench.timeS <= 10) {
        bench.step();
        if (bench.tick % 100 !== 0) continue;
        bench.housing.present(k);
        const now = angularMomentum(k.attitude, k.angularVelocity);
        for (let i = 0; i < 3; i++) expect(Math.abs(now[i]! - before[i]!)).toBeLessThan(1e-12 * norm(before));
        turned ||= k.angularVelocity[0]! < -5;
      }
      if (spin[1] === 0.01) expect(turned).toBe(true);
      bench.at(10, k);
      const y = solve(torqueFree, 0, [0, 0, 0, 1, ...spin], 10);
      const sign = Math.sign(y[3]! * k.attitude[3]! + y[0]! * k.attitude[0]!);
      // the flip magnifies what goes before it: measured 3e-8, anyhow 2e-10
      for (let i = 0; i < 4; i++) expect(Math.abs(sign * k.attitude[i]! - y[i]!)).toBeLessThan(1e-7);
      for (let i = 0; i < 3; i++) expect(Math.abs(k.angularVelocity[i]! - y[4 + i]!)).toBeLessThan(1e-6);
    });
  }
});

describe('the step of the rigid body', () => {
  const body = new FreeBody(BOX);
  const forces = new Forces(M, body.inertia, Float64Array.of(A / 2, B / 2, C / 2), {
    area: 2,
    coefficient: 1,
    airDensity: 1.2,
  });
  forces.gravity = G;
  const start = new Float64Array(EXTRA);
  start[V] = 3;
  start[Q + 3] = 1;
  [5, -6, 3].forEach((w, i) => (start[W + i] = I[i]! * w));

  function run(steps: number): Float64Array {
    const step = new GroupStep(0);
    const state = start.slice();
    const h = 0.4 / steps;
    for (let i = 0; i < steps; i++) {
      step.run(forces, state, h, false);
      body.advance(state, h, step, state);
      step.finishRest(state, h, false, state);
    }
    return state;
  }

  it('has the inertia of a uniform box', () => {
    for (let i = 0; i < 3; i++) expect(Math.abs(body.inertia[i]! / I[i]! - 1)).toBeLessThan(1e-15);
  });

  it('is of observed order 4 in place and attitude, tumbling through air', () => {
    const fine = run(3200);
    const errors = [100, 200, 400].map((steps) => {
      const state = run(steps);
      const worst = (from: number, count: number): number =>
        Math.max(...Array.from({ length: count }, (_, i) => Math.abs(state[from + i]! - fine[from + i]!)));
      return [worst(X, 3), worst(Q, 4)] as const;
    });
    for (const what of [0, 1] as const) {
      const orders = [0, 1].map((i) => Math.log2(errors[i]![what] / errors[i + 1]![what]));
      const order = (orders[0]! + orders[1]!) / 2;
      expect(Math.abs(order - 4)).toBeLessThan(0.2);
    }
  });

  it('does not lead by half a tick: the place after one step of h is hv − gh²/2', () => {
    const out = new Float64Array(EXTRA);
    body.fall(start, 0.01, G, out);
    expect(out[X]).toBe(0.03);
    expect(Math.abs(out[X + 1]! + 0.5 * G * 1e-4)).toBeLessThan(1e-18);
  });
});
