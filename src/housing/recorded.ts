/**
 * Recorded: the acceleration of the housing in the room, straight lines between samples, or the specific force as
 * felt, the housing then staying where it is drawn. Velocity and displacement are the exact integrals
 * of the straight lines. The velocity taken over is kept under a recorded acceleration and braked under a recorded
 * specific force; turning is braked under both.
 */
import type { RecordedData, RecordedMotion } from '../contract/motion.ts';
import { rotateBack } from '../numerics/quaternion.ts';
import { scale } from '../numerics/vector.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import type { HandOver } from './law.ts';
import { type Along, type Felt, Prescribed, unit } from './prescribed.ts';
import type { ScalarLaw } from './scalar-law.ts';

const ROOM_AXES = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

/** Number of the last sample at or before `timeS`; −1 before the first. */
function sampleBefore(samplesS: Float64Array, timeS: number): number {
  let low = -1;
  let high = samplesS.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (samplesS[middle]! <= timeS) low = middle;
    else high = middle;
  }
  return low;
}

function nextSampleS(samplesS: Float64Array, afterS: number): number {
  const next = sampleBefore(samplesS, afterS) + 1;
  return next < samplesS.length ? samplesS[next]! : Number.POSITIVE_INFINITY;
}

/** A recorded acceleration with its exact integrals; zero after the last sample. */
export class RecordedAcceleration implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS: number;
  readonly #timeS: Float64Array;
  readonly #values: Float64Array;
  /** Velocity and displacement at the samples. */
  readonly #velocity: Float64Array;
  readonly #displacement: Float64Array;

  constructor(timeS: Float64Array, valuesMS2: Float64Array) {
    this.#timeS = timeS;
    this.#values = valuesMS2;
    this.steadyAfterS = timeS[timeS.length - 1]!;
    this.#velocity = new Float64Array(timeS.length);
    this.#displacement = new Float64Array(timeS.length);
    for (let i = 1; i < timeS.length; i++) {
      this.#along(i - 1, timeS[i]!);
      this.#velocity[i] = this.rate;
      this.#displacement[i] = this.value;
    }
  }

  nextKnotS(afterS: number): number {
    return nextSampleS(this.#timeS, afterS);
  }

  at(timeS: number, sideS: number): void {
    const sample = sampleBefore(this.#timeS, sideS);
    if (sample < this.#timeS.length - 1) {
      this.#along(Math.max(sample, 0), timeS);
      return;
    }
    this.acceleration = 0;
    this.rate = this.#velocity[sample]!;
    this.value = this.#displacement[sample]! + this.rate * (timeS - this.#timeS[sample]!);
  }

  /** On the straight line that leaves a sample. */
  #along(sample: number, timeS: number): void {
    const startS = this.#timeS[sample]!;
    const a = this.#values[sample]!;
    const slope = (this.#values[sample + 1]! - a) / (this.#timeS[sample + 1]! - startS);
    const d = timeS - startS;
    this.acceleration = a + slope * d;
    this.rate = this.#velocity[sample]! + d * (a + (slope * d) / 2);
    this.value = this.#displacement[sample]! + d * (this.#velocity[sample]! + d * (a / 2 + (slope * d) / 6));
  }
}

/** A recorded specific force; the last value stays. */
class RecordedForce implements Felt {
  readonly #data: RecordedData;
  /** Room axis of a single column. */
  readonly #axis: Float64Array | null;

  constructor(data: RecordedData, axis: Float64Array | null) {
    this.#data = data;
    this.#axis = axis;
  }

  nextKnotS(afterS: number): number {
    return nextSampleS(this.#data.timeS, afterS);
  }

  at(timeS: number, sideS: number, attitude: Float64Array, out: Float64Array): void {
    const sample = Math.max(sampleBefore(this.#data.timeS, sideS), 0);
    if (this.#axis !== null) {
      rotateBack(attitude, this.#axis, out);
      scale(this.#value(0, sample, timeS), out, out);
      return;
    }
    for (let column = 0; column < 3; column++) out[column] = this.#value(column, sample, timeS);
  }

  #value(column: number, sample: number, timeS: number): number {
    const samplesS = this.#data.timeS;
    const values = this.#data.valuesMS2[column]!;
    if (sample === samplesS.length - 1) return values[sample]!;
    const startS = samplesS[sample]!;
    const slope = (values[sample + 1]! - values[sample]!) / (samplesS[sample + 1]! - startS);
    return values[sample]! + slope * (timeS - startS);
  }
}

export function recorded(motion: RecordedMotion, from: HandOver): Prescribed {
  const { data } = motion;
  const axis = motion.axis === undefined ? null : unit(motion.axis);
  if (motion.is === 'specificForce') {
    return new Prescribed('recorded', from, { brakeWithinS: BRAKE_WITHIN_S, felt: new RecordedForce(data, axis) });
  }
  const along: Along[] = data.valuesMS2.map((values, column) => ({
    axis: axis ?? ROOM_AXES[column]!,
    law: new RecordedAcceleration(data.timeS, values),
  }));
  return new Prescribed('recorded', from, { brakeWithinS: BRAKE_WITHIN_S, keepsVelocity: true, along });
}
