import { describe, expect, it } from 'vitest';
import type { ElementSpec } from '../../src/contract/run.ts';
import { newElement, stateAt, tickOnce } from './drive.ts';

const TICK = 1e-3;
const force = (t: number): number => 12 + 25 * Math.sin(60 * t);
const MODES = [
  { naturalFrequency: 10, dampingRatio: 0.04, participation: 1.2, shape: 1.1, modalMass: 0.02 },
  { naturalFrequency: 60, dampingRatio: 0.02, participation: 0.5, shape: -1, modalMass: 0.03 },
];
const MOUNT = { naturalFrequency: 30, dampingRatio: 0.1, massRatio: 0.2 };

function ran(spec: Partial<ElementSpec>, ticks: number): ReturnType<typeof newElement> {
  const element = newElement(spec, TICK);
  element.settle(force(0), 0);
  for (let tick = 0; tick < ticks; tick += 1) tickOnce(element, tick, TICK, force);
  return element;
}

describe('a change while it runs', () => {
  it('keeps deflection and velocity, whatever is changed', () => {
    for (const spec of [{}, { modes: MODES, staticRemainder: 1e-6 }, { mount: MOUNT }]) {
      for (const set of [
        { naturalFrequency: 23 },
        { dampingRatio: 0.9 },
        { restitution: 0.1 },
        { cubicStiffness: 1e7 },
        { gap: 1 },
        { mount: { ...MOUNT, naturalFrequency: 55, massRatio: 0 } },
      ]) {
        const element = ran(spec, 33);
        const before = stateAt(element, TICK);
        element.change(set);
        const after = stateAt(element, TICK);
        expect(Math.abs(after.deflection - before.deflection)).toBeLessThan(1e-14 * Math.abs(before.deflection));
        expect(Math.abs(after.velocity - before.velocity)).toBeLessThan(1e-12 * Math.abs(before.velocity));
      }
    }
  });

  it('of nothing changes nothing: modes and mount go on as they were', () => {
    for (const spec of [{ dampingRatio: 0.04, modes: MODES, staticRemainder: 1e-6 }, { mount: MOUNT }]) {
      const changed = ran(spec, 33);
      const left = ran(spec, 33);
      changed.change({ restitution: 0.5 });
      for (let tick = 33; tick < 60; tick += 1) {
        for (const element of [changed, left]) tickOnce(element, tick, TICK, force);
        const [a, b] = [stateAt(changed, TICK), stateAt(left, TICK)];
        // The pick-off is put to the deflection it had: its rounding is all that differs.
        expect(Math.abs(a.deflection - b.deflection)).toBeLessThan(1e-16);
      }
    }
  });

  it('goes on as an element of the new settings started there', () => {
    const element = ran({}, 33);
    const { deflection, velocity } = stateAt(element, TICK);
    element.change({ naturalFrequency: 23, dampingRatio: 0.3 });
    const fresh = newElement({ naturalFrequency: 23, dampingRatio: 0.3, start: { deflection, velocity } }, TICK);
    fresh.settle(0, 0);
    for (let tick = 33; tick < 80; tick += 1) {
      tickOnce(element, tick, TICK, force);
      tickOnce(fresh, tick, TICK, force);
      expect(stateAt(element, TICK)).toEqual(stateAt(fresh, TICK));
    }
    expect(element.spec).toMatchObject({ naturalFrequency: 23, dampingRatio: 0.3 });
  });

  it('inside a tick leaves what was before it as it was', () => {
    const element = ran({}, 10);
    const plain = ran({}, 10);
    const at = (t: number): number => force(10 * TICK + t);
    element.beginTick(10);
    element.advance(0, 4e-4, at(0), at(2e-4), at(4e-4), 0, 0, 0);
    element.change({ naturalFrequency: 40, mount: MOUNT });
    element.advance(4e-4, 6e-4, at(4e-4), at(7e-4), at(1e-3), 0, 0, 0);
    element.endTick();
    tickOnce(plain, 10, TICK, force);
    const early = stateAt(element, 2e-4);
    // The parabola over 0.4 ms and over 1 ms differ by their errors.
    expect(Math.abs(early.deflection / stateAt(plain, 2e-4).deflection - 1)).toBeLessThan(1e-9);
    // The reading of the same deflection is 16 times as large after.
    const [left, right] = [stateAt(element, 4e-4 - 1e-13), stateAt(element, 4e-4)];
    expect(right.deflection).toBeCloseTo(left.deflection, 12);
    expect(right.reading / left.reading).toBeCloseTo(16, 6);
  });

  it('to a gap that it is outside of lays it on the stop; to none or a wider one sets it free', () => {
    const element = newElement({ start: { deflection: 0.003, velocity: 0.2 } }, TICK);
    element.settle(0, 0);
    element.change({ gap: 0.002 });
    expect(stateAt(element, 0)).toMatchObject({ deflection: 0.002, velocity: 0, onStop: 1 });
    tickOnce(element, 0, TICK, () => -20); // pressed on
    expect(stateAt(element, TICK)).toMatchObject({ deflection: 0.002, velocity: 0, onStop: 1 });
    element.change({ gap: 0.004 });
    expect(stateAt(element, TICK)).toMatchObject({ deflection: 0.002, velocity: 0, onStop: 0 });
    element.change({ gap: 0.002 });
    element.change({ gap: null });
    expect(element.spec.gap).toBeUndefined();
    tickOnce(element, 1, TICK, () => -20);
    expect(stateAt(element, TICK).deflection).toBeGreaterThan(0.002);
  });

  it('of frequency and damping scales all modes and the remainder with the first', () => {
    const element = newElement({ modes: MODES, staticRemainder: 8e-6 }, TICK);
    element.change({ naturalFrequency: 20, dampingRatio: 0.06 });
    const { modes, staticRemainder } = element.spec;
    expect(modes!.map(({ naturalFrequency }) => naturalFrequency)).toEqual([20, 120]);
    expect(modes!.map(({ dampingRatio }) => dampingRatio)).toEqual([0.06, 0.03]);
    expect(staticRemainder).toBeCloseTo(2e-6, 20);
    element.settle(9, 0);
    expect(stateAt(element, 0).reading).toBeCloseTo(9, 12);
  });
});

