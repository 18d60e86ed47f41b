import type { RunEvent } from '../contract/event.ts';
import { quantityText } from '../units/quantity-text.ts';
import { G_N } from '../units/standard-gravity.ts';

/** What the pen did, for the sentence: the reading at an instant [m/s²]. */
export type ReadingAt = (timeS: number) => number;

/** What goes on since the last fall, where no figure sums it up. */
const DOING: Readonly<Record<string, string>> = {
  shake: 'On the shaker.',
  recorded: 'The record is played on the shaker.',
  tilt: 'Tilted.',
  move: 'Carried.',
  push: 'Pushed.',
  spin: 'Spun.',
};

/** Let go faster upward than this it is thrown [m/s]. */
const THROWN_MS = 0.05;

/** The sentence of the last fall or throw, in plain words, from what happened; empty before the first. */
export function runSentence(events: readonly RunEvent[], readingAt: ReadingAt): string {
  const latest = findLast(
    events,
    (event) => event.kind === 'let go' || (event.kind === 'motion' && event.motion in DOING),
  );
  if (latest?.kind === 'motion') return goesOn(events, latest) ? (DOING[latest.motion] ?? '') : '';
  const letGo = latest;
  if (letGo?.kind !== 'let go') return '';
  const touch = events.find((event) => event.kind === 'touch' && event.timeS > letGo.timeS);
  if (touch?.kind !== 'touch') return `Let go ${metres(letGo.heightM)} up.`;
  const flight = seconds(touch.timeS - letGo.timeS);
  const up = letGo.verticalSpeedMS;
  const fell = up > THROWN_MS ? `Thrown up at ${quantityText(up, 'speed')}, in flight ${flight}` : `Fell ${flight}`;
  const reading = `reading at the end of the fall ${inG(readingAt(touch.timeS))}`;
  const off = events.find((event) => event.kind === 'lift-off' && event.timeS > touch.timeS);
  const rest = events.find((event) => event.kind === 'at rest' && event.timeS > touch.timeS);
  const landing = off?.kind === 'lift-off' ? off.landing : rest?.kind === 'at rest' ? rest.landing : undefined;
  if (!landing) return `${fell}, ${reading}.`;
  const pushed = `landed with up to ${inG(landing.peakMS2)}`;
  const stop = events.some((event) => event.kind === 'stop hit' && event.timeS >= touch.timeS)
    ? ', the mass hit its stop'
    : '';
  return `${fell}, ${reading}, ${pushed}${stop}${rest ? '. At rest' : ''}.`;
}

/** No other motion has begun since. */
function goesOn(events: readonly RunEvent[], motion: RunEvent): boolean {
  return events.lastIndexOf(motion) === events.findLastIndex(({ kind }) => kind === 'motion');
}

function findLast(events: readonly RunEvent[], is: (event: RunEvent) => boolean): RunEvent | undefined {
  for (let index = events.length - 1; index >= 0; index -= 1) if (is(events[index]!)) return events[index];
  return undefined;
}

/** Below this a reading is zero to the eye [m/s²]; three significant digits of less would say nothing. */
const ZERO_TO_THE_EYE = 0.005 * G_N;

const inG = (value: number): string => quantityText(Math.abs(value) < ZERO_TO_THE_EYE ? 0 : value, 'acceleration', 'g');
const seconds = (value: number): string => quantityText(value, 'time');
const metres = (value: number): string => quantityText(value, 'length');
