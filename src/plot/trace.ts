import type { TapeView } from '../contract/tape.ts';

/** Below this a time that should be a row's is taken as that row's [rows]: covers the rounding of t·rate. */
const ROUNDING_ROWS = 1e-6;

/** The part of the tape that is looked at. */
export interface TraceWindow {
  readonly fromS: number;
  readonly toS: number;
  /** Pixel columns (of the device) per second. */
  readonly columnsPerS: number;
}

/**
 * A line as it is drawn: vertices in time, made from the tape without smoothing. Either pixel columns –
 * two vertices each, the minimum and the maximum of all ticks in it, at the column's edges – or, where
 * rows lie further apart than pixels, the rows themselves.
 */
export class Trace {
  timeS = new Float64Array(0);
  value = new Float64Array(0);
  /** Vertices in use. */
  count = 0;
  /** Leading vertices that are pairs [of one column], in pairs; 0: rows. */
  pairCount = 0;
  /** Scratch for the tape's envelope. */
  pairs = new Float64Array(0);

  reset(): void {
    this.count = 0;
    this.pairCount = 0;
  }

  /** Makes room; grows only, so that a still paper allocates nothing. */
  reserve(vertices: number): void {
    if (this.timeS.length >= vertices) return;
    this.timeS = new Float64Array(vertices + 64);
    this.value = new Float64Array(vertices + 64);
    this.pairs = new Float64Array(vertices + 64);
  }

  add(timeS: number, value: number): void {
    this.timeS[this.count] = timeS;
    this.value[this.count] = value;
    this.count++;
  }
}

/** Tapes keep extremes of 16, 256, 4096 rows: columns that begin on these boundaries cost a few looks each. */
const LEVEL_FACTOR = 16;

/**
 * Rows to one pixel column, 0 when rows are further apart than columns. Rounded down to m·16ⁿ, m < 64, so that
 * the tape can answer from its levels; a column is then never wider than a pixel.
 */
export function rowsPerColumn(rowsPerPixel: number): number {
  let unit = 1;
  while (rowsPerPixel / unit >= 64) unit *= LEVEL_FACTOR;
  return Math.floor(rowsPerPixel / unit) * unit;
}

const rest = new Float64Array(2);

/**
 * Fills a trace from one channel over a window. Columns begin at multiples of their own width, counted
 * from the run's start, so that a line does not shimmer while the paper moves. Extremes between rows
 * that lie more than `tolerance` [unit of the channel] outside the straight line are drawn halfway between them.
 */
export function fillTrace(trace: Trace, tape: TapeView, channel: number, window: TraceWindow, tolerance: number): void {
  trace.reset();
  const { rateHz } = tape;
  const end = Math.min(tape.endRow, Math.floor(window.toS * rateHz + ROUNDING_ROWS) + 1);
  const perColumn = rowsPerColumn(rateHz / window.columnsPerS);
  const wanted = Math.floor(window.fromS * rateHz);
  if (perColumn > 0) fillColumns(trace, tape, channel, wanted, end, perColumn);
  else fillRows(trace, tape, channel, Math.max(wanted, tape.firstRow), end, tolerance);
}

function fillColumns(
  trace: Trace,
  tape: TapeView,
  channel: number,
  wanted: number,
  end: number,
  perColumn: number,
): void {
  const oldest = Math.ceil(tape.firstRow / perColumn) * perColumn;
  const first = Math.max(Math.floor(wanted / perColumn) * perColumn, oldest);
  if (end <= first) return;
  const whole = Math.floor((end - first) / perColumn);
  const endOfWhole = first + whole * perColumn;
  trace.reserve(2 * whole + 4);
  const { pairs } = trace;
  if (whole > 0) tape.envelope(channel, first, endOfWhole, whole, pairs);
  let count = whole;
  if (end > endOfWhole) {
    // From one row earlier: of the first row asked for, the tape leaves out the ticks before it.
    tape.envelope(channel, Math.max(first, endOfWhole - 1), end, 1, rest);
    pairs[2 * count] = rest[0]!;
    pairs[2 * count + 1] = rest[1]!;
    count++;
  }
  // Row k carries the ticks since row k − 1: a column of rows a…b−1 covers the time from row a − 1 to row b − 1.
  const period = 1 / tape.rateHz;
  let last = pairs[0]!;
  for (let i = 0; i < count; i++) {
    const low = pairs[2 * i]!;
    const high = pairs[2 * i + 1]!;
    const left = Math.max(0, first + i * perColumn - 1) * period;
    const right = (Math.min(first + (i + 1) * perColumn, end) - 1) * period;
    const rises = !(Math.abs(low - last) > Math.abs(high - last)); // enter at the nearer end
    trace.add(left, rises ? low : high);
    trace.add(right, rises ? high : low);
    last = rises ? high : low;
  }
  trace.pairCount = count;
}

function fillRows(trace: Trace, tape: TapeView, channel: number, first: number, end: number, tolerance: number): void {
  const count = end - first;
  if (count <= 0) return;
  trace.reserve(3 * count + 4);
  const { pairs } = trace;
  tape.envelope(channel, first, end, count, pairs);
  const period = 1 / tape.rateHz;
  let before = 0;
  for (let i = 0; i < count; i++) {
    const value = tape.value(channel, first + i);
    if (i > 0) {
      const middle = (first + i - 0.5) * period;
      const low = pairs[2 * i]!;
      const high = pairs[2 * i + 1]!;
      if (low < Math.min(before, value) - tolerance) trace.add(middle, low);
      if (high > Math.max(before, value) + tolerance) trace.add(middle, high);
    }
    trace.add((first + i) * period, value);
    before = value;
  }
}

/** Carries a trace on to the exact value at an instant that no row may hold. */
export function endTraceAt(trace: Trace, timeS: number, value: number): void {
  if (trace.count === 0) trace.reserve(1);
  trace.add(timeS, value);
}

/** Smallest and largest value of a trace within a span; false when it has none there. */
export function traceExtent(trace: Trace, fromS: number, toS: number, out: Float64Array): boolean {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < trace.count; i++) {
    const time = trace.timeS[i]!;
    if (time < fromS || time > toS) continue;
    const value = trace.value[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  out[0] = low;
  out[1] = high;
  return low <= high;
}
