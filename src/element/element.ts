/**
 * The proof mass on its suspension: from the specific force at its mounting point to deflection and ideal reading.
 * Sign: x″ + 2ζω₀x′ + ω₀²x = −f; at rest x = −f/ω₀², reading −x/S = +f. Everything along the input axis, x relative to
 * the housing (on a mount: to the mount).
 *
 * Exact for forces that are parabolas over a piece (mechanics.ts, propagator.ts), stops located (course.ts), the cubic
 * spring and the field at the mass by Runge–Kutta. Thermal noise is added at the end of each tick; where the spring
 * is not linear, with the covariance of the linear one.
 */
import type { ElementChange, ElementSpec } from '../contract/run.ts';
import { Arcs, SIDE } from './arcs.ts';
import { changedSpec } from './changed-spec.ts';
import { Course, type StopHit } from './course.ts';
import { type Mechanics, mechanicsOf } from './mechanics.ts';
import { holdAt, settle } from './settle.ts';
import { type NoiseContext, ThermalNoise } from './thermal-noise.ts';

export type { StopHit } from './course.ts';

export interface ElementState {
  /** [m] */
  deflection: number;
  /** [m/s] */
  velocity: number;
  /** [m/s²] */
  reading: number;
  onStop: -1 | 0 | 1;
}

export class Element {
  readonly #context: NoiseContext;
  readonly #arcs = new Arcs();
  readonly #course: Course;
  #spec: ElementSpec;
  #noise: ThermalNoise | undefined;
  /** The noise under which this tick runs, and whether it has been added. */
  #tickNoise: ThermalNoise | undefined;
  #ended = true;
  #scratch: Float64Array;

  constructor(spec: ElementSpec, context: NoiseContext) {
    this.#spec = spec;
    this.#context = context;
    const mechanics = mechanicsOf(spec);
    this.#course = new Course(mechanics, context.tickS, this.#arcs);
    this.#noise = spec.thermalNoise ? new ThermalNoise(mechanics, context) : undefined;
    this.#scratch = new Float64Array(mechanics.size);
  }

  /** The specification as changed so far. */
  get spec(): ElementSpec {
    return this.#spec;
  }

  /** Touches of the stops in this tick, in order. */
  get stopHits(): readonly StopHit[] {
    return this.#course.hits;
  }

  /**
   * The start: settled under a constant specific force f [m/s²] and a spin ω⊥² [1/s²], in thermal equilibrium about that
   * if there is noise; or as the specification says.
   */
  settle(f: number, spinSquared: number): void {
    const course = this.#course;
    const { state, mechanics } = course;
    course.feel(f, 0);
    const { start } = this.#spec;
    if (start) {
      const { gapM } = mechanics;
      const x = Math.min(Math.max(start.deflection, -gapM), gapM);
      holdAt(mechanics, f, x, start.velocity, state);
      course.side = 0;
      return;
    }
    course.side = settle(mechanics, f, spinSquared, state);
    if (this.#noise && course.side === 0) {
      this.#noise.addEquilibrium(state);
      course.putBetweenStops();
    }
  }

  /** Begins a tick: forgets the last one. */
  beginTick(tick: number): void {
    this.#course.beginTick();
    this.#tickNoise = this.#noise;
    if (this.#tickNoise) this.#tickNoise.beginTick(tick);
    this.#ended = false;
  }

  /**
   * Takes the mass over a piece of the tick from τ = `startTauS` for `durationS` > 0 [s], under a specific force
   * [m/s²] and a softening ω⊥² [1/s²] that are parabolas through start, middle and end.
   */
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
    this.#course.advance(startTauS, durationS, f0, fMid, f1, w0, wMid, w1);
  }

  /** Ends the tick: adds its thermal noise, but not to a mass that rests on a stop, and not beyond one. */
  endTick(): void {
    if (this.#tickNoise && this.#course.side === 0) {
      this.#tickNoise.addTick(this.#course.state);
      this.#course.putBetweenStops();
    }
    this.#ended = true;
  }

  /** The state at τ [s] of the tick, after a jump there. */
  at(tauS: number, out: ElementState): void {
    const course = this.#course;
    if (this.#arcs.count === 0 || (this.#ended && tauS >= course.reachedTauS)) {
      const { mechanics, side } = course;
      const { deflection, velocity } = course.observe();
      write(mechanics, deflection, velocity, side, out);
      return;
    }
    const arcs = this.#arcs;
    const index = arcs.indexAt(tauS);
    const at = arcs.at(index);
    const propagator = arcs.propagator(index);
    const elapsed = tauS - arcs.data[at]!;
    const state = this.#scratch;
    propagator.reach(arcs.data, at, elapsed, state);
    const side = arcs.data[at + SIDE] as -1 | 0 | 1;
    if (this.#tickNoise) this.#tickNoise.addAt(tauS, state);
    propagator.observe(arcs.data, at, elapsed, state);
    write(propagator.mechanics, propagator.deflection, propagator.velocity, side, out);
  }

  /** Changes settings at the instant reached; deflection and velocity stay. Outside a smaller gap it rests on the stop. */
  change(set: ElementChange): void {
    const course = this.#course;
    const before = course.mechanics;
    const { deflection, velocity } = course.observe();
    this.#spec = changedSpec(this.#spec, set);
    const mechanics = mechanicsOf(this.#spec);
    const state = new Float64Array(mechanics.size);
    // A mount that is new settles; one that was there keeps its place.
    holdAt(mechanics, course.force, deflection, velocity, state);
    const kept = mechanics.mount && before.mount ? mechanics.size : 2 * before.modes;
    state.set(course.state.subarray(0, kept));
    course.take(mechanics, state);
    course.keep(deflection, velocity);
    // Arcs run before the change may have more coordinates.
    this.#scratch = new Float64Array(Math.max(before.size, mechanics.size, this.#scratch.length));
    if (this.#noise) this.#noise = new ThermalNoise(mechanics, this.#context);
  }

  /** The state between two ticks; an element of the same specification goes on from it bit for bit. */
  save(): number[] {
    const { side, force, forceSlope, state } = this.#course;
    return [side, force, forceSlope, ...state];
  }

  restore(saved: readonly number[]): void {
    const course = this.#course;
    const [side, force, slope] = saved as readonly [-1 | 0 | 1, number, number];
    this.#arcs.clear();
    course.side = side;
    course.feel(force, slope);
    for (let i = 0; i < course.state.length; i += 1) course.state[i] = saved[3 + i]!;
  }
}

/** A resting pick-off stands still on its stop, exactly; none is beyond. */
function write(
  { gapM, readingPerMetre }: Mechanics,
  deflection: number,
  velocity: number,
  side: -1 | 0 | 1,
  out: ElementState,
): void {
  out.deflection = side === 0 ? Math.min(Math.max(deflection, -gapM), gapM) : side * gapM;
  out.velocity = side === 0 ? velocity : 0;
  out.reading = -readingPerMetre * out.deflection;
  out.onStop = side;
}
