/** The target a hand follows: it runs straight, and turns about the shortest arc, from where it was to where it is told. */
import type { HandTarget } from '../contract/motion.ts';
import {
  fromRotationVector,
  multiply,
  normalize,
  quaternion,
  toRotationVector,
  turnBetween,
} from '../numerics/quaternion.ts';
import { vector } from '../numerics/vector.ts';
import type { HandOver } from './law.ts';

/** A target no later than this takes effect at its own instant [s]: the difference is rounding of run time. */
const SAME_INSTANT_S = 1e-9;

/** A leg in numbers: since, over, start place, way, start attitude, turn. */
const SINCE = 0;
const OVER = 1;
const PLACE = 2;
const WAY = 5;
const ATTITUDE = 8;
const ARC = 12;
export const LEG = 15;

export class TargetPath {
  /** The leg under way. */
  readonly leg = new Float64Array(LEG);
  /** Place [m] and attitude at the instant of the last `at`. */
  readonly place = vector();
  readonly attitude = quaternion();
  #upcoming: readonly HandTarget[];
  readonly #taken: Float64Array;
  readonly #arc = vector();
  readonly #turn = quaternion();

  constructor(from: HandOver, targets: readonly HandTarget[]) {
    this.#upcoming = targets;
    this.#taken = from.attitude.slice();
    this.leg[SINCE] = from.timeS;
    this.leg.set(from.position, PLACE);
    this.leg.set(from.attitude, ATTITUDE);
    this.reach(from.timeS);
  }

  get upcoming(): readonly HandTarget[] {
    return this.#upcoming;
  }

  set upcoming(targets: readonly HandTarget[]) {
    this.#upcoming = targets;
  }

  /** Takes up what is due at `nowS` [s]. */
  reach(nowS: number): void {
    while (this.#upcoming.length > 0 && this.#upcoming[0]!.at <= nowS) {
      this.#take(this.#upcoming[0]!, nowS);
      this.#upcoming = this.#upcoming.slice(1);
    }
  }

  #take(next: HandTarget, nowS: number): void {
    const leg = this.leg;
    const sinceS = nowS - next.at < SAME_INSTANT_S ? next.at : nowS;
    this.at(leg, sinceS);
    leg[SINCE] = sinceS;
    leg[OVER] = next.over;
    for (let i = 0; i < 3; i++) {
      leg[PLACE + i] = this.place[i]!;
      leg[WAY + i] = next.position[i]! - this.place[i]!;
    }
    leg.set(this.attitude, ATTITUDE);
    turnBetween(this.attitude, next.attitude ?? this.#taken, this.#turn);
    toRotationVector(this.#turn, this.#arc);
    leg.set(this.#arc, ARC);
  }

  /** The next instant later than `afterS` at which the leg ends or another begins [s]; Infinity: none. */
  nextKnotS(afterS: number): number {
    const arrivesS = this.leg[SINCE]! + this.leg[OVER]!;
    const knotS = arrivesS > afterS ? arrivesS : Number.POSITIVE_INFINITY;
    const nextS = this.#upcoming.length > 0 ? this.#upcoming[0]!.at : Number.POSITIVE_INFINITY;
    return nextS > afterS ? Math.min(knotS, nextS) : knotS;
  }

  /** Place and attitude on a leg at run time `timeS`. */
  at(leg: Float64Array, timeS: number): void {
    const since = timeS - leg[SINCE]!;
    const share = since >= leg[OVER]! ? 1 : since / leg[OVER]!;
    for (let i = 0; i < 3; i++) {
      this.place[i] = leg[PLACE + i]! + share * leg[WAY + i]!;
      this.#arc[i] = share * leg[ARC + i]!;
    }
    for (let i = 0; i < 4; i++) this.attitude[i] = leg[ATTITUDE + i]!;
    if (this.#arc[0] === 0 && this.#arc[1] === 0 && this.#arc[2] === 0) return;
    fromRotationVector(this.#arc, this.#turn);
    multiply(this.#turn, this.attitude, this.attitude);
    normalize(this.attitude);
  }
}
