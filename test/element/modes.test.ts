import { describe, expect, it } from 'vitest';
import type { ModeSpec } from '../../src/contract/run.ts';
import { drive, newElement, stateAt, tickOnce } from './drive.ts';
import { solve } from './odex-solve.ts';

const G = 9.80665;
const GAP = 0.004;

/** Three modes with nothing round about them; each an undamped oscillator unless stated. */
const MODES: readonly ModeSpec[] = [
  { naturalFrequency: 10, dampingRatio: 0, participation: 1.3, shape: 1.1, modalMass: 0.02 },
  { naturalFrequency: 63, dampingRatio: 0, participation: 0.6, shape: -0.9, modalMass: 0.013 },
  { naturalFrequency: 171, dampingRatio: 0, participation: 0.25, shape: 0.7, modalMass: 0.017 },
];
const REMAINDER = 1.7e-6;
const omegaOf = ({ naturalFrequency }: ModeSpec): number => 2 * Math.PI * naturalFrequency;

describe('several modes', () => {
  const compliance = MODES.reduce(
    (sum, mode) => sum + (mode.shape * mode.participation) / omegaOf(mode) ** 2,
    REMAINDER,
  );
  const damped = MODES.map((mode, n) => ({ ...mode, dampingRatio: 0.03 * (n + 1) }));

  it('sag together by S·f, the static remainder with them, and read f', () => {
    const element = newElement({ modes: damped, staticRemainder: REMAINDER }, 1e-3);
    drive(element, 5, 1e-3, () => G);
    const { deflection, reading } = stateAt(element, 1e-3);
    expect(Math.abs(deflection / (-compliance * G) - 1)).toBeLessThan(1e-14);
    expect(Math.abs(reading / G - 1)).toBeLessThan(1e-14);
  });

  it('swing each by itself: x = Σφq − R·f under a parabola of the force, at any tick', () => {
    // q = −Γ(f/ω² − f″/ω⁴) + A cos ωt + B sin ωt, from rest in balance with f(0).
    const [f0, f1, f2] = [5, -300, 40_000];
    const force = (t: number): number => f0 + f1 * t + (f2 * t * t) / 2;
    for (const tickS of [1e-4, 0.01]) {
      const element = newElement({ modes: MODES, staticRemainder: REMAINDER }, tickS);
      drive(element, Math.round(0.05 / tickS), tickS, force);
      const t = 0.05;
      let x = -REMAINDER * force(t);
      let v = -REMAINDER * (f1 + f2 * t);
      for (const mode of MODES) {
        const w = omegaOf(mode);
        const gamma = mode.participation;
        const cosine = (-gamma * f2) / w ** 4;
        const sine = (gamma * f1) / w ** 3;
        x +=
          mode.shape * (-gamma * (force(t) / w ** 2 - f2 / w ** 4) + cosine * Math.cos(w * t) + sine * Math.sin(w * t));
        v += mode.shape * ((-gamma * (f1 + f2 * t)) / w ** 2 + w * (sine * Math.cos(w * t) - cosine * Math.sin(w * t)));
      }
      const state = stateAt(element, tickS);
      expect(Math.abs(state.deflection / x - 1)).toBeLessThan(1e-13);
      expect(Math.abs(state.velocity / v - 1)).toBeLessThan(1e-12);
    }
  });

  it('one mode with φ = 1 and Γ = 1 is the single element, bit for bit', () => {
    const mode = { naturalFrequency: 10, dampingRatio: 0.05, participation: 1, shape: 1, modalMass: 0.3 };
    const runs = [{ modes: [mode] }, {}].map((spec) => {
      const element = newElement({ ...spec, gap: GAP }, 1e-3);
      const out: number[] = [];
      drive(
        element,
        300,
        1e-3,
        (t) => 30 * Math.cos(50 * t),
        () => out.push(stateAt(element, 7e-4).deflection),
      );
      return out;
    });
    expect(runs[0]).toEqual(runs[1]);
  });
});

