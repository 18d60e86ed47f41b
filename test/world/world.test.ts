import { describe, expect, it } from 'vitest';
import type { RunSpec } from '../../src/contract/run.ts';
import { History } from '../../src/world/history.ts';
import { World } from '../../src/world/world.ts';
import { elementSpec, free, held, PAD, runSpec } from '../support/run-spec.ts';

const G = 9.80665;

/** All rows of a run, one array each. */
function rowsOf(run: RunSpec): number[][] {
  const rows: number[][] = [];
  new World(run, { row: (_, values) => rows.push([...values]) }).runTo(run.duration);
  return rows;
}

const DROP = runSpec({ motions: [held(0), free(0.123_456, 0.3)], duration: 1.5 });

describe('rows', () => {
  it('stand at k/rate, first and last included, whether or not they fall on a tick', () => {
    const rows = rowsOf(runSpec({ duration: 0.1 }));
    expect(rows.length).toBe(Math.floor(0.1 * 997) + 1);
    rows.forEach((row, index) => expect(row[0]).toBe(index / 997));
  });

  it('a last row on the end of the run is there although a tick begins at it', () => {
    const rows = rowsOf(runSpec({ duration: 0.2, tick: 0.001, record: { rate: 100 } }));
    expect(rows.length).toBe(21);
  });

  it('a row at a hand-over shows the value after it', () => {
    const run = runSpec({ motions: [held(0), free(0.25, 0.3)], tick: 0.0003, record: { rate: 4 }, duration: 0.25 });
    expect(rowsOf(run).map((row) => row[4])).toEqual([G, 0]);
  });

  it('do not change the run: at the instants they share, rows of 100 and 700 a second are the same bits', () => {
    const slow = rowsOf({ ...DROP, record: { rate: 100 } });
    const fast = rowsOf({ ...DROP, record: { rate: 700 } });
    slow.forEach((row, index) => expect(fast[7 * index]).toEqual(row));
  });
});

describe('free fall', () => {
  it('reads exactly zero wherever the element sits, from the instant of letting go to the touch', () => {
    const elements = [elementSpec(), elementSpec({ name: 'far', at: [0.05, -0.02, 0.09], axis: [0.6, 0, 0.8] })];
    const rows = rowsOf({ ...DROP, elements });
    // Time to fall 0.3 m: √(2h/g).
    const touch = 0.123_456 + Math.sqrt((2 * 0.3) / G);
    const falling = rows.filter(([time]) => time! >= 0.123_456 && time! < touch);
    expect(falling.length).toBeGreaterThan(200);
    for (const row of falling) expect([row[4], row[7]]).toEqual([0, 0]);
  });

  it('an element let go from 1 g rings about zero with its own frequency: x = −(g/ω²)·e^(−ζωt)(cos ω_d t + …)', () => {
    const rows = rowsOf({ ...DROP, duration: 0.36 });
    const omega = 2 * Math.PI * 10;
    const zeta = 0.05;
    const damped = omega * Math.sqrt(1 - zeta * zeta);
    for (const row of rows.filter(([time]) => time! > 0.123_456)) {
      const t = row[0]! - 0.123_456;
      const exact =
        -(G / omega ** 2) *
        Math.exp(-zeta * omega * t) *
        (Math.cos(damped * t) + ((zeta * omega) / damped) * Math.sin(damped * t));
      expect(Math.abs(row[5]! - exact)).toBeLessThan(1e-12 * (G / omega ** 2) * 100);
    }
  });
});

