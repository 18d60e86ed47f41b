import { describe, expect, it } from 'vitest';
import type { RunEvent } from '../../src/contract/event.ts';
import { cursorText, readCursor, spokenReading } from '../../src/plot/cursor-reading.ts';
import { signSentence } from '../../src/plot/describe-paper.ts';
import { awaitsFirstTouch, eventNear, firstEventAtOrAfter, markLook, nextEvent } from '../../src/plot/event-marks.ts';
import type { PaperView } from '../../src/plot/paper-view.ts';
import { decimals, readingText, sizeText } from '../../src/plot/reading-format.ts';
import { Samples } from '../../src/recording/samples.ts';
import { tapeOf } from './support/tape-of.ts';

const G = 9.80665;
const letGo: RunEvent = { kind: 'let go', timeS: 0.2, heightM: 0.4, verticalSpeedMS: 0 };
const free: RunEvent = { kind: 'motion', timeS: 0.2, motion: 'free' };
const stop: RunEvent = { kind: 'stop hit', timeS: 0.489, element: 'z', side: -1, speedMS: 1, rests: false };
const touch: RunEvent = { kind: 'touch', timeS: 0.486, verticalSpeedMS: -2.8, fallS: 0.286 };
const events = [free, letGo, touch, stop];

const samples = new Samples({ element: 'z', capacity: 100 });
for (let k = 0; k < 40; k++) samples.append(k / 40, k / 10, false);

const view: PaperView = {
  tape: tapeOf((t) => G * (1 + t), 1000, 1001, 4),
  samples,
  reported: 'dots',
  events,
  nowS: 1,
  endS: 1,
  spanS: 1,
  lines: [{ kind: 'mass', channel: 'z' }],
  unit: 'g_n',
  sign: 1,
  range: 'automatic',
  stopMS2: undefined,
  theme: 'day',
  stage: false,
  marked: undefined,
  sketch: undefined,
  notes: [],
  drag: 'pull',
};

describe('the cursor', () => {
  it('reads the nearest row, and the sample last delivered', () => {
    const reading = readCursor(view, 0.51249, 5000)!;
    expect(reading.timeS).toBe(0.512);
    expect(reading.values.map(({ kind }) => kind)).toEqual(['mass', 'reported']);
    expect(reading.values[0]!.value).toBeCloseTo(G * 1.512, 12);
    expect(reading.values[1]!.value).toBeCloseTo(G * 2, 12); // sample 20, at 0.5 s
  });

  it('reads what a pixel column holds where many rows share one', () => {
    const [mass] = readCursor(view, 0.5, 10)!.values; // a pixel is 100 rows
    expect(mass!.low).toBeCloseTo(G * 1.45, 5);
    expect(mass!.high).toBeCloseTo(G * 1.55, 5);
    expect(cursorText(mass!, view, 2 * G)).toBe('+1.45\u202fg … +1.55\u202fg');
  });

  it('turns the sign round with the paper', () => {
    const [mass] = readCursor({ ...view, sign: -1 }, 0.5, 5000)!.values;
    expect(mass!.value).toBeCloseTo(-1.5 * G, 12);
    expect(mass!.low).toBeLessThanOrEqual(mass!.high);
  });

  it('has nothing to read outside the tape', () => {
    expect(readCursor(view, -0.1, 100)).toBeUndefined();
    expect(readCursor(view, 1.1, 100)).toBeUndefined();
  });

  it('is spoken with the event that stands there', () => {
    const reading = readCursor(view, 0.2, 1000)!;
    expect(spokenReading(reading, view, () => 7 * G)).toBe(
      '0.2 s, let go: what the mass did +1.20\u202fg; what the sensor reports +800\u202fmg',
    );
  });

  it('calls a value far below the scale zero', () => {
    expect(cursorText({ kind: 'mass', low: 0, high: 0, value: 1e-9 }, view, 7 * G)).toBe('0.00\u202fg');
  });
});

describe('events', () => {
  it('are found by time', () => {
    expect(firstEventAtOrAfter(events, 0.2)).toBe(0);
    expect(firstEventAtOrAfter(events, 0.2001)).toBe(2);
    expect(firstEventAtOrAfter(events, 9)).toBe(4);
  });

  it('the most telling of those at one instant is named', () => {
    expect(markLook(free)).toBeUndefined();
    expect(eventNear(events, 0.2003, 0.001)).toBe(letGo);
    expect(eventNear(events, 0.3, 0.001)).toBeUndefined();
  });

  it('a touch is the first after a let-go, or else a bounce', () => {
    const again: RunEvent = { kind: 'touch', timeS: 0.7, verticalSpeedMS: -1, fallS: 0.1 };
    const fall = [letGo, stop, touch, again];
    expect([1, 2, 3].map((index) => awaitsFirstTouch(fall, index))).toEqual([true, true, false]);
  });

  it('keys go from one named mark to the next, past a chattering stop', () => {
    expect(nextEvent(events, 0, 1)).toBe(letGo);
    expect(nextEvent(events, 0.2, 1)).toBe(touch);
    expect(nextEvent(events, 0.486, 1)).toBeUndefined();
    expect(nextEvent(events, 0.486, -1)).toBe(letGo);
  });
});

describe('numbers on paper', () => {
  it('have their sign, unit and three digits', () => {
    expect(readingText(2.42 * G, 'g_n')).toBe('+2.42\u202fg');
    expect(readingText(-9.80665, 'm/s2')).toBe('−9.81\u202fm/s²');
    expect(sizeText(-33.37 * G, 'g_n')).toBe('33.4\u202fg');
  });

  it('never show a minus zero', () => {
    expect([decimals(-0.04, 1), decimals(-0.06, 1), decimals(-7, 0)]).toEqual(['0.0', '−0.1', '−7']);
  });

  it('the sign convention is one sentence', () => {
    expect(signSentence(1, 'g_n')).toBe('Standing still reads +1\u202fg upward.');
    expect(signSentence(-1, 'm/s2')).toBe('Standing still reads −9.81\u202fm/s² upward.');
  });
});
