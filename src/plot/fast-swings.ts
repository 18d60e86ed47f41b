import type { Trace } from './trace.ts';

/** A stretch of vertices [from, to) in which a line swings faster than can be drawn as a line. */
export interface FastRun {
  from: number;
  to: number;
}

/** Swings smaller than this do not count [px]; turns closer than APART_PX are too fast for a line [px]. */
const SWING_PX = 5;
const APART_PX = 3.5;
/** Turns in a row before they count as a stretch: a spike, or a bounce, is a line. */
const LEAST_TURNS = 8;

/**
 * Finds the stretches in which the line turns back every few pixels: fast shaking, noise. As a line they would be
 * a pattern of the columns rather than of the signal, and flicker while the paper moves; they are drawn as the
 * area swept. Returns their number.
 */
export function fastRuns(trace: Trace, pxPerS: number, pxPerUnit: number, out: FastRun[]): number {
  const { timeS, value, count } = trace;
  const swing = SWING_PX / Math.abs(pxPerUnit);
  const apartS = APART_PX / pxPerS;
  let found = 0;
  let rising = true;
  let turn = 0; // vertex of the farthest value in the present direction
  let lastTurn = 0; // vertex where it last turned
  let turns = 0; // fast turns in a row
  let start = 0;
  for (let i = 1; i <= count; i++) {
    const ahead = i < count ? (rising ? value[i]! - value[turn]! : value[turn]! - value[i]!) : 0;
    if (i < count && ahead >= 0) {
      turn = i;
      continue;
    }
    const turned = i < count && -ahead >= swing;
    const slow =
      i === count || timeS[i]! - timeS[lastTurn]! > 2 * apartS || (turned && timeS[turn]! - timeS[lastTurn]! > apartS);
    if (slow) {
      if (turns >= LEAST_TURNS) {
        const run = out[found] ?? { from: 0, to: 0 };
        out[found] = run;
        run.from = start;
        run.to = lastTurn + 1;
        found++;
      }
      turns = 0;
    }
    if (turned) {
      if (turns === 0) start = turn;
      turns++;
      lastTurn = turn;
      rising = !rising;
      turn = i;
    }
  }
  return found;
}

/** Half the width over which the swept area's edges are taken [px]: a turn on either side is always within. */
export const SWEPT_PX = APART_PX;
