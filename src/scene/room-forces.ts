/** The forces on the housing that the room view draws, per mass of the housing, as arrows in pixels. */
import type { Snapshot } from '../contract/snapshot.ts';
import type { ForceArrow, RoomFrame } from '../contract/view.ts';
import { G_N } from '../units/standard-gravity.ts';
import { turned } from './axis-frame.ts';
import { lowestCorner, type RoomCamera } from './room-layout.ts';

/** Length of an arrow of 1 g_n [px]. */
export const ROOM_PX_PER_G = 30;

export interface RoomForce {
  readonly name: ForceArrow;
  readonly slot: 0 | 1 | 2;
  /** Where it starts [m]. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Its components in the room, as pixels. */
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
  /** Longer than the picture: drawn cut off. */
  readonly cut: boolean;
}

const felt = new Float64Array(3);

/** Fills `out` with the forces that are asked for and act at present. */
export function roomForces(
  snapshot: Snapshot,
  frame: RoomFrame,
  corners: Float64Array,
  camera: RoomCamera,
  out: RoomForce[],
): void {
  out.length = 0;
  if (frame.arrows.size === 0) return;
  const { position, attitude, specificForce, inContact, motion } = snapshot.housing;
  turned(attitude, specificForce[0]!, specificForce[1]!, specificForce[2]!, felt);
  const perMS2 = ROOM_PX_PER_G / G_N;
  const longest = 0.42 * camera.heightPx;
  const add = (name: ForceArrow, slot: 0 | 1 | 2, y: number, fx: number, fy: number, fz: number): void => {
    const length = Math.sqrt(fx * fx + fy * fy + fz * fz) * perMS2;
    const share = length > longest ? longest / length : 1;
    const scale = perMS2 * share;
    out.push({
      name,
      slot,
      x: position[0]!,
      y,
      z: position[2]!,
      dx: fx * scale,
      dy: fy * scale,
      dz: fz * scale,
      cut: share < 1,
    });
  };
  const [fx, fy, fz] = [felt[0]!, felt[1]!, felt[2]!];
  if (motion === 'free') {
    if (inContact && frame.arrows.has('pad pushes'))
      add('pad pushes', 2, corners[lowestCorner(corners) * 3 + 1]!, fx, fy, fz);
  } else if (frame.arrows.has('clamp holds')) add('clamp holds', 0, position[1]!, fx, fy, fz);
  if (frame.arrows.has('gravity on the housing'))
    add('gravity on the housing', 1, position[1]!, 0, -snapshot.gravity, 0);
}
