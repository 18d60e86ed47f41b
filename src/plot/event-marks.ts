import type { RunEvent } from '../contract/event.ts';

/** How an event is written on the paper. */
export interface MarkLook {
  readonly name: string;
  /** Full line, fine dotted line, or a short tick at a stop line or the foot. */
  readonly form: 'line' | 'dotted' | 'stop' | 'foot';
  /** Which names go first where there is no room for all. */
  readonly rank: number;
}

const MOTION_NAMES: Readonly<Record<string, string>> = {
  held: 'held',
  shake: 'shaken',
  move: 'moved',
  push: 'pushed',
  tilt: 'tilted',
  spin: 'spun',
  recorded: 'record',
  hand: 'in hand',
};

/** The look of an event's mark; undefined for what another mark already says. */
export function markLook(event: RunEvent): MarkLook | undefined {
  switch (event.kind) {
    case 'let go':
      return { name: 'let go', form: 'line', rank: 0 };
    case 'touch':
      return { name: 'touch', form: 'line', rank: 0 };
    case 'lift-off':
      return { name: 'lifted', form: 'dotted', rank: 2 };
    case 'at rest':
      return { name: 'at rest', form: 'dotted', rank: 1 };
    case 'motion': {
      const name = MOTION_NAMES[event.motion]; // 'free' has none: its mark is "let go"
      return name === undefined ? undefined : { name, form: 'line', rank: 1 };
    }
    case 'stop hit':
      return { name: 'stop', form: 'stop', rank: 9 };
    case 'change':
      return { name: changeName(event.what), form: 'foot', rank: 3 };
  }
}

/** What was set, in words: events name keys of the scenario, "z: dampingRatio, gap". */
function changeName(what: string): string {
  const keys = what.split(': ').slice(-1)[0]!.split(', ');
  return keys.map((key) => SET_NAMES[key] ?? key).join(', ');
}

const SET_NAMES: Readonly<Record<string, string>> = {
  naturalFrequency: 'spring',
  dampingRatio: 'damping',
  gap: 'gap',
  restitution: 'bounce',
  readout: 'read-out',
  pad: 'felt',
};

/** Rank of the name of a touch that is a bounce. */
export const BOUNCE_RANK = 2;

/** Whether the next touch is the first since the housing was let go, as things stand before event `index`; later ones are bounces. */
export function awaitsFirstTouch(events: readonly RunEvent[], index: number): boolean {
  for (let i = index - 1; i >= 0; i--) {
    const { kind } = events[i]!;
    if (kind === 'let go') return true;
    if (kind === 'touch' || kind === 'at rest') return false;
  }
  return true;
}

/** Index of the first event at or after an instant [s]. */
export function firstEventAtOrAfter(events: readonly RunEvent[], timeS: number): number {
  let low = 0;
  let high = events.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (events[middle]!.timeS < timeS) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The event with a mark nearest to an instant, no farther than `withinS` [s]. */
export function eventNear(events: readonly RunEvent[], timeS: number, withinS: number): RunEvent | undefined {
  let best: RunEvent | undefined;
  for (let i = firstEventAtOrAfter(events, timeS - withinS); i < events.length; i++) {
    const event = events[i]!;
    if (event.timeS > timeS + withinS) break;
    if (markLook(event) === undefined) continue;
    if (best === undefined || closer(event, best, timeS)) best = event;
  }
  return best;
}

/** Nearer, or as near and more telling. */
function closer(event: RunEvent, than: RunEvent, timeS: number): boolean {
  const gain = Math.abs(than.timeS - timeS) - Math.abs(event.timeS - timeS);
  return gain > 0 || (gain === 0 && markLook(event)!.rank < markLook(than)!.rank);
}

/** The next event with a named mark after (+1) or before (−1) an instant [s]. */
export function nextEvent(events: readonly RunEvent[], timeS: number, direction: 1 | -1): RunEvent | undefined {
  const apart = 1e-9 * Math.max(1, Math.abs(timeS));
  if (direction > 0) {
    for (let i = firstEventAtOrAfter(events, timeS + apart); i < events.length; i++)
      if (isStation(events[i]!)) return events[i];
  } else {
    for (let i = firstEventAtOrAfter(events, timeS - apart) - 1; i >= 0; i--)
      if (isStation(events[i]!)) return events[i];
  }
  return undefined;
}

/** Keys step from one named mark to the next; a mass chattering on its stop is passed over. */
function isStation(event: RunEvent): boolean {
  const look = markLook(event);
  return look !== undefined && look.form !== 'stop';
}
