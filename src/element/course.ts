/**
 * The course of the proof mass through a tick, piece by piece: free arcs, touches of the stops, rest on them.
 *
 * A touch turns the speed v⁻ into v⁺ = −e·v⁻ by an impulse at the pick-off, which the modes and the mount share by
 * their inertia. Where the rebound is slower than the resting speed and the force presses on, the mass rests until
 * the force points off the stop. Nothing here adds energy: an impulse with e ≤ 1 takes some or none, a stop that
 * holds does no work.
 */
import { bracketedRoot, firstFall } from '../numerics/root.ts';
import { stepFactor } from '../numerics/runge-kutta.ts';
import { exp, pow } from '../numerics/transcendental.ts';
import { type Arcs, FORCE, FREE, FREE_NONLINEAR, HELD, LAW, SIDE, SPIN, START, STATE, STILL } from './arcs.ts';
import type { Mechanics } from './mechanics.ts';
import { forceAt, Propagator, slopeAt } from './propagator.ts';
import { TOUCH_SHARE, TouchSearch } from './touch-search.ts';

/** The proof mass met a stop. */
export interface StopHit {
  /** Instant in the tick [s]. */
  readonly tauS: number;
  readonly side: 1 | -1;
  /** Speed into the stop [m/s]. */
  readonly speedMS: number;
  /** It stays on the stop. */
  readonly rests: boolean;
}

/**
 * Most touches followed one by one in a tick. Beyond, the mass is carried along the stop while its hops change speed
 * by their mean law: under a push p a hop at v takes 2v/p and keeps e·(v − (2/3)·2ζω·v²/p), and v³/p stays as p changes
 * slowly (the action of a hop), so v′ = v·p′/(3p) − (1 − e)p/2 − 2ζω·v/3. Hops so many are no higher than p·(tick/256)²/8.
 */
const MOST_TOUCHES = 256;

/** A force on a stop within this share of its parts is none [–]: their rounding. */
const FORCE_ROUNDING = 8 * Number.EPSILON;

/** What happens behind a held pick-off is looked at after this share of 1/rate [–]: no turn of its pressure is missed. */
const HELD_STEP_SHARE = 0.25;

export class Course {
  readonly hits: StopHit[] = [];
  /** Rests on the stop at +gap (1), at −gap (−1) or on none (0). */
  side: -1 | 0 | 1 = 0;
  readonly #arcs: Arcs;
  readonly #tickS: number;
  #propagator: Propagator;
  #search: TouchSearch;
  #state: Float64Array;
  #other: Float64Array;
  /** The forces of the piece as an arc has them, from its start; and how far into it the course is [s]. */
  readonly #piece = new Float64Array(STATE);
  #reached = 0;
  #pieceStart = 0;
  #spins = false;
  #nonlinear = false;
  #touches = 0;
  /** Just let go from a stop: standing there is no touch. */
  #parting = false;
  /** Speed of the hops with which the mass is carried along a stop [m/s]; 0: it rests there, or is not there. */
  #hop = 0;
  /** Runge–Kutta step to try next [s]. */
  #step = 0;

  constructor(mechanics: Mechanics, tickS: number, arcs: Arcs) {
    this.#arcs = arcs;
    this.#tickS = tickS;
    this.#propagator = new Propagator(mechanics, tickS);
    this.#search = new TouchSearch(this.#propagator);
    this.#state = new Float64Array(mechanics.size);
    this.#other = new Float64Array(mechanics.size);
  }

  get mechanics(): Mechanics {
    return this.#propagator.mechanics;
  }

  /** z, see mechanics.ts; the caller may set it between pieces. */
  get state(): Float64Array {
    return this.#state;
  }

  /** Instant reached in the tick [s]. */
  get reachedTauS(): number {
    return this.#pieceStart + this.#reached;
  }

