/**
 * What happens must not depend on the tick: with a force that is a parabola over each millisecond, ticks of 1 ms and of
 * a third of it see the same force, and every instant, touch and release must come out the same.
 */
import { describe, expect, it } from 'vitest';
import type { ElementSpec, ModeSpec } from '../../src/contract/run.ts';
import { newElement, none, type Signal, stateAt } from './drive.ts';

const WIDTH = 1e-3;
const TICKS = 200;
const force: Signal = (t) => 30 * Math.sin(40 * t) + 8 * Math.sin(333 * t) + 9.8;
const spin: Signal = (t) => 1500 * Math.sin(20 * t) ** 2;

const MODES: readonly ModeSpec[] = [10, 63, 170].map((naturalFrequency, n) => ({
  naturalFrequency,
  dampingRatio: 0.05,
  participation: 1.2 / (1 + n),
  shape: n % 2 === 0 ? 1 : -1,
  modalMass: 0.02,
}));
const mount = { naturalFrequency: 25, dampingRatio: 0.3, massRatio: 0 };
const heavy = { ...mount, massRatio: 0.5 };
const gap = 0.003;

const CASES: readonly [string, Partial<ElementSpec>, Signal][] = [
  ['stops', { gap, restitution: 0.6 }, none],
  ['stops, strongly damped', { gap, dampingRatio: 8 }, none],
  ['stops, three modes and their remainder', { gap, modes: MODES, staticRemainder: 1e-6 }, none],
  ['stops, a mount', { gap, mount }, none],
  ['stops, a mount that feels the element', { gap, mount: heavy }, none],
  ['stops, three modes, their remainder and a mount', { gap, modes: MODES, staticRemainder: 1e-6, mount }, none],
  ['stops, a cubic spring', { gap, cubicStiffness: 4e7 }, none],
  ['stops, a cubic spring, three modes', { gap, cubicStiffness: 4e7, modes: MODES }, none],
  ['stops, a cubic spring, a mount that feels the element', { gap, cubicStiffness: 4e7, mount: heavy }, none],
  ['stops, the field at the mass in a spin', { gap, fieldAtMass: true }, spin],
  ['stops, the field at the mass in a spin, a mount', { gap, fieldAtMass: true, mount: heavy }, spin],
];

interface Run {
  readonly deflections: number[];
  readonly touches: number[];
}

function run(spec: Partial<ElementSpec>, softening: Signal, parts: number): Run {
  const tickS = WIDTH / parts;
  const element = newElement(spec, tickS);
  element.settle(force(0), softening(0));
  const deflections: number[] = [];
  const touches: number[] = [];
  for (let wide = 0; wide < TICKS; wide += 1) {
    const through = (signal: Signal): Signal => {
      const [a, b, c] = [signal(wide * WIDTH), signal((wide + 0.5) * WIDTH), signal((wide + 1) * WIDTH)];
      return (u) => a + u * (4 * b - 3 * a - c + 2 * u * (a - 2 * b + c));
    };
    const [f, w] = [through(force), through(softening)];
    for (let part = 0; part < parts; part += 1) {
      const [u0, u1, u2] = [part / parts, (part + 0.5) / parts, (part + 1) / parts];
      element.beginTick(wide * parts + part);
      element.advance(0, tickS, f(u0), f(u1), f(u2), w(u0), w(u1), w(u2));
      element.endTick();
      for (const { tauS } of element.stopHits) touches.push((wide * parts + part) * tickS + tauS);
    }
    deflections.push(stateAt(element, tickS).deflection);
  }
  return { deflections, touches };
}

describe('a tick of 1 ms and three of a third of it give the same', () => {
  for (const [name, spec, softening] of CASES) {
    it(name, () => {
      const coarse = run(spec, softening, 1);
      const fine = run(spec, softening, 3);
      expect(coarse.touches.length).toBeGreaterThan(10);
      expect(coarse.touches.length).toBe(fine.touches.length);
      let late = 0;
      let off = 0;
      coarse.touches.forEach((time, k) => {
        late = Math.max(late, Math.abs(time - fine.touches[k]!));
      });
      coarse.deflections.forEach((x, k) => {
        off = Math.max(off, Math.abs(x - fine.deflections[k]!));
      });
      // Rounding, passed on from touch to touch, and with Runge–Kutta its tolerance: measured 2e-12 of the gap at most.
      expect(off).toBeLessThan(1e-11 * gap);
      // The last hops before a rest come slowly, at 1e-6·ω₀·gap: there the rounding of x shows most.
      expect(late).toBeLessThan(1e-8);
    });
  }
});
