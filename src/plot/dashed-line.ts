import { Polyline, type Projection } from './polyline.ts';

/**
 * A dashed line whose dashes stay where they are on the paper while the paper moves. A canvas counts dashes
 * from a stroke's beginning, which is lost at the left edge; this remembers how much of the line went (or came
 * back) there. When a scale changes the dashes are laid anew.
 */
export class DashedLine {
  #now = new Polyline();
  #before = new Polyline();
  #on: Projection | undefined;
  #phase = 0;

  /** The polyline to fill for this drawing. */
  begin(vertices: number): Polyline {
    const empty = this.#before;
    this.#before = this.#now;
    this.#now = empty;
    empty.reset(vertices);
    return empty;
  }

  /** After filling: where in the dash pattern the first stroke begins [px]. */
  phase(on: Projection, period: number): number {
    const before = this.#on;
    this.#on = on;
    const now = this.#now;
    const sameScale =
      before !== undefined &&
      before.pxPerS === on.pxPerS &&
      before.pxPerUnit === on.pxPerUnit &&
      before.zeroYPx === on.zeroYPx;
    if (!sameScale || now.count === 0 || this.#before.count === 0) {
      this.#phase = 0;
      return 0;
    }
    const moved = (on.fromS - before.fromS) * on.pxPerS;
    const startThen = now.x[0]! + moved;
    this.#phase =
      startThen >= this.#before.x[0]!
        ? phaseAt(this.#before, startThen, this.#phase)
        : this.#phase - phaseAt(now, this.#before.x[0]! - moved, 0);
    this.#phase -= Math.floor(this.#phase / period) * period;
    return this.#phase;
  }
}

/** Length along a line up to x [px], from the beginning of the stroke there; the first stroke begins with `phase`. */
export function phaseAt(line: Polyline, x: number, phase: number): number {
  let length = phase;
  for (let i = 1; i < line.count; i++) {
    const toX = line.x[i]!;
    if (Number.isNaN(toX)) {
      if (i + 1 < line.count && line.x[i + 1]! > x) break;
      length = 0;
      i++; // on to the second point of the next stroke
      continue;
    }
    const dx = toX - line.x[i - 1]!;
    const dy = line.y[i]! - line.y[i - 1]!;
    const step = Math.sqrt(dx * dx + dy * dy);
    if (toX >= x) return length + (dx > 0 ? (step * Math.max(0, x - line.x[i - 1]!)) / dx : 0);
    length += step;
  }
  return length;
}
