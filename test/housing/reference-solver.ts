/**
 * Ordinary differential equations solved by odex, the extrapolation method of E. Hairer and G. Wanner: general, adaptive, and
 * knowing nothing of bodies or pads.
 */
import { createRequire } from 'node:module';

interface OdexSolver {
  relativeTolerance: number;
  absoluteTolerance: number;
  maxSteps: number;
  solve(
    rates: (t: number, y: readonly number[]) => number[],
    t0: number,
    y0: readonly number[],
    t1: number,
  ): { y: number[]; outcome: number };
}

// required by name: its type sources do not pass this project's compiler options
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => OdexSolver };

/** y at t1, to a relative tolerance near rounding. */
export function solve(
  rates: (t: number, y: readonly number[]) => number[],
  t0: number,
  y0: readonly number[],
  t1: number,
  tolerance = 1e-13,
): number[] {
  const solver = new Solver(y0.length);
  solver.relativeTolerance = tolerance;
  solver.absoluteTolerance = tolerance;
  solver.maxSteps = 1e6;
  const { y, outcome } = solver.solve(rates, t0, y0, t1);
  if (outcome !== 0) throw new Error(`odex did not finish: outcome ${outcome}`);
  return y;
}
