/** The outline of a force arrow, for both drawings. */

/** An arrow shorter than its force is crossed by two strokes: at this share of its length, this many widths apart. */
export const CUT_SHARE = 0.5;
export const CUT_LIFTS: readonly number[] = [-0.3, 0.3];

/** Half the width of an arrow's head against that of its shaft [–]. */
export const HEAD_HALF = 1.15;

/** Corners of an arrow along +y from (0, 0), grown by `edge` on every side. */
export function arrowCorners(out: Float32Array, length: number, width: number, edge: number): void {
  const half = width / 2;
  const headHalf = width * HEAD_HALF;
  const head = Math.min(width * 1.25, length);
  const slant = Math.sqrt(head * head + headHalf * headHalf);
  const tip = length + (edge * slant) / headHalf;
  const shoulder = length - head - edge;
  const wing = ((tip - shoulder) * headHalf) / head;
  const side = half + edge;
  const foot = -edge;
  put(out, 0, -side, foot);
  put(out, 1, side, foot);
  put(out, 2, side, shoulder);
  put(out, 3, wing, shoulder);
  put(out, 4, 0, tip);
  put(out, 5, -wing, shoulder);
  put(out, 6, -side, shoulder);
}

function put(out: Float32Array, corner: number, x: number, y: number): void {
  out[corner * 3] = x;
  out[corner * 3 + 1] = y;
}
