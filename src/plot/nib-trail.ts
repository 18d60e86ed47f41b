import type { Trace } from './trace.ts';

/** Points kept: at 60 frames a second, half a minute of drawing. */
const KEPT = 2048;

/**
 * Where the nib was from frame to frame, for slow motion: rows then lie many pixels apart, while the nib follows the
 * exact curve between them. The ink that it left is that curve, not the straight lines from row to row.
 */
export class NibTrail {
  readonly #timeS = new Float64Array(KEPT);
  readonly #value = new Float64Array(KEPT);
  #first = 0;
  #end = 0;

  /** Notes a point; points at or after it are forgotten, for the run went back. */
  add(timeS: number, value: number): void {
    while (this.#end > this.#first && this.#time(this.#end - 1) >= timeS) this.#end--;
    this.#timeS[this.#end % KEPT] = timeS;
    this.#value[this.#end % KEPT] = value;
    this.#end++;
    this.#first = Math.max(this.#first, this.#end - KEPT);
  }

  clear(): void {
    this.#first = 0;
    this.#end = 0;
  }

  get empty(): boolean {
    return this.#first === this.#end;
  }

  /** Writes the vertices of a trace of rows, with the trail's points between them, into another trace. */
  merge(rows: Trace, out: Trace): void {
    out.reset();
    out.reserve(rows.count + this.#end - this.#first);
    let k = this.#first;
    const begin = rows.count > 0 ? rows.timeS[0]! : Infinity;
    while (k < this.#end && this.#time(k) <= begin) k++;
    for (let i = 0; i < rows.count; i++) {
      const timeS = rows.timeS[i]!;
      for (; k < this.#end && this.#time(k) < timeS; k++) out.add(this.#time(k), this.#value[k % KEPT]!);
      if (k < this.#end && this.#time(k) === timeS) k++;
      out.add(timeS, rows.value[i]!);
    }
  }

  #time(k: number): number {
    return this.#timeS[k % KEPT]!;
  }
}
