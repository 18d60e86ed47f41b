/** How the housing is looked at when an element's axis is to stand upright. */
import type { Vector } from '../contract/geometry.ts';

/** Unit quaternion [x, y, z, w] by the shortest arc from +y to `axis` (housing frame). */
export function uprightTo(axis: Vector): readonly [number, number, number, number] {
  const [x, y, z] = axis;
  // Half-way vector of +y and the axis; straight down has no shortest arc: about +x then.
  const w = 1 + y;
  if (w < 1e-9) return [1, 0, 0, 0];
  const length = Math.sqrt(z * z + x * x + w * w);
  return [z / length, 0, -x / length, w / length];
}

/** Vector of the frame that `quaternion` leads from, into the frame that it leads to. Written into `out`. */
export function turned(
  quaternion: ArrayLike<number>,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
): Float64Array {
  const qx = quaternion[0]!;
  const qy = quaternion[1]!;
  const qz = quaternion[2]!;
  const qw = quaternion[3]!;
  // v + 2w(q×v) + 2q×(q×v)
  const tx = 2 * (qy * z - qz * y);
  const ty = 2 * (qz * x - qx * z);
  const tz = 2 * (qx * y - qy * x);
  out[0] = x + qw * tx + qy * tz - qz * ty;
  out[1] = y + qw * ty + qz * tx - qx * tz;
  out[2] = z + qw * tz + qx * ty - qy * tx;
  return out;
}

/** The same backwards. */
export function turnedBack(
  quaternion: ArrayLike<number>,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
): Float64Array {
  BACK[0] = -quaternion[0]!;
  BACK[1] = -quaternion[1]!;
  BACK[2] = -quaternion[2]!;
  BACK[3] = quaternion[3]!;
  return turned(BACK, x, y, z, out);
}

const BACK = new Float64Array(4);

/**
 * Gravity's pull per mass as the riding view shows it: [to the right, upward] in m/s², for an attitude
 * housing → room, an element's upright frame and gravity g [m/s²].
 */
export function gravityInView(
  attitude: ArrayLike<number>,
  upright: ArrayLike<number>,
  gravity: number,
  out: Float64Array,
): Float64Array {
  turnedBack(attitude, 0, -gravity, 0, out);
  return turnedBack(upright, out[0]!, out[1]!, out[2]!, out);
}
