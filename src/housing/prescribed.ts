/**
 * A housing led along a path known in advance. What it takes over is braked (or its velocity kept), and the
 * motion's own displacements and turn are added:
 *     p = p₀ + v₀·b(t) + Σ eᵢ sᵢ(t),   R = A(t)·B(t),
 * with B the braked turning taken over and A the own turn about a room axis. Hence in the room
 *     ω = ω_A + A ω_B,   α = α_A + ω_A × (A ω_B) + A α_B.
 * The specific force is Rᵀ(a − g) with the analytic a.
 */
import type { MotionSpec } from '../contract/motion.ts';
import { fromAxisAngle, multiply, quaternion, rotate, rotateBack } from '../numerics/quaternion.ts';
import { addScaled, cross, norm, scale, vector } from '../numerics/vector.ts';
import { Brake } from './brake.ts';
import type { Kinematics } from './kinematics.ts';
import { copyHandOver, type HandOver, type Law, type LawSave, NOTHING_SAVED, type Piece } from './law.ts';
import type { ScalarLaw } from './scalar-law.ts';

export interface Along {
  /** Room frame; need not be of unit length. */
  readonly axis: ArrayLike<number>;
  readonly law: ScalarLaw;
}

export interface PrescribedParts {
  readonly brakeWithinS: number;
  /** The linear velocity taken over is kept instead of braked. */
  readonly keepsVelocity?: boolean;
  readonly along?: readonly Along[];
  /** Turn about the housing's origin; made once the attitude after braking is known. */
  readonly about?: (endAttitude: Float64Array) => Along;
  /** What is felt, instead of what the path would give. */
  readonly felt?: Felt;
}

/** A specific force that is stated instead of following from the path. */
export interface Felt {
  nextKnotS(afterS: number): number;
  /** Writes the specific force [m/s²], housing frame, of a housing with that attitude. */
  at(timeS: number, sideS: number, attitude: Float64Array, out: Float64Array): void;
}

/** A knot nearer to a piece's start than this share of the tick counts as passed. */
const KNOT_SHARE = 1e-9;

export class Prescribed implements Law {
  readonly kind: MotionSpec['kind'];
  readonly #from: HandOver;
  readonly #brake: Brake;
  readonly #keepsVelocity: boolean;
  readonly #along: readonly { readonly axis: Float64Array; readonly law: ScalarLaw }[];
  readonly #aboutAxis: Float64Array | null;
  readonly #aboutLaw: ScalarLaw | null;
  readonly #felt: Felt | null;
  /** From here on what is felt stays [s]; Infinity: never. */
  readonly #steadyAfterS: number;
  readonly #up = vector();
  readonly #turn = quaternion();
  readonly #omega = vector();
  readonly #alpha = vector();
  readonly #crossed = vector();

