import { createRequire } from 'node:module';

/** odex 2 ships no declarations and its sources do not pass our compiler settings; this is the part that is used. */
interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  denseOutput: boolean;
  maxSteps: number;
  solve(
    rates: (t: number, state: number[]) => number[],
    from: number,
    start: readonly number[],
    to: number,
    onStep?: unknown,
  ): { readonly y: number[] };
  grid(every: number, out: (t: number, state: number[]) => void): unknown;
}

const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => Solver };

/** States at the given instants (rising, the first that of `start`), by odex to 1e-13 of `scale`. */
export function solve(
  rates: (t: number, state: number[]) => number[],
  start: readonly number[],
  instants: readonly number[],
  scale: number,
): number[][] {
  const solver = new Solver(start.length);
  solver.relativeTolerance = 1e-13;
  solver.absoluteTolerance = 1e-13 * scale;
  solver.maxSteps = 1e6;
  const states = [[...start]];
  for (let k = 1; k < instants.length; k += 1)
    states.push(solver.solve(rates, instants[k - 1]!, states[k - 1]!, instants[k]!).y);
  return states;
}
