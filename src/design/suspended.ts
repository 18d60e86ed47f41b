/** What every suspension gives: the modes with the mass on it, and its answers to steady forces. */
import type { ArmSpec, MaterialSpec as Values } from '../contract/design.ts';

/** What hangs on a suspension. */
export interface Load {
  /** What must be accelerated: the proof mass and the liquid that moves along [kg]. */
  readonly inertia: number;
  /** What a specific force pulls on: the proof mass less the liquid that it displaces [kg]. */
  readonly weight: number;
  /** Moment of inertia about the mass's centre, across the arm and the sensing direction [kg·m²]. */
  readonly turning: number;
  /** A spring on the mass beside the suspension: that of a gas film [N/m]. */
  readonly spring: number;
}

export interface SuspendedMode {
  /** [rad/s] */
  readonly omega: number;
  /** φ at the mass; the modal mass is the load's `inertia`. */
  readonly shape: number;
  /** Γ */
  readonly participation: number;
  /** ω² rises by this times a pull of gravity along the arm, away from the clamp [1/m]. */
  readonly stretch: number;
  /** φ in equal steps from the clamp. */
  readonly drawn: readonly number[];
}

export interface Suspended {
  readonly modes: readonly SuspendedMode[];
  /** S: static deflection of the mass per unit specific force, without the load's spring [s²]. */
  readonly compliance: number;
  /** Deflection of the mass per unit force on it, likewise [m/N]. */
  readonly pointCompliance: number;
  /** Force that grows with the cube of the deflection [N/m³]. */
  readonly cubic: number;
  /** Greatest stress per unit specific force [Pa/(m/s²)]; it grows with the deflection. */
  readonly stress: number;
  /** What the stretched strip adds to it per square of the deflection [Pa/m²]. */
  readonly stretchStress: number;
  /** Stress at which it yields or breaks there [Pa]. */
  readonly strength: number;
  /** Turn of the mass per unit specific force [rad/(m/s²)]. */
  readonly turn: number;
  /** Of the suspension itself [kg]. */
  readonly ownMass: number;
  /** Static line in equal steps from the clamp, 1 at the mass. */
  readonly sag: readonly number[];
}

/** Modes kept; the rest of the static deflection becomes the element's static remainder. */
export const KEPT_MODES = 3;

const STEPS = 40;

/** A line at equal steps of 0 … 1. */
export function drawn(line: (u: number) => number): number[] {
  return Array.from({ length: STEPS + 1 }, (_, i) => line(i / STEPS));
}

export interface Strip {
  /** [m] */
  readonly length: number;
  /** Bending stiffness [N·m²]. */
  readonly ei: number;
  /** [kg/m] */
  readonly massPerLength: number;
  /** Bending stress at the face per bending moment [Pa/(N·m)]: 6/wt². */
  readonly stressPerMoment: number;
}

/**
 * A flat strip as a slender beam (Euler and Bernoulli): I = wt³/12. Neither shear nor the turning of its own
 * cross-sections is looked at: good for lengths above ten thicknesses. A strip wider than long is stiffer by up to
 * 1/(1 − ν²), which is left out too.
 */
export function stripOf(
  { length, width, thickness }: Pick<ArmSpec, 'length' | 'width' | 'thickness'>,
  { youngsModulus, density }: Values,
): Strip {
  const area = width * thickness;
  return {
    length,
    ei: (youngsModulus * area * thickness * thickness) / 12,
    massPerLength: density * area,
    stressPerMoment: 6 / (area * thickness),
  };
}
