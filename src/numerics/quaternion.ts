/**
 * Unit quaternions [x, y, z, w] for hot code: results go into the caller's array, nothing is allocated.
 * A quaternion here turns vectors of the turned frame into the fixed frame (housing → room).
 */
import { atan2, cos, sin } from './transcendental.ts';
import type { Components } from './vector.ts';

export function quaternion(x = 0, y = 0, z = 0, w = 1): Float64Array {
  const out = new Float64Array(4);
  out[0] = x;
  out[1] = y;
  out[2] = z;
  out[3] = w;
  return out;
}

/** out = a·b (first b, then a); out may be a or b. */
export function multiply(a: Components, b: Components, out: Float64Array): void {
  const ax = a[0]!;
  const ay = a[1]!;
  const az = a[2]!;
  const aw = a[3]!;
  const bx = b[0]!;
  const by = b[1]!;
  const bz = b[2]!;
  const bw = b[3]!;
  out[0] = aw * bx + ax * bw + ay * bz - az * by;
  out[1] = aw * by + ay * bw + az * bx - ax * bz;
  out[2] = aw * bz + az * bw + ax * by - ay * bx;
  out[3] = aw * bw - ax * bx - ay * by - az * bz;
}

/** out = a·b⁻¹, the turn (fixed frame) that leads from attitude b to attitude a. */
export function turnBetween(b: Components, a: Components, out: Float64Array): void {
  const ax = a[0]!;
  const ay = a[1]!;
  const az = a[2]!;
  const aw = a[3]!;
  const bx = -b[0]!;
  const by = -b[1]!;
  const bz = -b[2]!;
  const bw = b[3]!;
  out[0] = aw * bx + ax * bw + ay * bz - az * by;
  out[1] = aw * by + ay * bw + az * bx - ax * bz;
  out[2] = aw * bz + az * bw + ax * by - ay * bx;
  out[3] = aw * bw - ax * bx - ay * by - az * bz;
}

export function normalize(q: Float64Array): void {
  const x = q[0]!;
  const y = q[1]!;
  const z = q[2]!;
  const w = q[3]!;
  const s = 1 / Math.sqrt(x * x + y * y + z * z + w * w);
  q[0] = x * s;
  q[1] = y * s;
  q[2] = z * s;
  q[3] = w * s;
}

/** out = q v q⁻¹: v of the turned frame, seen in the fixed frame. v′ = v + 2w(u × v) + 2u × (u × v) */
export function rotate(q: Components, v: Components, out: Float64Array): void {
  turnVector(q[0]!, q[1]!, q[2]!, q[3]!, v, out);
}

/** out = q⁻¹ v q: v of the fixed frame, seen in the turned frame. */
export function rotateBack(q: Components, v: Components, out: Float64Array): void {
  turnVector(-q[0]!, -q[1]!, -q[2]!, q[3]!, v, out);
}

function turnVector(x: number, y: number, z: number, w: number, v: Components, out: Float64Array): void {
  const vx = v[0]!;
  const vy = v[1]!;
  const vz = v[2]!;
  const tx = 2 * (y * vz - z * vy);
  const ty = 2 * (z * vx - x * vz);
  const tz = 2 * (x * vy - y * vx);
  out[0] = vx + w * tx + (y * tz - z * ty);
  out[1] = vy + w * ty + (z * tx - x * tz);
  out[2] = vz + w * tz + (x * ty - y * tx);
}

/** The turn by `angle` [rad] about `axis` (unit length). */
export function fromAxisAngle(axis: Components, angle: number, out: Float64Array): void {
  const s = sin(angle / 2);
  out[0] = axis[0]! * s;
  out[1] = axis[1]! * s;
  out[2] = axis[2]! * s;
  out[3] = cos(angle / 2);
}

/** The turn whose axis and angle are direction and length of `turn` [rad]. */
export function fromRotationVector(turn: Components, out: Float64Array): void {
  const x = turn[0]!;
  const y = turn[1]!;
  const z = turn[2]!;
  const angle = Math.sqrt(x * x + y * y + z * z);
  // sin(angle/2)/angle → 1/2 as the angle vanishes
  const s = angle === 0 ? 0.5 : sin(angle / 2) / angle;
  out[0] = x * s;
  out[1] = y * s;
  out[2] = z * s;
  out[3] = cos(angle / 2);
}

/**
 * Axis times angle [rad]: the shorter way round, 0…π, or with `sign` +1 the way of q and with −1 that of −q, 0…2π,
 * which goes on smoothly past half a turn.
 */
export function toRotationVector(q: Components, out: Float64Array, sign: 1 | -1 = q[3]! < 0 ? -1 : 1): void {
  const x = sign * q[0]!;
  const y = sign * q[1]!;
  const z = sign * q[2]!;
  const length = Math.sqrt(x * x + y * y + z * z);
  // angle/sin(angle/2) → 2 as the angle vanishes
  const s = length === 0 ? 2 : (2 * atan2(length, sign * q[3]!)) / length;
  out[0] = x * s;
  out[1] = y * s;
  out[2] = z * s;
}

/** Rotation matrix by rows into out[0…8]: turned frame → fixed frame. */
export function toMatrix(q: Components, out: Float64Array): void {
  const x = q[0]!;
  const y = q[1]!;
  const z = q[2]!;
  const w = q[3]!;
  out[0] = 1 - 2 * (y * y + z * z);
  out[1] = 2 * (x * y - z * w);
  out[2] = 2 * (x * z + y * w);
  out[3] = 2 * (x * y + z * w);
  out[4] = 1 - 2 * (x * x + z * z);
  out[5] = 2 * (y * z - x * w);
  out[6] = 2 * (x * z - y * w);
  out[7] = 2 * (y * z + x * w);
  out[8] = 1 - 2 * (x * x + y * y);
}
