/**
 * The housing: where it is, how it moves and what it feels, led by one motion after another. A tick is cut into pieces
 * over which everything is smooth; they are kept until the next tick, so that any instant of the last tick
 * can be looked at, and looking changes nothing.
 *
 * Order of calls: `beginTick`, then `begin`, `target`, `setGravity`, `setPad` and `advance` as they come, in time.
 */

import type { RunEvent } from '../contract/event.ts';
import type { Quaternion, Vector } from '../contract/geometry.ts';
import type { HandTarget, MotionSpec, PadSpec } from '../contract/motion.ts';
import type { HousingSpec } from '../contract/run.ts';
import { normalize } from '../numerics/quaternion.ts';
import { Free } from './free.ts';
import { Hand } from './hand.ts';
import { held } from './held.ts';
import { type Kinematics, lowestCorner, newKinematics } from './kinematics.ts';
import { type HandOver, type Law, type LawSave, newHandOver, Piece } from './law.ts';
import { move } from './move.ts';
import { push } from './push.ts';
import { recorded } from './recorded.ts';
import { randomShake } from './shake-random.ts';
import { sineShake } from './shake-sine.ts';
import { sweepShake } from './shake-sweep.ts';
import { spin } from './spin.ts';
import { tilt } from './tilt.ts';

/** Everything needed to go on bit for bit from a tick's end. */
export interface HousingSave {
  readonly motion: MotionSpec;
  /** The state the motion took over: time, position, velocity, attitude, angular velocity. */
  readonly from: readonly number[];
  readonly law: LawSave;
  readonly gravity: number;
  readonly reachedS: number;
}

const STILL: MotionSpec = { kind: 'held', from: 0, within: 0 };

export class Housing {
  readonly spec: HousingSpec;
  readonly #seed: number;
  readonly #half: Float64Array;
  #gravity: number;
  #motion: MotionSpec = STILL;
  #from: HandOver;
  #law: Law;
  readonly #pieces: Piece[] = [];
  #pieceCount = 0;
  readonly #events: RunEvent[] = [];
  #tickStartS = 0;
  #reachedTauS = 0;
  readonly #present = newKinematics();

