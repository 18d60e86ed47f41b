/** Runs a housing by itself, as the world would: motions begun at their own instants, inside ticks where they fall. */

import type { Landing, RunEvent } from '../../src/contract/event.ts';
import type { Quaternion, Vector } from '../../src/contract/geometry.ts';
import type { MotionSpec } from '../../src/contract/motion.ts';
import type { HousingSpec } from '../../src/contract/run.ts';
import { Housing } from '../../src/housing/housing.ts';
import { type Kinematics, newKinematics } from '../../src/housing/kinematics.ts';

export const STANDARD_GRAVITY = 9.80665;
/** No two sides equal, so that no term of the equations of turning vanishes by accident. */
export const BOX: HousingSpec = { mass: 0.5, size: [0.12, 0.06, 0.2] };
/** No test runs longer [s]. */
const LAST_S = 12;
/** Divides nothing evenly. */
export const TICK_S = 1 / 7300;

export interface BenchOptions {
  readonly spec?: HousingSpec;
  readonly tickS?: number;
  readonly gravity?: number;
  readonly position?: Vector;
  readonly attitude?: Quaternion;
  readonly seed?: number;
}

export class Bench {
  readonly housing: Housing;
  readonly events: RunEvent[] = [];
  readonly tickS: number;
  tick = 0;
  readonly #motions: readonly MotionSpec[];
  #begun = 0;

  constructor(motions: readonly MotionSpec[], options: BenchOptions = {}) {
    const { spec = BOX, tickS = TICK_S, gravity = STANDARD_GRAVITY, seed = 1 } = options;
    const start = { position: options.position ?? [0, 1, 0], attitude: options.attitude ?? [0, 0, 0, 1] } as const;
    this.housing = new Housing(spec, start, gravity, seed);
    this.tickS = tickS;
    this.#motions = motions;
  }

  get timeS(): number {
    return this.tick * this.tickS;
  }

  step(): void {
    if (this.timeS > LAST_S) throw new Error(`nothing waited for has come by ${LAST_S} s`);
    const startS = this.tick * this.tickS;
    const { housing } = this;
    housing.beginTick(startS, this.tickS);
    for (;;) {
      const next = this.#motions[this.#begun];
      const tau = next === undefined ? this.tickS : next.from - startS;
      if (next === undefined || tau > this.tickS * (1 - 1e-9)) break;
      if (tau > 0) housing.advance(tau);
      housing.begin(next, next.from);
      this.#begun += 1;
    }
    housing.advance(this.tickS);
    this.events.push(...housing.events);
    this.tick += 1;
  }

  /** Steps until the instant lies in the last tick done. */
  runTo(timeS: number): void {
    while (this.tick * this.tickS <= timeS) this.step();
  }

  /** At an instant of the last tick, after any jump. */
  at(timeS: number, out: Kinematics = newKinematics()): Kinematics {
    const tau = timeS - (this.tick - 1) * this.tickS;
    const { housing } = this;
    let piece = housing.pieceCount - 1;
    while (piece > 0 && housing.pieceStart(piece) > tau + 1e-15) piece -= 1;
    housing.kinematics(piece, Math.max(tau, housing.pieceStart(piece)), out);
    return out;
  }

  landings(): readonly Landing[] {
    return this.events.flatMap((event) => ('landing' in event ? [event.landing] : []));
  }

  first<K extends RunEvent['kind']>(kind: K): Extract<RunEvent, { kind: K }> {
    const found = this.events.find((event): event is Extract<RunEvent, { kind: K }> => event.kind === kind);
    if (found === undefined) throw new Error(`no event "${kind}" among ${this.events.map((e) => e.kind).join(', ')}`);
    return found;
  }
}
