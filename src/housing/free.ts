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
import { FELT, MOMENT, Moment, STATE } from './moment.ts';

const { ACCELERATION, EXTRA, Q, V, W, X } = LAYOUT;
const { SPECIFIC_FORCE, ANGULAR_VELOCITY, ANGULAR_ACCELERATION } = FELT;

/** Memory of a piece: the moment at its start, those at its end and middle unless it is steady, which corners press. */
const START = 0;
const END = MOMENT;
const MIDDLE = 2 * MOMENT;
const PRESSED = 3 * MOMENT;
const MEMORY = PRESSED + 1;

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
  /** For steps that are only tried or looked at: the stages of the one just made are still needed. */
  readonly #trial = new GroupStep(BRISTLES);
  readonly #contact: Contact;
  readonly #landing = new LandingRecord();
  /** Forces as the motion goes on, and as a piece that is looked at had them. */
  readonly #forces: Forces;
  readonly #look: Forces;
  /** The moment reached; the end and the middle of the step from there. */
  #now = new Moment();
  #next = new Moment();
  readonly #middle = new Moment();
  /** A moment looked at inside a piece. */
  readonly #seen = new Moment();
  /** What is felt at the moment reached is worked out. */
  #weighed = false;
  /** A step of this length from the moment reached ends where it began [s]; NaN: not known. */
  #stillForS = Number.NaN;
  readonly #felt = vector();
  readonly #net = vector();
  readonly #depth = vector();
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
    const step = (start: Float64Array, h: number, out: Float64Array): void =>
      this.#move(this.#forces, this.#trial, start, h, out);
    this.#contact = new Contact(this.#forces, step, this.#radius, STATE);
    this.#flightSinceS = from.timeS;
    this.#take(from, motion);
  }

  #take(from: HandOver, motion: FreeMotion): void {
    const state = this.#now.numbers;
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
    const state = this.#now.numbers;
    this.#events.push({ kind: 'let go', timeS, heightM: this.#lowest(state), verticalSpeedMS: state[V + 1]! });
    this.#contact.begin(state);
    this.#tell(0, timeS);
  }

  get inContact(): boolean {
    return this.#forces.pressed !== 0;
  }

  /** Another pad (or none) from the instant reached. */
  setPad(pad: PadSpec | null, timeS: number): void {
    const before = this.#forces.pressed;
    this.#forces.pad = pad;
    this.#contact.begin(this.#now.numbers);
    this.#straighten(before);
    this.#tell(before, timeS);
  }

  cut(piece: Piece, untilTauS: number): number {
    const forces = this.#forces;
    this.#setGravity(piece.gravity);
    if (this.#landing.rested && this.#stillForS === untilTauS - piece.startTauS) return this.#stand(piece, untilTauS);
    for (let changes = 0; ; changes++) {
      this.#weigh();
      const endTauS = this.#stepEnd(piece, untilTauS);
      const h = endTauS - piece.startTauS;
      this.#move(forces, this.#step, this.#now.numbers, h, this.#next.numbers, this.#now.rates);
      const first =
        changes < MOST_CHANGES
          ? this.#contact.first(this.#now.numbers, this.#next.numbers, h)
          : Number.POSITIVE_INFINITY;
      if (first <= TOGETHER * h) {
        this.#change(piece.tickStartS + piece.startTauS);
        continue;
      }
      const whole = first >= h * (1 - TOGETHER);
      if (!whole) this.#move(forces, this.#step, this.#now.numbers, first, this.#next.numbers, this.#now.rates);
      const cutTauS = whole ? endTauS : piece.startTauS + first;
      piece.durationS = whole ? h : first;
      this.#note(piece);
      const before = this.#now;
      this.#now = this.#next;
      this.#next = before;
      const timeS = piece.tickStartS + cutTauS;
      if (this.#landing.restDueS <= timeS + NEAR * h) this.#rest(timeS);
      if (first !== Number.POSITIVE_INFINITY) this.#change(timeS);
      return cutTauS;
    }
  }

  /** Makes a step of which it is known that it ends where it began. */
  #stand(piece: Piece, untilTauS: number): number {
    piece.durationS = untilTauS - piece.startTauS;
    this.#keep(piece, true);
    return untilTauS;
  }

  #setGravity(gravity: number): void {
    if (gravity === this.#forces.gravity) return;
    this.#forces.gravity = gravity;
    this.#unsettle();
  }

  /** The forces at the moment reached have changed. */
  #unsettle(): void {
    this.#weighed = false;
    this.#stillForS = Number.NaN;
  }

  /** Works out what is felt at the moment reached. */
  #weigh(): void {
    if (!this.#weighed) this.#feel(this.#forces, this.#now);
    this.#weighed = true;
  }

  /** End of the next step by the clock, the resolution and the waiting for rest. */
  #stepEnd(piece: Piece, untilTauS: number): number {
    const state = this.#now.numbers;
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

  /** From `start` over h [s]; `startRates`: the rates of the start, if they are known. */
  #move(
    forces: Forces,
    step: GroupStep,
    start: Float64Array,
    h: number,
    out: Float64Array,
    startRates?: Float64Array,
  ): void {
    if (h === 0) {
      out.set(start);
      return;
    }
    if (fallsPlainly(forces, start)) {
      this.#body.fall(start, h, forces.gravity, out);
      for (let i = W; i < STATE; i++) out[i] = start[i]!;
      return;
    }
    const bristles = forces.hasFriction;
    step.run(forces, start, h, bristles, startRates);
    this.#body.advance(start, h, step, out);
    step.finishRest(start, h, bristles, out);
  }

  /** Writes the rates of a moment's state and what is felt in it. */
  #feel(forces: Forces, moment: Moment): void {
    if (fallsPlainly(forces, moment.numbers)) {
      for (let i = STATE; i < MOMENT; i++) moment.numbers[i] = 0;
      moment.acceleration[1] = -forces.gravity;
      return;
    }
    forces.rates(moment.numbers, 0, moment.rates);
    forces.bodyRates(moment.angularVelocity, moment.angularAcceleration);
    forces.bodyForce(moment.specificForce);
    for (let i = 0; i < 3; i++) moment.acceleration[i] = moment.rates[ACCELERATION + i]!;
  }

  /** Keeps in the piece what is needed to look at it later, and adds it to the landing. */
  #note(piece: Piece): void {
    const forces = this.#forces;
    const now = this.#now;
    const next = this.#next;
    const middle = this.#middle;
    this.#feel(forces, next);
    const plain = fallsPlainly(forces, now.numbers);
    const still = this.#landing.rested && next.standsAt(now);
    if (still) next.numbers.set(now.numbers);
    this.#stillForS = still ? piece.durationS : Number.NaN;
    const memory = this.#keep(piece, plain || still);
    if (!piece.steady) {
      this.#step.middle(now.numbers, next.numbers, next.rates, piece.durationS, forces.hasFriction, middle.numbers);
      this.#feel(forces, middle);
      memory.set(next.numbers, END);
      memory.set(middle.numbers, MIDDLE);
    }
    if (forces.pressed === 0 || this.#landing.rested) return;
    this.#judge(now, 0);
    this.#judge(piece.steady ? now : middle, 1);
    const unrest = this.#judge(next, 2);
    this.#landing.add(piece.tickStartS + piece.startTauS, piece.durationS, this.#felt, this.#net, this.#depth, unrest);
  }

  /** Keeps the start of a piece in its memory, which it returns. */
  #keep(piece: Piece, steady: boolean): Float64Array {
    const memory = piece.room(MEMORY);
    piece.pad = this.#forces.pad;
    piece.steady = steady;
    memory.set(this.#now.numbers, START);
    memory[PRESSED] = this.#forces.pressed;
    return memory;
  }

  /** Notes what is felt at a moment under `slot`; returns how far from rest it is (1 at the limit). */
  #judge(moment: Moment, slot: number): number {
    const { numbers, specificForce, angularVelocity, angularAcceleration, acceleration } = moment;
    this.#felt[slot] = norm(specificForce);
    this.#net[slot] = acceleration[1]!;
    this.#depth[slot] = -this.#lowest(numbers);
    const vx = numbers[V]!;
    const vy = numbers[V + 1]!;
    const vz = numbers[V + 2]!;
    const rim = this.#radius;
    return Math.max(
      (Math.sqrt(vx * vx + vy * vy + vz * vz) + rim * norm(angularVelocity)) / RESTING_SPEED_MS,
      (norm(acceleration) + rim * norm(angularAcceleration)) / RESTING_ACCELERATION_MS2,
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
    const state = this.#now.numbers;
    for (let i = 0; i < CORNERS; i++) {
      if (((changed >> i) & 1) === 0) continue;
      state[EXTRA + 2 * i] = 0;
      state[EXTRA + 2 * i + 1] = 0;
    }
    this.#unsettle();
  }

  /** Tells of a first touch or a last lift-off. */
  #tell(pressedBefore: number, timeS: number): void {
    const pressed = this.#forces.pressed;
    const verticalSpeedMS = this.#now.numbers[V + 1]!;
    if (pressedBefore === 0 && pressed !== 0) {
      this.#events.push({ kind: 'touch', timeS, verticalSpeedMS, fallS: timeS - this.#flightSinceS });
      this.#weigh();
      this.#landing.begin(timeS, this.#judge(this.#now, 0));
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

  at(piece: Piece, tauS: number, out: Kinematics, path: boolean): void {
    const { memory } = piece;
    const since = tauS - piece.startTauS;
    const share = since / piece.durationS;
    const stands = piece.steady && memory[PRESSED] !== 0;
    if (since === 0 || stands) read(memory, START, path, out);
    else if (!piece.steady && Math.abs(share - 1) < SAME_INSTANT) read(memory, END, path, out);
    // For what is felt only: its place is interpolated, and would not lie on the path of the places stepped to beside it.
    else if (!piece.steady && !path && Math.abs(share - 0.5) < SAME_INSTANT) read(memory, MIDDLE, path, out);
    else this.#lookInto(piece, since, out);
  }

  /** Makes the step from the start of the piece anew, but to where it is looked at. */
  #lookInto(piece: Piece, since: number, out: Kinematics): void {
    const look = this.#look;
    const seen = this.#seen;
    look.gravity = piece.gravity;
    look.pad = piece.pad;
    look.pressed = piece.memory[PRESSED]!;
    for (let i = 0; i < STATE; i++) seen.numbers[i] = piece.memory[START + i]!;
    this.#move(look, this.#trial, seen.numbers, since, seen.numbers);
    this.#feel(look, seen);
    read(seen.numbers, 0, true, out);
  }

  present(_timeS: number, gravity: number, out: Kinematics): void {
    this.#setGravity(gravity);
    this.#weigh();
    read(this.#now.numbers, 0, true, out);
  }

  save(): LawSave {
    const numbers = [
      ...this.#now.numbers.subarray(0, STATE),
      this.#forces.pressed,
      this.#contact.below,
      this.#flightSinceS,
      ...this.#landing.save(),
    ];
    return { numbers, pad: this.#forces.pad, targets: [] };
  }

  restore(saved: LawSave): void {
    const { numbers } = saved;
    this.#now.numbers.set(numbers.slice(0, STATE));
    this.#unsettle();
    this.#forces.pressed = numbers[STATE]!;
    this.#contact.below = numbers[STATE + 1]!;
    this.#flightSinceS = numbers[STATE + 2]!;
    this.#landing.restore(numbers.slice(STATE + 3));
    this.#forces.pad = saved.pad;
  }
}

/** Nothing but gravity acts and nothing turns: what is felt is nothing. */
function fallsPlainly(forces: Forces, state: Float64Array): boolean {
  return forces.falls && state[W] === 0 && state[W + 1] === 0 && state[W + 2] === 0;
}

/** Reads a moment whose numbers stand from `at`; `path` false: all but place and velocity. */
function read(numbers: Float64Array, at: number, path: boolean, out: Kinematics): void {
  for (let i = 0; i < 3; i++) {
    out.specificForce[i] = numbers[at + SPECIFIC_FORCE + i]!;
    out.angularVelocity[i] = numbers[at + ANGULAR_VELOCITY + i]!;
    out.angularAcceleration[i] = numbers[at + ANGULAR_ACCELERATION + i]!;
    out.acceleration[i] = numbers[at + FELT.ACCELERATION + i]!;
  }
  for (let i = 0; i < 4; i++) out.attitude[i] = numbers[at + Q + i]!;
  out.uniform = false;
  if (!path) return;
  for (let i = 0; i < 3; i++) {
    out.position[i] = numbers[at + X + i]!;
    out.velocity[i] = numbers[at + V + i]!;
  }
}
