/**
 * A displacement along an axis (or an angle about one) as a law of time, zero with zero rate at its start, with
 * its analytic derivatives.
 */
export interface ScalarLaw {
  /** Written by `at`: [m], [m/s], [m/s²] or [rad], [rad/s], [rad/s²]. */
  value: number;
  rate: number;
  acceleration: number;
  /** From here on the acceleration stays, bit for bit, and of an angle the value too [s]; Infinity: never. */
  readonly steadyAfterS: number;
  /** The first knot later than `afterS`: an instant at which some derivative jumps [s]; Infinity: none. */
  nextKnotS(afterS: number): number;
  /**
   * Evaluates at `timeS` [s] from the start. `sideS` lies in the same smooth piece, so that at a knot it tells which side
   * is meant. With `path` false only the acceleration need be right.
   */
  at(timeS: number, sideS: number, path: boolean): void;
}

/** The first of the sorted knots later than `afterS`; Infinity: none. */
export function firstKnotAfter(knotsS: readonly number[], afterS: number): number {
  for (const knotS of knotsS) if (knotS > afterS) return knotS;
  return Number.POSITIVE_INFINITY;
}
