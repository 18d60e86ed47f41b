import { describe, expect, it } from 'vitest';
import { drive, newElement, stateAt, tickOnce } from './drive.ts';
import { solve } from './odex-solve.ts';

const W0 = 20 * Math.PI;
const WM = 50 * Math.PI;
const mountOf = (massRatio: number, dampingRatio = 0) => ({ naturalFrequency: 25, dampingRatio, massRatio });

describe('on a mount', () => {
  it('it settles as without one, and the mount carries both: nothing moves afterwards', () => {
    for (const massRatio of [0, 0.3, 2]) {
      const element = newElement({ mount: mountOf(massRatio, 0.1) }, 1e-3);
      let worst = 0;
      drive(
        element,
        1000,
        1e-3,
        () => 9.80665,
        () => {
          worst = Math.max(worst, Math.abs(stateAt(element, 1e-3).reading / 9.80665 - 1));
        },
      );
      expect(worst).toBeLessThan(1e-12);
    }
  });

  it('let go it swings in the two eigenfrequencies of the two masses (µ = 0.5, undamped)', () => {
    // M·z″ + K·z = 0 in the room: masses µ and 1 (mount), springs µω₀² between them and ω_m² to the ground. From 1 g to 0.
    // For relative x and y: y″ = −ω_m²y + µω₀²x, x″ = −ω₀²x − y″; eigenvalues λ = Ω²:
    //     λ² − (ω₀²(1 + µ) + ω_m²)λ + ω₀²ω_m² = 0
    const mu = 0.5;
    const trace = W0 ** 2 * (1 + mu) + WM ** 2;
    const root = Math.sqrt(trace ** 2 - 4 * W0 ** 2 * WM ** 2);
    const lambda = [(trace - root) / 2, (trace + root) / 2];
    const f = 9.80665;
    const x0 = -f / W0 ** 2;
    const y0 = (-(1 + mu) * f) / WM ** 2;
    // x = Σ a_k cos Ω_k t with Σa = x₀ and −Σλa = x″(0) = −ω₀²x₀ − y″(0)
    const second = -(W0 ** 2) * x0 - (-(WM ** 2) * y0 + mu * W0 ** 2 * x0);
    const a1 = (second + lambda[0]! * x0) / (lambda[0]! - lambda[1]!);
    const a0 = x0 - a1;
    for (const tickS of [1e-3, 0.03]) {
      const element = newElement({ dampingRatio: 0, mount: mountOf(mu) }, tickS);
      element.settle(f, 0);
      for (let tick = 0; tick < 0.3 / tickS; tick += 1) {
        tickOnce(element, tick, tickS, () => 0);
        for (const tau of [0.3 * tickS, tickS]) {
          const t = tick * tickS + tau;
          const exact = a0 * Math.cos(Math.sqrt(lambda[0]!) * t) + a1 * Math.cos(Math.sqrt(lambda[1]!) * t);
          expect(Math.abs(stateAt(element, tau).deflection - exact)).toBeLessThan(
            1e-13 * Math.abs(x0) * (1 + t / 0.01),
          );
        }
      }
    }
  });

  it('damped and forced it moves as odex says (µ = 0 and 0.7), to 1e-11', () => {
    const force = (t: number): number => 9 + 800 * t - 9000 * t * t;
    for (const mu of [0, 0.7]) {
      const [zeta, zetaM] = [0.05, 0.2];
      const instants = [0, 0.05, 0.1, 0.2];
      const exact = solve(
        (t, [x, v, y, u]) => {
          const inner = 2 * zeta * W0 * v! + W0 ** 2 * x!;
          const mountAcceleration = -force(t) - 2 * zetaM * WM * u! - WM ** 2 * y! + mu * inner;
          return [v!, -inner - force(t) - mountAcceleration, u!, mountAcceleration];
        },
        [-9 / W0 ** 2, 0, (-9 * (1 + mu)) / WM ** 2, 0],
        instants,
        0.001,
      );
      const element = newElement({ dampingRatio: zeta, mount: mountOf(mu, zetaM) }, 0.01);
      const x: number[] = [];
      drive(element, 20, 0.01, force, (tick) => {
        if (instants.includes(Math.round((tick + 1) * 10) / 1000)) x.push(stateAt(element, 0.01).deflection);
      });
      expect(x.length).toBe(3);
      x.forEach((value, k) => expect(Math.abs(value - exact[k + 1]![0]!)).toBeLessThan(1e-11 * 0.01));
    }
  });

  it('isolates by 1/√((1 − r²)² + (2ζr)²) at r times its frequency, in the steady state', () => {
    // What the element feels is f + ÿ: f through the mount's own second-order law, the damper's part included.
    const r = 3;
    const drivenAt = r * WM;
    const zeta = 0.1;
    const h = (2 * Math.PI) / drivenAt / 200;
    const element = newElement({ naturalFrequency: 2000, dampingRatio: 0.7, mount: mountOf(0, zeta) }, h);
    let peak = 0;
    drive(
      element,
      200 * 200,
      h,
      (t) => Math.sin(drivenAt * t),
      (tick) => {
        if (tick > 200 * 190) peak = Math.max(peak, Math.abs(stateAt(element, h).reading));
      },
    );
    const felt = Math.sqrt((1 + (2 * zeta * r) ** 2) / ((1 - r * r) ** 2 + (2 * zeta * r) ** 2));
    // The 2 kHz element reads 75 Hz within (75/2000)⁴ ≈ 2e-6, and 200 points miss a peak by (π/200)²/2.
    expect(Math.abs(peak / felt - 1)).toBeLessThan((Math.PI / 200) ** 2 / 2 + 4e-6);
  });

  it('as µ goes to 0 it becomes the mount that does not feel the element, stops included', () => {
    const run = (massRatio: number): number[] => {
      const element = newElement({ mount: mountOf(massRatio, 0.1), gap: 0.004, restitution: 0.6 }, 1e-3);
      const out: number[] = [];
      drive(
        element,
        120,
        1e-3,
        (t) => 9 + 300 * t,
        () => out.push(stateAt(element, 1e-3).deflection),
      );
      return out;
    };
    const limit = run(0);
    expect(limit.some((x) => Math.abs(x) === 0.004)).toBe(true);
    const difference = (massRatio: number): number =>
      Math.max(...run(massRatio).map((x, k) => Math.abs(x - limit[k]!))) / 0.004;
    expect(difference(1e-9)).toBeLessThan(1e-7);
    // It does something, in proportion.
    expect(difference(1e-3) / difference(1e-4)).toBeGreaterThan(5);
  });
});

