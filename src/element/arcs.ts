import type { Propagator } from './propagator.ts';

/**
 * An arc: a stretch of time over which one law and smooth forces hold, from its own start. Its numbers stand in a
 * row: start τ [s], the specific force f, f′, f″ and the softening ω⊥², its first and second derivative, all at
 * the start, the law, the side of the stop rested on, then the state z at the start.
 */
export const START = 0;
export const FORCE = 1;
export const SPIN = 4;
export const LAW = 7;
export const SIDE = 8;
export const STATE = 9;

/** The law of an arc. */
export const FREE = 0;
/** Free, with the cubic spring or the field at the mass: by Runge–Kutta, one step an arc. */
export const FREE_NONLINEAR = 1;
/** The pick-off rests on a stop and nothing else can move. */
export const STILL = 2;
/** The pick-off rests on a stop, other modes or the mount move on. */
export const HELD = 3;

/** The arcs of the present tick in the order of time. Grows when it must, else allocates nothing. */
export class Arcs {
  count = 0;
  data = new Float64Array(256);
  readonly #at: number[] = [];
  readonly #propagators: Propagator[] = [];
  #end = 0;

  clear(): void {
    this.count = 0;
    this.#end = 0;
  }

  /** Makes room for an arc and returns where its numbers go; they are the caller's to fill. */
  push(propagator: Propagator): number {
    const at = this.#end;
    this.#end += STATE + propagator.mechanics.size;
    if (this.#end > this.data.length) this.#grow();
    this.#at[this.count] = at;
    this.#propagators[this.count] = propagator;
    this.count += 1;
    return at;
  }

  /** Takes the last arc back. */
  pop(): void {
    this.count -= 1;
    this.#end = this.#at[this.count]!;
  }

  /** The last arc that has begun by τ; the first if none. */
  indexAt(tauS: number): number {
    let low = 0;
    let high = this.count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.data[this.#at[middle]! + START]! <= tauS) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  at(index: number): number {
    return this.#at[index]!;
  }

  propagator(index: number): Propagator {
    return this.#propagators[index]!;
  }

  #grow(): void {
    const grown = new Float64Array(2 * this.#end);
    grown.set(this.data);
    this.data = grown;
  }
}
