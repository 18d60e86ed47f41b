/** Keeps the record of one contact with the pad while it lasts, and watches for rest. */
import type { Landing } from '../contract/event.ts';

/**
 * At rest: no point of the housing moves faster than this [m/s] or would start to faster than that [m/s²], for so
 * long [s], while it presses on the pad.
 */
export const RESTING_SPEED_MS = 1e-3;
export const RESTING_ACCELERATION_MS2 = 0.05;
export const RESTING_FOR_S = 0.05;

const OPEN = 0;
const TOUCH_S = 1;
const END_S = 2;
const PEAK = 3;
const PEAK_S = 4;
const AREA = 5;
const DEPTH = 6;
const RESTED = 7;
/** How far from quiet at the last look: above 1, not quiet. */
const UNREST = 8;
const QUIET_SINCE_S = 9;
const LENGTH = 10;

export class LandingRecord {
  readonly #n = new Float64Array(LENGTH);

  get rested(): boolean {
    return this.#n[RESTED] === 1;
  }

  begin(timeS: number, unrest: number): void {
    const n = this.#n;
    n.fill(0);
    n[OPEN] = 1;
    n[TOUCH_S] = timeS;
    n[END_S] = timeS;
    n[UNREST] = unrest;
    n[QUIET_SINCE_S] = timeS;
  }

  close(): void {
    this.#n[OPEN] = 0;
  }

  /** Run time at which rest will have lasted long enough [s]; Infinity: not quiet, or said already. */
  get restDueS(): number {
    const n = this.#n;
    if (n[OPEN] === 0 || n[RESTED] === 1 || n[UNREST]! > 1) return Number.POSITIVE_INFINITY;
    return n[QUIET_SINCE_S]! + RESTING_FOR_S;
  }

  rest(): void {
    this.#n[RESTED] = 1;
  }

  /**
   * Adds a piece: magnitude of the specific force, its vertical part less g, depth of the lowest corner, each at start,
   * middle and end; and the unrest at its end (1 at the limits above). Until rest, not after.
   */
  add(
    startS: number,
    durationS: number,
    felt: Float64Array,
    net: Float64Array,
    depth: Float64Array,
    unrest: number,
  ): void {
    const n = this.#n;
    n[END_S] = startS + durationS;
    const at = highestAt(felt);
    const peak = parabola(felt, at);
    if (peak > n[PEAK]!) {
      n[PEAK] = peak;
      n[PEAK_S] = startS + at * durationS;
    }
    // Simpson: exact for the parabola
    n[AREA]! += (durationS * (net[0]! + 4 * net[1]! + net[2]!)) / 6;
    n[DEPTH] = Math.max(n[DEPTH]!, parabola(depth, highestAt(depth)));
    const before = n[UNREST]!;
    if (unrest <= 1 && before > 1) {
      n[QUIET_SINCE_S] = startS + (durationS * (before - 1)) / (before - unrest);
    }
    n[UNREST] = unrest;
  }

  landing(): Landing {
    const n = this.#n;
    return {
      touchS: n[TOUCH_S]!,
      contactS: n[END_S]! - n[TOUCH_S]!,
      peakMS2: n[PEAK]!,
      peakS: n[PEAK_S]!,
      areaMS: n[AREA]!,
      depthM: n[DEPTH]!,
    };
  }

  save(): readonly number[] {
    return Array.from(this.#n);
  }

  restore(saved: readonly number[]): void {
    this.#n.set(saved);
  }
}

/** Where, 0…1, the parabola through start, middle and end is highest. */
function highestAt(y: Float64Array): number {
  const curvature = 2 * (y[0]! - 2 * y[1]! + y[2]!);
  const slope = -3 * y[0]! + 4 * y[1]! - y[2]!;
  const vertex = -slope / (2 * curvature);
  if (curvature < 0 && vertex > 0 && vertex < 1) return vertex;
  return y[2]! > y[0]! ? 1 : 0;
}

function parabola(y: Float64Array, u: number): number {
  const curvature = 2 * (y[0]! - 2 * y[1]! + y[2]!);
  const slope = -3 * y[0]! + 4 * y[1]! - y[2]!;
  return y[0]! + u * (slope + u * curvature);
}
