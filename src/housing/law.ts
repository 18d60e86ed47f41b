/** What every motion is to the housing that it leads. */
import type { HandTarget, MotionSpec, PadSpec } from '../contract/motion.ts';
import { quaternion } from '../numerics/quaternion.ts';
import { vector } from '../numerics/vector.ts';
import type { Kinematics } from './kinematics.ts';

/** The state one motion leaves and the next takes over; what it holds is continuous across the hand-over. */
export interface HandOver {
  /** Run time [s]. */
  timeS: number;
  /** Room frame. */
  readonly position: Float64Array;
  readonly velocity: Float64Array;
  readonly attitude: Float64Array;
  /** Housing frame. */
  readonly angularVelocity: Float64Array;
}

export function newHandOver(): HandOver {
  return {
    timeS: 0,
    position: vector(),
    velocity: vector(),
    attitude: quaternion(),
    angularVelocity: vector(),
  };
}

export function copyHandOver(from: HandOver): HandOver {
  return {
    timeS: from.timeS,
    position: from.position.slice(),
    velocity: from.velocity.slice(),
    attitude: from.attitude.slice(),
    angularVelocity: from.angularVelocity.slice(),
  };
}

/**
 * A stretch of a tick over which the motion is smooth. Whatever a motion needs to be evaluated here later, when
 * it has moved on, it notes in `memory`.
 */
export class Piece {
  law: Law | null = null;
  /** Run time at the tick's start; times τ count from it [s]. */
  tickStartS = 0;
  startTauS = 0;
  durationS = 0;
  /** Gravity over the piece [m/s²]. */
  gravity = 0;
  pad: PadSpec | null = null;
  /** What is felt is the same all over the piece, bit for bit. */
  steady = false;
  memory: Float64Array = new Float64Array(0);

  /** Memory of at least this many numbers. */
  room(count: number): Float64Array {
    if (this.memory.length < count) this.memory = new Float64Array(count);
    return this.memory;
  }
}

export interface Law {
  readonly kind: MotionSpec['kind'];
  /**
   * Cuts the next piece, from `piece.startTauS` up to `untilTauS` at most, and moves on to its end.
   * Sets the duration, the memory and the steadiness of the piece; returns the end [s].
   */
  cut(piece: Piece, untilTauS: number): number;
  /** The motion at τ within a piece it has cut; `path` false: position and velocity are not wanted. */
  at(piece: Piece, tauS: number, out: Kinematics, path: boolean): void;
  /** The motion at the instant reached, run time `timeS`, as it will go on from there. */
  present(timeS: number, gravity: number, out: Kinematics): void;
  /** What changes as the motion goes on, and is not in its specification or its hand-over. */
  save(): LawSave;
  restore(saved: LawSave): void;
}

export interface LawSave {
  readonly numbers: readonly number[];
  readonly pad: PadSpec | null;
  readonly targets: readonly HandTarget[];
}

export const NOTHING_SAVED: LawSave = { numbers: [], pad: null, targets: [] };
