/**
 * Finds when a free arc first meets a stop, and misses none. From where the mass is, a bound A of its acceleration
 * over the next horizon H tells how long it cannot reach a stop: until |v|t + At²/2 uses up the room. It is taken
 * that far, looked at anew, and so on. Near a touch at speed the steps close in on it quadratically; a mass at rest
 * beside the stop has A = 0, so one look clears the whole arc. A bound J of the change of ẍ helps a mass pulled off.
 *
 * Bound for the single mode, from p = −Γf − (ω² − ω⊥²)x − κx³: damping cannot speed the mass up, so its speed toward
 * a stop grows by p at most. As long as |x| ≤ gap, |p| changes by at most K|v| + F′ a second,
 * K = ω² + 3κ·gap² + ω⊥², hence |v| ≤ V = (|v₀| + H(|p₀| + H·F′))/(1 − KH²) and |p| ≤ A = |p₀| + H(K·V + F′).
 */
import { exp } from '../numerics/transcendental.ts';
import { FORCE, FREE, LAW, SPIN, STATE } from './arcs.ts';
import { forceAt, type Propagator, slopeAt } from './propagator.ts';

/** A room below this share of the gap is a touch [–]: the rounding of x. */
export const TOUCH_SHARE = 8 * Number.EPSILON;

/** How far ahead the bounds look, as a share of the time 1/ω of the stiffest part [–]; K·H² stays below a quarter. */
const HORIZON = 0.5;

export class TouchSearch {
  readonly #propagator: Propagator;
  readonly #state: Float64Array;
  readonly #rates: Float64Array;
  readonly #least: Float64Array;
  readonly #weights: Float64Array;
  readonly #grown: Float64Array;
  readonly #stiffest: number;
  /** ẍ where the search stands, and over the horizon A [m/s²] and J [m/s³]. */
  #acceleration = 0;
  #most = 0;
  #jerk = 0;

  constructor(propagator: Propagator) {
    this.#propagator = propagator;
    const { size, omega, cubic, gapM, single, rate } = propagator.mechanics;
    this.#state = new Float64Array(size);
    this.#rates = new Float64Array(size);
    this.#least = new Float64Array(size);
    this.#weights = new Float64Array(size);
    this.#grown = new Float64Array(size);
    // Without stops nothing is searched.
    const stiffening = gapM === Infinity ? 0 : Math.sqrt(3 * cubic) * gapM;
    this.#stiffest = (single ? omega[0]! : rate) + stiffening;
  }

