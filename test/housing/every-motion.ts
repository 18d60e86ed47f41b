/** One of every motion and law, with uneven numbers, begun at `from`. */
import type { MotionSpec, RecordedData } from '../../src/contract/motion.ts';

/** A record with uneven steps: sums of two sines, sampled. */
export function wavyRecord(columns: number, count = 40): RecordedData {
  const timeS = Float64Array.from({ length: count }, (_, i) => 0.0037 * i + 0.0011 * Math.sin(2 * i));
  const valuesMS2 = Array.from({ length: columns }, (_, column) =>
    Float64Array.from(timeS, (t) => 3 * Math.sin(61 * t + column) - 2 * Math.cos(23 * t - 2 * column)),
  );
  timeS[0] = 0;
  return { timeS, valuesMS2 };
}

const AXIS = [2 / 7, -3 / 7, 6 / 7] as const;
const RECORD = { file: 'record.csv', time: 't', columns: ['a'], unit: 'm/s2' } as const;

export const EVERY_MOTION: Readonly<Record<string, (from: number) => MotionSpec>> = {
  held: (from) => ({ kind: 'held', from, within: 0.073 }),
  'held with tremor': (from) => ({
    kind: 'held',
    from,
    within: 0.11,
    tremor: { frequency: 8.3, amplitude: 0.7, axis: [0, 1, 0] },
  }),
  free: (from) => ({ kind: 'free', from }),
  'free in air': (from) => ({
    kind: 'free',
    from,
    airDrag: { area: 0.024, coefficient: 1.05, airDensity: 1.204 },
  }),
  'sine shake': (from) => ({
    kind: 'shake',
    law: 'sine',
    from,
    axis: AXIS,
    frequency: 17.3,
    amplitude: 9,
    ease: 0.061,
  }),
  'linear sweep': (from) => ({
    kind: 'shake',
    law: 'sweep',
    from,
    axis: AXIS,
    fromFrequency: 31,
    toFrequency: 12,
    amplitude: 11,
    over: 0.083,
    progression: 'linear',
    ease: 0.041,
  }),
  'logarithmic sweep': (from) => ({
    kind: 'shake',
    law: 'sweep',
    from,
    axis: AXIS,
    fromFrequency: 9,
    toFrequency: 37,
    amplitude: 11,
    over: 0.083,
    progression: 'logarithmic',
    ease: 0.1,
  }),
  'random shake': (from) => ({
    kind: 'shake',
    law: 'random',
    from,
    axis: AXIS,
    density: 0.4,
    fromFrequency: 4.7,
    toFrequency: 61,
    ease: 0.057,
  }),
  move: (from) => ({ kind: 'move', from, axis: AXIS, distance: -0.21, over: 0.097 }),
  push: (from) => ({ kind: 'push', from, axis: AXIS, acceleration: 7.3, within: 0.047 }),
  tilt: (from) => ({ kind: 'tilt', from, to: { axis: [0.6, 0, 0.8], angle: 1.9 }, over: 0.13 }),
  spin: (from) => ({ kind: 'spin', from, axis: AXIS, rate: -11, within: 0.09 }),
  'recorded acceleration': (from) => ({
    kind: 'recorded',
    from,
    ...RECORD,
    is: 'acceleration',
    axis: AXIS,
    data: wavyRecord(1, 27),
  }),
  'recorded acceleration, three columns': (from) => ({
    kind: 'recorded',
    from,
    ...RECORD,
    is: 'acceleration',
    data: wavyRecord(3),
  }),
  'recorded specific force': (from) => ({
    kind: 'recorded',
    from,
    ...RECORD,
    is: 'specificForce',
    axis: AXIS,
    data: wavyRecord(1),
  }),
  hand: (from) => ({
    kind: 'hand',
    from,
    targets: [
      { at: from, position: [0.1, 1.2, -0.1], over: 0.016 },
      { at: from + 0.0173, position: [0.2, 0.9, 0.4], attitude: [0.5, 0.5, -0.5, 0.5], over: 0.0171 },
      { at: from + 0.0931, position: [0, 1, 0], over: 0 },
    ],
  }),
};
