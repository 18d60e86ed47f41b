import type { ElementState } from '../element/element.ts';
import { type Kinematics, newKinematics } from '../housing/kinematics.ts';
import { specificForceAlong } from '../housing/specific-force.ts';
import { Hash64 } from '../recording/hash64.ts';
import type { World, WorldSinks } from './world.ts';

export interface RowSave {
  readonly nextRow: number;
  readonly hash: readonly number[];
}

/** More of the instant of a row; live, copy to keep. */
export interface RowMoment {
  readonly kinematics: Kinematics;
  readonly elements: readonly ElementState[];
}

/** Columns before the elements: time and the centre of mass. */
const LEADING_COLUMNS = 4;

/**
 * Writes the rows and samples that fall into a tick, in order of time. Row k stands at exactly k/rate; at
 * a jump it shows the value after. The run does not depend on it: it only looks.
 */
export class RowWriter {
  readonly #world: World;
  readonly #sinks: WorldSinks;
  readonly #values: Float64Array;
  readonly #lastRow: number;
  readonly #hash = new Hash64();
  readonly #kinematics = newKinematics();
  readonly #states: readonly ElementState[];
  readonly #moment: RowMoment;
  #nextRow = 0;

  constructor(world: World, sinks: WorldSinks) {
    this.#world = world;
    this.#sinks = sinks;
    const { elements, record, duration } = world.run;
    // The small share forgives the rounding of duration·rate just under a whole number.
    this.#lastRow = Math.floor(duration * record.rate * (1 + 1e-12));
    const columns = elements.reduce((sum, { readout }) => sum + 3 + (readout ? 2 : 0), LEADING_COLUMNS);
    this.#values = new Float64Array(columns);
    this.#states = elements.map(() => ({ deflection: 0, velocity: 0, reading: 0, onStop: 0 }));
    this.#moment = { kinematics: this.#kinematics, elements: this.#states };
  }

  get count(): number {
    return this.#nextRow;
  }

  get hash(): string {
    return this.#hash.hex;
  }

  /** Writes what falls into [startS, beforeS); `tickS` bounds the instants looked at inside the tick. */
  writeTick(startS: number, tickS: number, beforeS: number): void {
    const rate = this.#world.run.record.rate;
    while (this.#nextRow <= this.#lastRow && this.#nextRow / rate < beforeS) {
      const timeS = this.#nextRow / rate;
      // A sample at the very instant of a row belongs to it.
      this.#readOut(startS, tickS, Math.min(beforeS, timeS + tickS * 1e-9));
      this.#write(timeS, Math.min(tickS, Math.max(0, timeS - startS)));
      this.#nextRow += 1;
    }
    this.#readOut(startS, tickS, beforeS);
  }

  save(): RowSave {
    return { nextRow: this.#nextRow, hash: this.#hash.save() };
  }

  restore(save: RowSave): void {
    this.#nextRow = save.nextRow;
    this.#hash.restore(save.hash);
  }

  #write(timeS: number, tauS: number): void {
    const { elements, readouts } = this.#world;
    const values = this.#values;
    this.#world.kinematicsAt(tauS, this.#kinematics);
    const { position } = this.#kinematics;
    values[0] = timeS;
    values[1] = position[0]!;
    values[2] = position[1]!;
    values[3] = position[2]!;
    let column = LEADING_COLUMNS;
    for (let index = 0; index < elements.length; index += 1) {
      const element = elements[index]!;
      const state = this.#states[index]!;
      element.at(tauS, state);
      values[column] = specificForceAlong(this.#kinematics, element.spec.at, element.spec.axis);
      values[column + 1] = state.deflection;
      values[column + 2] = state.velocity;
      column += 3;
      const readout = readouts[index];
      if (readout) {
        values[column] = readout.latestG;
        values[column + 1] = readout.latestTimeS;
        column += 2;
      }
    }
    for (let index = 0; index < values.length; index += 1) this.#hash.addFloat64(values[index]!);
    this.#sinks.row?.(this.#nextRow, values, this.#moment);
  }

  /** Takes the samples due before an instant [s] of run time. */
  #readOut(startS: number, tickS: number, beforeS: number): void {
    const { elements, readouts } = this.#world;
    for (let index = 0; index < elements.length; index += 1) {
      const readout = readouts[index];
      if (!readout) continue;
      for (let dueS = readout.nextDueS(); dueS < beforeS; dueS = readout.nextDueS()) {
        const state = this.#states[index]!;
        elements[index]!.at(Math.min(tickS, Math.max(0, dueS - startS)), state);
        readout.take(dueS, state.reading);
        this.#sinks.sample?.(index, dueS, readout.latestG, readout.clipped(state.reading));
      }
    }
  }
}