describe('a stop between mass and mount', () => {
  it('shares the momentum: three touches of two undamped masses equal the closed form between them (µ = 0.5)', () => {
    const mu = 0.5;
    const gap = 0.004;
    const e = 0.7;
    const trace = W0 ** 2 * (1 + mu) + WM ** 2;
    const root = Math.sqrt(trace ** 2 - 4 * W0 ** 2 * WM ** 2);
    const omega = [Math.sqrt((trace - root) / 2), Math.sqrt((trace + root) / 2)];
    // Eigenvectors [x, y]: from y″ = −ω_m²y + µω₀²x, y/x = µω₀²/(ω_m² − λ).
    const ratio = omega.map((w) => (mu * W0 ** 2) / (WM ** 2 - w ** 2));
    let [x0, v0, y0, u0] = [0.001, 0.9, 0, 0];
    const at = (t: number): [number, number, number, number] => {
      // x = a₀ + a₁ in the eigenmodes, y = r₀a₀ + r₁a₁
      const split = (p: number, q: number): [number, number] => [
        (ratio[1]! * p - q) / (ratio[1]! - ratio[0]!),
        (q - ratio[0]! * p) / (ratio[1]! - ratio[0]!),
      ];
      const position = split(x0, y0);
      const velocity = split(v0, u0);
      const [a, b] = [0, 1].map((k) => {
        const w = omega[k]!;
        return [
          position[k]! * Math.cos(w * t) + (velocity[k]! / w) * Math.sin(w * t),
          velocity[k]! * Math.cos(w * t) - w * position[k]! * Math.sin(w * t),
        ] as const;
      }) as [readonly [number, number], readonly [number, number]];
      return [a[0] + b[0], a[1] + b[1], ratio[0]! * a[0] + ratio[1]! * b[0], ratio[0]! * a[1] + ratio[1]! * b[1]];
    };
    const expected: [number, number][] = [];
    for (let time = 0; expected.length < 3; ) {
      let t = 1e-6;
      while (Math.abs(at(t)[0]) < gap && t < 1) t += 1e-6;
      let low = t - 1e-6;
      for (let halving = 0; halving < 60; halving += 1) {
        const middle = (low + t) / 2;
        if (Math.abs(at(middle)[0]) < gap) low = middle;
        else t = middle;
      }
      time += t;
      [x0, v0, y0, u0] = at(t);
      expected.push([time, Math.abs(v0)]);
      // Impulse J on the mass (per its mass), −µJ on the mount: relative velocity changes by (1 + µ)J.
      const impulse = (-(1 + e) * v0) / (1 + mu);
      v0 += (1 + mu) * impulse;
      u0 -= mu * impulse;
    }

    const tickS = 0.002;
    const spec = {
      dampingRatio: 0,
      mount: mountOf(mu),
      gap,
      restitution: e,
      start: { deflection: 0.001, velocity: 0.9 },
    };
    const element = newElement(spec, tickS);
    const hits: [number, number][] = [];
    drive(
      element,
      100,
      tickS,
      () => 0,
      (tick) => {
        for (const { tauS, speedMS } of element.stopHits) hits.push([tick * tickS + tauS, speedMS]);
      },
    );
    expected.forEach(([time, speed], k) => {
      expect(Math.abs(hits[k]![0] / time - 1)).toBeLessThan(1e-12);
      expect(Math.abs(hits[k]![1] / speed - 1)).toBeLessThan(1e-11);
    });
  });

  it('a mass resting there rides with the mount as one body: released when the mount pulls away', () => {
    // µ = 0: the mount swings by itself about −f/ω_m²; the stop holds until f + ÿ = −ω_m²y falls to ω₀²·gap.
    const gap = 0.002;
    const element = newElement({ mount: mountOf(0), gap }, 1e-3);
    element.settle(20, 0); // sag 5 mm: on the stop at −gap
    // From 20 to 10: ω_m²y = −10 − 10 cos ω_m t; felt 10 + 10 cos ω_m t = ω₀²·gap
    const release = Math.acos((W0 ** 2 * gap - 10) / 10) / WM;
    const tick = Math.floor(release / 1e-3);
    for (let k = 0; k <= tick; k += 1) tickOnce(element, k, 1e-3, () => 10);
    const tau = release - tick * 1e-3;
    expect(stateAt(element, tau - 1e-12).onStop).toBe(-1);
    expect(stateAt(element, tau + 1e-12).onStop).toBe(0);
  });
});
