/**
 * In hand: a critically damped pull toward a target, limited in speed and acceleration:
 *     v_d = clamp((ω_h/2)(T − x), 3 m/s),   a = clamp(2ω_h(v_d − v), 30 m/s²),
 * which is a = ω_h²(T − x) − 2ω_h v where nothing limits. The attitude follows likewise, with the rotation vector to
 * the target's attitude in place of T − x. A target runs in a straight line (shortest arc) from where it was.
 * What is felt comes from this a, never from differences of pointer positions. The instants at which a limit begins or ceases
 * to act are located and cut the tick, so that a piece is smooth.
 */
import type { HandMotion, HandTarget } from '../contract/motion.ts';
import { rotate, rotateBack, toRotationVector, turnBetween } from '../numerics/quaternion.ts';
import { vector } from '../numerics/vector.ts';
import { signChange } from './crossing.ts';
import { GroupStep, LAYOUT, LONGEST_TURN, type RateSource } from './group-step.ts';
import { LEG, TargetPath } from './hand-target.ts';
import type { Kinematics } from './kinematics.ts';
import type { HandOver, Law, LawSave, Piece } from './law.ts';

const { ACCELERATION, Q, TURN, V, W, W_RATE, X } = LAYOUT;

/** Rate of the pull ω_h [rad/s]: a small displacement is followed in about 0.1 s. */
export const HAND_RATE = 25;
/** What an arm does at most, [m/s] and [m/s²]. */
export const HAND_SPEED_MS = 3;
export const HAND_ACCELERATION_MS2 = 30;
/** What a wrist does at most, [rad/s] and [rad/s²]; common practice has no figure, these look right on the bench. */
export const HAND_TURN_RATE = 10;
export const HAND_TURN_ACCELERATION = 100;

/** Largest step of the pull [s]: 2ω_h·h ≤ 0.05. */
const LONGEST_STEP_S = 0.05 / (2 * HAND_RATE);

/** Instants nearer than this share of a step are not worth a piece of their own. */
const NEAR = 1e-9;

/** So many switches without time passing and one step is made without looking for more. */
const MOST_SWITCHES = 8;

/**
 * What can switch: the limits on speed, acceleration, turning speed and turning acceleration, which act where their quantity is
 * above zero, and the way round to the target's attitude, which is the other one where it is.
 */
const SWITCHES = 5;
const SPEED_LIMIT = 0;
const TURN_LIMIT = 2;
const WAY_ROUND = 4;

const STATE = 13;
/** Memory of a piece: state at its start, the target's leg, what acts. */
const TARGET_LEG = STATE;
const ACTING = TARGET_LEG + LEG;
const MEMORY = ACTING + 1;

export class Hand implements Law, RateSource {
  readonly kind = 'hand';
  readonly #state = new Float64Array(STATE);
  readonly #end = new Float64Array(STATE);
  readonly #seen = new Float64Array(STATE);
  readonly #rates = new Float64Array(9);
  readonly #step = new GroupStep(0);
  readonly #target: TargetPath;
  /** The target's leg of the piece that is being stepped or looked at, and the run time at the step's start. */
  #leg: Float64Array;
  readonly #seenLeg = new Float64Array(LEG);
  #stepStartS = 0;
  readonly #attitude = new Float64Array(4);
  readonly #arc = vector();
  readonly #turn = new Float64Array(4);
  /** Bit i: switch i acts; and the quantities of the last evaluation. */
  #acting = 0;
  readonly #switch = new Float64Array(SWITCHES);
  readonly #switchStart = new Float64Array(SWITCHES);
  readonly #switchEnd = new Float64Array(SWITCHES);

