import type { TapeChannel, TapeView } from '../contract/tape.ts';

/** An extreme and when it was. */
export interface Peak {
  readonly value: number;
  readonly timeS: number;
  /** The instant is known within ± this [s]; 0 at a row. */
  readonly withinS: number;
}

/** What a marked span amounts to, in SI units of the channel. */
export interface SpanFigures {
  readonly fromS: number;
  readonly toS: number;
  readonly durationS: number;
  /** Rows inside the span. */
  readonly rows: number;
  readonly unit: TapeChannel['unit'];
  /** Area over duration. */
  readonly mean: number;
  readonly rms: number;
  readonly minimum: Peak;
  readonly maximum: Peak;
  /** Of the straight line with the least squared distance. */
  readonly slope: number;
  readonly slopeUnit: string;
  readonly area: number;
  readonly areaUnit: string;
}

const SLOPE_UNIT: Readonly<Record<TapeChannel['unit'], string>> = { 'm/s2': 'm/s³', 'm/s': 'm/s²', m: 'm/s' };
const AREA_UNIT: Readonly<Record<TapeChannel['unit'], string>> = { 'm/s2': 'm/s', 'm/s': 'm', m: 'm·s' };

/** Slack in counting rows, for times that should fall on one [rows]. */
const ROUNDING_ROWS = 1e-6;

/**
 * Figures of one channel over [fromS, toS] [s], cut to what the tape still holds; undefined when nothing is left.
 *
 * Area, mean, rms and slope are those of the straight lines through the rows, exact for these: ends between
 * rows are interpolated, and per piece from a to b of width d about its middle u (time from the span's middle)
 *     ∫v = d(a+b)/2,   ∫v² = d(a²+ab+b²)/3,   ∫uv = u·∫v + d²(b−a)/12,   slope = 12/T³·∫uv.
 * Against a smooth signal the area errs by T·h²·|v″|/12 (trapezoid rule), h the rows' distance.
 * The extremes are those of all ticks between the rows inside the span, and of its two ends.
 */
export function spanFigures(tape: TapeView, channel: number, fromS: number, toS: number): SpanFigures | undefined {
  const { rateHz } = tape;
  if (tape.endRow <= tape.firstRow) return undefined;
  const from = Math.max(fromS, tape.firstRow / rateHz);
  const to = Math.min(toS, (tape.endRow - 1) / rateHz);
  if (!(to > from)) return undefined;

  const firstInside = Math.ceil(from * rateHz - ROUNDING_ROWS);
  const lastInside = Math.floor(to * rateHz + ROUNDING_ROWS);
  const atFrom = valueAt(tape, channel, from);
  const atTo = valueAt(tape, channel, to);

  const middle = (from + to) / 2;
  let area = 0;
  let square = 0;
  let moment = 0;
  let timeA = from;
  let a = atFrom;
  for (let row = firstInside; row <= lastInside + 1; row++) {
    const timeB = row <= lastInside ? row / rateHz : to;
    const b = row <= lastInside ? tape.value(channel, row) : atTo;
    const width = timeB - timeA;
    const piece = (width * (a + b)) / 2;
    area += piece;
    square += (width * (a * a + a * b + b * b)) / 3;
    moment += ((timeA + timeB) / 2 - middle) * piece + (width * width * (b - a)) / 12;
    timeA = timeB;
    a = b;
  }

  const duration = to - from;
  const unit = tape.channels[channel]!.unit;
  return {
    fromS: from,
    toS: to,
    durationS: duration,
    rows: Math.max(0, lastInside - firstInside + 1),
    unit,
    mean: area / duration,
    rms: Math.sqrt(square / duration),
    minimum: extreme(tape, channel, firstInside, lastInside, from, atFrom, to, atTo, -1),
    maximum: extreme(tape, channel, firstInside, lastInside, from, atFrom, to, atTo, 1),
    slope: (12 * moment) / (duration * duration * duration),
    slopeUnit: SLOPE_UNIT[unit],
    area,
    areaUnit: AREA_UNIT[unit],
  };
}

/** Value at an instant on the straight lines through the rows. */
function valueAt(tape: TapeView, channel: number, timeS: number): number {
  const place = timeS * tape.rateHz;
  const row = Math.min(Math.max(Math.floor(place + ROUNDING_ROWS), tape.firstRow), tape.endRow - 1);
  const value = tape.value(channel, row);
  const share = place - row;
  if (share <= ROUNDING_ROWS || row + 1 >= tape.endRow) return value;
  return value + share * (tape.value(channel, row + 1) - value);
}

/** Parts into which an interval is cut when an extreme is looked for: each is one cheap question to the tape's levels. */
const PARTS = 16;
/** The tape keeps extremes in single precision, rounded outward: two units in the last place [–]. */
const KEPT_PRECISION = 2 ** -22;
const pair = new Float64Array(2);

function extreme(
  tape: TapeView,
  channel: number,
  firstInside: number,
  lastInside: number,
  fromS: number,
  atFrom: number,
  toS: number,
  atTo: number,
  side: 1 | -1,
): Peak {
  let best: Peak = { value: atFrom, timeS: fromS, withinS: 0 };
  const consider = (value: number, timeS: number, withinS: number): void => {
    if (side * value > side * best.value) best = { value, timeS, withinS };
  };
  if (firstInside <= lastInside) consider(tape.value(channel, firstInside), firstInside / tape.rateHz, 0);
  if (firstInside < lastInside) {
    const row = intervalOfExtreme(tape, channel, firstInside, lastInside, side);
    const value = intervalExtreme(tape, channel, row - 1, row, side);
    const near = [row - 1, row].find((each) => isValueOf(tape, channel, each, value));
    if (near === undefined) consider(value, (row - 0.5) / tape.rateHz, 0.5 / tape.rateHz);
    else consider(tape.value(channel, near), near / tape.rateHz, 0);
  }
  consider(atTo, toS, 0);
  return best;
}

/** The row at the end of that interval between neighbouring rows which holds the extreme of all ticks from row `first` to row `last`. */
function intervalOfExtreme(tape: TapeView, channel: number, first: number, last: number, side: 1 | -1): number {
  let from = first;
  let to = last;
  while (to - from > 1) {
    const width = Math.ceil((to - from) / PARTS);
    let best = -Infinity;
    let bestFrom = from;
    for (let start = from; start < to; start += width) {
      const value = side * intervalExtreme(tape, channel, start, Math.min(start + width, to), side);
      if (value > best) {
        best = value;
        bestFrom = start;
      }
    }
    to = Math.min(bestFrom + width, to);
    from = bestFrom;
  }
  return to;
}

/** Extreme over the ticks from one row to a later one, both included. */
function intervalExtreme(tape: TapeView, channel: number, fromRow: number, toRow: number, side: 1 | -1): number {
  tape.envelope(channel, fromRow, toRow + 1, 1, pair);
  return pair[side > 0 ? 1 : 0]!;
}

function isValueOf(tape: TapeView, channel: number, row: number, value: number): boolean {
  const atRow = tape.value(channel, row);
  return Math.abs(value - atRow) <= KEPT_PRECISION * Math.abs(atRow);
}
