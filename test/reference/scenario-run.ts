/** Runs scenarios as they would stand in a file, through the same door as `npm run simulate`. */

import type { RunSpec } from '../../src/contract/run.ts';
import type { Snapshot } from '../../src/contract/snapshot.ts';
import { rowWriter } from '../../src/scenario/csv.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { simulate } from '../../src/scenario/simulate.ts';
import { World } from '../../src/world/world.ts';

export const STANDARD_GRAVITY = 9.80665;

/** Divides no reference vector's spacing, so that its instants and the hand-overs fall inside ticks. */
export const TICK_S = 1 / 7300;

/** Three unequal sides: nothing is hidden by symmetry. */
export const BOX = { mass: 0.5, size: [0.12, 0.06, 0.2] } as const;

/** Texts of recorded files by the names that the scenario uses. */
export type Files = Readonly<Record<string, string>>;

/** The run a scenario stands for; its faults are thrown. */
export function runOf(scenario: object, files: Files = {}): RunSpec {
  const readFile = (path: string): string => {
    const text = files[path];
    if (text === undefined) throw new Error(`no file ${path} among ${Object.keys(files).join(', ')}`);
    return text;
  };
  const { run, faults } = parseScenario(JSON.stringify(scenario), { readFile });
  if (run === undefined)
    throw new Error(faults.map(({ path, found, allowed }) => `${path}: ${found}; ${allowed}`).join('\n'));
  return run;
}

export interface Rows {
  readonly count: number;
  /** All values of a column by the name that heads it in the CSV. */
  column(name: string): Float64Array;
}

/** All rows of a scenario. */
export function rowsOf(scenario: object, files: Files = {}): Rows {
  const run = runOf(scenario, files);
  const names = rowWriter(run).header.trim().split(',');
  const rows: Float64Array[] = [];
  simulate(run, { row: (_, values) => rows.push(values.slice()) });
  return {
    count: rows.length,
    column(name) {
      const index = names.indexOf(name);
      if (index < 0) throw new Error(`no column ${name} among ${names.join(', ')}`);
      return Float64Array.from(rows, (row) => row[index]!);
    },
  };
}

/** Runs a scenario and looks at it at rising instants [s], between rows and inside ticks; returns the world at its end. */
export function lookAt(
  scenario: object,
  instantsS: Iterable<number>,
  look: (snapshot: Snapshot, index: number) => void,
  files: Files = {},
): World {
  const world = new World(runOf(scenario, files));
  let index = 0;
  for (const timeS of instantsS) {
    world.runTo(timeS);
    look(world.stateAt(timeS), index);
    index += 1;
  }
  return world;
}

/** A scenario with uneven numbers wherever a test does not say otherwise. */
export function scenario(parts: {
  readonly duration: number;
  readonly elements: readonly object[];
  readonly motions: readonly object[];
  readonly [key: string]: unknown;
}): object {
  return { tick: TICK_S, record: { rate: 997 }, housing: BOX, ...parts };
}

/** Largest |found − expected| as a share of the largest |expected|. */
export function worstShare(found: ArrayLike<number>, expected: ArrayLike<number>): number {
  if (found.length !== expected.length) throw new RangeError(`${found.length} values against ${expected.length}`);
  let worst = 0;
  let largest = 0;
  for (let i = 0; i < expected.length; i += 1) {
    worst = Math.max(worst, Math.abs(found[i]! - expected[i]!));
    largest = Math.max(largest, Math.abs(expected[i]!));
  }
  // A NaN must not pass for a small number.
  return Number.isNaN(worst + largest) ? Number.POSITIVE_INFINITY : worst / largest;
}

/**
 * Largest |x| of a line given by its values and slopes at equal distances: the highest point of the cubic through each
 * pair of neighbours (error of fourth order in the distance, x⁗d⁴/384).
 */
export function highestPoint(x: ArrayLike<number>, slope: ArrayLike<number>, distance: number): number {
  let highest = Math.abs(x[0]!);
  for (let i = 1; i < x.length; i += 1) {
    const y0 = x[i - 1]!;
    const y1 = x[i]!;
    const m0 = slope[i - 1]! * distance;
    const m1 = slope[i]! * distance;
    highest = Math.max(highest, Math.abs(y1));
    if (m0 * m1 >= 0) continue;
    // y = y₀ + m₀u + cu² + du³, y′ = 0
    const c = 3 * (y1 - y0) - 2 * m0 - m1;
    const d = m0 + m1 - 2 * (y1 - y0);
    const root = Math.sqrt(c * c - 3 * d * m0);
    for (const u of [-m0 / (c + root), -m0 / (c - root)])
      if (u > 0 && u < 1) highest = Math.max(highest, Math.abs(y0 + u * (m0 + u * (c + u * d))));
  }
  return highest;
}
