/**
 * Gas squeezed between a plate and a wall. Edges W ≤ L, height h, squeeze number σ = 12µωW²/(ph²); r = W/L:
 *     c = (64σpWL/π⁶hω) Σ (m² + r²n²)/((mn)²[(m² + r²n²)² + σ²/π⁴])     m, n odd
 *     k = (64σ²pWL/π⁸h) Σ 1/((mn)²[(m² + r²n²)² + σ²/π⁴])
 * J. J. Blech, J. Lubrication Technology 105 (1983) 615–620 (from memory), with the viscosity of the rarefied gas.
 * Slow, it is c = βµW³L/h³ (M. Bao, H. Yang, Sensors and Actuators A 136 (2007) 3–27); quick, the gas has no time to leave and
 * is a spring pWL/h. For small swings about the unloaded height, of a plate that stays parallel, without holes.
 */
import type { GasFilmSpec } from '../contract/design.ts';
import { cos, exp, sin } from '../numerics/transcendental.ts';
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

/** Terms reach well beyond where σ bends them, at m² = σ/π²; what is left out falls with 1/m⁴ and is added as an integral. */
const LEAST_TERMS = 49;
/** Reached by σ above 1e8, far beyond what a swing can make of a film. */
const MOST_TERMS = 40_001;

/**
 * The sums over m and n. Those over n are closed: with A = m² + r²n² and b = σ/π², A/(A² + b²) and b/(A² + b²) are the parts of
 * 1/(A + ib), and Σ 1/(n²(n² + α²)) = (π²/8 − (π/4α)·tanh(πα/2))/α² over odd n, α² = (m² + ib)/r².
 */
function blechSums(sigma: number, ratio: number): { readonly damping: number; readonly spring: number } {
  const b = sigma / (Math.PI * Math.PI);
  const most = Math.min(MOST_TERMS, LEAST_TERMS + 2 * Math.ceil(4 * Math.sqrt(b)));
  let real = 0;
  let imaginary = 0;
  for (let m = 1; m <= most; m += 2) {
    const size = Math.sqrt(m * m * m * m + b * b);
    // √(m² + ib) = p + iq
    const p = Math.sqrt((size + m * m) / 2);
    const q = b / (2 * p);
    const { real: tr, imaginary: ti } = tanh((Math.PI * p) / (2 * ratio), (Math.PI * q) / (2 * ratio));
    // tanh/α with 1/α = r(p − iq)/size
    const share = (Math.PI * ratio) / (4 * size);
    const u = (Math.PI * Math.PI) / 8 - share * (tr * p + ti * q);
    const v = -share * (ti * p - tr * q);
    // (u + iv)/(m² + ib)/m²
    const scale = 1 / (m * m * size * size);
    real += scale * (u * m * m + v * b);
    imaginary += scale * (v * m * m - u * b);
  }
  // Beyond: π²/8/m⁴ each, every second m.
  real += (Math.PI * Math.PI) / (48 * (most + 1) * (most + 1) * (most + 1));
  return { damping: real, spring: b === 0 ? 0 : -imaginary / b };
}

/** tanh(x + iy), x ≥ 0. */
function tanh(x: number, y: number): { readonly real: number; readonly imaginary: number } {
  const t = exp(-2 * x);
  const below = 1 + 2 * t * cos(2 * y) + t * t;
  return { real: (1 - t * t) / below, imaginary: (2 * t * sin(2 * y)) / below };
}
