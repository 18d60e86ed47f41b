/**
 * What the room view remembers between drawings, for both drawings alike: where the clamp last held, and
 * where the pad was pushed to. Of the picture only: nothing of it goes back into a run.
 */
import type { Snapshot } from '../contract/snapshot.ts';
import type { RoomFrame } from '../contract/view.ts';

/** The housing may stray so far from the pad's middle before the pad is pushed after it [m]. */
const PAD_PLAY_M = 0.07;

export class RoomState {
  /** The clamp's pose: centre of the housing it holds or waits for, and attitude. */
  readonly clampPosition = new Float64Array([0, 0.465, 0]);
  readonly clampAttitude = new Float64Array([0, 0, 0, 1]);
  /** 0 closed … 1 open. */
  clampOpen = 1;
  padX = 0;
  padZ = 0;

  follow(snapshot: Snapshot, frame: RoomFrame): void {
    const { position, attitude } = snapshot.housing;
    if (frame.holder === 'clamp') {
      for (let axis = 0; axis < 3; axis++) this.clampPosition[axis] = position[axis]!;
      for (let part = 0; part < 4; part++) this.clampAttitude[part] = attitude[part]!;
      this.clampOpen = 0;
    } else {
      this.clampOpen = 1;
      if (frame.releaseHeightM !== undefined) {
        this.clampPosition[0] = 0;
        this.clampPosition[1] = frame.releaseHeightM + frame.housingSizeM[1] / 2;
        this.clampPosition[2] = 0;
        this.clampAttitude.fill(0);
        this.clampAttitude[3] = 1;
      }
    }
    // A housing that already presses on the pad stays where it is on it.
    if (!snapshot.housing.inContact) {
      this.padX += stray(position[0]! - this.padX);
      this.padZ += stray(position[2]! - this.padZ);
    }
  }
}

const stray = (offset: number): number =>
  offset > PAD_PLAY_M ? offset - PAD_PLAY_M : offset < -PAD_PLAY_M ? offset + PAD_PLAY_M : 0;
