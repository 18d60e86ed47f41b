/**
 * Three-component vectors for hot code: results go into the caller's array, nothing is allocated.
 * An output may be one of the inputs.
 */
export type Components = ArrayLike<number>;

export function vector(x = 0, y = 0, z = 0): Float64Array {
  const out = new Float64Array(3);
  out[0] = x;
  out[1] = y;
  out[2] = z;
  return out;
}

export function dot(a: Components, b: Components): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}

export function norm(a: Components): number {
  return Math.sqrt(a[0]! * a[0]! + a[1]! * a[1]! + a[2]! * a[2]!);
}

/** out = a × b */
export function cross(a: Components, b: Components, out: Float64Array): void {
  const ax = a[0]!;
  const ay = a[1]!;
  const az = a[2]!;
  const bx = b[0]!;
  const by = b[1]!;
  const bz = b[2]!;
  out[0] = ay * bz - az * by;
  out[1] = az * bx - ax * bz;
  out[2] = ax * by - ay * bx;
}

/** out = a + s·b */
export function addScaled(a: Components, s: number, b: Components, out: Float64Array): void {
  out[0] = a[0]! + s * b[0]!;
  out[1] = a[1]! + s * b[1]!;
  out[2] = a[2]! + s * b[2]!;
}

/** out = s·a */
export function scale(s: number, a: Components, out: Float64Array): void {
  out[0] = s * a[0]!;
  out[1] = s * a[1]!;
  out[2] = s * a[2]!;
}
