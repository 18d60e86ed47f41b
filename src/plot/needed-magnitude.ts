import { G_N } from '../units/standard-gravity.ts';
import { magnitudeKept, SLACK } from './auto-range.ts';
import type { LineLayer } from './line-layer.ts';
import type { PaperView } from './paper-view.ts';
import { traceExtent } from './trace.ts';

/** Stops within this are kept in sight, and with them a scale that does not change [m/s²]: rest at 1 g is then still an eighth. */
const STOPS_IN_SIGHT_MS2 = 8 * G_N;
/** Least range asked for: rest at 1 g and a ringing about it [m/s²]. */
const LEAST_MS2 = 1.5 * G_N;
/** Share of the paper's width on which the ink may leave the paper [–]: a landing seen from afar. */
const SPARE = 0.04;
/** Never more than this share of the ink that there is [–]: a young line is not spared away. */
const SPARE_OF_INK = 0.1;
/** Least range for a marked span [m/s²]: 0.1 mg. */
const LEAST_MARKED_MS2 = 1e-4 * G_N;

const extent = new Float64Array(2);
let scratch = new Float64Array(0);

export interface Needed {
  readonly magnitudeMS2: number;
  readonly mayGrowToMS2: number;
}

/**
 * The magnitude that the pen's scale must hold: of every line within the marked span if one is on the paper;
 * else of the ink (what the mass did; without it what happened), but for short excursions, with 1 g and near stops.
 * `columns`: pixel columns across the paper.
 */
export function neededMagnitude(view: PaperView, layers: readonly LineLayer[], columns: number): Needed {
  const ofMark = markedMagnitude(view, layers);
  if (ofMark !== undefined) return { magnitudeMS2: ofMark, mayGrowToMS2: ofMark };
  const { stopMS2 } = view;
  const least = stopMS2 !== undefined && stopMS2 <= STOPS_IN_SIGHT_MS2 ? Math.max(LEAST_MS2, stopMS2) : LEAST_MS2;
  const ink = layers.find(({ line }) => line.kind === 'mass') ?? layers.find(({ onPenScale }) => onPenScale);
  if (ink === undefined) return { magnitudeMS2: least, mayGrowToMS2: least };
  const kept = inkMagnitude(view, ink, columns);
  return {
    magnitudeMS2: Math.max(least, kept),
    mayGrowToMS2: Math.max(least, Math.min(kept * SLACK, stopMS2 ?? Infinity)), // a mass does not pass its stops
  };
}

function markedMagnitude(view: PaperView, layers: readonly LineLayer[]): number | undefined {
  const { marked } = view;
  if (marked === undefined) return undefined;
  let most = -1;
  for (const layer of layers) {
    if (!layer.onPenScale || !traceExtent(layer.trace, marked.fromS, marked.toS, extent)) continue;
    most = Math.max(most, Math.abs(extent[0]!), Math.abs(extent[1]!));
  }
  return most < 0 ? undefined : Math.max(most, LEAST_MARKED_MS2);
}

function inkMagnitude(view: PaperView, { trace }: LineLayer, columns: number): number {
  if (scratch.length < trace.count) scratch = new Float64Array(trace.count + 256);
  // Columns have two vertices each, rows one for many columns.
  const acrossPaper =
    trace.pairCount > 0 ? 2 * columns : (columns * trace.count) / inkColumns(view, trace.timeS, trace.count, columns);
  const spare = Math.floor(Math.min(SPARE * acrossPaper, SPARE_OF_INK * trace.count));
  return magnitudeKept(trace.value, trace.count, spare, scratch);
}

/** Pixel columns that a trace covers. */
function inkColumns(view: PaperView, timeS: Float64Array, count: number, columns: number): number {
  if (count < 2) return columns;
  return Math.max(1, ((timeS[count - 1]! - timeS[0]!) / view.spanS) * columns);
}
