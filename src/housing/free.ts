/**
 * Free: a rigid body under gravity, the pad's force at its corners and the drag of the air. What it feels comes from those
 * forces, so that a fall without drag reads exactly zero. Touch and lift-off of every corner are located inside the
 * tick and cut it; in contact it is stepped so that the stiffest rate times the step stays below 0.05.
 */
import type { RunEvent } from '../contract/event.ts';
import type { FreeMotion, PadSpec } from '../contract/motion.ts';
import type { HousingSpec } from '../contract/run.ts';
import { rotate, rotateBack } from '../numerics/quaternion.ts';
import { norm, vector } from '../numerics/vector.ts';
import { Contact, TOGETHER } from './contact.ts';
import { BRISTLES, CORNERS, Forces } from './forces.ts';
import { FreeBody } from './free-body.ts';
import { GroupStep, LAYOUT, LONGEST_TURN } from './group-step.ts';
import { type Kinematics, lowestCorner } from './kinematics.ts';
import { LandingRecord, RESTING_ACCELERATION_MS2, RESTING_SPEED_MS } from './landing.ts';
import type { HandOver, Law, LawSave, Piece } from './law.ts';

const { ACCELERATION, EXTRA, EXTRA_RATE, Q, V, W, X } = LAYOUT;

const STATE = EXTRA + BRISTLES;
/** Memory of a piece: state at start, end and middle, which corners press, whether the middle is there. */
const START = 0;
const END = STATE;
const MIDDLE = 2 * STATE;
const PRESSED = 3 * STATE;
const HAS_MIDDLE = PRESSED + 1;
const MEMORY = HAS_MIDDLE + 1;

/** τ this near to the middle or end of a piece [share of it] is the middle or end: the difference is rounding. */
const SAME_INSTANT = 1e-12;

/** Instants nearer than this share of a step are not worth a piece of their own. */
const NEAR = 1e-9;

/** So many changes of contact without time passing and one step is made without looking for more. */
const MOST_CHANGES = 2 * CORNERS;

export class Free implements Law {
  readonly kind = 'free';
  readonly #body: FreeBody;
  readonly #half: Float64Array;
  readonly #radius: number;
  readonly #events: RunEvent[];
  readonly #step = new GroupStep(BRISTLES);
  readonly #contact: Contact;
  readonly #landing = new LandingRecord();
  /** Forces as the motion goes on, and as a piece that is looked at had them. */
  readonly #forces: Forces;
  readonly #look: Forces;
  readonly #state = new Float64Array(STATE);
  readonly #end = new Float64Array(STATE);
  readonly #middle = new Float64Array(STATE);
  readonly #seen = new Float64Array(STATE);
  readonly #rates = new Float64Array(EXTRA_RATE + BRISTLES);
  readonly #felt = vector();
  readonly #net = vector();
  readonly #depth = vector();
  readonly #omega = vector();
  readonly #alpha = vector();
  readonly #attitude = new Float64Array(4);
  /** Free, or free of the pad, since this instant [s]. */
  #flightSinceS: number;

  constructor(motion: FreeMotion, from: HandOver, spec: HousingSpec, gravity: number, events: RunEvent[]) {
    this.#body = new FreeBody(spec);
    this.#half = Float64Array.from(spec.size, (edge) => edge / 2);
    this.#radius = norm(this.#half);
    this.#events = events;
    const { inertia, mass } = this.#body;
    this.#forces = new Forces(mass, inertia, this.#half, motion.airDrag);
    this.#look = new Forces(mass, inertia, this.#half, motion.airDrag);
    this.#forces.pad = motion.pad ?? null;
    this.#forces.gravity = gravity;
    const step = (start: Float64Array, h: number, out: Float64Array): void => this.#move(this.#forces, start, h, out);
    this.#contact = new Contact(this.#forces, step, this.#radius, STATE);
    this.#flightSinceS = from.timeS;
    this.#take(from, motion);
  }