  /** Specific force at the instant reached [m/s²] and its slope [m/s³]. */
  get force(): number {
    return forceAt(this.#piece, FORCE, this.#reached);
  }

  get forceSlope(): number {
    return slopeAt(this.#piece, FORCE, this.#reached);
  }

  /** Sets what is felt at the instant reached. */
  feel(force: number, slope: number): void {
    this.#piece.fill(0);
    this.#spins = false;
    this.#piece[FORCE] = force;
    this.#piece[FORCE + 1] = slope;
    this.#reached = 0;
  }

  /** Goes on under other mechanics from `state`, which has their form. */
  take(mechanics: Mechanics, state: Float64Array): void {
    this.#propagator = new Propagator(mechanics, this.#tickS);
    this.#search = new TouchSearch(this.#propagator);
    this.#state = state;
    this.#other = new Float64Array(mechanics.size);
  }

  beginTick(): void {
    this.#arcs.clear();
    if (this.hits.length > 0) this.hits.length = 0;
    this.#touches = 0;
  }

  /** Runs a piece: the forces are parabolas through their values at its start, middle and end. */
  advance(
    startTauS: number,
    durationS: number,
    f0: number,
    fMid: number,
    f1: number,
    w0: number,
    wMid: number,
    w1: number,
  ): void {
    this.#pieceStart = startTauS;
    this.#reached = 0;
    writeParabola(this.#piece, FORCE, durationS, f0, fMid, f1);
    const { cubic, single, gapM } = this.mechanics;
    const spins = w0 !== 0 || wMid !== 0 || w1 !== 0;
    if (spins || this.#spins) writeParabola(this.#piece, SPIN, durationS, w0, wMid, w1);
    this.#spins = spins;
    this.#nonlinear = spins || cubic !== 0;
    this.#step = durationS;
    if (gapM === Infinity && !this.#nonlinear) {
      // Nothing can happen on the way: one arc.
      const at = this.#begin(FREE, 0);
      this.#propagator.reach(this.#arcs.data, at, durationS, this.#other);
      this.#swap();
      this.#reached = durationS;
      return;
    }
    while (this.#reached < durationS) {
      if (this.side === 0) this.#fly(durationS);
      else if (single) this.#restStill(durationS);
      else this.#restHeld(durationS);
    }
    if (this.#hop > 0) this.#hopOff();
  }

  /** Works out x and ẋ at the instant reached; they stand in the propagator. */
  observe(): Propagator {
    this.#propagator.observe(this.#piece, 0, this.#reached, this.#state);
    return this.#propagator;
  }

  /** Keeps deflection and velocity after a change; a mass beyond its stops rests on the nearer one. */
  keep(deflection: number, velocity: number): void {
    const { gapM } = this.mechanics;
    if (Math.abs(deflection) < gapM) this.side = 0;
    else if (this.side === 0 && Math.abs(deflection) > gapM) this.side = deflection > 0 ? 1 : -1;
    this.#moveTo(this.side === 0 ? deflection : this.side * gapM);
    this.#kickTo(this.side === 0 ? velocity : 0);
  }

  /** Puts a pick-off that is beyond a stop back to it. */
  putBetweenStops(): void {
    const { gapM } = this.mechanics;
    const { deflection } = this.observe();
    if (Math.abs(deflection) > gapM) this.#moveTo(Math.sign(deflection) * gapM);
  }

  /** One free arc: to a touch, to the end of the piece, or of a Runge–Kutta step. */
  #fly(durationS: number): void {
    const law = this.#nonlinear ? FREE_NONLINEAR : FREE;
    const at = this.#begin(law, 0);
    const { data } = this.#arcs;
    const remaining = durationS - this.#reached;
    const length = law === FREE ? remaining : this.#tryStep(at, remaining);
    const touch = this.mechanics.gapM === Infinity ? -1 : this.#search.first(data, at, length, this.#parting);
    this.#parting = false;
    if (touch < 0) {
      if (law === FREE) this.#propagator.reach(data, at, length, this.#other);
      this.#swap();
      this.#pass(length, remaining, durationS);
      return;
    }
    this.#propagator.reach(data, at, touch, this.#other);
    this.#swap();
    this.#reached += touch;
    if (touch === 0) this.#arcs.pop();
    this.#meetStop();
  }

  #meetStop(): void {
    const { gapM, restitution, restingSpeed } = this.mechanics;
    const { deflection, velocity } = this.observe();
    const side = deflection > 0 ? 1 : -1;
    const speedMS = Math.max(0, side * velocity);
    const rebound = restitution * speedMS;
    this.#holdTo(side);
    const pressure = this.#pressure(side);
    // A hop lower than the rounding of x is none.
    const slow = rebound < restingSpeed || rebound * rebound < 2 * pressure * TOUCH_SHARE * gapM;
    const rests = pressure >= 0 && slow;
    if (speedMS > 0) this.hits.push({ tauS: this.reachedTauS, side, speedMS, rests });
    this.#touches += 1;
    if (rests || (pressure > 0 && this.#touches >= MOST_TOUCHES)) {
      this.side = side;
      this.#hop = rests ? 0 : rebound;
    } else {
      this.#kickTo(-side * rebound);
      this.#parting = slow; // less than the modes' rounding, it would meet the stop again where it stands
    }
  }

  /** Rest of the single mode: x and ẋ stay, so the pressure is a parabola and its end has a formula. */
  #restStill(durationS: number): void {
    this.#begin(STILL, this.side);
    const { participation, gapM } = this.mechanics;
    const remaining = durationS - this.#reached;
    const pull = -this.side * participation[0]!;
    const pressure = this.#pressure(this.side);
    const slope = pull * this.forceSlope + gapM * slopeAt(this.#piece, SPIN, this.#reached);
    const curvature = pull * this.#piece[FORCE + 2]! + gapM * this.#piece[SPIN + 2]!;
    const fall = firstFall(pressure, slope, curvature / 2, remaining);
    const length = fall < 0 ? remaining : fall;
    const after = Math.max(0, pressure + length * (slope + (length / 2) * curvature));
    this.#slowHops(pressure, after, pressure + (length / 2) * (slope + (length / 3) * curvature), length);
    if (fall < 0) this.#reached = durationS;
    else this.#letGo(fall);
  }

  /** Rest of a pick-off behind which other modes or a mount move on. */
  #restHeld(durationS: number): void {
    const side = this.side;
    this.#holdTo(side); // against rounding, and what the modes left out do where the force bends
    const before = this.#pressure(side);
    const at = this.#begin(HELD, side);
    if (before < 0) {
      this.#letGo(0);
      return;
    }
    const remaining = durationS - this.#reached;
    const length = Math.min(remaining, HELD_STEP_SHARE / this.mechanics.heldRate);
    const from = this.#reached;
    const pressureAfter = (elapsed: number): number => {
      this.#propagator.reach(this.#arcs.data, at, elapsed, this.#state);
      this.#reached = from + elapsed;
      return this.#pressure(side);
    };
    const after = pressureAfter(length);
    const fall = after < 0 ? bracketedRoot(pressureAfter, 0, length) : length;
    if (after < 0) pressureAfter(fall);
    const pushes = Math.max(after, 0);
    this.#slowHops(before, pushes, (before + pushes) / 2, fall);
    this.#reached = from;
    if (after < 0) this.#letGo(fall);
    else this.#pass(length, remaining, durationS);
  }

  #holdTo(side: number): void {
    this.#moveTo(side * this.mechanics.gapM);
    this.#kickTo(0);
  }

  #letGo(afterS: number): void {
    if (afterS === 0) this.#arcs.pop();
    this.#reached += afterS;
    if (this.#hop > 0) this.#hopOff();
    else {
      this.side = 0;
      this.#parting = true;
    }
  }

  #hopOff(): void {
    this.#kickTo(-this.side * this.#hop);
    this.side = 0;
    this.#hop = 0;
  }

  /** What a time leaves of the hops, from the push before, after and in the mean. */
  #slowHops(before: number, after: number, mean: number, lengthS: number): void {
    if (this.#hop === 0) return;
    const { single, omega, zeta, restitution } = this.mechanics;
    const drag = single ? 2 * zeta[0]! * omega[0]! : 0;
    const kept = this.#hop * pow(after / before, 1 / 3) * exp((-drag * lengthS) / 3);
    const lost = ((1 - restitution) * lengthS * mean * pow(after / mean, 1 / 3)) / 2;
    this.#hop = Math.max(0, kept - lost);
  }

  /**
   * Acceleration toward a stop that the stop holds off [m/s²], for ẋ = 0 at it; below 0 the force points off. The
   * rounding of the forces counts as pressing.
   */
  #pressure(side: 1 | -1 | 0): number {
    const { single, omega, rate, gapM, participation, cubic } = this.mechanics;
    const f = this.force;
    if (single) {
      const spring = omega[0]! * omega[0]! + cubic * gapM * gapM;
      const felt = participation[0]! * f;
      const softening = forceAt(this.#piece, SPIN, this.#reached);
      const rounding = FORCE_ROUNDING * (Math.abs(felt) + (spring + Math.abs(softening)) * gapM);
      return (softening - spring) * gapM - side * felt + rounding;
    }
    const free = this.#propagator.freeRates(this.#piece, 0, this.#reached, this.#state, this.#other);
    return side * free + FORCE_ROUNDING * (Math.abs(f) + (rate * rate + cubic * gapM * gapM) * gapM);
  }

  /** Opens an arc at the instant reached. */
  #begin(law: number, side: -1 | 0 | 1): number {
    const at = this.#arcs.push(this.#propagator);
    const { data } = this.#arcs;
    const piece = this.#piece;
    const elapsed = this.#reached;
    const state = this.#state;
    data[at + START] = this.#pieceStart + elapsed;
    data[at + LAW] = law;
    data[at + SIDE] = side;
    if (elapsed === 0) for (let i = FORCE; i < LAW; i += 1) data[at + i] = piece[i]!;
    else {
      for (let i = FORCE; i < LAW; i += 3) {
        data[at + i] = forceAt(piece, i, elapsed);
        data[at + i + 1] = slopeAt(piece, i, elapsed);
        data[at + i + 2] = piece[i + 2]!;
      }
    }
    for (let i = 0; i < state.length; i += 1) data[at + STATE + i] = state[i]!;
    return at;
  }

