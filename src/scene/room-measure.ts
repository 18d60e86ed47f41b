/** What both room views report, and the places their labels belong to. */
import type { Snapshot } from '../contract/snapshot.ts';
import type { Anchor, RoomFrame, RoomGeometry } from '../contract/view.ts';
import type { RoomForce } from './room-forces.ts';
import { type Furniture, type RoomCamera, roomPxPerM } from './room-layout.ts';
import type { RoomState } from './room-state.ts';

/** How a drawing shows a place in the room [m]: [x px, y px]. */
export type Projector = (x: number, y: number, z: number) => readonly [number, number];

/** The dotted line of the fall is drawn from this far on [m]. */
export const LEAST_FALL_M = 0.02;

/** Whether the outline at the release height is shown: the housing is neither there nor on its way there in the clamp. */
export function ghostShown(snapshot: Snapshot, frame: RoomFrame): boolean {
  const release = frame.releaseHeightM;
  if (release === undefined || frame.holder === 'clamp' || frame.holder === 'shaker') return false;
  const { position } = snapshot.housing;
  return Math.abs(release + frame.housingSizeM[1] / 2 - position[1]!) + Math.abs(position[0]!) > 0.004;
}

/** Height from the housing's top up to the outline's foot [m]; negative: none to draw. */
export function fallShown(snapshot: Snapshot, frame: RoomFrame): number {
  if (!ghostShown(snapshot, frame)) return -1;
  return frame.releaseHeightM! - (snapshot.housing.position[1]! + frame.housingSizeM[1] / 2);
}

export interface RoomPlaces {
  readonly housing: readonly [number, number];
  readonly lowestYPx: number;
  readonly padTopYPx: number;
  readonly clamp: readonly [number, number];
  /** Ends of the arrows drawn, in the order of the forces. */
  readonly tips: readonly (readonly [number, number])[];
}

export function roomGeometry(
  snapshot: Snapshot,
  frame: RoomFrame,
  state: RoomState,
  view: RoomCamera,
  place: Furniture,
  forces: readonly RoomForce[],
  project: Projector,
  places: RoomPlaces,
): RoomGeometry {
  const { position } = snapshot.housing;
  const [x, y, z] = [position[0]!, position[1]!, position[2]!];
  const size = frame.housingSizeM;
  const release = frame.releaseHeightM;
  const padShown = frame.pad !== undefined && frame.holder !== 'shaker';
  const anchors: Anchor[] = [];
  const anchor = (name: string, at: readonly [number, number], shown = true): void => {
    const [xPx, yPx] = at;
    const visible = shown && xPx >= 0 && xPx <= view.widthPx && yPx >= 0 && yPx <= view.heightPx;
    anchors.push({ name, xPx, yPx, visible });
  };
  const fall = fallShown(snapshot, frame);
  anchor('let go', project(-size[0] / 2, (release ?? 0) + size[1] / 2, size[2] / 2), release !== undefined);
  anchor('fall', project(0, y + size[1] / 2 + fall / 2, 0), fall > LEAST_FALL_M);
  // At the pad's front corner: behind it stands the column.
  const front = state.padZ + place.padDepth / 2;
  anchor('pad top', project(state.padX + place.padWidth / 2, -(frame.pad?.thicknessM ?? 0), front), padShown);
  anchor('clamp', places.clamp, frame.holder !== 'shaker');
  anchor('rule', project(place.ruleX, release ?? y - size[1] / 2, place.ruleZ));
  anchor('housing', places.housing);
  forces.forEach((force, order) => {
    anchor(force.name, places.tips[order]!);
  });
  return {
    housingXPx: places.housing[0],
    housingYPx: places.housing[1],
    lowestYPx: places.lowestYPx,
    padTopYPx: places.padTopYPx,
    pxPerM: roomPxPerM(view, x, y, z),
    anchors,
  };
}
