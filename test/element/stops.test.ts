import { describe, expect, it } from 'vitest';
import { drive, hitsOf, newElement, type Signal, stateAt, tickOnce } from './drive.ts';

const OMEGA = 20 * Math.PI;
const GAP = 0.004;

describe('a touch of a stop', () => {
  it('comes when and as fast as the closed form says: from 0 under a constant force, x = −(f/ω²)(1 − cos ωt)', () => {
    for (const tickS of [1e-4, 0.003, 0.05]) {
      const element = newElement({ dampingRatio: 0, gap: GAP, start: { deflection: 0, velocity: 0 } }, tickS);
      const [first] = hitsOf(element, Math.ceil(0.06 / tickS), tickS, () => 30);
      const cosine = 1 - (GAP * OMEGA ** 2) / 30;
      expect(first!.side).toBe(-1);
      expect(Math.abs(first!.timeS / (Math.acos(cosine) / OMEGA) - 1)).toBeLessThan(4e-15);
      expect(Math.abs(first!.speedMS / ((30 / OMEGA) * Math.sqrt(1 - cosine * cosine)) - 1)).toBeLessThan(2e-14);
    }
  });

  it('turns the speed to −e of it, again and again: ten touches of a free swing between both stops', () => {
    // Undamped and unforced: every crossing takes the same sine through 0, slower by e each time.
    const e = 0.93;
    const speed = 4;
    const element = newElement(
      { dampingRatio: 0, gap: GAP, restitution: e, start: { deflection: 0, velocity: speed } },
      1e-3,
    );
    const hits = hitsOf(element, 40, 1e-3, () => 0).slice(0, 10);
    let time = 0;
    let squared = speed * speed; // v² + ω²x²
    hits.forEach((hit, k) => {
      const phase = Math.asin((OMEGA * GAP) / Math.sqrt(squared));
      time += ((k === 0 ? 1 : 2) * phase) / OMEGA;
      const into = Math.sqrt(squared - (OMEGA * GAP) ** 2);
      expect(hit.side).toBe(k % 2 === 0 ? 1 : -1);
      expect(Math.abs(hit.timeS / time - 1)).toBeLessThan(1e-14);
      expect(Math.abs(hit.speedMS / into - 1)).toBeLessThan(1e-13);
      squared = (e * into) ** 2 + (OMEGA * GAP) ** 2;
    });
    expect(hits.length).toBe(10);
  });

  it('does not depend on the tick: the same touches, to 1e-10 s, and states, to 1e-11, at 0.1 ms and 20 ms', () => {
    // Straight lines within 20 ms, so that both ticks see the same force.
    const force: Signal = (t) => {
      const k = Math.floor(t / 0.02 + 1e-9);
      const value = (n: number): number => 60 * Math.sin(7 * n) + 9.8;
      return value(k) + (t / 0.02 - k) * (value(k + 1) - value(k));
    };
    // The end of a piece belongs to the line before: step back a little there.
    const line = (from: number, to: number): [number, number, number] => {
      const at = (t: number): number => {
        const k = Math.floor((from + to) / 2 / 0.02);
        const a = force(k * 0.02);
        const b = force((k + 1) * 0.02);
        return a + (t / 0.02 - k) * (b - a);
      };
      return [at(from), at((from + to) / 2), at(to)];
    };
    const runs = [1, 200].map((parts) => {
      const tickS = 0.02 / parts;
      const element = newElement({ dampingRatio: 0.05, gap: GAP, restitution: 0.7 }, tickS);
      element.settle(force(0), 0);
      const times: number[] = [];
      const states: number[] = [];
      for (let tick = 0; tick < 60 * parts; tick += 1) {
        element.beginTick(tick);
        element.advance(0, tickS, ...line(tick * tickS, (tick + 1) * tickS), 0, 0, 0);
        element.endTick();
        for (const hit of element.stopHits) times.push(tick * tickS + hit.tauS);
        if ((tick + 1) % parts === 0) states.push(stateAt(element, tickS).deflection);
      }
      return { times, states };
    });
    const [coarse, fine] = runs;
    expect(coarse!.times.length).toBeGreaterThan(50);
    expect(coarse!.times.length).toBe(fine!.times.length);
    coarse!.times.forEach((time, k) => expect(Math.abs(time - fine!.times[k]!)).toBeLessThan(1e-10));
    coarse!.states.forEach((x, k) => expect(Math.abs(x - fine!.states[k]!)).toBeLessThan(1e-11 * GAP));
  });

  it('is not missed: a swing 1e-12 larger than the gap touches, one 1e-12 smaller does not', () => {
    for (const tickS of [1e-4, 0.01, 0.1]) {
      for (const [share, touches] of [
        [1 + 1e-12, true],
        [1 - 1e-12, false],
      ] as const) {
        const spec = { dampingRatio: 0, gap: GAP, start: { deflection: 0, velocity: OMEGA * GAP * share } };
        const hits = hitsOf(newElement(spec, tickS), Math.round(0.2 / tickS), tickS, () => 0);
        expect(hits.length > 0).toBe(touches);
        // Slow as it comes, it is pulled off again.
        for (const { rests } of hits) expect(rests).toBe(false);
      }
    }
  });

  it('twice within one tick, at both stops, is found: a 3 kHz mass under a 1 ms tick', () => {
    const spec = {
      naturalFrequency: 3000,
      dampingRatio: 0.02,
      gap: 1e-6,
      restitution: 0.8,
      start: { deflection: 0, velocity: 0.04 },
    };
    const coarse = hitsOf(newElement(spec, 1e-3), 2, 1e-3, () => 0);
    const fine = hitsOf(newElement(spec, 1e-6), 2000, 1e-6, () => 0);
    expect(coarse.length).toBe(fine.length);
    expect(coarse.filter(({ timeS }) => timeS < 1e-3).length).toBeGreaterThan(3);
    coarse.forEach((hit, k) => expect(Math.abs(hit.timeS - fine[k]!.timeS)).toBeLessThan(1e-15));
  });

  it('leaves the mass between the stops at every instant, with a wild force (seed 1, 20 000 instants)', () => {
    const element = newElement({ dampingRatio: 0.01, gap: GAP, restitution: 0.9 }, 0.003);
    let state = 1;
    const random = (): number => {
      state = (state * 16807) % 2147483647;
      return state / 2147483647 - 0.5;
    };
    let outside = 0;
    element.settle(0, 0);
    for (let tick = 0; tick < 2000; tick += 1) {
      element.beginTick(tick);
      element.advance(0, 0.003, 400 * random(), 400 * random(), 400 * random(), 0, 0, 0);
      element.endTick();
      for (let part = 0; part <= 10; part += 1) {
        const { deflection, onStop } = stateAt(element, 0.0003 * part);
        if (Math.abs(deflection) > GAP || (onStop !== 0 && deflection !== onStop * GAP)) outside += 1;
      }
    }
    expect(outside).toBe(0);
  });
});

