/**
 * What the room view remembers between drawings, for both drawings alike: where the clamp last held, and
 * where the pad was pushed to. Of the picture only: nothing of it goes back into a run.
 */
import type { Snapshot } from '../contract/snapshot.ts';
import type { RoomFrame } from '../contract/view.ts';
import { type Furniture, furniture } from './room-layout.ts';

/** The housing may stray so far from the pad's middle before the pad is pushed after it [m]. */
const PAD_PLAY_M = 0.07;

/** The clamp swings so far about its column, to the back, when a hand takes the housing [rad]: there it is in nobody's way. */
const ASIDE_RAD = Math.PI / 3;

export class RoomState {
  /** The clamp's pose: centre of the housing it holds or waits for, and attitude. */
  readonly clampPosition = new Float64Array([0, 0.465, 0]);
  readonly clampAttitude = new Float64Array([0, 0, 0, 1]);
  /** 0 closed … 1 open. */
  clampOpen = 1;
  /** A hand has taken the housing since the clamp last held it. */
  #aside = false;
  padX = 0;
  padZ = 0;

  follow(snapshot: Snapshot, frame: RoomFrame): void {
    const { position, attitude } = snapshot.housing;
    if (frame.holder === 'clamp') {
      for (let axis = 0; axis < 3; axis++) this.clampPosition[axis] = position[axis]!;
      for (let part = 0; part < 4; part++) this.clampAttitude[part] = attitude[part]!;
      this.clampOpen = 0;
      this.#aside = false;
    } else {
      this.clampOpen = 1;
      this.#aside ||= frame.holder === 'hand';
      if (frame.releaseHeightM !== undefined)
        this.#wait(frame.releaseHeightM + frame.housingSizeM[1] / 2, furniture(frame.housingSizeM));
    }
    // A housing that already presses on the pad stays where it is on it.
    if (!snapshot.housing.inContact) {
      this.padX += stray(position[0]! - this.padX);
      this.padZ += stray(position[2]! - this.padZ);
    }
  }

  /** Open, where the housing is let go, or swung aside from there. */
  #wait(height: number, { columnX, columnZ }: Furniture): void {
    const turn = this.#aside ? -ASIDE_RAD : 0;
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    this.clampPosition[0] = columnX - columnX * cos - columnZ * sin;
    this.clampPosition[1] = height;
    this.clampPosition[2] = columnZ + columnX * sin - columnZ * cos;
    this.clampAttitude.fill(0);
    this.clampAttitude[1] = Math.sin(turn / 2);
    this.clampAttitude[3] = Math.cos(turn / 2);
  }
}

const stray = (offset: number): number =>
  offset > PAD_PLAY_M ? offset - PAD_PLAY_M : offset < -PAD_PLAY_M ? offset + PAD_PLAY_M : 0;