  constructor(motion: HandMotion, from: HandOver) {
    const state = this.#state;
    state.set(from.position, X);
    state.set(from.velocity, V);
    state.set(from.attitude, Q);
    rotate(from.attitude, from.angularVelocity, this.#arc);
    state.set(this.#arc, W);
    this.#target = new TargetPath(from, motion.targets);
    this.#leg = this.#target.leg;
  }

  /** A target given live, effective at its own instant or the one reached, `nowS`, whichever is later. */
  target(target: HandTarget, nowS: number): void {
    this.#target.upcoming = [...this.#target.upcoming, target];
    this.#target.reach(nowS);
  }

  rates(state: Float64Array, sinceS: number, out: Float64Array): void {
    this.#target.at(this.#leg, this.#stepStartS + sinceS);
    for (let i = 0; i < 4; i++) this.#attitude[i] = state[Q + i]!;
    turnBetween(this.#attitude, this.#target.attitude, this.#turn);
    this.#switch[WAY_ROUND] = -this.#turn[3]!;
    toRotationVector(this.#turn, this.#arc, (this.#acting >> WAY_ROUND) & 1 ? -1 : 1);
    for (let i = 0; i < 3; i++) {
      out[TURN + i] = state[W + i]!;
      out[ACCELERATION + i] = (HAND_RATE / 2) * (this.#target.place[i]! - state[X + i]!);
      out[W_RATE + i] = (HAND_RATE / 2) * this.#arc[i]!;
    }
    this.#pull(out, ACCELERATION, state, V, SPEED_LIMIT, HAND_SPEED_MS, HAND_ACCELERATION_MS2);
    this.#pull(out, W_RATE, state, W, TURN_LIMIT, HAND_TURN_RATE, HAND_TURN_ACCELERATION);
  }

  /** out[at…] = clamp(2ω_h(clamp(out[at…], speed) − rate), acceleration), the limits as they act. */
  #pull(
    out: Float64Array,
    at: number,
    state: Float64Array,
    rateAt: number,
    limit: number,
    speed: number,
    acceleration: number,
  ): void {
    this.#limit(out, at, limit, speed);
    for (let i = 0; i < 3; i++) out[at + i] = 2 * HAND_RATE * (out[at + i]! - state[rateAt + i]!);
    this.#limit(out, at, limit + 1, acceleration);
  }

  #limit(out: Float64Array, at: number, limit: number, longest: number): void {
    const x = out[at]!;
    const y = out[at + 1]!;
    const z = out[at + 2]!;
    const length = Math.sqrt(x * x + y * y + z * z);
    this.#switch[limit] = length - longest;
    if (((this.#acting >> limit) & 1) === 0) return;
    const s = longest / length;
    out[at] = x * s;
    out[at + 1] = y * s;
    out[at + 2] = z * s;
  }

  /** Sets what acts from the state alone; an acceleration's limit is judged with its speed's limit in place. */
  #judge(state: Float64Array): void {
    this.#acting = 0;
    for (let round = 0; round < 2; round++) {
      this.rates(state, 0, this.#rates);
      for (let i = 0; i < SWITCHES; i++) if (this.#switch[i]! > 0) this.#acting |= 1 << i;
      if (round === 0) this.#acting &= (1 << SPEED_LIMIT) | (1 << TURN_LIMIT) | (1 << WAY_ROUND);
    }
  }

  cut(piece: Piece, untilTauS: number): number {
    const startTauS = piece.startTauS;
    const startS = piece.tickStartS + startTauS;
    const near = NEAR * (untilTauS - startTauS);
    this.#target.reach(startS + near);
    const endTauS = this.#stepEnd(piece, untilTauS, near);
    const h = endTauS - startTauS;
    this.#leg = this.#target.leg;
    this.#stepStartS = startS;
    this.#judge(this.#state);
    for (let switches = 0; ; switches++) {
      this.#move(this.#state, startS, h, this.#end);
      const first = switches < MOST_SWITCHES ? this.#firstSwitch(startS, h) : h;
      if (first < NEAR * h) continue;
      const whole = first > h * (1 - NEAR);
      if (!whole) this.#move(this.#state, startS, first, this.#end);
      piece.durationS = whole ? h : first;
      piece.steady = false;
      const memory = piece.room(MEMORY);
      memory.set(this.#state, 0);
      memory.set(this.#target.leg, TARGET_LEG);
      memory[ACTING] = this.#acting;
      this.#state.set(this.#end);
      const cutTauS = whole ? endTauS : startTauS + first;
      this.#target.reach(piece.tickStartS + cutTauS);
      return cutTauS;
    }
  }

  /**
   * The first instant, since the start of a step of h [s], at which something switches; h: nothing does. What does so at
   * the very start is switched.
   */
  #firstSwitch(startS: number, h: number): number {
    this.#quantities(this.#state, startS);
    this.#switchStart.set(this.#switch);
    this.#quantities(this.#end, startS + h);
    this.#switchEnd.set(this.#switch);
    let first = h;
    for (let i = 0; i < SWITCHES; i++) {
      const acts = ((this.#acting >> i) & 1) === 1;
      const after = this.#switchEnd[i]!;
      if (acts ? after >= 0 : after <= 0) continue;
      const before = this.#switchStart[i]!;
      const at =
        acts === before > 0 ? signChange((since) => this.#quantityAfter(i, startS, since), 0, h, before, after) : 0;
      if (at < NEAR * h) this.#acting ^= 1 << i;
      first = Math.min(first, at);
    }
    return first;
  }

  #quantityAfter(i: number, startS: number, since: number): number {
    this.#move(this.#state, startS, since, this.#seen);
    this.#quantities(this.#seen, startS + since);
    return this.#switch[i]!;
  }

  #quantities(state: Float64Array, timeS: number): void {
    this.#stepStartS = timeS;
    this.rates(state, 0, this.#rates);
  }

  #stepEnd(piece: Piece, untilTauS: number, near: number): number {
    const startTauS = piece.startTauS;
    const knotTauS = this.#target.nextKnotS(piece.tickStartS + startTauS + near) - piece.tickStartS;
    const endTauS = knotTauS < untilTauS - near ? knotTauS : untilTauS;
    const state = this.#state;
    const wx = state[W]!;
    const wy = state[W + 1]!;
    const wz = state[W + 2]!;
    const longest = Math.min(LONGEST_STEP_S, LONGEST_TURN / Math.sqrt(wx * wx + wy * wy + wz * wz));
    const span = endTauS - startTauS;
    const steps = Math.ceil(span / longest);
    return steps > 1 ? startTauS + span / steps : endTauS;
  }

  #move(start: Float64Array, startS: number, h: number, out: Float64Array): void {
    this.#stepStartS = startS;
    this.#step.run(this, start, h, false);
    this.#step.finish(start, h, false, out);
  }

  at(piece: Piece, tauS: number, out: Kinematics, _path: boolean): void {
    const memory = piece.memory;
    const seen = this.#seen;
    for (let i = 0; i < STATE; i++) seen[i] = memory[i]!;
    for (let i = 0; i < LEG; i++) this.#seenLeg[i] = memory[TARGET_LEG + i]!;
    this.#leg = this.#seenLeg;
    this.#acting = memory[ACTING]!;
    const since = tauS - piece.startTauS;
    if (since !== 0) this.#move(seen, piece.tickStartS + piece.startTauS, since, seen);
    this.#write(seen, piece.tickStartS + tauS, piece.gravity, out);
  }

  present(timeS: number, gravity: number, out: Kinematics): void {
    this.#leg = this.#target.leg;
    this.#stepStartS = timeS;
    this.#judge(this.#state);
    this.#write(this.#state, timeS, gravity, out);
  }

  #write(state: Float64Array, timeS: number, gravity: number, out: Kinematics): void {
    const rates = this.#rates;
    this.#stepStartS = timeS;
    this.rates(state, 0, rates);
    for (let i = 0; i < 3; i++) {
      out.position[i] = state[X + i]!;
      out.velocity[i] = state[V + i]!;
      out.acceleration[i] = rates[ACCELERATION + i]!;
      out.angularVelocity[i] = state[W + i]!;
      out.angularAcceleration[i] = rates[W_RATE + i]!;
      out.specificForce[i] = rates[ACCELERATION + i]!;
    }
    for (let i = 0; i < 4; i++) out.attitude[i] = state[Q + i]!;
    out.specificForce[1]! += gravity;
    rotateBack(out.attitude, out.specificForce, out.specificForce);
    rotateBack(out.attitude, out.angularVelocity, out.angularVelocity);
    rotateBack(out.attitude, out.angularAcceleration, out.angularAcceleration);
    out.uniform = false;
  }

  save(): LawSave {
    return { numbers: [...this.#state, ...this.#target.leg], pad: null, targets: this.#target.upcoming };
  }

  restore(saved: LawSave): void {
    this.#state.set(saved.numbers.slice(0, STATE));
    this.#target.leg.set(saved.numbers.slice(STATE));
    this.#target.upcoming = saved.targets;
  }
}
