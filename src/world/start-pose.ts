import type { Quaternion, Vector } from '../contract/geometry.ts';
import type { FreeMotion } from '../contract/motion.ts';
import type { RunSpec } from '../contract/run.ts';
import { rotate } from '../numerics/quaternion.ts';

/** Height of the lowest point above the pad when nothing states one [m]. */
const DEFAULT_HEIGHT_M = 1;

export interface StartPose {
  readonly position: Vector;
  readonly attitude: Quaternion;
}

/** Where a run starts: x = z = 0, lowest corner at the `height` of the first free motion, in its attitude. */
export function startPose(run: RunSpec): StartPose {
  const free = run.motions.find((motion): motion is FreeMotion => motion.kind === 'free');
  const attitude = free?.attitude ?? [0, 0, 0, 1];
  const height = free?.height ?? run.startHeight ?? DEFAULT_HEIGHT_M;
  return { position: [0, height - lowestCorner(run.housing.size, attitude), 0], attitude };
}

/** y of the lowest corner relative to the centre of a box [m], for an attitude. */
function lowestCorner(size: Vector, attitude: Quaternion): number {
  let lowest = Number.POSITIVE_INFINITY;
  const corner = new Float64Array(3);
  const quaternion = Float64Array.from(attitude);
  for (let index = 0; index < 8; index += 1) {
    corner[0] = (size[0] / 2) * (index & 1 ? 1 : -1);
    corner[1] = (size[1] / 2) * (index & 2 ? 1 : -1);
    corner[2] = (size[2] / 2) * (index & 4 ? 1 : -1);
    rotate(quaternion, corner, corner);
    lowest = Math.min(lowest, corner[1]!);
  }
  return lowest;
}
