/**
 * The room view's camera and where its things stand, for the drawing in depth and the flat one alike.
 * Metres in the room frame (y up, y = 0 the unloaded top of the pad); pixels of the canvas, y downward.
 */
import type { Vector } from '../contract/geometry.ts';

/** Field of view from top to bottom [°]. */
export const FIELD_DEG = 20;
const TAN_HALF = Math.tan((FIELD_DEG / 2) * (Math.PI / 180));

/** From the middle of what is seen to the eye: a little from the left and above. */
const TO_EYE: Vector = unit(-0.32, 0.245, 1.92);

/** At least this much is seen from bottom to top and from side to side [m]. */
const LEAST_HEIGHT_M = 0.69;
const LEAST_WIDTH_M = 0.6;
/** Lowest height seen in the plane z = 0 [m]. */
const BOTTOM_M = -0.1;

export interface RoomCamera {
  readonly eye: Vector;
  readonly target: Vector;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Height seen at the target [m]. */
  readonly viewHeightM: number;
}

export interface RoomViewInput {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Centre of the housing [m] and its edges [m]. */
  readonly position: ArrayLike<number>;
  readonly housingSizeM: Vector;
  readonly releaseHeightM: number | undefined;
  readonly follow: boolean;
}

export function roomCamera(input: RoomViewInput): RoomCamera {
  const { widthPx, heightPx, position, housingSizeM: size } = input;
  const aspect = widthPx / heightPx;
  const x = position[0]!;
  const y = position[1]!;
  const tallest = Math.max(size[0], size[1], size[2]);
  let viewHeightM: number;
  let target: Vector;
  if (input.follow) {
    viewHeightM = Math.max(2.7 * tallest, (2 * tallest) / aspect);
    target = [x, Math.max(y, BOTTOM_M + viewHeightM / 2), 0];
  } else {
    // The uppermost part of the picture is faded.
    const top = Math.max(y + tallest / 2, (input.releaseHeightM ?? 0) + size[1]) + 0.02;
    viewHeightM = Math.max(LEAST_HEIGHT_M, (top - BOTTOM_M) / 0.93, LEAST_WIDTH_M / aspect);
    const side = Math.max(0.05, (viewHeightM * aspect) / 2 - tallest);
    target = [x - Math.max(-side, Math.min(side, x)), BOTTOM_M + viewHeightM / 2, 0];
  }
  const distance = viewHeightM / (2 * TAN_HALF);
  const eye: Vector = [target[0] + TO_EYE[0] * distance, target[1] + TO_EYE[1] * distance, TO_EYE[2] * distance];
  return { eye, target, widthPx, heightPx, viewHeightM };
}

/** The camera's axes: to the right, upward, and from the target to the eye. */
const BACK = TO_EYE;
const RIGHT = unit(BACK[2], 0, -BACK[0]);
const UP: Vector = [
  BACK[1] * RIGHT[2] - BACK[2] * RIGHT[1],
  BACK[2] * RIGHT[0] - BACK[0] * RIGHT[2],
  BACK[0] * RIGHT[1] - BACK[1] * RIGHT[0],
];

/** Writes [x px, y px, distance in front of the eye m] into `out`. */
export function projectRoom(camera: RoomCamera, x: number, y: number, z: number, out: Float64Array): Float64Array {
  const dx = x - camera.eye[0];
  const dy = y - camera.eye[1];
  const dz = z - camera.eye[2];
  const depth = -(dx * BACK[0] + dy * BACK[1] + dz * BACK[2]);
  const perM = camera.heightPx / (2 * TAN_HALF * depth);
  out[0] = camera.widthPx / 2 + (dx * RIGHT[0] + dy * RIGHT[1] + dz * RIGHT[2]) * perM;
  out[1] = camera.heightPx / 2 - (dx * UP[0] + dy * UP[1] + dz * UP[2]) * perM;
  out[2] = depth;
  return out;
}

