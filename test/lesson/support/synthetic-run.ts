/** Evidence made by hand: lines from closed forms, events and motions as a run would leave them. */
import type { RunEvent } from '../../../src/contract/event.ts';
import type { MotionSpec } from '../../../src/contract/motion.ts';
import type { Change } from '../../../src/contract/run.ts';
import type { TapeView } from '../../../src/contract/tape.ts';
import type { Evidence } from '../../../src/lesson/evidence.ts';
import { elementSpec, held, runSpec } from '../../support/run-spec.ts';

export const ROW_RATE = 2000;

export interface Lines {
  readonly reading?: (timeS: number) => number;
  readonly specificForce?: (timeS: number) => number;
  readonly velocity?: (timeS: number) => number;
  readonly height?: (timeS: number) => number;
}

/** A tape whose rows are the lines' values up to an instant. */
export function tapeOf(lines: Lines, endS: number): TapeView {
  const names = ['specificForce', 'reading', 'velocity', 'height', 'acceleration', 'deflection'] as const;
  const channels = names.map((name) => ({ name, unit: 'm/s2' as const }));
  const endRow = Math.floor(endS * ROW_RATE + 1e-6) + 1;
  return {
    rateHz: ROW_RATE,
    revision: endRow,
    firstRow: 0,
    endRow,
    channels,
    value: (channel, row) => {
      if (row < 0 || row >= endRow) return Number.NaN;
      const line = lines[names[channel] as keyof Lines];
      return line ? line(row / ROW_RATE) : 0;
    },
    envelope: () => undefined,
  };
}

export interface Made {
  readonly lines?: Lines;
  readonly events?: readonly RunEvent[];
  readonly motions?: readonly MotionSpec[];
  readonly changes?: readonly Change[];
  readonly marks?: readonly number[];
  readonly endS?: number;
}

export function evidence({
  lines = {},
  events = [],
  motions = [],
  changes = [],
  marks = [],
  endS = 2,
}: Made): Evidence {
  const run = runSpec({
    motions: [held(0), ...motions],
    changes,
    elements: [elementSpec({ naturalFrequency: 8, dampingRatio: 0.05 })],
  });
  return { run, tape: tapeOf(lines, endS), events, marks, nowS: endS };
}

export const letGo = (timeS: number, verticalSpeedMS = 0, heightM = 0.5): RunEvent => ({
  kind: 'let go',
  timeS,
  heightM,
  verticalSpeedMS,
});

export const touch = (timeS: number, verticalSpeedMS = -3): RunEvent => ({
  kind: 'touch',
  timeS,
  verticalSpeedMS,
  fallS: 0.3,
});

export const liftOff = (timeS: number, verticalSpeedMS = 1): RunEvent => ({
  kind: 'lift-off',
  timeS,
  verticalSpeedMS,
  landing: { touchS: timeS - 0.02, contactS: 0.02, peakMS2: 300, peakS: timeS - 0.01, areaMS: 4, depthM: 0.01 },
});
