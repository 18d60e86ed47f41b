/**
 * Static start under a constant specific force f: springs, mount and stop in balance.
 *
 * A static acceleration N given to the mass at the pick-off deflects it by C·N, so x = −S·f + C·(ω⊥² − κx²)x: a cubic
 * in x. Beyond the gap the stop gives the N that is missing there. The mount carries both masses: y = −(1 + µ)f/ω_m².
 */
import { risingCubicRoot } from '../numerics/root.ts';
import type { Mechanics } from './mechanics.ts';

/** Writes the settled state and returns the side of the stop that the mass rests on, 0: none. */
export function settle(mechanics: Mechanics, f: number, spinSquared: number, state: Float64Array): -1 | 0 | 1 {
  const { compliance, loadCompliance, cubic, gapM } = mechanics;
  const stiffness = 1 - loadCompliance * spinSquared;
  if (!(stiffness > 0))
    throw new RangeError(`to settle, ω⊥² must be below ${1 / loadCompliance} 1/s², got ${spinSquared} 1/s²`);
  const x = risingCubicRoot(stiffness, loadCompliance * cubic, -compliance * f);
  const side = Math.abs(x) > gapM ? (x > 0 ? 1 : -1) : 0;
  holdAt(mechanics, f, side === 0 ? x : side * gapM, 0, state);
  return side;
}

/**
 * Writes the state in which the pick-off is drawn to x [m] against the springs under f and let go with ẋ [m/s], the
 * modes moving in the proportions in which they are drawn; the mount as settled.
 */
export function holdAt(mechanics: Mechanics, f: number, x: number, velocity: number, state: Float64Array): void {
  const { single, omega, participation, compliance, load, loadCompliance, mount, size } = mechanics;
  const pull = (x + compliance * f) / loadCompliance;
  for (let n = 0; n < omega.length; n += 1) {
    state[2 * n] = load[n]! * pull - (participation[n]! * f) / (omega[n]! * omega[n]!);
    state[2 * n + 1] = (load[n]! * velocity) / loadCompliance;
  }
  if (single) state[0] = x; // without the rounding on the way through the pull
  if (mount) {
    state[size - 2] = (-(1 + mount.massRatio) * f) / (mount.omega * mount.omega);
    state[size - 1] = 0;
  }
}