  /** The longest step up to `lengthS` within the tolerance; the state after it stands in #other. */
  #tryStep(at: number, lengthS: number): number {
    let step = Math.min(this.#step, lengthS);
    for (;;) {
      const share = this.#propagator.tryStep(this.#arcs.data, at, step, this.#other);
      if (share <= 1) {
        this.#step = step * stepFactor(share);
        return step;
      }
      // NaN after an overflow: a spring softened through zero, and no stops.
      if (!(share > 1)) throw new RangeError(`the deflection has grown without bound under ${this.force} m/s²`);
      step *= stepFactor(share);
    }
  }

  /** Moves on by a length of what remains of the piece. */
  #pass(length: number, remaining: number, durationS: number): void {
    this.#reached = length === remaining ? durationS : this.#reached + length;
  }

  #swap(): void {
    const state = this.#state;
    this.#state = this.#other;
    this.#other = state;
  }

  /** Moves the pick-off to x [m], the coordinates in the ratio in which a stop would push them. */
  #moveTo(x: number): void {
    const { push, single } = this.mechanics;
    if (single) {
      this.#state[0] = x;
      return;
    }
    const by = x - this.observe().deflection;
    for (let i = 0; i < push.length; i += 1) this.#state[i]! += by * push[i]!;
  }

  /** Gives the pick-off the velocity v [m/s] by an impulse. */
  #kickTo(v: number): void {
    const { kick, single } = this.mechanics;
    if (single) {
      this.#state[1] = v;
      return;
    }
    const by = v - this.observe().velocity;
    for (let i = 0; i < kick.length; i += 1) this.#state[i]! += by * kick[i]!;
  }
}

/** Value, slope and curvature at the start of the parabola through three values, equally spaced over a duration. */
function writeParabola(
  out: Float64Array,
  at: number,
  durationS: number,
  start: number,
  middle: number,
  end: number,
): void {
  const perSecond = 1 / durationS;
  out[at] = start;
  out[at + 1] = (4 * (middle - start) - (end - start)) * perSecond;
  out[at + 2] = 4 * (start - middle + (end - middle)) * perSecond * perSecond;
}
