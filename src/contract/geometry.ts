/** Vector in a stated frame and unit; [x, y, z]. Frames: DEVELOPERS.md, "Frames and signs". */
export type Vector = readonly [number, number, number];

/** Attitude as a unit quaternion [x, y, z, w], housing frame → room frame. */
export type Quaternion = readonly [number, number, number, number];

/** Attitude as a turn about an axis (room frame) by an angle [rad]. */
export interface AxisAngle {
  readonly axis: Vector;
  readonly angle: number;
}
