/** The proof mass as a body: from material and size, or by its mass. */
import type { DesignFault, ProofMassSpec } from '../contract/design.ts';
import { pow } from '../numerics/transcendental.ts';
import { materialOf } from './materials.ts';

export interface Body {
  /** [kg] */
  readonly mass: number;
  /** [m³]; undefined: a point, of which only the mass is known. */
  readonly volume: number | undefined;
  /** Extents along the arm, across it and in the sensing direction [m]. */
  readonly size: readonly [number, number, number];
  /** Moment of inertia about its centre, about the edge across arm and sensing direction [kg·m²]. */
  readonly turning: number;
}

/**
 * Solid and uniform: block m(a² + h²)/12, ball (2/5)mr². A mass of a material without a size is a cube; without a
 * material it is a point. Faults: too little said, or the same thing said twice.
 */
export function bodyOf(spec: ProofMassSpec): Body | DesignFault {
  const { mass, material, size, diameter } = spec;
  const fault = (found: string, allowed: string): DesignFault => ({ path: 'proofMass', found, allowed });
  if (size && diameter !== undefined) return fault('size and diameter', 'a size (block) or a diameter (ball)');
  const sized = size !== undefined || diameter !== undefined;
  if (mass !== undefined && material !== undefined && sized)
    return fault('mass, material and dimensions', 'two of mass, material and size or diameter: they give the third');
  const density = material === undefined ? undefined : materialOf(material).density;
  if (diameter !== undefined) {
    const volume = (Math.PI / 6) * diameter * diameter * diameter;
    const kg = mass ?? (density === undefined ? undefined : density * volume);
    if (kg === undefined) return fault('a diameter alone', 'a mass or a material beside it');
    return { mass: kg, volume, size: [diameter, diameter, diameter], turning: 0.1 * kg * diameter * diameter };
  }
  if (size) {
    const volume = size[0] * size[1] * size[2];
    const kg = mass ?? (density === undefined ? undefined : density * volume);
    if (kg === undefined) return fault('a size alone', 'a mass or a material beside it');
    return block(kg, volume, size);
  }
  if (mass === undefined) return fault('no mass', 'a mass in kg, or a material with a size or diameter');
  if (density === undefined) return { mass, volume: undefined, size: [0, 0, 0], turning: 0 };
  const volume = mass / density;
  const edge = pow(volume, 1 / 3);
  return block(mass, volume, [edge, edge, edge]);
}

function block(mass: number, volume: number, size: readonly [number, number, number]): Body {
  return { mass, volume, size, turning: (mass * (size[0] * size[0] + size[2] * size[2])) / 12 };
}
