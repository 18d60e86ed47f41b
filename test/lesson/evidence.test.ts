import { describe, expect, it } from 'vitest';
import type { MotionSpec } from '../../src/contract/motion.ts';
import { Attempt, type MomentName } from '../../src/lesson/evidence.ts';
import { knownValue } from '../../src/lesson/known.ts';
import { ROOM_AIR } from '../../src/session/settings.ts';
import { STARTING_BENCHES } from '../../src/session/starting-benches.ts';
import { evidence, letGo, liftOff, type Made, touch } from './support/synthetic-run.ts';

const shake = (from: number): MotionSpec => ({
  kind: 'shake',
  from,
  law: 'sweep',
  axis: [0, 1, 0],
  fromFrequency: 2,
  toFrequency: 8,
  amplitude: 1.5,
  over: 0.8,
  progression: 'logarithmic',
  ease: 0.25,
});
const lift = (from: number): MotionSpec => ({ kind: 'move', from, axis: [0, 1, 0], distance: 0.01, over: 0.05 });
const tilt = (from: number): MotionSpec => ({ kind: 'tilt', from, to: [0, 0, 0, 1], over: 0.4 });

const moment = (made: Made, begins: MomentName, name: MomentName, offsetS = 0) =>
  new Attempt(evidence(made), begins).at({ name, offsetS });

describe('an attempt', () => {
  const twice: Made = {
    events: [letGo(0.2), touch(0.5), liftOff(0.52), touch(0.8), letGo(1.1), touch(1.4), liftOff(1.42)],
  };

  it('begins with the last letting go, and counts the first touch after it', () => {
    expect(new Attempt(evidence(twice), 'let go').beganS).toBe(1.1);
    expect(moment(twice, 'let go', 'touch')).toBe(1.4);
    expect(moment(twice, 'let go', 'lift-off', 0.01)).toBeCloseTo(1.43, 12);
    expect(moment({ events: twice.events!.slice(0, 5) }, 'let go', 'touch')).toBeUndefined();
  });

  it('of a throw does not begin with a drop', () => {
    const made: Made = { events: [letGo(0.3, 2), touch(0.9), letGo(1.2, 0)] };
    expect(new Attempt(evidence(made), 'thrown').beganS).toBe(0.3);
    expect(new Attempt(evidence({ events: [letGo(0.3, 0.1)] }), 'thrown').beganS).toBeUndefined();
  });

  it('from the start is there at once; a clamp that held from the beginning is not a new hold', () => {
    expect(new Attempt(evidence({}), 'start').beganS).toBe(0);
    expect(new Attempt(evidence({}), 'held').beganS).toBeUndefined();
    expect(new Attempt(evidence({ motions: [{ kind: 'held', from: 0.7, within: 0.2 }] }), 'held').beganS).toBe(0.7);
  });

  it('knows where motions end, once they have and unless another took over', () => {
    expect(moment({ motions: [lift(0.3)] }, 'lift', 'lifted')).toBeCloseTo(0.35, 12);
    expect(moment({ motions: [lift(0.3)], endS: 0.34 }, 'lift', 'lifted')).toBeUndefined();
    expect(moment({ motions: [lift(0.3), tilt(0.32)] }, 'lift', 'lifted')).toBeUndefined();
    expect(moment({ motions: [tilt(0.5)] }, 'tilt', 'tilted')).toBeCloseTo(0.9, 12);
    expect(moment({ motions: [shake(0.5)] }, 'shake', 'eased')).toBeCloseTo(0.75, 12);
    expect(moment({ motions: [shake(0.5)] }, 'shake', 'swept')).toBeCloseTo(1.3, 12);
  });

  it('finds the top of a flight where the speed passes zero, between rows', () => {
    const made: Made = { events: [letGo(0.3, 2), touch(0.9)], lines: { velocity: (t) => 2 - 9.80665 * (t - 0.3) } };
    expect(moment(made, 'thrown', 'top')).toBeCloseTo(0.3 + 2 / 9.80665, 9);
    expect(moment({ ...made, endS: 0.45 }, 'thrown', 'top')).toBeUndefined();
    expect(moment({ ...made, events: [letGo(0.3, 2), touch(0.4)] }, 'thrown', 'top')).toBeUndefined();
  });

  it('takes the latest mark, wherever it stands', () => {
    expect(moment({ ...twice, marks: [1.2, 0.4] }, 'let go', 'mark')).toBe(0.4);
    expect(moment(twice, 'let go', 'mark')).toBeUndefined();
  });
});

