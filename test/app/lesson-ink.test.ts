import { expect, it } from 'vitest';
import { inkLine, inkValues } from '../../src/app/lesson-ink.ts';
import { CHANNEL } from '../../src/session/bench-run.ts';
import { Session } from '../../src/session/session.ts';

const AXES = {
  line: 'felt',
  quantity: 'acceleration',
  unit: 'g',
  fromS: -0.1,
  toS: 0.3,
  low: -10,
  high: 10,
  zero: 'let go',
};

it('the pen’s line over a sketch: the tape’s own rows, nothing from before the run, and not before all of it is there', () => {
  const session = new Session();
  session.advanceTo(0.05);
  session.handle({ kind: 'drop' });
  session.advanceTo(0.3);
  const letGoS = session.run.world.events.all.find(({ kind }) => kind === 'let go')!.timeS;
  expect(inkValues(session.run.tape, CHANNEL.specificForce, AXES, letGoS)).toBeUndefined();
  session.advanceTo(0.4);
  const line = inkLine(inkValues(session.run.tape, CHANNEL.specificForce, AXES, letGoS)!, AXES);
  expect(line[0]![0]).toBeCloseTo(-0.1, 12);
  expect(line.at(-1)![0]).toBeCloseTo(0.3, 12);
  const before = line.filter(([timeS]) => timeS < -letGoS - 0.001);
  expect(before.length).toBeGreaterThan(10);
  expect(before.every(([, value]) => Number.isNaN(value))).toBe(true);
  // Held it feels gravity; falling without air from 0.4 m, 0.286 s long, it feels nothing.
  const held = line.filter(([timeS]) => timeS > -letGoS + 0.001 && timeS < -0.001).map(([, value]) => value);
  const falling = line.filter(([timeS]) => timeS > 0.001 && timeS < 0.28).map(([, value]) => value);
  expect(Math.min(...held)).toBeCloseTo(session.settings.gravityMS2, 3);
  expect(falling.length).toBeGreaterThan(100);
  expect(new Set(falling)).toEqual(new Set([0]));
});