  /** A housing at rest, level or in the attitude given, under `gravity` [m/s²]; `seed` of the run. */
  constructor(spec: HousingSpec, start: { position: Vector; attitude: Quaternion }, gravity: number, seed: number) {
    this.spec = spec;
    this.#seed = seed;
    this.#half = Float64Array.from(spec.size, (edge) => edge / 2);
    this.#gravity = gravity;
    this.#from = newHandOver();
    this.#from.position.set(start.position);
    this.#from.attitude.set(start.attitude);
    normalize(this.#from.attitude);
    this.#law = this.#make(STILL);
  }

  get motionKind(): MotionSpec['kind'] {
    return this.#motion.kind;
  }

  get motion(): MotionSpec {
    return this.#motion;
  }

  /** A corner presses on the pad. */
  get inContact(): boolean {
    return this.#law instanceof Free && this.#law.inContact;
  }

  /** What happened since `beginTick`, in order. */
  get events(): readonly RunEvent[] {
    return this.#events;
  }

  get gravity(): number {
    return this.#gravity;
  }

  /** Hands over to another motion at the instant reached, which is run time `atS` [s]. */
  begin(motion: MotionSpec, atS: number): void {
    const now = this.#present;
    this.#law.present(atS, this.#gravity, now);
    const from = newHandOver();
    from.timeS = atS;
    from.position.set(now.position);
    from.velocity.set(now.velocity);
    from.attitude.set(now.attitude);
    from.angularVelocity.set(now.angularVelocity);
    normalize(from.attitude);
    const fromBefore = this.#from;
    this.#from = from;
    try {
      this.#law = this.#make(motion);
    } catch (fault) {
      this.#from = fromBefore;
      throw fault;
    }
    this.#motion = motion;
    this.#events.push({ kind: 'motion', timeS: atS, motion: motion.kind });
    if (this.#law instanceof Free) this.#law.begin(atS);
  }

  #make(motion: MotionSpec): Law {
    const from = this.#from;
    switch (motion.kind) {
      case 'held':
        return held(motion, from);
      case 'free':
        return new Free(motion, from, this.spec, this.#gravity, this.#events);
      case 'shake':
        if (motion.law === 'sine') return sineShake(motion, from);
        if (motion.law === 'sweep') return sweepShake(motion, from);
        return randomShake(motion, from, this.#seed);
      case 'move':
        return move(motion, from);
      case 'push':
        return push(motion, from);
      case 'tilt':
        return tilt(motion, from);
      case 'spin':
        return spin(motion, from);
      case 'recorded':
        return recorded(motion, from);
      case 'hand':
        return new Hand(motion, from);
    }
  }

  /** A new target for the hand, from its own instant or the one reached, whichever is later. */
  target(target: HandTarget): void {
    if (!(this.#law instanceof Hand)) {
      throw new RangeError(`a target needs a hand on the housing; it is ${this.#motion.kind}`);
    }
    this.#law.target(target, this.#tickStartS + this.#reachedTauS);
  }

  /** Another gravity [m/s²] from the instant reached. */
  setGravity(gravity: number): void {
    this.#gravity = gravity;
  }

  /** Another pad, or none, under a housing that is free, from the instant reached; else without effect. */
  setPad(pad: PadSpec | null): void {
    if (this.#law instanceof Free) this.#law.setPad(pad, this.#tickStartS + this.#reachedTauS);
  }

  /** Begins the tick at run time `startS`, of `_tickS` [s]; forgets pieces and events of the last one. */
  beginTick(startS: number, _tickS: number): void {
    this.#tickStartS = startS;
    this.#reachedTauS = 0;
    this.#pieceCount = 0;
    if (this.#events.length > 0) this.#events.length = 0; // setting a length is dear
  }

  /** Goes on to τ of this tick [s]. */
  advance(toTauS: number): void {
    while (this.#reachedTauS < toTauS) {
      let piece = this.#pieces[this.#pieceCount];
      if (piece === undefined) {
        piece = new Piece();
        this.#pieces.push(piece);
      }
      piece.law = this.#law;
      piece.tickStartS = this.#tickStartS;
      piece.startTauS = this.#reachedTauS;
      piece.gravity = this.#gravity;
      this.#pieceCount++;
      this.#reachedTauS = this.#law.cut(piece, toTauS);
    }
  }

  get pieceCount(): number {
    return this.#pieceCount;
  }

  pieceStart(piece: number): number {
    return this.#pieces[piece]!.startTauS;
  }

  pieceDuration(piece: number): number {
    return this.#pieces[piece]!.durationS;
  }

  /** What is felt is the same all over a piece, bit for bit: one look at it will do. */
  isSteady(piece: number): boolean {
    return this.#pieces[piece]!.steady;
  }

  /** The motion at τ within a piece, by that piece's own law: at its end, the value before any jump. */
  kinematics(piece: number, tauS: number, out: Kinematics): void {
    const kept = this.#pieces[piece]!;
    kept.law!.at(kept, tauS, out, true);
  }

  /** As `kinematics`, for what is felt: position and velocity may be left as they were, which can cost less. */
  felt(piece: number, tauS: number, out: Kinematics): void {
    const kept = this.#pieces[piece]!;
    kept.law!.at(kept, tauS, out, false);
  }

  /** The motion at the instant reached, as it will go on from there. */
  present(out: Kinematics): void {
    this.#law.present(this.#tickStartS + this.#reachedTauS, this.#gravity, out);
  }

  /** Height of the lowest corner above the unloaded pad [m]. */
  lowest(k: Kinematics): number {
    return lowestCorner(k.position[1]!, k.attitude, this.#half);
  }

  /** Between ticks only. */
  save(): HousingSave {
    const from = this.#from;
    return {
      motion: this.#motion,
      from: [from.timeS, ...from.position, ...from.velocity, ...from.attitude, ...from.angularVelocity],
      law: this.#law.save(),
      gravity: this.#gravity,
      reachedS: this.#tickStartS + this.#reachedTauS,
    };
  }

  /** Goes on from a save; pieces and events of the tick before it are not brought back. */
  restore(saved: HousingSave): void {
    const from = newHandOver();
    from.timeS = saved.from[0]!;
    from.position.set(saved.from.slice(1, 4));
    from.velocity.set(saved.from.slice(4, 7));
    from.attitude.set(saved.from.slice(7, 11));
    from.angularVelocity.set(saved.from.slice(11, 14));
    this.#from = from;
    this.#gravity = saved.gravity;
    this.#motion = saved.motion;
    this.#law = this.#make(saved.motion);
    this.#law.restore(saved.law);
    this.beginTick(saved.reachedS, 0);
  }
}
