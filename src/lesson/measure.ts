/** Measures the figures of a step on the tape of one attempt. */

import { ringDown } from '../analysis/ring-down.ts';
import { area, crossings, extreme, rms, type Series, slope, staysFrom } from '../analysis/series.ts';
import { principalAngle, steadySine } from '../analysis/steady-sine.ts';
import type { TapeView } from '../contract/tape.ts';
import type { Attempt } from './evidence.ts';
import type { Lookup } from './expression.ts';
import { LINES, type LineName, type Stretch, type Take } from './lesson.ts';

/** A figure on a stretch needs this many rows; a ring-down or a sine, which are fitted, as many again per unknown. */
const LEAST_ROWS = 8;

/** Instants that come out a rounding error short of a row belong to it [rows]. */
const ROUNDING_ROWS = 1e-6;

/** Value of a figure; undefined while the tape does not show it. Infinity: it never came about. */
export function measure(take: Take, attempt: Attempt, lookup: Lookup): number | undefined {
  const value = take.take === 'formula' ? take.value.value(lookup) : measured(take, attempt, lookup);
  return value === undefined || Number.isNaN(value) ? undefined : value;
}

function measured(take: Exclude<Take, { take: 'formula' }>, attempt: Attempt, lookup: Lookup): number | undefined {
  if (take.take === 'duration') {
    const fromS = attempt.at(take.from);
    const toS = attempt.at(take.to);
    return fromS === undefined || toS === undefined ? undefined : toS - fromS;
  }
  if (take.take === 'value') {
    const atS = attempt.at(take.at);
    if (atS === undefined || attempt.changedBefore(atS)) return undefined;
    return valueAt(attempt.evidence.tape, take.of, atS, take.minus ? take.minus.value(lookup) : 0);
  }
  const span = spanOf(take, attempt);
  if (!span) return undefined;
  const series = seriesOf(attempt.evidence.tape, take.of, span, take.minus ? take.minus.value(lookup) : 0);
  return series && onStretch(take, series, span, attempt.evidence.tape, lookup);
}

interface Span {
  readonly fromS: number;
  readonly toS: number;
}

function onStretch(
  take: Extract<Take, Stretch>,
  series: Series,
  { fromS, toS }: Span,
  tape: TapeView,
  lookup: Lookup,
): number | undefined {
  switch (take.take) {
    case 'mean':
      return area(series, fromS, toS) / (toS - fromS);
    case 'area':
      return area(series, fromS, toS);
    case 'rms':
      return rms(series, fromS, toS);
    case 'slope':
      return slope(series);
    case 'highest':
      return extreme(series, 1).value;
    case 'lowest':
      return extreme(series, -1).value;
    case 'whenHighest':
      return extreme(series, 1).timeS - fromS;
    case 'swings':
      return crossings(series, take.level.value(lookup), 'rising').length;
    case 'crossing':
      return (crossings(series, take.level.value(lookup), 'either')[0] ?? Number.POSITIVE_INFINITY) - fromS;
    case 'settling':
      return staysFrom(series, take.level.value(lookup), take.band.value(lookup)) - fromS;
    case 'ringFrequency':
      return ringDown(series)?.frequencyHz;
    case 'decrement':
      return ringDown(series)?.decrement;
    case 'damping':
      return ringDown(series)?.dampingRatio;
    case 'amplitude':
      return steadySine(series, take.frequency.value(lookup)).amplitude;
    case 'gain':
    case 'phase': {
      const frequencyHz = take.frequency.value(lookup);
      const against = seriesOf(tape, take.against, { fromS, toS }, 0);
      if (!against) return undefined;
      const output = steadySine(series, frequencyHz);
      const input = steadySine(against, frequencyHz);
      if (take.take === 'gain') return output.amplitude / input.amplitude;
      return principalAngle(output.phaseRad - input.phaseRad);
    }
  }
}

/** The span of a stretch once the tape holds all of it, unless a setting was changed within. */
function spanOf({ from, to }: Stretch, attempt: Attempt): Span | undefined {
  const { tape } = attempt.evidence;
  const fromS = attempt.at(from);
  const toS = attempt.at(to);
  if (fromS === undefined || toS === undefined || !(toS > fromS)) return undefined;
  if (toS > (tape.endRow - 1) / tape.rateHz || fromS < tape.firstRow / tape.rateHz) return undefined;
  return attempt.changedBefore(toS) ? undefined : { fromS, toS };
}

/** The rows of a line inside a span. */
function seriesOf(tape: TapeView, line: LineName, { fromS, toS }: Span, minus: number): Series | undefined {
  const { rateHz } = tape;
  const first = Math.ceil(fromS * rateHz - ROUNDING_ROWS);
  const last = Math.floor(toS * rateHz + ROUNDING_ROWS);
  const count = last - first + 1;
  if (count < LEAST_ROWS) return undefined;
  const channel = channelOf(tape, line);
  const values = new Float64Array(count);
  for (let k = 0; k < count; k += 1) values[k] = tape.value(channel, first + k) - minus;
  return { startS: first / rateHz, rateHz, values };
}

/** Value at an instant on the straight line between the rows beside it. */
function valueAt(tape: TapeView, line: LineName, timeS: number, minus: number): number | undefined {
  const place = timeS * tape.rateHz;
  const row = Math.floor(place + ROUNDING_ROWS);
  if (row < tape.firstRow || row + 1 >= tape.endRow) return undefined;
  const channel = channelOf(tape, line);
  const here = tape.value(channel, row);
  const share = Math.max(0, place - row);
  return here + share * (tape.value(channel, row + 1) - here) - minus;
}

function channelOf(tape: TapeView, line: LineName): number {
  return tape.channels.findIndex(({ name }) => name === LINES[line].channel);
}
