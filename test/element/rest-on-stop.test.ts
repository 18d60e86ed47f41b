import { describe, expect, it } from 'vitest';
import { drive, hitsOf, newElement, type Signal, stateAt, tickOnce } from './drive.ts';

const OMEGA = 20 * Math.PI;
const GAP = 0.004;

describe('rest on a stop', () => {
  it('a sag beyond the gap starts resting and reads ω₀² times the gap', () => {
    for (const f of [30, -30]) {
      const element = newElement({ gap: GAP }, 1e-3);
      drive(element, 50, 1e-3, () => f);
      const { deflection, velocity, reading, onStop } = stateAt(element, 4e-4);
      expect([deflection, velocity, onStop]).toEqual([-Math.sign(f) * GAP, 0, -Math.sign(f)]);
      expect(Math.abs(reading / (Math.sign(f) * OMEGA ** 2 * GAP) - 1)).toBeLessThan(4 * Number.EPSILON);
      expect(element.stopHits.length).toBe(0);
    }
  });

  it('ends at the instant the net force points off the stop, inside the tick', () => {
    // f falls from 30 at 100 m/s³: it equals ω²·gap at t = (30 − ω²gap)/100; then x + gap follows the ramp's response.
    const release = (30 - OMEGA ** 2 * GAP) / 100;
    for (const tickS of [1e-4, 0.01, 0.07]) {
      const element = newElement({ dampingRatio: 0, gap: GAP }, tickS);
      element.settle(30, 0);
      const ticks = Math.ceil((release + 0.02) / tickS);
      for (let tick = 0; tick < ticks; tick += 1) {
        tickOnce(element, tick, tickS, (t) => 30 - 100 * t);
        for (const share of [0, 0.4, 0.9]) {
          const t = (tick + share) * tickS - release;
          const { deflection, onStop } = stateAt(element, share * tickS);
          const off = t < 0 ? 0 : (100 / OMEGA ** 2) * (t - Math.sin(OMEGA * t) / OMEGA);
          if (-GAP + off > GAP) continue; // on to the other stop
          expect(Math.abs(deflection + GAP - off)).toBeLessThan(2e-15 * GAP + 1e-15 * (100 / OMEGA ** 3));
          if (Math.abs(t) > 1e-6) expect(onStop).toBe(t < 0 ? -1 : 0);
        }
      }
    }
  });

  it('is left and taken up again within one tick when the push pauses', () => {
    // f = 30 at the start of the tick, 10 in the middle, 60 at the end; ω²·gap is 15.8.
    const element = newElement({ gap: GAP, restitution: 0.3 }, 0.08);
    element.settle(30, 0);
    element.beginTick(0);
    element.advance(0, 0.08, 30, 10, 60, 0, 0, 0);
    element.endTick();
    expect(stateAt(element, 0).onStop).toBe(-1);
    expect(stateAt(element, 0.025).onStop).toBe(0);
    expect(stateAt(element, 0.025).deflection).toBeGreaterThan(-GAP);
    expect(stateAt(element, 0.08)).toMatchObject({ deflection: -GAP, velocity: 0, onStop: -1 });
    expect(element.stopHits.length).toBeGreaterThan(3);
    expect(element.stopHits.at(-1)).toMatchObject({ side: -1, rests: true });
  });

  it('is left and taken up again within a short tick too: pulled off at its start, pushed on hard at its end', () => {
    // f = 0 → 3000 m/s² over ωh = 0.25; ω²·gap = 15.8 is passed at once, so it is off for 21 µs only.
    const element = newElement({ gap: GAP, restitution: 0.5, start: { deflection: -GAP, velocity: 0 } }, 0.004);
    element.settle(0, 0);
    element.beginTick(0);
    element.advance(0, 0.004, 0, 1500, 3000, 0, 0, 0);
    element.endTick();
    expect(stateAt(element, 1e-5).onStop).toBe(0);
    // From the cubic law of the ramp it is back after 3·21 µs, with 15.8·21 µs/… : x + gap = 7.9t² − 1.25e5t³.
    const back = (OMEGA ** 2 * GAP * 3) / 750_000;
    expect(Math.abs(element.stopHits[0]!.tauS / back - 1)).toBeLessThan(0.01); // the damping and the spring in 60 µs
    expect(stateAt(element, 0.004)).toMatchObject({ deflection: -GAP, velocity: 0, onStop: -1 });
  });

  it('where the sag is exactly the gap the mass stays at the stop without a single touch', () => {
    const element = newElement({ gap: GAP }, 1e-4);
    expect(hitsOf(element, 5000, 1e-4, () => OMEGA ** 2 * GAP)).toEqual([]);
    expect(Math.abs(stateAt(element, 1e-4).deflection)).toBeGreaterThan(GAP * (1 - 1e-14));
  });

  it('on a cubic spring ends where f = −ω²x − κx³ does, and later where spin softens the spring', () => {
    const cubicStiffness = 3e7;
    const holding = OMEGA ** 2 * GAP + cubicStiffness * GAP ** 3;
    for (const [softening, limit] of [
      [0, holding],
      [1200, holding - 1200 * GAP],
    ] as const) {
      const spec = {
        dampingRatio: 0.1,
        gap: GAP,
        cubicStiffness,
        fieldAtMass: true,
        start: { deflection: -GAP, velocity: 0 },
      };
      const element = newElement(spec, 1e-3);
      const ramp: Signal = (t) => limit + 1 - 50 * t; // released at 0.02 s
      let onStop = 0;
      drive(
        element,
        40,
        1e-3,
        ramp,
        (tick) => {
          onStop = stateAt(element, 1e-3).onStop;
          expect(onStop).toBe(tick < 19 ? -1 : tick > 19 ? 0 : onStop);
        },
        () => softening,
      );
    }
  });

  it('forgets a spin that has ended: then the stiff spring decides again', () => {
    const limit = OMEGA ** 2 * GAP; // 15.8 m/s² holds it against the spring, 11.0 against the softened one
    const element = newElement({ gap: GAP, fieldAtMass: true, start: { deflection: -GAP, velocity: 0 } }, 1e-3);
    element.settle(limit, 0);
    tickOnce(
      element,
      0,
      1e-3,
      () => limit - 2,
      () => 1200,
    );
    expect(stateAt(element, 1e-3).onStop).toBe(-1);
    tickOnce(element, 1, 1e-3, () => limit - 2);
    expect(stateAt(element, 1e-3).onStop).toBe(0);
  });
});