  constructor(kind: MotionSpec['kind'], from: HandOver, parts: PrescribedParts) {
    this.kind = kind;
    this.#from = copyHandOver(from);
    this.#brake = new Brake(from, parts.brakeWithinS);
    this.#keepsVelocity = parts.keepsVelocity ?? false;
    this.#along = (parts.along ?? []).map(({ axis, law }) => ({ axis: Float64Array.from(axis), law }));
    const about = parts.about?.(this.#brake.endAttitude);
    this.#aboutAxis = about === undefined ? null : Float64Array.from(about.axis);
    this.#aboutLaw = about?.law ?? null;
    this.#felt = parts.felt ?? null;
    const laws = [...this.#along.map(({ law }) => law), ...(this.#aboutLaw === null ? [] : [this.#aboutLaw])];
    const lawsSteadyAfterS = laws.map(({ steadyAfterS }) => steadyAfterS);
    this.#steadyAfterS =
      this.#felt === null ? Math.max(this.#brake.withinS, ...lawsSteadyAfterS) : Number.POSITIVE_INFINITY;
  }

  cut(piece: Piece, untilTauS: number): number {
    const beganTauS = this.#from.timeS - piece.tickStartS;
    const near = KNOT_SHARE * (untilTauS - piece.startTauS);
    const knotTauS = beganTauS + this.#nextKnotS(piece.startTauS + near - beganTauS);
    const endTauS = knotTauS < untilTauS - near ? knotTauS : untilTauS;
    piece.durationS = endTauS - piece.startTauS;
    piece.steady = piece.startTauS - beganTauS >= this.#steadyAfterS;
    return endTauS;
  }

  #nextKnotS(afterS: number): number {
    let knotS = this.#brake.withinS > afterS ? this.#brake.withinS : Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.#along.length; i++) {
      knotS = Math.min(knotS, this.#along[i]!.law.nextKnotS(afterS));
    }
    if (this.#aboutLaw !== null) knotS = Math.min(knotS, this.#aboutLaw.nextKnotS(afterS));
    if (this.#felt !== null) knotS = Math.min(knotS, this.#felt.nextKnotS(afterS));
    return knotS;
  }

  at(piece: Piece, tauS: number, out: Kinematics, path: boolean): void {
    const beganTauS = this.#from.timeS - piece.tickStartS;
    const middleTauS = piece.startTauS + piece.durationS / 2;
    this.#evaluate(tauS - beganTauS, middleTauS - beganTauS, piece.gravity, out, path);
  }

  present(timeS: number, gravity: number, out: Kinematics): void {
    const sinceS = timeS - this.#from.timeS;
    // a side just after the instant: half way to the next knot
    const knotS = this.#nextKnotS(sinceS);
    const sideS = knotS === Number.POSITIVE_INFINITY ? sinceS + 1 : (sinceS + knotS) / 2;
    this.#evaluate(sinceS, sideS, gravity, out, true);
  }

  save(): LawSave {
    return NOTHING_SAVED;
  }

  restore(): void {
    // nothing moves on: the path is a function of time
  }

  #evaluate(timeS: number, sideS: number, gravity: number, out: Kinematics, path: boolean): void {
    this.#translate(timeS, sideS, out, path);
    this.#rotate(timeS, sideS, out);
    out.uniform = this.#felt !== null;
    if (this.#felt !== null) {
      this.#felt.at(timeS, sideS, out.attitude, out.specificForce);
      return;
    }
    const up = this.#up;
    up.set(out.acceleration);
    up[1]! += gravity;
    rotateBack(out.attitude, up, out.specificForce);
  }

  #translate(timeS: number, sideS: number, out: Kinematics, path: boolean): void {
    const from = this.#from;
    const brake = this.#brake;
    brake.at(timeS);
    const share = this.#keepsVelocity ? 1 : brake.share;
    if (path) {
      addScaled(from.position, this.#keepsVelocity ? timeS : brake.travelS, from.velocity, out.position);
      scale(share, from.velocity, out.velocity);
    }
    scale(this.#keepsVelocity ? 0 : brake.shareSlope, from.velocity, out.acceleration);
    for (let i = 0; i < this.#along.length; i++) {
      const { axis, law } = this.#along[i]!;
      law.at(timeS, sideS, path);
      if (path) {
        addScaled(out.position, law.value, axis, out.position);
        addScaled(out.velocity, law.rate, axis, out.velocity);
      }
      addScaled(out.acceleration, law.acceleration, axis, out.acceleration);
    }
  }

  #rotate(timeS: number, sideS: number, out: Kinematics): void {
    const brake = this.#brake;
    const omega = out.angularVelocity;
    const alpha = out.angularAcceleration;
    brake.attitude(out.attitude);
    if (this.#aboutLaw === null || this.#aboutAxis === null) {
      // ω_B keeps its axis, so it is the one taken over, shrunk
      scale(brake.share, this.#from.angularVelocity, omega);
      scale(brake.shareSlope, this.#from.angularVelocity, alpha);
      return;
    }
    const axis = this.#aboutAxis;
    const law = this.#aboutLaw;
    law.at(timeS, sideS, true);
    fromAxisAngle(axis, law.value, this.#turn);
    multiply(this.#turn, out.attitude, out.attitude);
    scale(law.rate, axis, this.#omega);
    scale(law.acceleration, axis, this.#alpha);
    if (brake.share > 0) {
      rotate(this.#turn, brake.turnAxis, this.#crossed);
      addScaled(this.#alpha, brake.shareSlope * brake.turnRate, this.#crossed, this.#alpha);
      scale(brake.share * brake.turnRate, this.#crossed, this.#crossed);
      addScaled(this.#omega, 1, this.#crossed, this.#omega);
      scale(law.rate, axis, omega);
      cross(omega, this.#crossed, omega);
      addScaled(this.#alpha, 1, omega, this.#alpha);
    }
    rotateBack(out.attitude, this.#omega, omega);
    rotateBack(out.attitude, this.#alpha, alpha);
  }
}

/** A copy of unit length. */
export function unit(axis: ArrayLike<number>): Float64Array {
  const out = Float64Array.from(axis);
  scale(1 / norm(out), out, out);
  return out;
}
