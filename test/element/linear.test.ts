import { describe, expect, it } from 'vitest';
import { drive, newElement, none, stateAt, tickOnce } from './drive.ts';

const G = 9.80665;

describe('at rest', () => {
  it('it sags by f/ω₀² against the force and reads +f', () => {
    for (const f of [G, -3, 1e4]) {
      const element = newElement({ naturalFrequency: 7 }, 1e-3);
      element.settle(f, 0);
      const { deflection, velocity, reading, onStop } = stateAt(element, 0);
      expect(deflection * (2 * Math.PI * 7) ** 2).toBeCloseTo(-f, 9);
      expect(Math.abs(reading / f - 1)).toBeLessThan(4 * Number.EPSILON);
      expect([velocity, onStop]).toEqual([0, 0]);
    }
  });

  it('it stays there: after 10 000 ticks the reading has moved by less than 1e-12', () => {
    for (const dampingRatio of [0, 0.05, 5]) {
      const element = newElement({ dampingRatio }, 1e-4);
      let worst = 0;
      drive(
        element,
        10_000,
        1e-4,
        () => G,
        () => {
          worst = Math.max(worst, Math.abs(stateAt(element, 1e-4).reading / G - 1));
        },
      );
      // The start is rounded once, so it may swing by a unit in the last place.
      expect(worst).toBeLessThan(1e-12);
    }
  });
});