/** Pixels per metre across the view at a place. */
export function roomPxPerM(camera: RoomCamera, x: number, y: number, z: number): number {
  const depth = projectRoom(camera, x, y, z, SCRATCH)[2]!;
  return camera.heightPx / (2 * TAN_HALF * depth);
}

const SCRATCH = new Float64Array(3);

/** Where the ray through a point of the picture meets the plane z = 0 [m]. */
export function placeInRoom(camera: RoomCamera, xPx: number, yPx: number): readonly [number, number, number] {
  const sideways = ((2 * xPx) / camera.widthPx - 1) * TAN_HALF * (camera.widthPx / camera.heightPx);
  const upward = (1 - (2 * yPx) / camera.heightPx) * TAN_HALF;
  const dx = RIGHT[0] * sideways + UP[0] * upward - BACK[0];
  const dy = RIGHT[1] * sideways + UP[1] * upward - BACK[1];
  const dz = RIGHT[2] * sideways + UP[2] * upward - BACK[2];
  const far = -camera.eye[2] / dz;
  return [camera.eye[0] + far * dx, camera.eye[1] + far * dy, 0];
}

/** Where things stand, by the housing's size [m]. */
export interface Furniture {
  readonly ruleX: number;
  readonly ruleZ: number;
  readonly ruleWidth: number;
  readonly columnX: number;
  /** Behind the housing: the clamp's arm passes there however it is turned about the line of sight. */
  readonly columnZ: number;
  readonly padWidth: number;
  readonly padDepth: number;
  readonly boardThickness: number;
  readonly wallZ: number;
  readonly benchFrontZ: number;
}

export function furniture(size: Vector): Furniture {
  return {
    ruleX: -Math.max(0.205, size[0] / 2 + 0.135),
    ruleZ: -0.03,
    ruleWidth: 0.03,
    columnX: Math.max(0.185, size[0] / 2 + 0.115),
    columnZ: -(size[2] / 2 + 0.034),
    padWidth: Math.max(0.24, size[0] + 0.1),
    padDepth: Math.max(0.17, size[2] + 0.06),
    boardThickness: 0.008,
    wallZ: -0.42,
    benchFrontZ: 0.9,
  };
}

/** Thickness of the pad when there is none, so that the bench stays where it was [m]. */
export const USUAL_PAD_M = 0.03;

/** The eight corners of the housing in the room [m], written as x, y, z triples. */
export function housingCorners(
  position: ArrayLike<number>,
  attitude: ArrayLike<number>,
  size: Vector,
  out: Float64Array,
): Float64Array {
  const qx = attitude[0]!;
  const qy = attitude[1]!;
  const qz = attitude[2]!;
  const qw = attitude[3]!;
  for (let corner = 0; corner < 8; corner++) {
    const x = ((corner & 1 ? 1 : -1) * size[0]) / 2;
    const y = ((corner & 2 ? 1 : -1) * size[1]) / 2;
    const z = ((corner & 4 ? 1 : -1) * size[2]) / 2;
    const tx = 2 * (qy * z - qz * y);
    const ty = 2 * (qz * x - qx * z);
    const tz = 2 * (qx * y - qy * x);
    out[corner * 3] = position[0]! + x + qw * tx + qy * tz - qz * ty;
    out[corner * 3 + 1] = position[1]! + y + qw * ty + qz * tx - qx * tz;
    out[corner * 3 + 2] = position[2]! + z + qw * tz + qx * ty - qy * tx;
  }
  return out;
}

export function lowestCorner(corners: Float64Array): number {
  let lowest = 0;
  for (let corner = 1; corner < 8; corner++) if (corners[corner * 3 + 1]! < corners[lowest * 3 + 1]!) lowest = corner;
  return lowest;
}

function unit(x: number, y: number, z: number): Vector {
  const length = Math.sqrt(x * x + y * y + z * z);
  return [x / length, y / length, z / length];
}
