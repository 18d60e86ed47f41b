import type { Trace } from './trace.ts';

/** A place where a line leaves the paper: its farthest value and when. */
export interface Overshoot {
  timeS: number;
  /** The last time that it was seen outside [s]. */
  untilS: number;
  /** Unit of the channel. */
  value: number;
  /** At the paper's upper edge (+1) or its lower (−1). */
  edge: 1 | -1;
}

/**
 * Finds where a trace goes beyond ±`limit`; positive values leave at the edge `upward`. What returns for less
 * than `apartS` [s] counts as one, with its farthest value. Writes at most `most`, in order of time, and
 * returns their number.
 */
export function findOvershoots(
  trace: Trace,
  limit: number,
  upward: 1 | -1,
  apartS: number,
  out: Overshoot[],
  most: number,
): number {
  let found = 0;
  for (let i = 0; i < trace.count; i++) {
    const value = trace.value[i]!;
    if (!(Math.abs(value) > limit)) continue;
    const edge = value > 0 ? upward : upward === 1 ? -1 : 1;
    const timeS = trace.timeS[i]!;
    const open = latest(out, found, edge);
    if (open !== undefined && timeS - open.untilS < apartS) {
      open.untilS = timeS;
      if (Math.abs(value) > Math.abs(open.value)) {
        open.value = value;
        open.timeS = timeS;
      }
    } else if (found < most) {
      const next = out[found] ?? { timeS: 0, untilS: 0, value: 0, edge: 1 };
      out[found] = next;
      next.timeS = timeS;
      next.untilS = timeS;
      next.value = value;
      next.edge = edge;
      found++;
    }
  }
  return found;
}

function latest(list: readonly Overshoot[], count: number, edge: 1 | -1): Overshoot | undefined {
  for (let i = count - 1; i >= 0; i--) if (list[i]!.edge === edge) return list[i];
  return undefined;
}