describe('the linear element', () => {
  it('composes: two ticks of h equal one of 2h, to 1e-12 of the amplitude, at every damping', () => {
    const force = (t: number): number => 5 - 900 * t + 40_000 * t * t; // a parabola, so exact for any tick
    for (const dampingRatio of [0, 0.02, 0.7, 1 - 1e-7, 1, 1 + 1e-7, 3, 10]) {
      for (const h of [1e-5, 1e-3, 0.02]) {
        const spec = { dampingRatio, start: { deflection: 0.003, velocity: -0.2 } };
        const half = newElement(spec, h);
        const whole = newElement(spec, 2 * h);
        drive(half, 8, h, force);
        drive(whole, 4, 2 * h, force);
        const a = stateAt(half, h);
        const b = stateAt(whole, 2 * h);
        const omega = 20 * Math.PI;
        const amplitude = 0.003 + 0.2 / omega + Math.abs(force(8 * h)) / omega ** 2;
        expect(Math.abs(a.deflection - b.deflection) / amplitude).toBeLessThan(1e-12);
        expect(Math.abs(a.velocity - b.velocity) / (omega * amplitude)).toBeLessThan(1e-12);
      }
    }
  });

  it('is the same when a tick is cut into pieces, and in the middle of one', () => {
    const force = (t: number): number => 5 - 900 * t + 4e5 * t * t;
    const h = 0.01;
    const cut = 0.0037;
    const whole = newElement({}, h);
    const pieces = newElement({}, h);
    whole.settle(5, 0);
    pieces.settle(5, 0);
    tickOnce(whole, 0, h, force);
    pieces.beginTick(0);
    pieces.advance(0, cut, force(0), force(cut / 2), force(cut), 0, 0, 0);
    pieces.advance(cut, h - cut, force(cut), force((cut + h) / 2), force(h), 0, 0, 0);
    pieces.endTick();
    for (const tau of [0, 0.001, cut, 0.008, h]) {
      const a = stateAt(whole, tau);
      const b = stateAt(pieces, tau);
      expect(Math.abs(a.deflection - b.deflection)).toBeLessThan(1e-14 * Math.abs(a.deflection));
      expect(Math.abs(a.velocity - b.velocity)).toBeLessThan(1e-14);
    }
  });

  it('observed order of the parabola input is 4 ± 0.1 (sine of 6 Hz on 10 Hz, ζ 0.05, from rest)', () => {
    const drivenAt = 12 * Math.PI;
    const force = (t: number): number => 3 * Math.sin(drivenAt * t);
    const end = 0.64;
    const atEnd = (ticks: number): number => {
      const element = newElement({ start: { deflection: 0, velocity: 0 } }, end / ticks);
      drive(element, ticks, end / ticks, force);
      return stateAt(element, end / ticks).deflection;
    };
    const exact = atEnd(10_240);
    const errors = [80, 160, 320].map((ticks) => Math.abs(atEnd(ticks) - exact));
    const orders = errors.slice(1).map((error, k) => Math.log2(errors[k]! / error));
    for (const order of orders) expect(Math.abs(order - 4)).toBeLessThan(0.1);
  });

  it('a 3 kHz mass under a 1 ms tick is as exact as under a 10 µs one: free fall from 1 g', () => {
    const omega = 2 * Math.PI * 3000;
    const zeta = 0.01;
    const element = newElement({ naturalFrequency: 3000, dampingRatio: zeta }, 1e-3);
    element.settle(G, 0);
    const damped = omega * Math.sqrt(1 - zeta * zeta);
    for (let tick = 0; tick < 10; tick += 1) {
      tickOnce(element, tick, 1e-3, none);
      for (const tau of [0.00013, 0.00057, 1e-3]) {
        const t = tick * 1e-3 + tau;
        const exact =
          (-G / omega ** 2) *
          Math.exp(-zeta * omega * t) *
          (Math.cos(damped * t) + ((zeta * omega) / damped) * Math.sin(damped * t));
        // The phase ωt ≤ 190 is itself rounded to 2e-14 in the closed form.
        expect(Math.abs(stateAt(element, tau).deflection - exact) * omega ** 2).toBeLessThan(1e-13 * G);
      }
    }
  });

  it('undamped and undriven it keeps its energy: to 5e-12 after a million ticks', () => {
    const omega = 20 * Math.PI;
    const element = newElement({ dampingRatio: 0, start: { deflection: 0.01, velocity: 0.3 } }, 1e-4);
    const energy = (): number => {
      const { deflection, velocity } = stateAt(element, 1e-4);
      return velocity * velocity + omega * omega * deflection * deflection;
    };
    element.settle(0, 0);
    const start = energy();
    let worst = 0;
    for (let tick = 0; tick < 1_000_000; tick += 1) {
      element.beginTick(tick);
      element.advance(0, 1e-4, 0, 0, 0, 0, 0, 0);
      element.endTick();
      if (tick % 1000 === 999) worst = Math.max(worst, Math.abs(energy() / start - 1));
    }
    // The numbers of the step are rounded to 1e-16 of their size, which is ωh = 0.006 at most: 1e6·0.006·1e-16 ≈ 1e-12
    // if the roundings add up, and each tick rounds the state once: √1e6·1e-16.
    expect(worst).toBeLessThan(5e-12);
  });

  it('undriven it never gains energy, at ζ = 0.02, 0.7, 1, 3', () => {
    const omega = 20 * Math.PI;
    for (const dampingRatio of [0.02, 0.7, 1, 3]) {
      const element = newElement({ dampingRatio, start: { deflection: 0.01, velocity: 0.3 } }, 1e-4);
      let last = Infinity;
      let largestGain = 0;
      drive(element, 5000, 1e-4, none, () => {
        const { deflection, velocity } = stateAt(element, 1e-4);
        const energy = velocity * velocity + omega * omega * deflection * deflection;
        largestGain = Math.max(largestGain, energy / last - 1);
        last = energy;
      });
      // Where the mass stands still at a peak the damping takes nothing, and the rounding of the state shows.
      expect(largestGain).toBeLessThan(4 * Number.EPSILON);
    }
  });

  it('a state inside the tick is right-continuous: at a jump of the law it belongs to the piece that begins', () => {
    const element = newElement({ start: { deflection: 0, velocity: 0 } }, 1e-3);
    element.settle(0, 0);
    element.beginTick(0);
    element.advance(0, 4e-4, 0, 0, 0, 0, 0, 0);
    element.advance(4e-4, 6e-4, 100, 100, 100, 0, 0, 0);
    element.endTick();
    expect(stateAt(element, 3.9e-4)).toMatchObject({ deflection: 0, velocity: 0 });
    expect(stateAt(element, 4e-4)).toMatchObject({ deflection: 0, velocity: 0 });
    expect(stateAt(element, 5e-4).velocity).toBeCloseTo(-100 * 1e-4, 5);
  });
});