describe('a bouncing series', () => {
  it('on a soft spring takes the time of a bouncing ball, t₁(1 + 2e/(1 − e)), and then rests', () => {
    // 0.001 Hz: the spring is 1e-6 of the force. Drop of one gap under f: t₁ = √(2·gap/f).
    const e = 0.6;
    const spec = {
      naturalFrequency: 1e-3,
      dampingRatio: 0,
      gap: GAP,
      restitution: e,
      start: { deflection: 0, velocity: 0 },
    };
    const hits = hitsOf(newElement(spec, 1e-3), 200, 1e-3, () => 9.8);
    const first = Math.sqrt((2 * GAP) / 9.8);
    expect(hits[0]!.timeS).toBeCloseTo(first, 6);
    hits.slice(1, 12).forEach((hit, k) => expect(hit.speedMS / hits[k]!.speedMS).toBeCloseTo(e, 6));
    expect(hits.at(-1)!.rests).toBe(true);
    expect(hits.filter(({ rests }) => rests).length).toBe(1);
    // What is left of the series at the resting speed 1e-6·ω₀·gap is 1e-9 of the whole.
    expect(hits.at(-1)!.timeS / (first * (1 + (2 * e) / (1 - e)))).toBeCloseTo(1, 6);
  });

  it('rests at once with e = 0', () => {
    const spec = { gap: GAP, restitution: 0, start: { deflection: 0, velocity: 0 } };
    const hits = hitsOf(newElement(spec, 1e-3), 100, 1e-3, () => 30);
    expect(hits.length).toBe(1);
    expect(hits[0]!.rests).toBe(true);
  });

  it('with e = 1 and a hard push ends every tick in time, and keeps its energy', () => {
    // Hops of 2v/a = 2e-7 s: 5000 in a tick, more than are followed one by one.
    const force = 1000;
    const spec = { dampingRatio: 0, gap: GAP, restitution: 1, start: { deflection: -GAP, velocity: 1e-4 } };
    const element = newElement(spec, 1e-3);
    const energy = ({ deflection, velocity }: { deflection: number; velocity: number }): number =>
      (velocity * velocity) / 2 +
      (OMEGA * OMEGA * (deflection * deflection - GAP * GAP)) / 2 +
      force * (deflection + GAP);
    let most = 0;
    let touches = 0;
    drive(
      element,
      20,
      1e-3,
      () => force,
      () => {
        most = Math.max(most, Math.abs(energy(stateAt(element, 1e-3)) / (1e-4 ** 2 / 2) - 1));
        touches = Math.max(touches, element.stopHits.length);
      },
    );
    expect(touches).toBe(256);
    // A touch rounds x by half a unit in the last place, 4e-19 m: f times that is 9e-8 of the energy, 5120 touches make 4e-4.
    expect(most).toBeLessThan(4e-4);
  });
});

