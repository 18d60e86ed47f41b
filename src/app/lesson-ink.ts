/** The pen's line over the span of a sketch: kept with the answers, since the tape does not outlive the page. */
import type { SketchAxes, SketchPoint } from '../contract/lesson.ts';
import type { TapeView } from '../contract/tape.ts';

/** So many values, evenly spaced over a sketch; null where the tape has nothing. SI. */
const VALUES = 201;
/** Digits kept: a line on a graph of 200 px shows no more. */
const DIGITS = 5;

type Values = readonly (number | null)[];

/** By step and by question. */
export type InkValues = Readonly<Record<string, Readonly<Record<string, Values>>>>;

/** The rows nearest to the instants; undefined until the tape holds the whole span. */
export function inkValues(tape: TapeView, channel: number, axes: SketchAxes, zeroS: number): Values | undefined {
  if ((zeroS + axes.toS) * tape.rateHz > tape.endRow - 1) return undefined;
  return Array.from({ length: VALUES }, (_, k) => {
    const row = Math.round((zeroS + instantOf(axes, k)) * tape.rateHz);
    return row < tape.firstRow ? null : Number(tape.value(channel, row).toPrecision(DIGITS));
  });
}

/** As a line over the sketch's own time. */
export function inkLine(values: Values, axes: SketchAxes): readonly SketchPoint[] {
  return values.map((value, k) => [instantOf(axes, k), value ?? Number.NaN]);
}

/** What was stored, as far as it can be read. */
export function readInks(stored: unknown): InkValues {
  return entries(stored, (step) => entries(step, (values) => (isInk(values) ? values : undefined)));
}

function instantOf({ fromS, toS }: SketchAxes, k: number): number {
  return fromS + ((toS - fromS) * k) / (VALUES - 1);
}

function isInk(values: unknown): values is Values {
  return (
    Array.isArray(values) &&
    values.length === VALUES &&
    values.every((value) => value === null || typeof value === 'number')
  );
}

function entries<T>(stored: unknown, read: (value: unknown) => T | undefined): Record<string, T> {
  if (typeof stored !== 'object' || stored === null) return {};
  return Object.fromEntries(
    Object.entries(stored).flatMap(([name, value]) => {
      const each = read(value);
      return each === undefined ? [] : [[name, each] as const];
    }),
  );
}
