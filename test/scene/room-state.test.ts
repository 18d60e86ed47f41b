import { Quaternion, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import type { RoomFrame } from '../../src/contract/view.ts';
import { furniture } from '../../src/scene/room-layout.ts';
import { RoomState } from '../../src/scene/room-state.ts';
import { HOUSING, roomFrame, snapshot } from './snapshots.ts';

const RELEASE_M = 0.4;
const HOME = [0, RELEASE_M + HOUSING[1] / 2, 0] as const;

function followed(...holders: readonly RoomFrame['holder'][]): RoomState {
  const state = new RoomState();
  const frame = roomFrame({ releaseHeightM: RELEASE_M, housingSizeM: HOUSING });
  for (const holder of holders) state.follow(snapshot({ position: HOME }), { ...frame, holder });
  return state;
}

/** Ends of the open fingers, as they stand in the room [m]: 0.11 m to either side of the clamp's middle. */
function fingers({ clampPosition, clampAttitude }: RoomState): Vector3[] {
  const [x, y, z, w] = clampAttitude;
  return [-1, 1].map((side) =>
    new Vector3(side * 0.11, 0, 0).applyQuaternion(new Quaternion(x, y, z, w)).add(new Vector3(...clampPosition)),
  );
}

describe('the clamp', () => {
  it('waits open where the housing was let go', () => {
    const state = followed('clamp', 'none');
    expect([...state.clampPosition]).toEqual([...HOME]);
    expect(state.clampOpen).toBe(1);
  });

  it('swings about its column out of the way of a hand that tilts the housing, and stays there till it holds again', () => {
    const { columnX, columnZ } = furniture(HOUSING);
    const state = followed('clamp', 'hand', 'none');
    const [x = 0, y = 0, z = 0] = state.clampPosition;
    // It turned: its distance from the column is as before, to rounding.
    expect(Math.hypot(x - columnX, z - columnZ)).toBeCloseTo(Math.hypot(columnX, columnZ), 12);
    expect(y).toBe(HOME[1]);
    // Tilted to the side by any angle the housing stays within half its depth of the plane z = 0.
    for (const end of fingers(state)) expect(end.z).toBeLessThan(-HOUSING[2] / 2);
    state.follow(snapshot({ position: HOME }), {
      ...roomFrame({ releaseHeightM: RELEASE_M, housingSizeM: HOUSING }),
      holder: 'clamp',
    });
    expect([...state.clampPosition]).toEqual([...HOME]);
    expect([...state.clampAttitude]).toEqual([0, 0, 0, 1]);
  });
});
