/**
 * An element on a mount: two masses on two springs. Eigenvalues from the frequency equation of the two-mass system, any text on
 * vibration, e.g. J. P. Den Hartog, Mechanical Vibrations, chapter on two degrees of freedom (from memory); with damping
 * odex on Newton's equations of the two masses in the room.
 */
import { describe, expect, it } from 'vitest';
import { solve } from '../housing/reference-solver.ts';
import { STANDARD_GRAVITY as G, lookAt, rowsOf, scenario } from './scenario-run.ts';

const UP = [0, 1, 0] as const;
const F0 = 20;
const W0 = 2 * Math.PI * F0;

function onMount(mountHz: number, mountZeta: number, massRatio: number, zeta: number): object {
  const mount = { naturalFrequency: mountHz, dampingRatio: mountZeta, massRatio };
  return { name: 'z', axis: UP, naturalFrequency: F0, dampingRatio: zeta, mount };
}

/** λ² − λ(ω_m² + (1 + µ)ω₀²) + ω_m²ω₀² = 0 */
function eigenfrequencies(mountHz: number, mu: number): [number, number] {
  const wm2 = (2 * Math.PI * mountHz) ** 2;
  const half = (wm2 + (1 + mu) * W0 * W0) / 2;
  const root = Math.sqrt(half * half - wm2 * W0 * W0);
  return [Math.sqrt(half - root), Math.sqrt(half + root)];
}

describe('undamped, released from rest under gravity', () => {
  it.for([
    [7, 0],
    [7, 0.3],
    [20, 0.05],
    [31, 1.7],
  ] as const)('on a %d Hz mount with µ = %d swings with the two eigenfrequencies and no other', ([mountHz, mu]) => {
    const rate = 997;
    const from = 5 / rate;
    const rows = rowsOf(
      scenario({
        duration: 1,
        elements: [onMount(mountHz, 0, mu, 0)],
        motions: [
          { kind: 'held', from: 0 },
          { kind: 'free', from, height: 100 },
        ],
      }),
    );
    const x = rows.column('z_deflection_m').slice(5);
    const sag = G / (W0 * W0);
    // It hangs at rest by its own weight; the mount carries both masses.
    expect(Math.abs(x[0]! + sag)).toBeLessThan(1e-15);
    // A sum of sines of ω₁ and ω₂ obeys (D² − 2c₁D + 1)(D² − 2c₂D + 1)x = 0, D the shift by one row, cᵢ = cos ωᵢd.
    const [c1, c2] = eigenfrequencies(mountHz, mu).map((w) => Math.cos(w / rate)) as [number, number];
    let worst = 0;
    for (let k = 2; k < x.length - 2; k += 1) {
      const outer = x[k - 2]! + x[k + 2]!;
      const inner = x[k - 1]! + x[k + 1]!;
      worst = Math.max(worst, Math.abs(outer - 2 * (c1 + c2) * inner + (2 + 4 * c1 * c2) * x[k]!));
    }
    // Scaled by the smaller of (ω₁d)², times (ω₂d)², which a wrong frequency would leave over: 1e-9 of it.
    const [w1, w2] = eigenfrequencies(mountHz, mu);
    expect(worst).toBeLessThan(1e-8 * sag * ((w1 * w2) / rate / rate) ** 2 + 1e-13 * sag);
  });
});

describe('damped', () => {
  it.for([
    [6, 0.2, 0, 0.3],
    [6, 0.2, 0.4, 0.3],
    [24, 0.05, 1.5, 0.02],
  ] as const)(
    'shaken on a %d Hz mount, ζ_m = %d, µ = %d, ζ = %d, goes where Newton’s equations of two masses in the room lead',
    ([mountHz, mountZeta, mu, zeta]) => {
      const from = 0.01234;
      const A = 4;
      const drive = 2 * Math.PI * 9;
      const ease = 0.3;
      const wm = 2 * Math.PI * mountHz;
      const smooth = (u: number): number => (u >= 1 ? 1 : u ** 3 * (10 - 15 * u + 6 * u * u));
      const smoothSlope = (u: number): number => (u >= 1 ? 0 : 30 * (u * (1 - u)) ** 2);
      // The base moves by the law of the shake; nothing of it is differentiated twice.
      const base = (t: number): number => (-A / drive ** 2) * smooth(t / ease) * Math.sin(drive * t);
      const baseRate = (t: number): number =>
        (-A / drive ** 2) *
        ((smoothSlope(t / ease) / ease) * Math.sin(drive * t) + smooth(t / ease) * drive * Math.cos(drive * t));
      // Heights of mount and mass in the room from where the springs are unloaded; masses 1 and µ. For µ = 0 the mass is a test
      // mass: it feels the mount, the mount does not feel it.
      const rates = (t: number, [m, p, mv, pv]: readonly number[]): number[] => {
        const springs = W0 * W0 * (p! - m!) + 2 * zeta * W0 * (pv! - mv!);
        const onMountForce = -(wm * wm) * (m! - base(t)) - 2 * mountZeta * wm * (mv! - baseRate(t));
        return [mv!, pv!, onMountForce + mu * springs - G, -springs - G];
      };
      const sag = G / (W0 * W0);
      const mountSag = ((1 + mu) * G) / (wm * wm);
      const start = [-mountSag, -mountSag - sag, 0, 0];
      lookAt(
        scenario({
          duration: 1,
          elements: [onMount(mountHz, mountZeta, mu, zeta)],
          motions: [
            { kind: 'held', from: 0 },
            { kind: 'shake', from, axis: UP, sine: { frequency: 9, amplitude: A, ease } },
          ],
        }),
        [0.1, 0.25, 0.4, 0.7].map((t) => from + t),
        ({ timeS, elements }) => {
          const [m, p, mv, pv] = solve(rates, 0, start, timeS - from);
          // (Ωh)⁴ of the parabola over a tick: 1e-9 of a deflection of the size of the sag.
          expect(Math.abs(elements[0]!.deflection - (p! - m!)) / sag).toBeLessThan(1e-8);
          expect(Math.abs(elements[0]!.velocity - (pv! - mv!)) / (sag * W0)).toBeLessThan(1e-8);
        },
      );
    },
  );
});
