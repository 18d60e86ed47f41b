/** What lies under a point of the room view: outlines of its things, projected. For both drawings. */
import type { Vector } from '../contract/geometry.ts';
import type { RoomPart } from '../contract/view.ts';
import { type Furniture, projectRoom, type RoomCamera } from './room-layout.ts';

/** A finger or pointer may miss by this much [px]. */
const MISS_PX = 6;

const corners = new Float64Array(24);
const hull = new Float64Array(64);
const order: number[] = [];
const point = new Float64Array(3);

export interface RoomScene {
  readonly camera: RoomCamera;
  readonly furniture: Furniture;
  readonly housing: Float64Array;
  readonly housingSizeM: Vector;
  /** Where the clamp's head is [m]; undefined: put away. */
  readonly clamp: ArrayLike<number> | undefined;
  readonly shaker: boolean;
  readonly padX: number;
  readonly padThicknessM: number | undefined;
}

export function roomPart(scene: RoomScene, xPx: number, yPx: number): RoomPart | undefined {
  const { camera, furniture: place, housingSizeM: size } = scene;
  const over = (points: Float64Array): boolean => inHull(camera, points, xPx, yPx);
  if (over(scene.housing)) return 'housing';
  const box = (x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): boolean => {
    for (let corner = 0; corner < 8; corner++) {
      corners[corner * 3] = corner & 1 ? x1 : x0;
      corners[corner * 3 + 1] = corner & 2 ? y1 : y0;
      corners[corner * 3 + 2] = corner & 4 ? z1 : z0;
    }
    return over(corners);
  };
  if (scene.shaker) {
    const x = scene.housing[0]! / 2 + scene.housing[21]! / 2;
    let low = Number.POSITIVE_INFINITY;
    for (let corner = 0; corner < 8; corner++) low = Math.min(low, scene.housing[corner * 3 + 1]!);
    if (box(x - size[0] / 2 - 0.1, low - 0.08, -size[2] / 2, x + size[0] / 2 + 0.02, low, size[2] / 2)) return 'shaker';
  } else if (scene.padThicknessM !== undefined) {
    const half = place.padWidth / 2;
    if (box(scene.padX - half, -scene.padThicknessM, -place.padDepth / 2, scene.padX + half, 0, place.padDepth / 2))
      return 'pad';
  }
  if (scene.clamp !== undefined) {
    const y = scene.clamp[1]!;
    const reach = size[0] / 2 + 0.02;
    const z = place.columnZ;
    if (box(scene.clamp[0]! - reach, y - 0.014, z - 0.01, place.columnX + 0.04, y + 0.034, z + 0.06)) return 'clamp';
  }
  const half = place.ruleWidth / 2;
  if (box(place.ruleX - half - 0.015, -0.01, place.ruleZ, place.ruleX + half, 2.6, place.ruleZ + 0.002)) return 'rule';
  return undefined;
}

/** Whether a point lies within the outline of projected points, grown by a few pixels. Convex hull by the monotone chain. */
function inHull(camera: RoomCamera, points: Float64Array, xPx: number, yPx: number): boolean {
  const count = points.length / 3;
  order.length = count;
  for (let at = 0; at < count; at++) {
    projectRoom(camera, points[at * 3]!, points[at * 3 + 1]!, points[at * 3 + 2]!, point);
    hull[at * 2] = point[0]!;
    hull[at * 2 + 1] = point[1]!;
    order[at] = at;
  }
  order.sort((a, b) => hull[a * 2]! - hull[b * 2]! || hull[a * 2 + 1]! - hull[b * 2 + 1]!);
  const chain: number[] = [];
  for (const pass of [order, [...order].reverse()]) {
    const from = chain.length;
    for (const next of pass) {
      while (chain.length >= from + 2 && turn(chain[chain.length - 2]!, chain[chain.length - 1]!, next) <= 0)
        chain.pop();
      chain.push(next);
    }
    chain.pop();
  }
  for (let at = 0; at < chain.length; at++) {
    const a = chain[at]! * 2;
    const b = chain[(at + 1) % chain.length]! * 2;
    const ex = hull[b]! - hull[a]!;
    const ey = hull[b + 1]! - hull[a + 1]!;
    const side = ex * (yPx - hull[a + 1]!) - ey * (xPx - hull[a]!);
    if (side < -MISS_PX * Math.hypot(ex, ey)) return false;
  }
  return true;
}

function turn(a: number, b: number, c: number): number {
  return (
    (hull[b * 2]! - hull[a * 2]!) * (hull[c * 2 + 1]! - hull[a * 2 + 1]!) -
    (hull[b * 2 + 1]! - hull[a * 2 + 1]!) * (hull[c * 2]! - hull[a * 2]!)
  );
}
