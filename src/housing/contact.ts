/**
 * Which corners press on the pad, and when that changes. A corner is above the pad's top, or presses, or is below the top
 * without pressing (the damped pad let go of it on its way up). From one change to the next the forces are smooth;
 * the changes are located inside the step.
 */
import { signChange } from './crossing.ts';
import { CORNERS, type Forces } from './forces.ts';
import { LAYOUT } from './group-step.ts';

const { X } = LAYOUT;

/** Changes nearer to each other than this share of the step happen together [–]. */
export const TOGETHER = 1e-10;

/** Halvings in search of the instant after a touch at which the pad pushes: 2⁻⁴⁰ of a step is nothing. */
const MOST_HALVINGS = 40;

type Stepper = (start: Float64Array, h: number, out: Float64Array) => void;
type Quantity = 'height' | 'heightRate' | 'push';

export class Contact {
  /** Bit i: corner i is below the top without pressing; `forces.pressed` has those that press. */
  below = 0;
  readonly #forces: Forces;
  readonly #step: Stepper;
  readonly #radius: number;
  readonly #trial: Float64Array;
  readonly #height = new Float64Array(CORNERS);
  readonly #heightRate = new Float64Array(CORNERS);
  readonly #push = new Float64Array(CORNERS);
  readonly #endHeight = new Float64Array(CORNERS);
  readonly #endHeightRate = new Float64Array(CORNERS);
  readonly #endPush = new Float64Array(CORNERS);
  readonly #at = new Float64Array(CORNERS);
  /** What each corner changes to: 0 nothing, 1 presses, 2 below, 3 above. */
  readonly #to = new Uint8Array(CORNERS);
  #start: Float64Array;
  /** Heights, rates and pushes of the next step's start are at hand: it is the end of the last step. */
  #startKnown = false;

  constructor(forces: Forces, step: Stepper, radius: number, stateLength: number) {
    this.#forces = forces;
    this.#step = step;
    this.#radius = radius;
    this.#trial = new Float64Array(stateLength);
    this.#start = this.#trial;
  }

  /** Takes the corners as they are. */
  begin(state: Float64Array): void {
    const forces = this.#forces;
    this.#startKnown = false;
    forces.pressed = 0;
    this.below = 0;
    if (forces.pad === null) return;
    forces.corners(state);
    for (let i = 0; i < CORNERS; i++) {
      const height = forces.height[i]!;
      if (height > 0 || (height === 0 && forces.heightRate[i]! >= 0)) continue;
      if (height === 0 || forces.push[i]! > 0) forces.pressed |= 1 << i;
      else this.below |= 1 << i;
    }
  }

