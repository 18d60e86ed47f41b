import { describe, expect, it } from 'vitest';
import { endTraceAt, fillTrace, rowsPerColumn, Trace, traceExtent } from '../../src/plot/trace.ts';
import { tapeOf, uniform } from './support/tape-of.ts';

const SEED = 7;

function filled(
  tape: ReturnType<typeof tapeOf>,
  fromS: number,
  toS: number,
  columnsPerS: number,
  tolerance = Infinity,
): Trace {
  const trace = new Trace();
  fillTrace(trace, tape, 0, { fromS, toS, columnsPerS }, tolerance);
  return trace;
}

describe('rows to a pixel column', () => {
  it('is 0 where rows lie further apart than pixels', () => {
    expect(rowsPerColumn(0.99)).toBe(0);
  });

  it('is never wider than a pixel, and never narrower than half of one', () => {
    for (let rows = 1; rows < 1e5; rows *= 1.037) {
      expect(rowsPerColumn(rows)).toBeLessThanOrEqual(rows);
      expect(rowsPerColumn(rows)).toBeGreaterThan(rows / 2);
    }
  });
});

describe('a trace of columns', () => {
  const chance = uniform(SEED);
  const noise = Array.from({ length: 20_000 }, () => chance() - 0.5);
  const tape = tapeOf((t) => noise[Math.round(t * 2000)]!, 2000, noise.length);

  it(`keeps every pixel column's minimum and maximum (seed ${SEED})`, () => {
    for (const columnsPerS of [1500, 700, 85, 9.7]) {
      const trace = filled(tape, 1, 9, columnsPerS);
      const width = rowsPerColumn(2000 / columnsPerS);
      const first = Math.floor(2000 / width) * width;
      let worst = 0;
      for (let i = 0; i < trace.pairCount; i++) {
        const from = first + i * width;
        const unfinished = from + width > 9 * 2000 + 1; // begins with the row before it
        const rows = noise.slice(unfinished ? from - 1 : from, Math.min(from + width, 9 * 2000 + 1));
        const pair = [trace.value[2 * i]!, trace.value[2 * i + 1]!].sort((a, b) => a - b);
        worst = Math.max(worst, Math.abs(pair[0]! - Math.min(...rows)), Math.abs(pair[1]! - Math.max(...rows)));
      }
      // The tape keeps extremes in single precision, rounded outward; values are below 0.5.
      expect(worst).toBeLessThanOrEqual(2 ** -23 * 0.5);
    }
  });

  it('keeps a peak of a single tick between rows', () => {
    const spike = tapeOf((t) => (Math.abs(t - 3.00025) < 1e-6 ? 50 : 0), 1000, 6000, 4);
    const trace = filled(spike, 0, 6, 100);
    expect(Math.max(...trace.value.subarray(0, trace.count))).toBe(50);
  });

  it('keeps the extremes of its last, unfinished column', () => {
    // 1009 rows in columns of 10: the last one holds rows 1000…1008; the peak lies among the ticks before row 1000.
    const spike = tapeOf((t) => (Math.abs(t - 0.99975) < 1e-6 ? 50 : 0), 1000, 1009, 4);
    const trace = filled(spike, 0, 2, 100);
    expect(Math.max(...trace.value.subarray(0, trace.count))).toBe(50);
  });

  it('begins columns at the same rows while the paper moves', () => {
    const still = filled(tape, 1, 9, 85);
    const moved = filled(tape, 1.37, 9, 85);
    const times = new Set(still.timeS.subarray(0, still.count));
    expect([...moved.timeS.subarray(0, moved.count)].every((t) => times.has(t))).toBe(true);
  });

  it('goes forward in time only, and covers the window without gaps', () => {
    const trace = filled(tape, 1, 9, 300);
    expect(trace.timeS[0]!).toBeLessThanOrEqual(1);
    expect(trace.timeS[trace.count - 1]!).toBeCloseTo(9, 9);
    const times = [...trace.timeS.subarray(0, trace.count)];
    expect(times.every((t, i) => i === 0 || t >= times[i - 1]!)).toBe(true);
    expect(times.every((t, i) => i === 0 || i % 2 === 1 || Math.abs(t - times[i - 1]!) < 1e-12)).toBe(true);
  });

  it('draws a rising line as the line itself: no steps back', () => {
    const trace = filled(
      tapeOf((t) => 3 * t, 2000, 4000),
      0,
      1.9,
      200,
    );
    for (let i = 1; i < trace.count; i++) expect(trace.value[i]!).toBeGreaterThanOrEqual(trace.value[i - 1]! - 1e-6);
  });
});

describe('a trace of rows', () => {
  it('joins the rows as they are, from the one before the window to the last before its end', () => {
    const tape = tapeOf((t) => t * t, 100, 1000);
    const trace = filled(tape, 1.005, 1.1, 1000);
    expect([...trace.timeS.subarray(0, trace.count)].map((t) => Math.round(t * 100))).toEqual([
      100, 101, 102, 103, 104, 105, 106, 107, 108, 109, 110,
    ]);
    for (let i = 0; i < trace.count; i++) expect(trace.value[i]!).toBe((Math.round(trace.timeS[i]! * 100) / 100) ** 2);
  });

  it('shows an extreme between two rows halfway between them', () => {
    const tape = tapeOf((t) => (Math.abs(t - 0.5025) < 1e-6 ? 9 : 1), 100, 100, 4);
    const trace = filled(tape, 0.45, 0.55, 5000, 0.01);
    const at = trace.value.subarray(0, trace.count).indexOf(9);
    expect(trace.timeS[at]!).toBeCloseTo(0.505, 12);
  });

  it('is carried on to the exact value inside a tick', () => {
    const trace = filled(
      tapeOf((t) => t, 100, 100),
      0.2,
      0.5,
      5000,
    );
    endTraceAt(trace, 0.5033, 0.5033);
    expect(trace.timeS[trace.count - 1]).toBe(0.5033);
    expect(trace.value[trace.count - 1]).toBe(0.5033);
  });

  it('tells its extent within a span, and that it has none outside', () => {
    const trace = filled(
      tapeOf((t) => t, 100, 100),
      0,
      0.9,
      5000,
    );
    const out = new Float64Array(2);
    expect(traceExtent(trace, 0.25, 0.5, out)).toBe(true);
    expect([...out]).toEqual([0.25, 0.5]);
    expect(traceExtent(trace, 2, 3, out)).toBe(false);
  });
});

it('a tape that dropped its oldest rows is drawn from the first that it keeps', () => {
  const tape = tapeOf((t) => t, 1000, 10);
  const dropped = { ...asView(tape), firstRow: 5 };
  const trace = new Trace();
  fillTrace(trace, dropped, 0, { fromS: 0, toS: 1, columnsPerS: 1e5 }, Infinity);
  expect(trace.timeS[0]).toBe(0.005);
});

function asView(tape: ReturnType<typeof tapeOf>) {
  return {
    rateHz: tape.rateHz,
    revision: tape.revision,
    firstRow: tape.firstRow,
    endRow: tape.endRow,
    channels: tape.channels,
    value: tape.value.bind(tape),
    envelope: tape.envelope.bind(tape),
  };
}