  #take(from: HandOver, motion: FreeMotion): void {
    const state = this.#state;
    state.set(from.position, X);
    state.set(from.velocity, V);
    state.set(from.attitude, Q);
    const spin = vector();
    if (motion.spin === undefined) spin.set(from.angularVelocity);
    else rotateBack(from.attitude, motion.spin, spin);
    for (let i = 0; i < 3; i++) spin[i]! *= this.#body.inertia[i]!;
    rotate(from.attitude, spin, spin);
    state.set(spin, W);
  }

  /** Tells of the letting go, and of the touch if it lies on the pad already. */
  begin(timeS: number): void {
    this.#events.push({
      kind: 'let go',
      timeS,
      heightM: this.#lowest(this.#state),
      verticalSpeedMS: this.#state[V + 1]!,
    });
    this.#contact.begin(this.#state);
    this.#tell(0, timeS);
  }

  get inContact(): boolean {
    return this.#forces.pressed !== 0;
  }

  /** Another pad (or none) from the instant reached. */
  setPad(pad: PadSpec | null, timeS: number): void {
    const before = this.#forces.pressed;
    this.#forces.pad = pad;
    this.#contact.begin(this.#state);
    this.#straighten(before);
    this.#tell(before, timeS);
  }

  cut(piece: Piece, untilTauS: number): number {
    const forces = this.#forces;
    forces.gravity = piece.gravity;
    for (let changes = 0; ; changes++) {
      const endTauS = this.#stepEnd(piece, untilTauS);
      const h = endTauS - piece.startTauS;
      this.#move(forces, this.#state, h, this.#end);
      const first = changes < MOST_CHANGES ? this.#contact.first(this.#state, this.#end, h) : Number.POSITIVE_INFINITY;
      if (first <= TOGETHER * h) {
        this.#change(piece.tickStartS + piece.startTauS);
        continue;
      }
      const whole = first >= h * (1 - TOGETHER);
      if (!whole) this.#move(forces, this.#state, first, this.#end);
      const cutTauS = whole ? endTauS : piece.startTauS + first;
      piece.durationS = whole ? h : first;
      this.#note(piece);
      this.#state.set(this.#end);
      const timeS = piece.tickStartS + cutTauS;
      if (this.#landing.restDueS <= timeS + NEAR * h) this.#rest(timeS);
      if (first !== Number.POSITIVE_INFINITY) this.#change(timeS);
      return cutTauS;
    }
  }

  /** End of the next step by the clock, the resolution and the waiting for rest. */
  #stepEnd(piece: Piece, untilTauS: number): number {
    const state = this.#state;
    const startTauS = piece.startTauS;
    const restTauS = this.#landing.restDueS - piece.tickStartS;
    const near = NEAR * (untilTauS - startTauS);
    const endTauS = restTauS > startTauS + near && restTauS < untilTauS - near ? restTauS : untilTauS;
    const forces = this.#forces;
    const longest = Math.min(forces.longestStep(state), LONGEST_TURN / forces.turnRate(state));
    const span = endTauS - startTauS;
    const steps = Math.ceil(span / longest);
    return steps > 1 ? startTauS + span / steps : endTauS;
  }

  #move(forces: Forces, start: Float64Array, h: number, out: Float64Array): void {
    if (h === 0) {
      out.set(start);
      return;
    }
    if (forces.falls && start[W] === 0 && start[W + 1] === 0 && start[W + 2] === 0) {
      this.#body.fall(start, h, forces.gravity, out);
      for (let i = W; i < STATE; i++) out[i] = start[i]!;
      return;
    }
    const bristles = forces.hasFriction;
    this.#step.run(forces, start, h, bristles);
    this.#body.advance(start, h, this.#step, out);
    this.#step.finishRest(start, h, bristles, out);
  }

  /** Keeps in the piece what is needed to look at it later, and adds it to the landing. */
  #note(piece: Piece): void {
    const memory = piece.room(MEMORY);
    const pressed = this.#forces.pressed;
    piece.pad = this.#forces.pad;
    memory.set(this.#state, START);
    memory.set(this.#end, END);
    memory[PRESSED] = pressed;
    const counts = pressed !== 0 && !this.#landing.rested;
    memory[HAS_MIDDLE] = counts ? 1 : 0;
    if (!counts) return;
    this.#move(this.#forces, this.#state, piece.durationS / 2, this.#middle);
    memory.set(this.#middle, MIDDLE);
    this.#weigh(this.#state, 0);
    this.#weigh(this.#middle, 1);
    const unrest = this.#weigh(this.#end, 2);
    this.#landing.add(piece.tickStartS + piece.startTauS, piece.durationS, this.#felt, this.#net, this.#depth, unrest);
  }

  /** Notes what is felt in a state under `slot`; returns how far from rest it is (1 at the limit). */
  #weigh(state: Float64Array, slot: number): number {
    const forces = this.#forces;
    const rates = this.#rates;
    forces.rates(state, 0, rates);
    this.#felt[slot] = norm(forces.force) / this.#body.mass;
    this.#net[slot] = rates[ACCELERATION + 1]!;
    this.#depth[slot] = -this.#lowest(state);
    forces.bodyRates(this.#omega, this.#alpha);
    const speed = Math.sqrt(state[V]! * state[V]! + state[V + 1]! * state[V + 1]! + state[V + 2]! * state[V + 2]!);
    const ax = rates[ACCELERATION]!;
    const ay = rates[ACCELERATION + 1]!;
    const az = rates[ACCELERATION + 2]!;
    const acceleration = Math.sqrt(ax * ax + ay * ay + az * az);
    const rim = this.#radius;
    return Math.max(
      (speed + rim * norm(this.#omega)) / RESTING_SPEED_MS,
      (acceleration + rim * norm(this.#alpha)) / RESTING_ACCELERATION_MS2,
    );
  }

  #lowest(state: Float64Array): number {
    for (let i = 0; i < 4; i++) this.#attitude[i] = state[Q + i]!;
    return lowestCorner(state[X + 1]!, this.#attitude, this.#half);
  }

  #change(timeS: number): void {
    const before = this.#forces.pressed;
    this.#contact.apply();
    this.#straighten(before);
    this.#tell(before, timeS);
  }

  /** A bristle begins, and ends, unbent. */
  #straighten(before: number): void {
    const changed = before ^ this.#forces.pressed;
    for (let i = 0; i < CORNERS; i++) {
      if (((changed >> i) & 1) === 0) continue;
      this.#state[EXTRA + 2 * i] = 0;
      this.#state[EXTRA + 2 * i + 1] = 0;
    }
  }

  /** Tells of a first touch or a last lift-off. */
  #tell(pressedBefore: number, timeS: number): void {
    const pressed = this.#forces.pressed;
    const verticalSpeedMS = this.#state[V + 1]!;
    if (pressedBefore === 0 && pressed !== 0) {
      this.#events.push({ kind: 'touch', timeS, verticalSpeedMS, fallS: timeS - this.#flightSinceS });
      this.#landing.begin(timeS, this.#weigh(this.#state, 0));
    }
    if (pressedBefore !== 0 && pressed === 0) {
      this.#events.push({ kind: 'lift-off', timeS, verticalSpeedMS, landing: this.#landing.landing() });
      this.#landing.close();
      this.#flightSinceS = timeS;
    }
  }

  #rest(timeS: number): void {
    this.#landing.rest();
    this.#events.push({ kind: 'at rest', timeS, landing: this.#landing.landing() });
  }

  at(piece: Piece, tauS: number, out: Kinematics, _path: boolean): void {
    const look = this.#look;
    const memory = piece.memory;
    const seen = this.#seen;
    look.gravity = piece.gravity;
    look.pad = piece.pad;
    look.pressed = memory[PRESSED]!;
    const since = tauS - piece.startTauS;
    const share = since / piece.durationS;
    const base =
      Math.abs(share - 1) < SAME_INSTANT
        ? END
        : memory[HAS_MIDDLE] === 1 && Math.abs(share - 0.5) < SAME_INSTANT
          ? MIDDLE
          : START;
    for (let i = 0; i < STATE; i++) seen[i] = memory[base + i]!;
    if (base === START && since !== 0) this.#move(look, seen, since, seen);
    this.#write(look, seen, out);
  }

  present(_timeS: number, gravity: number, out: Kinematics): void {
    this.#forces.gravity = gravity;
    this.#write(this.#forces, this.#state, out);
  }

  #write(forces: Forces, state: Float64Array, out: Kinematics): void {
    const rates = this.#rates;
    forces.rates(state, 0, rates);
    for (let i = 0; i < 3; i++) {
      out.position[i] = state[X + i]!;
      out.velocity[i] = state[V + i]!;
      out.acceleration[i] = rates[ACCELERATION + i]!;
    }
    for (let i = 0; i < 4; i++) out.attitude[i] = state[Q + i]!;
    forces.bodyRates(out.angularVelocity, out.angularAcceleration);
    forces.bodyForce(out.specificForce);
    out.uniform = false;
  }

  save(): LawSave {
    const numbers = [
      ...this.#state,
      this.#forces.pressed,
      this.#contact.below,
      this.#flightSinceS,
      ...this.#landing.save(),
    ];
    return { numbers, pad: this.#forces.pad, targets: [] };
  }

  restore(saved: LawSave): void {
    const { numbers } = saved;
    this.#state.set(numbers.slice(0, STATE));
    this.#forces.pressed = numbers[STATE]!;
    this.#contact.below = numbers[STATE + 1]!;
    this.#flightSinceS = numbers[STATE + 2]!;
    this.#landing.restore(numbers.slice(STATE + 3));
    this.#forces.pad = saved.pad;
  }
}
