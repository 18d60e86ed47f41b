/**
 * A body that swings in a liquid, amplitudes small against its size, vessel wide against it, or a vane that slides in a
 * slot. δ = √(2µ/ρω) is the depth to which the liquid is dragged along.
 */
import type { SlidingSpec } from '../contract/design.ts';
import { pow } from '../numerics/transcendental.ts';
import { beamFunctions } from './beam-functions.ts';
import type { Damper } from './damper.ts';
import type { Fluid } from './liquids.ts';

/** Reynolds number by which Oseen's correction of the steady drag, 3/16 of it, is 10 %. */
export const LINEAR_REYNOLDS = 0.53;

/**
 * A ball of radius R (another body: that of the same volume, an approximation):
 *     c = 6πµR(1 + R/δ),   m_a = ⅔πρR³ + 3πR²ρδ
 * G. G. Stokes (1851); L. D. Landau, E. M. Lifshitz, Fluid Mechanics, §24, problem 5 (from memory). Quick: half the
 * displaced mass moves along; slow: Stokes's 6πµR.
 */
export function immersed({ viscosity, density }: Fluid, volume: number): Damper {
  const radius = ballRadius(volume);
  const depth = (omega: number): number => Math.sqrt((2 * viscosity) / (density * omega));
  return {
    damping: (omega) => 6 * Math.PI * viscosity * radius * (1 + radius / depth(omega)),
    addedMass: (omega) => Math.PI * density * radius * radius * ((2 / 3) * radius + 3 * depth(omega)),
    spring: () => 0,
  };
}

export function ballRadius(volume: number): number {
  return pow((3 * volume) / (4 * Math.PI), 1 / 3);
}

/** Above this h/δ the wall is not felt: e^(−2·20). */
const NO_WALL = 20;

/**
 * Plates that slide beside walls at h, liquid or gas between (Landau and Lifshitz, §24, problem 1):
 *     c + iωm_a = (µA/δ)(1 + i) coth((1 + i)h/δ) = (µA/δ)[sinh a + sin a + i(sinh a − sin a)]/(cosh a − cos a),  a = 2h/δ
 * Slow: c = µA/h (Couette's flow), m_a = ρAh/3. The edges of the plate are left out.
 */
export function sliding({ viscosity, density }: Fluid, { area, gap, count }: SlidingSpec): Damper {
  const wall = (omega: number): { readonly drag: number; readonly inertia: number } => {
    const depth = Math.sqrt((2 * viscosity) / (density * omega));
    const scale = (viscosity * area * count) / depth;
    const a = (2 * gap) / depth;
    if (a > 2 * NO_WALL) return { drag: scale, inertia: scale };
    const { t, u, v } = beamFunctions(a);
    return { drag: (scale * t) / u, inertia: (scale * v) / u };
  };
  return {
    damping: (omega) => wall(omega).drag,
    addedMass: (omega) => wall(omega).inertia / omega,
    spring: () => 0,
  };
}