describe('several modes at a stop', () => {
  const [first, second] = MODES as readonly [ModeSpec, ModeSpec, ModeSpec];

  it('share the impulse by φ/M: eight touches of two undamped modes equal the closed forms between them', () => {
    const e = 0.95;
    const force = 8;
    const modes = [first, second];
    // Coordinates about the balance under the force; the start is the settled one with a velocity along the static pull.
    const load = modes.map((mode) => mode.shape / (mode.modalMass * omegaOf(mode) ** 2));
    const perLoad = modes.reduce((sum, mode, n) => sum + mode.shape * load[n]!, 0);
    const balance = modes.map((mode) => (-mode.participation * force) / omegaOf(mode) ** 2);
    const sag = modes.reduce((sum, mode, n) => sum + mode.shape * balance[n]!, 0);
    let q = [0, 0];
    let v = load.map((value) => (1.5 * value) / perLoad);
    const at = (t: number): { x: number; speed: number; q: number[]; v: number[] } => {
      const now = modes.map((mode, n) => {
        const w = omegaOf(mode);
        return [
          q[n]! * Math.cos(w * t) + (v[n]! / w) * Math.sin(w * t),
          v[n]! * Math.cos(w * t) - w * q[n]! * Math.sin(w * t),
        ] as const;
      });
      return {
        x: sag + modes.reduce((sum, mode, n) => sum + mode.shape * now[n]![0], 0),
        speed: modes.reduce((sum, mode, n) => sum + mode.shape * now[n]![1], 0),
        q: now.map(([position]) => position),
        v: now.map(([, velocity]) => velocity),
      };
    };
    const mobility = modes.reduce((sum, mode) => sum + mode.shape ** 2 / mode.modalMass, 0);
    const expected: { time: number; speed: number; side: number }[] = [];
    for (let time = 0; expected.length < 8; ) {
      let t = 1e-6;
      while (Math.abs(at(t).x) < GAP && t < 1) t += 1e-6;
      let low = t - 1e-6;
      for (let halving = 0; halving < 60; halving += 1) {
        const middle = (low + t) / 2;
        if (Math.abs(at(middle).x) < GAP) low = middle;
        else t = middle;
      }
      const touch = at(t);
      time += t;
      expected.push({ time, speed: Math.abs(touch.speed), side: Math.sign(touch.x) });
      const impulse = (-(1 + e) * touch.speed) / mobility;
      q = touch.q;
      v = touch.v.map((velocity, n) => velocity + (impulse * modes[n]!.shape) / modes[n]!.modalMass);
    }

    const tickS = 0.002;
    const element = newElement({ modes, gap: GAP, restitution: e, start: { deflection: sag, velocity: 1.5 } }, tickS);
    const hits: { time: number; speed: number; side: number }[] = [];
    drive(
      element,
      100,
      tickS,
      () => force,
      (tick) => {
        for (const { tauS, speedMS, side } of element.stopHits)
          hits.push({ time: tick * tickS + tauS, speed: speedMS, side });
      },
    );
    expected.forEach((touch, k) => {
      expect(hits[k]!.side).toBe(touch.side);
      // Each touch passes the rounding of the last on, grown by the faster mode: measured 1e-12 after eight.
      expect(Math.abs(hits[k]!.time / touch.time - 1)).toBeLessThan(1e-11);
      expect(Math.abs(hits[k]!.speed / touch.speed - 1)).toBeLessThan(1e-10);
    });
  });

  it('held there the others swing on, at the frequency of the constrained pair, and the reaction decides the release', () => {
    // φ₁q₁ + φ₂q₂ = −gap leaves one coordinate along (φ₂, −φ₁): mass M₁φ₂² + M₂φ₁², stiffness M₁ω₁²φ₂² + M₂ω₂²φ₁².
    const modes = [first, second];
    const [w1, w2] = [omegaOf(first), omegaOf(second)];
    const mass = first.modalMass * second.shape ** 2 + second.modalMass * first.shape ** 2;
    const stiffness = first.modalMass * (w1 * second.shape) ** 2 + second.modalMass * (w2 * first.shape) ** 2;
    const frequency = Math.sqrt(stiffness / mass);
    // Settled on the stop under 40, then 13 from t = 0: the free coordinate swings about its new balance. The reaction on
    // the pick-off, the force of the stop, is −Σφ(M q̈ + Mω²q + MΓf)/Σφ² … from any one mode: λ = M(q̈ + ω²q + Γf)/φ.
    const held = (f: number): number[] => {
      // min ½ΣMω²q² + ΣMΓf q under the constraint, by its one multiplier
      const soft = modes.reduce((sum, mode) => sum + mode.shape ** 2 / (mode.modalMass * omegaOf(mode) ** 2), 0);
      const free = modes.reduce((sum, mode) => sum - (mode.shape * mode.participation * f) / omegaOf(mode) ** 2, 0);
      const lambda = (-GAP - free) / soft;
      return modes.map(
        (mode) => (-mode.participation * f + (lambda * mode.shape) / mode.modalMass) / omegaOf(mode) ** 2,
      );
    };
    const before = held(40);
    const after = held(13);
    const reaction = (t: number): number => {
      const swing = (before[0]! - after[0]!) * Math.cos(frequency * t);
      const q1 = after[0]! + swing;
      return (first.modalMass * (-(frequency ** 2) * swing + w1 ** 2 * q1 + first.participation * 13)) / first.shape;
    };
    let release = 0;
    while (reaction(release) > 0 && release < 1) release += 1e-6;
    let low = release - 1e-6;
    for (let halving = 0; halving < 60; halving += 1) {
      const middle = (low + release) / 2;
      if (reaction(middle) > 0) low = middle;
      else release = middle;
    }
    expect(release).toBeGreaterThan(1e-4);

    for (const tickS of [1e-4, 0.02]) {
      const element = newElement({ modes, gap: GAP }, tickS);
      element.settle(40, 0);
      expect(stateAt(element, 0).onStop).toBe(-1);
      const tick = Math.floor(release / tickS);
      for (let k = 0; k <= tick; k += 1) tickOnce(element, k, tickS, () => 13);
      const tau = release - tick * tickS;
      expect(stateAt(element, tau - 1e-12).onStop).toBe(-1);
      expect(stateAt(element, tau + 1e-12).onStop).toBe(0);
    }
  });

  it('with a static remainder and a bending force too: the release is where odex has the reaction turn', () => {
    // Held, φ₁q₁ + φ₂q₂ = −gap + R·f(t). From any mode the stop's force is λ = M(q̈ + ω²q + Γf)/φ: equal ones give q̈₁.
    const modes = [first, second];
    const remainder = 2e-5;
    const force = (t: number): number => 45 - 40_000 * t * t; // level at first: settled without motion
    const bend = -80_000; // f″
    const load = modes.map((mode) => mode.modalMass / mode.shape);
    const partner = (t: number, q: number): number => (-GAP + remainder * force(t) - first.shape * q) / second.shape;
    const acceleration = (t: number, q: number): number => {
      const one = omegaOf(first) ** 2 * q + first.participation * force(t);
      const two = omegaOf(second) ** 2 * partner(t, q) + second.participation * force(t);
      // load₁(q̈₁ + one) = load₂(q̈₂ + two), q̈₂ = (R·f″ − φ₁q̈₁)/φ₂
      return (
        (load[1]! * ((remainder * bend) / second.shape + two) - load[0]! * one) /
        (load[0]! + (load[1]! * first.shape) / second.shape)
      );
    };
    const reaction = (t: number, q: number): number =>
      load[0]! * (acceleration(t, q) + omegaOf(first) ** 2 * q + first.participation * force(t));
    // Settled at f(0): q as the pull and the force leave them, N from x = −gap.
    const compliance = modes.map((mode) => (mode.shape * mode.participation) / omegaOf(mode) ** 2);
    const pullLoad = modes.map((mode) => mode.shape / (mode.modalMass * omegaOf(mode) ** 2));
    const soft = modes.reduce((sum, mode, n) => sum + mode.shape * pullLoad[n]!, 0);
    const pull = (-GAP + (remainder + compliance[0]! + compliance[1]!) * force(0)) / soft;
    const q0 = pullLoad[0]! * pull - (first.participation * force(0)) / omegaOf(first) ** 2;

    const instants = Array.from({ length: 401 }, (_, k) => k * 1e-4);
    const states = solve((t, [q, v]) => [v!, acceleration(t, q!)], [q0, 0], instants, 1e-3);
    const k = instants.findIndex((t, index) => reaction(t, states[index]![0]!) < 0);
    expect(k).toBeGreaterThan(20);
    let [low, high] = [instants[k - 1]!, instants[k]!];
    for (let halving = 0; halving < 40; halving += 1) {
      const middle = (low + high) / 2;
      const [, state] = solve(
        (t, [q, v]) => [v!, acceleration(t, q!)],
        states[k - 1]!,
        [instants[k - 1]!, middle],
        1e-3,
      );
      if (reaction(middle, state![0]!) > 0) low = middle;
      else high = middle;
    }
    for (const tickS of [1e-4, 0.01]) {
      const element = newElement({ modes, staticRemainder: remainder, gap: GAP }, tickS);
      element.settle(force(0), 0);
      const tick = Math.floor(high / tickS);
      for (let n = 0; n <= tick; n += 1) tickOnce(element, n, tickS, force);
      const tau = high - tick * tickS;
      expect(stateAt(element, tau - 1e-9).onStop).toBe(-1);
      expect(stateAt(element, tau + 1e-9).onStop).toBe(0);
    }
  });

  it.each([1e-5, -1e-5])(
    'with a static remainder of %s s² the pick-off stays between the stops where the force jumps',
    (staticRemainder) => {
      const element = newElement({ modes: MODES, staticRemainder, gap: GAP, restitution: 0.4 }, 1e-3);
      element.settle(0, 0);
      for (let tick = 0; tick < 400; tick += 1) {
        const f = tick % 7 < 3 ? 55 : -48;
        tickOnce(element, tick, 1e-3, () => f);
        for (const tau of [0, 3e-4, 1e-3]) expect(Math.abs(stateAt(element, tau).deflection)).toBeLessThanOrEqual(GAP);
      }
    },
  );

  it('with a static remainder it leaves from the stop though the force has jumped while it rested', () => {
    const element = newElement({ modes: MODES, staticRemainder: 2e-5, gap: GAP }, 1e-3);
    element.settle(60, 0);
    let tick = 0;
    for (; tick < 3 || stateAt(element, 1e-3).onStop !== 0; tick += 1) {
      const ramp = (t: number): number => (tick < 3 ? 60 : 54 - 400 * (t - 0.003)); // jumps between two ticks
      tickOnce(element, tick, 1e-3, ramp);
    }
    expect(tick).toBeGreaterThan(5);
    let [low, high] = [0, 1e-3];
    for (let halving = 0; halving < 40; halving += 1) {
      const middle = (low + high) / 2;
      if (stateAt(element, middle).onStop !== 0) low = middle;
      else high = middle;
    }
    expect(Math.abs(stateAt(element, high).deflection / -GAP - 1)).toBeLessThan(1e-9);
  });
});
