/**
 * A conducting plate that moves across a field B: c = ασtAB², σ conductivity, t thickness, A area within the field.
 * α, at most 1, is a factor fitted to the plate at hand: the currents must find their way back outside the field.
 * H. D. Wiederick et al., Am. J. Phys. 55 (1987) 500; M. A. Heald, Am. J. Phys. 56 (1988) 521 (from memory). Holds while
 * the field gets through the plate: thickness below the skin depth √(2/µ₀σω).
 */
import type { EddyCurrentSpec } from '../contract/design.ts';
import { BY_DAMPING_ALONE, type Damper } from './damper.ts';
import { conductivityAt, materialOf } from './materials.ts';

/** Magnetic constant [N/A²] (CODATA 2018, rounded; 4π·1e-7 to 5e-10). */
const MAGNETIC_CONSTANT = 1.25663706212e-6;

export function eddyCurrents(spec: EddyCurrentSpec, temperatureK: number): Damper {
  const conductivity = conductivityAt(materialOf(spec.material), temperatureK);
  const field = fieldOf(spec);
  const damping = spec.fittedFactor * conductivity * spec.thickness * spec.area * field * field;
  return { ...BY_DAMPING_ALONE, damping: () => damping };
}

/** Given, or of two equal magnets in the middle between them [T]. */
export function fieldOf({ field, magnets, gap }: EddyCurrentSpec): number {
  if (field !== undefined) return field;
  if (magnets === undefined) return 0;
  return 2 * magnetField(magnets.remanence, magnets.diameter / 2, magnets.length, gap / 2);
}

/**
 * On the axis of a round magnet, z from its face [T]: (B_r/2)[(l + z)/√(R² + (l + z)²) − z/√(R² + z²)], magnetised evenly
 * along its axis (that of a coil of its size; any textbook of electromagnetism). Off the axis it is weaker.
 */
export function magnetField(remanence: number, radius: number, length: number, z: number): number {
  const term = (at: number): number => at / Math.sqrt(radius * radius + at * at);
  return (remanence / 2) * (term(length + z) - term(z));
}

/** Depth to which currents at ω fill the plate [m]. */
export function skinDepth({ material }: EddyCurrentSpec, temperatureK: number, omega: number): number {
  return Math.sqrt(2 / (MAGNETIC_CONSTANT * conductivityAt(materialOf(material), temperatureK) * omega));
}
