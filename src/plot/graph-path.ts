import { type AxisScale, shareOf } from './graph-scale.ts';
import type { GraphLine } from './graph-view.ts';
import type { Polyline } from './polyline.ts';

/** The ruled part of a graph [px of its box]. */
export interface GraphBox {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Lines that go beyond the ruled part are drawn this far up and down [px]; the canvas is clipped there. */
const OUT_PX = 4000;

/**
 * Fills a polyline with a graph's line: where several points share a pixel column their first, smallest, largest
 * and last are kept, so that no peak is lost; never smoothed.
 */
export function graphPath(line: GraphLine, x: AxisScale, y: AxisScale, box: GraphBox, out: Polyline): void {
  // From the last point before the box to the first after it.
  const first = Math.max(0, firstAtOrAfter(line.x, x.from) - 1);
  const end = Math.min(line.x.length, firstAtOrAfter(line.x, x.to) + 1);
  out.reset(2 * Math.min(end - first, 2 * Math.ceil(box.widthPx)) + 16);
  let column = NaN;
  let low = 0;
  let high = 0;
  let last = 0;
  let count = 0;
  const close = (): void => {
    // The first point of the column stands already; the extremes follow in the order that leads to the last.
    if (count > 1) {
      const middle = column + 0.5;
      const upFirst = last - low < high - last;
      out.add(middle, upFirst ? low : high);
      out.add(middle, upFirst ? high : low);
      out.add(middle, last);
    }
    count = 0;
  };
  for (let i = first; i < end; i++) {
    const px = box.leftPx + shareOf(x, line.x[i]!) * box.widthPx;
    const py = box.topPx + (1 - shareOf(y, line.y[i]!)) * box.heightPx;
    if (Number.isNaN(py) || Number.isNaN(px) || Math.abs(px) === Infinity) {
      close();
      out.lift();
      column = NaN;
      continue;
    }
    const at = Math.min(Math.max(py, -OUT_PX), OUT_PX);
    if (Math.floor(px) === column) {
      low = Math.min(low, at);
      high = Math.max(high, at);
      last = at;
      count++;
      continue;
    }
    close();
    column = Math.floor(px);
    out.add(px, at);
    low = at;
    high = at;
    last = at;
    count = 1;
  }
  close();
}

/** Index of the first of a rising list that is at least x; its length when there is none. */
function firstAtOrAfter(list: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle]! < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the point nearest to x in a rising list; −1: the list is empty. */
export function nearestIndex(list: ArrayLike<number>, x: number): number {
  const after = firstAtOrAfter(list, x);
  if (after > 0 && (after === list.length || x - list[after - 1]! <= list[after]! - x)) return after - 1;
  return after < list.length ? after : -1;
}