describe('more hops in a tick than are followed one by one', () => {
  // A spring so soft that the push is the same everywhere; hops of 2v/p = 20 µs to begin with, 490 in a tick.
  const PUSH = 9.8;
  const TICK = 0.01;
  const hopping = (restitution: number, dampingRatio: number): ReturnType<typeof newElement> => {
    const start = { deflection: -GAP, velocity: 1e-4 };
    const element = newElement({ naturalFrequency: 1e-4, dampingRatio, gap: GAP, restitution, start }, TICK);
    element.settle(PUSH, 0);
    return element;
  };

  it('lose speed by e as a bouncing ball does, (1 − e)p/2 a second, and then rest', () => {
    const e = 0.9999;
    const element = hopping(e, 0);
    const ends = 1e-4 / (((1 - e) * PUSH) / 2); // 0.204 s
    for (let tick = 0; tick < 30; tick += 1) {
      tickOnce(element, tick, TICK, () => PUSH);
      const t = (tick + 1) * TICK;
      const { deflection, velocity, onStop } = stateAt(element, TICK);
      if (t < ends - TICK) {
        // Carried to the end of the tick it leaves the stop there; two thirds of the hops are told, none is higher.
        expect(Math.abs(deflection + GAP)).toBeLessThan(1e-4 ** 2 / 2 / PUSH);
        expect(Math.abs(velocity - 1e-4 * (1 - t / ends))).toBeLessThan(1e-6);
      } else if (t > ends + TICK) expect([deflection, velocity, onStop]).toEqual([-GAP, 0, -1]);
    }
  });

  it('keep v³/p while the push swells and fades within a tick, and lose (1 − e)/2·∫(p₀p²)^⅓ of their speed', () => {
    const e = 0.9995;
    const element = hopping(e, 0);
    const push: Signal = (t) => PUSH * (1 + 8 * (t / TICK) * (1 - t / TICK)); // threefold in the middle
    element.beginTick(0);
    element.advance(0, TICK, push(0), push(TICK / 2), push(TICK), 0, 0, 0);
    element.endTick();
    let mean = 0;
    for (let k = 0; k < 1000; k += 1) mean += Math.cbrt(PUSH * push(((k + 0.5) / 1000) * TICK) ** 2) / 1000;
    const lost = 1e-4 - stateAt(element, TICK).velocity;
    expect(Math.abs(lost / (((1 - e) * mean * TICK) / 2) - 1)).toBeLessThan(0.03);
  });

  it('lose speed by damping, 2ζω/3 of it a second', () => {
    const element = hopping(1, 1000); // 2ζω = 1.26 1/s
    const drag = 2 * 1000 * 2 * Math.PI * 1e-4;
    for (let tick = 0; tick < 40; tick += 1) {
      tickOnce(element, tick, TICK, () => PUSH);
      const expected = 1e-4 * Math.exp((-drag * (tick + 1) * TICK) / 3);
      expect(Math.abs(stateAt(element, TICK).velocity / expected - 1)).toBeLessThan(1e-3);
    }
  });
});

describe('energy', () => {
  const energyUnder =
    (force: number) =>
    ({ deflection, velocity }: { deflection: number; velocity: number }): number =>
      velocity * velocity + OMEGA * OMEGA * deflection * deflection + 2 * force * deflection;

  it('is kept by touches with e = 1: to 1e-11 over 8000 of them', () => {
    const spec = { dampingRatio: 0, gap: GAP, restitution: 1, start: { deflection: 0.001, velocity: 1 } };
    const element = newElement(spec, 1e-3);
    const energy = energyUnder(12);
    const start = energy({ deflection: 0.001, velocity: 1 });
    let touches = 0;
    let worst = 0;
    drive(
      element,
      32_000,
      1e-3,
      () => 12,
      () => {
        touches += element.stopHits.length;
        worst = Math.max(worst, Math.abs(energy(stateAt(element, 1e-3)) / start - 1));
      },
    );
    expect(touches).toBeGreaterThan(4000);
    expect(worst).toBeLessThan(1e-11);
  });

  it('is never gained, whatever e, ζ and the push', () => {
    for (const restitution of [0, 0.5, 0.99, 1]) {
      for (const dampingRatio of [0, 0.05, 2]) {
        const spec = { dampingRatio, gap: GAP, restitution, start: { deflection: 0.001, velocity: 1 } };
        const element = newElement(spec, 1e-3);
        const energy = energyUnder(40);
        let last = energy({ deflection: 0.001, velocity: 1 });
        let gained = 0;
        drive(
          element,
          2000,
          1e-3,
          () => 40,
          () => {
            const now = energy(stateAt(element, 1e-3));
            gained = Math.max(gained, now - last);
            last = now;
          },
        );
        expect(gained).toBeLessThan(1e-14);
      }
    }
  });
});
