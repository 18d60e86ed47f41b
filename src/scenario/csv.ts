/** The CSV of a run: header, rows with 17 significant digits, samples. SI units, read-out values in g_n. */
import type { RunSpec } from '../contract/run.ts';

/** Enough digits to give every double back. */
const SIGNIFICANT_DIGITS = 17;

interface Column {
  readonly name: string;
  /** Empty where there is no value yet: before the first sample. */
  readonly mayBeEmpty: boolean;
}

/** The columns of a run's rows, in the order of a world's row values. */
function columnsOf(run: RunSpec): readonly Column[] {
  const always = (name: string): Column => ({ name, mayBeEmpty: false });
  const sampled = (name: string): Column => ({ name, mayBeEmpty: true });
  return [
    ...['time_s', 'px_m', 'py_m', 'pz_m'].map(always),
    ...run.elements.flatMap(({ name, readout }) => [
      ...[`${name}_specific_force_m_s2`, `${name}_deflection_m`, `${name}_velocity_m_s`].map(always),
      ...(readout ? [`${name}_reported_g`, `${name}_sample_time_s`].map(sampled) : []),
    ]),
  ];
}

export interface CsvWriter {
  /** First line, with its line break. */
  readonly header: string;
  /** A line, with its line break. Throws a RangeError when a value is not finite. */
  row(values: Float64Array): string;
}

export function rowWriter(run: RunSpec): CsvWriter {
  const columns = columnsOf(run);
  return {
    header: `${columns.map(({ name }) => name).join(',')}\n`,
    row(values) {
      let line = '';
      for (const [i, { name, mayBeEmpty }] of columns.entries()) {
        const value = values[i] ?? Number.NaN;
        if (i > 0) line += ',';
        if (Number.isFinite(value)) line += value.toPrecision(SIGNIFICANT_DIGITS);
        else if (!mayBeEmpty)
          throw new RangeError(`${name} is ${value} at ${values[0]} s: the run has left the finite numbers`);
      }
      return `${line}\n`;
    },
  };
}

export const SAMPLE_HEADER = 'element,time_s,reported_g\n';

export function sampleLine(element: string, timeS: number, valueG: number): string {
  return `${element},${timeS.toPrecision(SIGNIFICANT_DIGITS)},${valueG.toPrecision(SIGNIFICANT_DIGITS)}\n`;
}
