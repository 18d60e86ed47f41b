import type { Trace } from './trace.ts';

/** From time and value to the paper [px]. */
export interface Projection {
  readonly fromS: number;
  readonly pxPerS: number;
  readonly zeroYPx: number;
  readonly pxPerUnit: number;
  /** The band that lines keep to; what leaves it is cut at its edge. */
  readonly topPx: number;
  readonly bottomPx: number;
}

/** Points on the paper; NaN in x separates strokes. Kept between frames, grown when needed. */
export class Polyline {
  x = new Float64Array(0);
  y = new Float64Array(0);
  count = 0;

  reset(vertices: number): void {
    this.count = 0;
    const needed = 3 * vertices + 8; // a vertex adds at most a cut, itself and a separator
    if (this.x.length >= needed) return;
    this.x = new Float64Array(needed + 256);
    this.y = new Float64Array(needed + 256);
  }

  add(x: number, y: number): void {
    this.x[this.count] = x;
    this.y[this.count] = y;
    this.count++;
  }

  /** Ends the stroke. */
  lift(): void {
    if (this.count > 0 && !Number.isNaN(this.x[this.count - 1]!)) this.add(NaN, NaN);
  }
}

/** A vertex nearer to the last than this, along and across the paper [px], is left out: far under what can be seen. */
const SAME_ALONG_PX = 0.3;
const SAME_ACROSS_PX = 0.15;

/** Appends vertices [from, to) of a trace as one stroke, cut at the band's edges. */
export function project(trace: Trace, from: number, to: number, on: Projection, out: Polyline): void {
  out.lift();
  const { topPx, bottomPx } = on;
  let lastX = NaN;
  let lastY = NaN;
  for (let i = from; i < to; i++) {
    const x = (trace.timeS[i]! - on.fromS) * on.pxPerS;
    const y = on.zeroYPx - trace.value[i]! * on.pxPerUnit;
    if (y >= topPx && y <= bottomPx) {
      if (lastY < topPx || lastY > bottomPx) cut(lastX, lastY, x, y, lastY < topPx ? topPx : bottomPx, out);
      const before = out.count - 1; // NaN or nothing there: compares as not the same
      const same = x - out.x[before]! < SAME_ALONG_PX && Math.abs(y - out.y[before]!) < SAME_ACROSS_PX;
      if (!same || i === to - 1) out.add(x, y);
    } else if (Number.isNaN(y)) {
      out.lift();
    } else {
      const edge = y < topPx ? topPx : bottomPx;
      if (lastY >= topPx && lastY <= bottomPx) cut(lastX, lastY, x, y, edge, out);
      else if ((lastY < topPx && edge === bottomPx) || (lastY > bottomPx && edge === topPx)) {
        cut(lastX, lastY, x, y, edge === topPx ? bottomPx : topPx, out);
        cut(lastX, lastY, x, y, edge, out);
      }
      out.lift();
    }
    lastX = x;
    lastY = y;
  }
}

function cut(xA: number, yA: number, xB: number, yB: number, edge: number, out: Polyline): void {
  out.add(xA + ((edge - yA) / (yB - yA)) * (xB - xA), edge);
}