describe('names that formulas know', () => {
  const { settings } = STARTING_BENCHES['table-top'];
  const known = (made: Made, begins: MomentName, name: string) =>
    knownValue(name, new Attempt(evidence(made), begins), settings);

  it('settings are those in force when the attempt began', () => {
    const changes = [
      { at: 0.1, gravity: 3 },
      { at: 0.2, element: 'z', set: { dampingRatio: 0.4, gap: 0.01 } },
      { at: 0.5, element: 'z', set: { dampingRatio: 0.9, gap: null } },
      { at: 0.6, gravity: 1 },
    ];
    const made: Made = { changes, events: [letGo(0.3)] };
    expect(known(made, 'let go', 'gravity')).toBe(3);
    expect(known(made, 'let go', 'dampingRatio')).toBe(0.4);
    expect(known(made, 'let go', 'gap')).toBe(0.01);
    expect(known(made, 'let go', 'naturalFrequency')).toBe(8);
    expect(known({ ...made, events: [letGo(0.55)] }, 'let go', 'dampingRatio')).toBe(0.9);
    expect(known({ ...made, events: [letGo(0.55)] }, 'let go', 'gap')).toBe(Number.POSITIVE_INFINITY);
  });

  it('air is that of the fall, whatever the switch says by now', () => {
    const fall = (from: number, isThere: boolean): MotionSpec => ({
      kind: 'free',
      from,
      pad: settings.pad,
      airDrag: isThere ? ROOM_AIR : undefined,
    });
    const made: Made = { motions: [fall(0.3, true), fall(0.8, false)], events: [letGo(0.3), letGo(0.8)], endS: 0.6 };
    expect(known({ ...made, events: [letGo(0.3)] }, 'let go', 'air')).toBe(1);
    expect(known(made, 'let go', 'air')).toBe(0);
    expect(known(made, 'start', 'air')).toBe(1);
    expect(known({}, 'start', 'air')).toBe(0);
  });

  it('before an attempt, they are those of the bench', () => {
    expect(known({}, 'let go', 'dampingRatio')).toBe(settings.dampingRatio);
    expect(known({}, 'let go', 'dropHeight')).toBe(settings.dropHeightM);
    expect(known({}, 'let go', 'padStiffness')).toBe(settings.pad.stiffness);
  });

  it('events and the shaking give their values, and nothing before they happened', () => {
    const made: Made = { events: [letGo(0.3, 0.5, 0.42), touch(0.5, -2.5), liftOff(0.52, 0.75)] };
    expect(known(made, 'let go', 'letGoHeight')).toBe(0.42);
    expect(known(made, 'let go', 'dropHeight')).toBe(0.42);
    expect(known(made, 'let go', 'letGoSpeed')).toBe(0.5);
    expect(known(made, 'let go', 'touchSpeed')).toBe(-2.5);
    expect(known(made, 'let go', 'liftOffSpeed')).toBe(0.75);
    expect(known(made, 'let go', 'landingArea')).toBe(4);
    expect(known(made, 'let go', 'landingPeak')).toBe(300);
    expect(known(made, 'let go', 'contactTime')).toBe(0.02);
    expect(known({ events: [letGo(0.3)] }, 'let go', 'touchSpeed')).toBeUndefined();
    expect(known({ motions: [shake(0.4)] }, 'shake', 'sweepTo')).toBe(8);
    expect(known({ motions: [shake(0.4)] }, 'shake', 'driveStrength')).toBe(1.5);
    expect(known({ motions: [shake(0.4)] }, 'shake', 'driveFrequency')).toBeUndefined();
    expect(known({ ...made, marks: [0.45] }, 'let go', 'markAfter')).toBeCloseTo(0.15, 12);
    expect(known(made, 'let go', 'unheardOf')).toBeUndefined();
  });

  it('stops struck are counted from the beginning of the attempt', () => {
    const struck = (timeS: number) =>
      ({ kind: 'stop hit', timeS, element: 'z', side: 1, speedMS: 1, rests: false }) as const;
    expect(known({ events: [struck(0.2), letGo(0.3), struck(0.4), struck(0.5)] }, 'let go', 'stopHits')).toBe(2);
  });
});
