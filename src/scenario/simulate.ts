/** A run from its first row to its last, without a screen or a clock. */
import type { RunSpec } from '../contract/run.ts';
import { World } from '../world/world.ts';
import type { Fault } from './fault.ts';
import { parseScenario, type ScenarioFiles } from './parse-scenario.ts';

export interface SimulationSinks {
  /** Row k stands at k/rate; the array is used again for the next row. */
  row?(row: number, values: Float64Array): void;
  /** A read-out sample at its own instant [s], value [g_n]; in the order of time, then of the elements. */
  sample?(element: number, timeS: number, valueG: number): void;
}

/** Duration·rate just under a whole number through rounding still counts as that number [–]. */
const ROUNDING = 1 + 1e-12;

/** Rows of a run: k = 0 … ⌊duration·rate·(1 + 1e-12)⌋. */
export function rowCount({ duration, record }: RunSpec): number {
  return Math.floor(duration * record.rate * ROUNDING) + 1;
}

/** Runs to the end; pauses after every tick, so that the caller can pass on what has come. Returns the hash of all rows. */
export function* simulation(run: RunSpec, sinks: SimulationSinks): Generator<void, string, void> {
  const samples: { element: number; timeS: number; valueG: number }[] = [];
  const lastSampleS = run.duration * ROUNDING;
  const world = new World(run, {
    row: (row, values) => sinks.row?.(row, values),
    sample(element, timeS, valueG) {
      if (timeS <= lastSampleS) samples.push({ element, timeS, valueG });
    },
  });
  const rows = rowCount(run);
  while (world.rowCount < rows || world.timeS <= run.duration) {
    world.step();
    // Elements are read out one after another; within the tick their instants interleave.
    samples.sort((a, b) => a.timeS - b.timeS || a.element - b.element);
    for (const { element, timeS, valueG } of samples) sinks.sample?.(element, timeS, valueG);
    samples.length = 0;
    yield;
  }
  return world.hash;
}

export function simulate(run: RunSpec, sinks: SimulationSinks): void {
  for (const _tick of simulation(run, sinks));
}

/** Reads and runs a scenario. Its faults if it has any: then nothing has run. */
export function runScenario(text: string, files: ScenarioFiles, sinks: SimulationSinks): readonly Fault[] {
  const { run, faults } = parseScenario(text, files);
  if (run === undefined) return faults;
  simulate(run, sinks);
  return [];
}
