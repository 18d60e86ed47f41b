import type { Vector } from '../contract/geometry.ts';
import type { RunSpec } from '../contract/run.ts';
import { Samples } from '../recording/samples.ts';
import { type StoredChannel, Tape } from '../recording/tape.ts';
import { History } from '../world/history.ts';
import type { RowMoment } from '../world/row-writer.ts';
import { World, type WorldSinks } from '../world/world.ts';

/** Places of the channels on a bench's tape. */
export const CHANNEL = {
  specificForce: 0,
  deflection: 1,
  reading: 2,
  height: 3,
  velocity: 4,
  acceleration: 5,
} as const;

const CHANNELS: readonly StoredChannel[] = [
  { name: 'specificForce', unit: 'm/s2', keep: 'f64' },
  { name: 'deflection', unit: 'm', keep: 'f64' },
  { name: 'reading', unit: 'm/s2', keep: 'f32' },
  { name: 'height', unit: 'm', keep: 'f32' },
  { name: 'velocity', unit: 'm/s', keep: 'f32' },
  { name: 'acceleration', unit: 'm/s2', keep: 'f32' },
];

/** Columns of a world's row: time, x, y, z, then specific force and deflection of the first element. */
const ROW = { specificForce: 4, deflection: 5 } as const;

/** One run at the bench: its world, what leads back to any of its instants, its tape and its samples. */
export class BenchRun {
  readonly world: World;
  readonly history: History;
  readonly tape: Tape;
  readonly samples: Samples;
  /** Direction in the room of velocity and acceleration: where the element senses while the housing is level. */
  readonly #axis: Vector;
  readonly #row = new Float64Array(CHANNELS.length);
  readonly #tick = new Float64Array(CHANNELS.length);

  private constructor(make: (sinks: WorldSinks) => { world: World; history: History }, tape: Tape, samples: Samples) {
    this.tape = tape;
    this.samples = samples;
    const { world, history } = make({
      row: (_, values, moment) => this.#writeRow(values, moment),
      sample: (_, timeS, valueG, clipped) => this.samples.append(timeS, valueG, clipped),
      tickEnd: (values) => this.#noteTick(values),
    });
    this.world = world;
    this.#axis = world.run.elements[0]!.axis;
    this.history = history;
  }

  static begin(run: RunSpec): BenchRun {
    const capacity = Math.ceil(run.duration * run.record.rate) + 1;
    const readoutRate = run.elements[0]!.readout?.rate ?? run.record.rate;
    return new BenchRun(
      (sinks) => {
        const world = new World(run, sinks);
        return { world, history: new History(world) };
      },
      new Tape({ rateHz: run.record.rate, channels: CHANNELS, capacityRows: Math.min(capacity, MOST_ROWS) }),
      new Samples({
        element: run.elements[0]!.name,
        capacity: Math.min(Math.ceil(run.duration * readoutRate) + 1, MOST_ROWS),
      }),
    );
  }

  /** A run of its own that shares this one's past up to the end of the tick that holds the instant [s]. */
  goOnFrom(timeS: number): BenchRun {
    const at = this.history.goOnFrom(timeS, {});
    const untilS = at.world.timeS;
    return new BenchRun(
      (sinks) => this.history.goOnFrom(timeS, sinks),
      this.tape.forkBefore(at.world.rowCount),
      this.samples.forkBefore(untilS),
    );
  }

  /** The reading in the row at or before an instant [m/s²]. */
  readingAt(timeS: number): number {
    const { tape } = this;
    return tape.value(CHANNEL.reading, Math.min(tape.endRow - 1, Math.floor(timeS * tape.rateHz)));
  }

  /** One tick on. */
  step(): void {
    this.world.step();
    this.history.note();
  }

  #writeRow(values: Float64Array, { kinematics, elements }: RowMoment): void {
    const row = this.#row;
    row[CHANNEL.specificForce] = values[ROW.specificForce]!;
    row[CHANNEL.deflection] = values[ROW.deflection]!;
    row[CHANNEL.reading] = elements[0]!.reading;
    row[CHANNEL.height] = this.world.housing.lowest(kinematics);
    row[CHANNEL.velocity] = along(this.#axis, kinematics.velocity);
    row[CHANNEL.acceleration] = along(this.#axis, kinematics.acceleration);
    this.tape.row(row);
  }

  #noteTick(values: Float64Array): void {
    const tick = this.#tick.fill(Number.NaN);
    tick[CHANNEL.specificForce] = values[0]!;
    tick[CHANNEL.deflection] = values[1]!;
    tick[CHANNEL.reading] = values[2]!;
    this.tape.tick(tick);
  }
}

/** Component of a room vector along an axis. */
export function along(axis: Vector, vector: ArrayLike<number>): number {
  return axis[0] * vector[0]! + axis[1] * vector[1]! + axis[2] * vector[2]!;
}

/** Ten minutes at 2 kHz; faster rows keep less of the past [rows]. */
const MOST_ROWS = 1_200_000;
