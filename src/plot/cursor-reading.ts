import type { SampleView } from '../contract/tape.ts';
import { formatQuantity } from '../units/format.ts';
import { G_N } from '../units/standard-gravity.ts';
import { eventNear, markLook } from './event-marks.ts';
import { channelOf } from './line-layer.ts';
import type { CursorReading, CursorValue, LineKind, PaperView } from './paper-view.ts';
import { LINE_NAMES } from './pen-style.ts';
import { readingText, signed } from './reading-format.ts';

/** Share of the scale below which a value is read as zero [–]: far under a pixel, and no "3.4×10⁻¹² g". */
const NOTHING = 2e-5;
/** Events this near to the cursor are named with it [px]. */
const EVENT_PX = 3;

const pair = new Float64Array(2);

/** Values of all lines at an instant; `pxPerS` tells how much time a pixel column holds. */
export function readCursor(view: PaperView, timeS: number, pxPerS: number): CursorReading | undefined {
  const { tape } = view;
  const row = Math.round(timeS * tape.rateHz);
  if (row < tape.firstRow || row >= tape.endRow) return undefined;
  const rows = Math.floor(tape.rateHz / pxPerS / 2);
  const values: CursorValue[] = [];
  for (const line of view.lines) {
    const channel = channelOf(tape, line.channel);
    if (channel < 0) continue;
    const value = tape.value(channel, row);
    pair[0] = value;
    pair[1] = value;
    if (rows > 0)
      tape.envelope(channel, Math.max(tape.firstRow, row - rows), Math.min(tape.endRow, row + rows + 1), 1, pair);
    const sign = isPenKind(line.kind) ? view.sign : 1;
    values.push(cursorValue(line.kind, value, sign));
  }
  if (view.samples !== undefined && view.reported !== 'none') {
    const sample = nearestSample(view.samples, timeS);
    if (sample !== undefined) {
      pair.fill(view.samples.valueG(sample) * G_N);
      values.push(cursorValue('reported', pair[0]!, view.sign));
    }
  }
  return { timeS: row / tape.rateHz, values, event: eventNear(view.events, timeS, EVENT_PX / pxPerS) };
}

function cursorValue(kind: CursorValue['kind'], value: number, sign: 1 | -1): CursorValue {
  const a = pair[0]! * sign;
  const b = pair[1]! * sign;
  return { kind, value: value * sign, low: Math.min(a, b), high: Math.max(a, b) };
}

export function isPenKind(kind: LineKind | 'reported'): boolean {
  return kind !== 'velocity' && kind !== 'height';
}

/** The sample that the sensor had last delivered at an instant. */
function nearestSample(samples: SampleView, timeS: number): number | undefined {
  const next = samples.firstAtOrAfter(timeS);
  if (next < samples.end && samples.timeS(next) === timeS) return next;
  return next - 1 >= samples.first && next > 0 ? next - 1 : undefined;
}

/** A value as written beside the cursor; a range where the pixel column holds more than one. `scale`: ± range of its scale [SI]. */
export function cursorText(value: CursorValue, view: PaperView, scale: number): string {
  const written = (number: number): string => {
    const shown = Math.abs(number) < NOTHING * scale ? 0 : number;
    if (value.kind === 'velocity') return signed(shown, formatQuantity(shown, 'speed'));
    if (value.kind === 'height') return formatQuantity(shown, 'length');
    return readingText(shown, view.unit);
  };
  const spread = value.high - value.low;
  return spread > 0.01 * scale ? `${written(value.low)} … ${written(value.high)}` : written(value.value);
}

/** For a screen reader: the instant, what happened there, the values. */
export function spokenReading(
  reading: CursorReading,
  view: PaperView,
  scaleOf: (kind: CursorValue['kind']) => number,
): string {
  const event = reading.event === undefined ? '' : `, ${markLook(reading.event)?.name ?? ''}`;
  const values = reading.values.map((each) => `${LINE_NAMES[each.kind]} ${cursorText(each, view, scaleOf(each.kind))}`);
  return `${timeText(reading.timeS)}${event}: ${values.join('; ')}`;
}

/** An instant of the run, to the tenth of a millisecond at most. */
export function timeText(timeS: number): string {
  return `${(Math.round(timeS * 1e4) / 1e4).toString().replace('-', '−')} s`;
}