describe('saved and restored', () => {
  const specs: [string, Partial<ElementSpec>][] = [
    ['plain', {}],
    ['with stops', { gap: 0.004 }],
    ['with modes and stops', { modes: MODES, staticRemainder: 1e-6, gap: 0.004 }],
    ['on a mount, with stops', { mount: MOUNT, gap: 0.004 }],
    ['with a cubic spring and stops', { cubicStiffness: 1e8, gap: 0.004 }],
    ['with noise', { thermalNoise: true, mass: 1e-12 }],
    ['with noise on a mount', { thermalNoise: true, mass: 1e-12, mount: MOUNT }],
  ];
  for (const [name, spec] of specs) {
    it(`${name}, it goes on bit for bit from any tick`, () => {
      const element = ran(spec, 20);
      for (let tick = 20; tick < 140; tick += 3) {
        const copy = newElement(element.spec, TICK);
        copy.restore(JSON.parse(JSON.stringify(element.save())) as number[]);
        expect(stateAt(copy, TICK)).toEqual(stateAt(element, TICK));
        tickOnce(copy, tick, TICK, force);
        tickOnce(element, tick, TICK, force);
        for (const tau of [0, 3.3e-4, TICK]) expect(stateAt(copy, tau)).toEqual(stateAt(element, tau));
        expect(copy.stopHits).toEqual(element.stopHits);
        for (const skipped of [1, 2]) tickOnce(element, tick + skipped, TICK, force);
      }
    });
  }
});

it('an element that no specific force deflects is refused, with the value', () => {
  const modes = [{ ...MODES[0]!, participation: -1 }];
  expect(() => newElement({ modes }, TICK)).toThrow(/must be > 0, got -/);
  expect(() => newElement({ modes: [{ ...MODES[0]!, shape: 0 }], staticRemainder: 1e-6 }, TICK)).toThrow(
    /got shapes 0/,
  );
});