  /**
   * The first change of a step of h [s] from `start` to `end`, since its start; Infinity: none. `apply` then
   * makes it.
   */
  first(start: Float64Array, end: Float64Array, h: number): number {
    const forces = this.#forces;
    const known = this.#startKnown;
    this.#startKnown = false;
    if (forces.pad === null) return Number.POSITIVE_INFINITY;
    if (forces.pressed === 0 && this.below === 0 && this.#farAbove(start, end, h)) return Number.POSITIVE_INFINITY;
    this.#start = start;
    if (!known) {
      forces.corners(start);
      this.#height.set(forces.height);
      this.#heightRate.set(forces.heightRate);
      this.#push.set(forces.push);
    }
    forces.corners(end);
    // The end's values, before a search overwrites them.
    this.#endHeight.set(forces.height);
    this.#endHeightRate.set(forces.heightRate);
    this.#endPush.set(forces.push);
    this.#to.fill(0);
    let first = Number.POSITIVE_INFINITY;
    for (let i = 0; i < CORNERS; i++) {
      const height = this.#endHeight[i]!;
      const rate = this.#endHeightRate[i]!;
      const push = this.#endPush[i]!;
      const bit = 1 << i;
      let at = Number.POSITIVE_INFINITY;
      if ((forces.pressed & bit) !== 0) at = this.#letsGo(i, h, push);
      else if ((this.below & bit) !== 0) at = this.#leavesBelow(i, h, height, rate, push);
      else at = this.#touches(i, h, height, rate);
      this.#at[i] = at;
      first = Math.min(first, at);
    }
    if (first === Number.POSITIVE_INFINITY) {
      this.#height.set(this.#endHeight);
      this.#heightRate.set(this.#endHeightRate);
      this.#push.set(this.#endPush);
      this.#startKnown = true;
      return first;
    }
    for (let i = 0; i < CORNERS; i++) if (!(this.#at[i]! <= first + TOGETHER * h)) this.#to[i] = 0;
    return first;
  }

  /** Makes the changes `first` has found. */
  apply(): void {
    for (let i = 0; i < CORNERS; i++) {
      const to = this.#to[i];
      if (to === 0) continue;
      const bit = 1 << i;
      this.#forces.pressed &= ~bit;
      this.below &= ~bit;
      if (to === 1) this.#forces.pressed |= bit;
      else if (to === 2) this.below |= bit;
    }
  }

  /** The sphere about the box stays clear: between the ends the centre dips by less than |Δv|·h. */
  #farAbove(start: Float64Array, end: Float64Array, h: number): boolean {
    const lowest = Math.min(start[X + 1]!, end[X + 1]!) - h * Math.abs(end[4]! - start[4]!);
    return lowest > this.#radius;
  }

  #value(i: number, what: Quantity, at: number): number {
    this.#step(this.#start, at, this.#trial);
    this.#forces.corners(this.#trial);
    return this.#forces[what][i]!;
  }

  #change(i: number, what: Quantity, before: number, after: number, valueBefore: number, valueAfter: number): number {
    return signChange((at) => this.#value(i, what, at), before, after, valueBefore, valueAfter);
  }

  #touches(i: number, h: number, height: number, rate: number): number {
    const height0 = this.#height[i]!;
    const rate0 = this.#heightRate[i]!;
    this.#to[i] = 1;
    if (height0 <= 0 && rate0 < 0) return 0;
    if (height < 0) {
      if (height0 > 0) return this.#change(i, 'height', 0, h, height0, height);
      // it lies on the top and sinks, or has just left: over its highest point and down again
      if (rate0 <= 0 || rate >= 0) return 0;
      const top = this.#change(i, 'heightRate', 0, h, rate0, rate);
      const topHeight = this.#value(i, 'height', top);
      return topHeight > 0 ? this.#change(i, 'height', top, h, topHeight, height) : top;
    }
    if (rate0 < 0 && rate > 0 && lowestBetween(height0, rate0, height, rate, h) < 0) {
      const bottom = this.#change(i, 'heightRate', 0, h, rate0, rate);
      const bottomHeight = this.#value(i, 'height', bottom);
      if (bottomHeight < 0) return this.#change(i, 'height', 0, bottom, height0, bottomHeight);
    }
    this.#to[i] = 0;
    return Number.POSITIVE_INFINITY;
  }

  #letsGo(i: number, h: number, push: number): number {
    if (push >= 0) return Number.POSITIVE_INFINITY;
    let before = 0;
    let pushBefore = this.#push[i]!;
    // an undamped pad pushes with nothing at the very touch
    for (let n = 0; pushBefore <= 0 && n < MOST_HALVINGS; n++) {
      before = (n === 0 ? h : before) / 2;
      pushBefore = this.#value(i, 'push', before);
    }
    const at = pushBefore > 0 ? this.#change(i, 'push', before, h, pushBefore, push) : 0;
    this.#to[i] = this.#value(i, 'height', at) < 0 && this.#forces.pad!.damping > 0 ? 2 : 3;
    return at;
  }

  #leavesBelow(i: number, h: number, height: number, rate: number, push: number): number {
    const height0 = this.#height[i]!;
    const rate0 = this.#heightRate[i]!;
    this.#to[i] = 3;
    if (height0 >= 0) return 0;
    if (height > 0) return this.#change(i, 'height', 0, h, height0, height);
    if (rate0 > 0 && rate < 0 && lowestBetween(-height0, -rate0, -height, -rate, h) < 0) {
      const top = this.#change(i, 'heightRate', 0, h, rate0, rate);
      const topHeight = this.#value(i, 'height', top);
      if (topHeight > 0) return this.#change(i, 'height', 0, top, height0, topHeight);
    }
    if (push > 0) {
      this.#to[i] = 1;
      const push0 = this.#push[i]!;
      return push0 > 0 ? 0 : this.#change(i, 'push', 0, h, push0, push);
    }
    this.#to[i] = 0;
    return Number.POSITIVE_INFINITY;
  }
}

/** A bound below a convex curve: where the tangents at its ends meet. */
function lowestBetween(y0: number, slope0: number, y1: number, slope1: number, h: number): number {
  const at = (y1 - y0 - slope1 * h) / (slope0 - slope1);
  return y0 + slope0 * at;
}
