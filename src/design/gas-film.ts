/**
 * Gas squeezed between a plate and a wall. Edges W ≤ L, height h, squeeze number σ = 12µωW²/(ph²); r = W/L:
 *     c = (64σpWL/π⁶hω) Σ (m² + r²n²)/((mn)²[(m² + r²n²)² + σ²/π⁴])     m, n odd
 *     k = (64σ²pWL/π⁸h) Σ 1/((mn)²[(m² + r²n²)² + σ²/π⁴])
 * J. J. Blech, J. Lubrication Technology 105 (1983) 615–620 (from memory), with the viscosity of the rarefied gas.
 * Slow, it is c = βµW³L/h³ (M. Bao, H. Yang, Sensors and Actuators A 136 (2007) 3–27); quick, the gas has no time to leave and
 * is a spring pWL/h. For small swings about the unloaded height, of a plate that stays parallel, without holes.
 */
import type { GasFilmSpec } from '../contract/design.ts';
import { type Damper, NO_DAMPER } from './damper.ts';
import { airViscosity, meanFreePath, rarefiedViscosity } from './gases.ts';

const PI4 = Math.PI * Math.PI * Math.PI * Math.PI;

/** [–]; Infinity in a perfect vacuum. */
export function knudsenNumber({ pressure, gap }: GasFilmSpec, temperatureK: number): number {
  return meanFreePath(temperatureK, pressure) / gap;
}

/** In a vacuum (pressure 0) there is nothing to squeeze. */
export function gasFilm(spec: GasFilmSpec, temperatureK: number): Damper {
  if (spec.pressure === 0) return NO_DAMPER;
  return squeezed(spec, rarefiedViscosity(airViscosity(temperatureK), knudsenNumber(spec, temperatureK)));
}

/** The film of a gas of a given viscosity [Pa·s]. */
export function squeezed({ plate, gap, count, pressure }: GasFilmSpec, viscosity: number): Damper {
  const width = Math.min(...plate);
  const ratio = width / Math.max(...plate);
  const sigmaPerOmega = (12 * viscosity * width * width) / (pressure * gap * gap);
  const force = (64 * pressure * plate[0] * plate[1] * count) / (PI4 * Math.PI * Math.PI * gap);
  return {
    damping: (omega) => force * sigmaPerOmega * blechSums(sigmaPerOmega * omega, ratio).damping,
    addedMass: () => 0,
    spring(omega) {
      const sigma = sigmaPerOmega * omega;
      return (force * sigma * sigma * blechSums(sigma, ratio).spring) / (Math.PI * Math.PI);
    },
  };
}

/** Terms reach beyond where σ bends them, at √σ/π; those left out are below 1e-5 of the sum. */
const LEAST_TERMS = 99;
const MOST_TERMS = 599;

function blechSums(sigma: number, ratio: number): { readonly damping: number; readonly spring: number } {
  const most = Math.min(MOST_TERMS, LEAST_TERMS + 8 * Math.ceil(Math.sqrt(sigma)));
  // Along the longer edge (r small) more terms count.
  const mostLong = Math.min(MOST_TERMS, Math.ceil(most / Math.max(ratio, 0.1)));
  const bend = (sigma * sigma) / PI4;
  let damping = 0;
  let spring = 0;
  for (let m = 1; m <= most; m += 2) {
    for (let n = 1; n <= mostLong; n += 2) {
      const sum = m * m + ratio * ratio * n * n;
      const term = 1 / (m * m * n * n * (sum * sum + bend));
      damping += sum * term;
      spring += term;
    }
  }
  return { damping, spring };
}