describe('from what happened', () => {
  it('the area under what is felt, from letting go to rest, is g times the time', () => {
    const pad = { stiffness: 20_000, damping: 60, friction: 0.5 };
    const run = runSpec({ motions: [free(0, 0.3, pad)], duration: 3, tick: 1e-4, record: { rate: 10_000 } });
    const rows = rowsOf(run);
    let area = 0;
    for (let k = 1; k < rows.length; k += 1)
      area += ((rows[k]![4]! + rows[k - 1]![4]!) / 2) * (rows[k]![0]! - rows[k - 1]![0]!);
    // Trapezoids miss up to one jump of c·v/m = 291 m/s² over half a row of 1e-4 s at each touch.
    expect(Math.abs(area - G * 3)).toBeLessThan(5 * 0.5e-4 * 291 * 0.5 + 1e-3);
    expect(rows.at(-1)![4]).toBeCloseTo(G, 4);
  });

  it('events come in order: let go, touch after √(2h/g), lift-off, …, at rest, with exact instants', () => {
    const pad = { stiffness: 20_000, damping: 60, friction: 0.5 };
    const world = new World(runSpec({ motions: [held(0), free(0.2, 0.3, pad)], duration: 3 }));
    world.runTo(3);
    const kinds = world.events.all.map(({ kind }) => kind);
    expect(kinds.slice(0, 4)).toEqual(['motion', 'motion', 'let go', 'touch']);
    expect(kinds.at(-1)).toBe('at rest');
    const touch = world.events.all.find(({ kind }) => kind === 'touch')!;
    expect(Math.abs(touch.timeS - (0.2 + Math.sqrt(0.6 / G)))).toBeLessThan(1e-12);
  });
});

describe('determinism', () => {
  it('the same run gives the same hash twice, another seed of a noisy element another', () => {
    const noisy = { ...DROP, duration: 0.3, elements: [elementSpec({ thermalNoise: true, mass: 1e-9 })] };
    const hash = (run: RunSpec) => {
      const world = new World(run);
      world.runTo(run.duration);
      return world.hash;
    };
    expect(hash(noisy)).toBe(hash(noisy));
    expect(hash({ ...noisy, seed: 2 })).not.toBe(hash(noisy));
  });

  it('a live run replayed from its log gives the same hash: hand, throw, landing, changed settings', () => {
    const run = runSpec({ duration: 1e6, motions: [held(0)] });
    const live = new World(run);
    const at = (seconds: number) => {
      while (live.timeS < seconds) live.step();
    };
    at(0.1);
    live.send({ kind: 'motion', motion: { kind: 'hand', from: 0, targets: [] } });
    for (let k = 1; k <= 12; k += 1) {
      live.send({ kind: 'target', target: { at: 0, position: [0.01 * k, 1 + 0.02 * k * k, 0], over: 0.02 } });
      at(0.1 + 0.02 * k);
    }
    live.send({ kind: 'motion', motion: free(0, undefined) });
    at(0.5);
    live.send({ kind: 'change', change: { at: 0, element: 'z', set: { dampingRatio: 0.4, gap: 0.01 } } });
    live.send({ kind: 'change', change: { at: 0, gravity: 1.62 } });
    at(0.9);
    live.send({ kind: 'change', change: { at: 0, pad: { ...PAD, damping: 40 } } });
    at(2.0001);
    const replay = live.asRun((live.rowCount - 1) / run.record.rate);
    const again = new World(replay);
    again.runTo(replay.duration);
    expect(again.rowCount).toBe(live.rowCount);
    expect(again.hash).toBe(live.hash);
  });

  it('any instant of the past is back, and stepped on from it gives the same bits', () => {
    const run = runSpec({ motions: [held(0), free(0.2, 0.3)], duration: 2, elements: [elementSpec({ gap: 0.01 })] });
    const world = new World(run);
    const history = new History(world);
    while (world.timeS < 2) {
      world.step();
      history.note();
    }
    for (const seconds of [0, 0.3, 0.777, 1.5]) {
      const past = history.at(seconds);
      while (past.tick < world.tick) past.step();
      expect(past.hash).toBe(world.hash);
      expect(past.stateAt(past.timeS).elements[0]!.deflection).toBe(world.stateAt(world.timeS).elements[0]!.deflection);
    }
  });

  it('going on from an instant keeps its past and leaves its future open', () => {
    const world = new World(DROP);
    const history = new History(world);
    while (world.timeS < 1) {
      world.step();
      history.note();
    }
    const { world: other } = history.goOnFrom(0.1, {});
    other.send({ kind: 'motion', motion: { kind: 'push', from: 0, axis: [0, 1, 0], acceleration: 2, within: 0.05 } });
    while (other.timeS < 0.6) other.step();
    // The let-go at 0.123 s lay in the future that was left; the push keeps 2 m/s² above standing still.
    expect(other.stateAt(other.timeS).elements[0]!.specificForce).toBeCloseTo(G + 2, 12);
    expect(other.asRun(0.5).motions.map(({ kind }) => kind)).toEqual(['held', 'push']);
  });
});