  /**
   * Time from the start of the arc to its first touch within `lengthS` [s], −1: none. At its start the arc may stand
   * at a stop: `parting` says that it has just been let go there, else it touches unless it moves off.
   */
  first(data: Float64Array, at: number, lengthS: number, parting: boolean): number {
    const propagator = this.#propagator;
    const { gapM, single, omega, zeta, mount } = propagator.mechanics;
    const state = this.#state;
    const drag = single ? 2 * zeta[0]! * omega[0]! : 0;
    if (data[at + LAW]! === FREE && !mount && this.#clears(data, at, lengthS)) return -1;
    let elapsed = 0;
    let letGo = parting;
    for (;;) {
      propagator.reach(data, at, elapsed, state);
      propagator.observe(data, at, elapsed, state);
      const x = propagator.deflection;
      const side = x < 0 ? -1 : 1;
      const outward = side * propagator.velocity;
      const room = gapM - side * x;
      const touches = room <= TOUCH_SHARE * gapM;
      const remaining = lengthS - elapsed;
      // The last bit of room by Newton, so that a touch is as often early as late.
      if (touches && outward >= 0 && !letGo)
        return outward > 0 && outward * remaining > room ? elapsed + Math.max(0, room) / outward : elapsed;
      const horizon = Math.min(remaining, this.#horizon(data, at, elapsed, remaining));
      this.#bound(data, at, elapsed, horizon);
      const pull = side * this.#acceleration;
      let near: number;
      if (!touches) near = timeToCross(room, outward, this.#most);
      else {
        // It cannot turn back before its inward speed is used up, nor go beyond rounding in the least time.
        const turning = outward < 0 ? outward / (drag * outward - this.#most) : 0;
        near = Math.max(turning, Math.sqrt((2 * TOUCH_SHARE * gapM) / this.#most));
      }
      // Nor, moving inward and pulled inward, before the pull has turned: then it is x − x₀ ≤ at²/2 + Jt³/6 < 0.
      if (outward <= 0 && pull < 0) near = Math.max(near, (-3 * pull) / this.#jerk);
      const far = timeToCross(gapM + side * x, -outward, this.#most);
      const step = Math.min(near, far, horizon);
      letGo = false;
      if (!(step < remaining)) return -1;
      if (elapsed + step === elapsed) return elapsed;
      elapsed += step;
    }
  }

  /** How far ahead the bounds look [s]: short enough that they stay near what they bound. */
  #horizon(data: Float64Array, at: number, elapsed: number, remaining: number): number {
    if (data[at + LAW]! === FREE) return HORIZON / this.#stiffest;
    const softening =
      Math.abs(forceAt(data, at + SPIN, elapsed)) + remaining * largestSlope(data, at + SPIN, elapsed, remaining);
    return HORIZON / (this.#stiffest + Math.sqrt(softening));
  }

  /** A quick look at a whole linear arc without a mount: true if it cannot reach a stop. Most arcs end here. */
  #clears(data: Float64Array, at: number, lengthS: number): boolean {
    const { single, omega } = this.#propagator.mechanics;
    return single && omega[0]! * lengthS <= HORIZON
      ? this.#staysNear(data, at, lengthS)
      : this.#swingsInside(data, at, lengthS);
  }

  /** The bound above over a short arc of the single mode, with a constant spring. */
  #staysNear(data: Float64Array, at: number, lengthS: number): boolean {
    const { omega, participation, gapM } = this.#propagator.mechanics;
    const x = data[at + STATE]!;
    const v = Math.abs(data[at + STATE + 1]!);
    const w2 = omega[0]! * omega[0]!;
    const rate = Math.abs(participation[0]!) * largestSlope(data, at + FORCE, 0, lengthS);
    const p = Math.abs(participation[0]! * data[at + FORCE]! + w2 * x);
    const fastest = (v + lengthS * (p + lengthS * rate)) / (1 - w2 * lengthS * lengthS);
    return (v + (lengthS / 2) * (p + lengthS * (w2 * fastest + rate))) * lengthS < gapM - Math.abs(x);
  }

  /**
   * By the energy: with u = q − q_e from where the first force would hold a mode, its W = √(u̇² + ω²u²) grows by
   * |Γ(f − f₀)| at most, and |q| ≤ |q_e| + W/ω.
   */
  #swingsInside(data: Float64Array, at: number, lengthS: number): boolean {
    const { omega, participation, shape, deflectionInput, gapM } = this.#propagator.mechanics;
    const f = data[at + FORCE]!;
    const change = lengthS * (Math.abs(data[at + FORCE + 1]!) + (lengthS / 2) * Math.abs(data[at + FORCE + 2]!));
    let reach = Math.abs(deflectionInput) * (Math.abs(f) + change);
    for (let n = 0; n < omega.length; n += 1) {
      const w = omega[n]!;
      const balance = (-participation[n]! * f) / (w * w);
      const u = w * (data[at + STATE + 2 * n]! - balance);
      const v = data[at + STATE + 2 * n + 1]!;
      const most = Math.sqrt(u * u + v * v) + Math.abs(participation[n]!) * change * lengthS;
      reach += Math.abs(shape[n]!) * (Math.abs(balance) + most / w);
    }
    return reach < gapM;
  }

  /** Works out ẍ, and over the horizon A and the bound J of the change of ẍ a second. */
  #bound(data: Float64Array, at: number, elapsed: number, horizon: number): void {
    const { gapM, single, cubic } = this.#propagator.mechanics;
    const slope = largestSlope(data, at + FORCE, elapsed, horizon);
    let softening = 0;
    let softeningRate = 0;
    if (data[at + LAW]! !== FREE) {
      softeningRate = largestSlope(data, at + SPIN, elapsed, horizon);
      softening = Math.abs(forceAt(data, at + SPIN, elapsed)) + softeningRate * horizon;
    }
    const stiffening = 3 * cubic * gapM * gapM + softening;
    this.#acceleration = this.#propagator.freeRates(data, at, elapsed, this.#state, this.#rates);
    if (single) this.#boundSingle(horizon, stiffening, slope, softeningRate * gapM);
    else this.#boundCoupled(data, at, horizon, stiffening, slope, softeningRate * gapM);
  }

  #boundSingle(horizon: number, stiffening: number, slope: number, pullRate: number): void {
    const { omega, zeta, participation } = this.#propagator.mechanics;
    const drag = 2 * zeta[0]! * omega[0]!;
    const v = this.#state[1]!;
    const p = Math.abs(this.#acceleration + drag * v);
    const stiffness = omega[0]! * omega[0]! + stiffening;
    const rate = Math.abs(participation[0]!) * slope + pullRate;
    const fastest = (Math.abs(v) + horizon * (p + horizon * rate)) / (1 - stiffness * horizon * horizon);
    this.#most = p + horizon * (stiffness * fastest + rate);
    this.#jerk = stiffness * fastest + rate + drag * (this.#most + drag * fastest);
  }

  /**
   * For several coordinates, over the horizon H: |z′| is below any Y with Y ≥ |z′(0)| + ∫(M·Y + g), M the sizes of A and of
   * the stiffening, g what the changing forces add. With weights σ = |z′(0)| + H·g + H·M·σ (six rounds, as many as the
   * coordinates pass a change on) and m = max (Mσ)_i/σ_i, Y = e^{mH}·σ is one (the quotients as in L. Collatz, Math. Z. 48
   * (1942) 221–226, from memory); |z″| ≤ M·Y + g. A and J are their sums along ẋ.
   */
  #boundCoupled(
    data: Float64Array,
    at: number,
    horizon: number,
    stiffening: number,
    slope: number,
    pullRate: number,
  ): void {
    const { size, b, spring, velocityRow, velocityInput, deflectionInput } = this.#propagator.mechanics;
    const least = this.#least;
    const weights = this.#weights;
    const grown = this.#grown;
    const inputPull = pullRate + stiffening * Math.abs(deflectionInput) * slope;
    for (let i = 0; i < size; i += 1)
      least[i] = Math.abs(this.#rates[i]!) + horizon * (Math.abs(b[i]!) * slope + Math.abs(spring[i]!) * inputPull);
    weights.set(least);
    for (let round = 0; round < 6; round += 1) {
      this.#grow(stiffening, weights, grown);
      for (let i = 0; i < size; i += 1) weights[i] = least[i]! + horizon * grown[i]!;
    }
    this.#grow(stiffening, weights, grown);
    let quotient = 0;
    for (let i = 0; i < size; i += 1) if (grown[i]! > 0) quotient = Math.max(quotient, grown[i]! / weights[i]!);
    const factor = exp(quotient * horizon);
    const bend = Math.abs(data[at + FORCE + 2]!);
    this.#most = Math.abs(velocityInput) * slope + Math.abs(deflectionInput) * bend;
    this.#jerk = Math.abs(velocityInput) * bend;
    for (let i = 0; i < size; i += 1) {
      const row = Math.abs(velocityRow[i]!);
      this.#most += row * factor * weights[i]!;
      this.#jerk += row * (factor * grown[i]! + Math.abs(b[i]!) * slope + Math.abs(spring[i]!) * inputPull);
    }
  }

  /** out = M·y */
  #grow(stiffening: number, y: Float64Array, out: Float64Array): void {
    const { size, a, spring, deflectionRow } = this.#propagator.mechanics;
    let stiff = 0;
    for (let i = 0; i < size; i += 1) stiff += Math.abs(deflectionRow[i]!) * y[i]!;
    stiff *= stiffening;
    for (let i = 0; i < size; i += 1) {
      let sum = Math.abs(spring[i]!) * stiff;
      for (let k = 0; k < size; k += 1) sum += Math.abs(a[i * size + k]!) * y[k]!;
      out[i] = sum;
    }
  }
}

/** Shortest time in which `room` > 0 can be used up at speed v toward the stop and acceleration at most `most`. */
function timeToCross(room: number, v: number, most: number): number {
  const speed = Math.max(v, 0);
  return (2 * room) / (speed + Math.sqrt(speed * speed + 2 * most * room));
}

/** Largest |slope| of a parabola over [elapsed, elapsed + horizon]. */
function largestSlope(data: Float64Array, at: number, elapsed: number, horizon: number): number {
  return Math.max(Math.abs(slopeAt(data, at, elapsed)), Math.abs(slopeAt(data, at, elapsed + horizon)));
}
