/** Reads the CSV behind a `recorded` motion: a header, then rows; RFC 4180 quoting, lines starting with # skipped. */
import type { RecordedData } from '../contract/motion.ts';
import { G_N } from '../units/standard-gravity.ts';
import { pathTo, quoted, type Report } from './fault.ts';

export interface RecordedRequest {
  readonly file: string;
  readonly time: string;
  readonly columns: readonly string[];
  readonly unit: 'm/s2' | 'g' | 'mg';
}

/** Largest file read [characters] and largest value taken for an acceleration [m/s²]. */
const LONGEST_FILE = 100e6;
const LARGEST_VALUE = 1e6;

/** Fewest rows: a straight line needs two ends. */
const FEWEST_ROWS = 2;

const DECIMAL = /^[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?$/;

/** The record in m/s² with times from 0, or undefined after the first fault in the file was reported. */
export function readRecordedFile(
  text: string,
  request: RecordedRequest,
  path: string,
  report: Report,
): RecordedData | undefined {
  try {
    return read(text, request, path);
  } catch (error) {
    if (!(error instanceof Unfit)) throw error;
    report(error.path, error.found, error.allowed);
    return undefined;
  }
}

/** One fault is enough: in a file of a million rows, one wrong column makes a million. */
class Unfit extends Error {
  readonly path: string;
  readonly found: string;
  readonly allowed: string;

  constructor(path: string, found: string, allowed: string) {
    super(found);
    this.path = path;
    this.found = found;
    this.allowed = allowed;
  }
}

function read(text: string, request: RecordedRequest, path: string): RecordedData {
  const filePath = pathTo(path, 'file');
  const file = quoted(request.file);
  if (text.length > LONGEST_FILE)
    throw new Unfit(filePath, `${file} with ${text.length} characters`, `at most ${LONGEST_FILE} characters`);
  const lines = new Lines(text);
  const header = lines.next()?.map((name) => name.trim());
  if (header === undefined)
    throw new Unfit(filePath, `no header in ${file}`, 'a line with the names of the columns, then rows');
  const timeColumn = columnOf(request.time, header, pathTo(path, 'time'), file);
  const valueColumns = request.columns.map((name, i) =>
    columnOf(name, header, pathTo(pathTo(path, 'columns'), i), file),
  );

  const times: number[] = [];
  const values: number[][] = valueColumns.map(() => []);
  const [scale, divisor] = request.unit === 'm/s2' ? [1, 1] : [G_N, request.unit === 'g' ? 1 : 1000];
  let first = 0;
  for (let fields = lines.next(); fields !== undefined; fields = lines.next()) {
    const place = `in line ${lines.line} of ${file}`;
    if (fields.length !== header.length) {
      throw new Unfit(filePath, `${counted(fields.length, 'field')} ${place}`, `${header.length}, as in the header`);
    }
    const time = numberIn(fields, timeColumn, request.time, place, pathTo(path, 'time'));
    if (times.length === 0) first = time;
    const since = time - first;
    const latest = times.at(-1);
    if (latest !== undefined && since <= latest) {
      throw new Unfit(
        pathTo(path, 'time'),
        `${quoted((fields[timeColumn] ?? '').trim())} ${place}`,
        'times that rise from row to row',
      );
    }
    times.push(since);
    for (const [i, column] of valueColumns.entries()) {
      const name = request.columns[i] ?? '';
      const value = (numberIn(fields, column, name, place, pathTo(pathTo(path, 'columns'), i)) * scale) / divisor;
      if (Math.abs(value) > LARGEST_VALUE) {
        throw new Unfit(
          pathTo(pathTo(path, 'columns'), i),
          `${value} m/s² ${place}`,
          `from -${LARGEST_VALUE} to ${LARGEST_VALUE} m/s²`,
        );
      }
      values[i]?.push(value);
    }
  }
  if (times.length < FEWEST_ROWS) {
    throw new Unfit(
      filePath,
      `${counted(times.length, 'row')} in ${file}`,
      `at least ${FEWEST_ROWS} rows below the header`,
    );
  }
  return { timeS: Float64Array.from(times), valuesMS2: values.map((column) => Float64Array.from(column)) };
}

function columnOf(name: string, header: readonly string[], path: string, file: string): number {
  const at = header.indexOf(name.trim());
  if (at < 0) throw new Unfit(path, `no column ${quoted(name)} in ${file}`, namesOf(header));
  if (header.indexOf(name.trim(), at + 1) >= 0)
    throw new Unfit(path, `the column ${quoted(name)} twice in ${file}`, 'a name that stands once in the header');
  return at;
}

function namesOf(header: readonly string[]): string {
  const shown = header.slice(0, 20).map((name) => quoted(name));
  return (header.length > shown.length ? [...shown, '…'] : shown).join(' or ');
}

function numberIn(fields: readonly string[], column: number, name: string, place: string, path: string): number {
  const field = (fields[column] ?? '').trim();
  const value = DECIMAL.test(field) ? Number(field) : Number.NaN;
  if (!Number.isFinite(value)) throw new Unfit(path, `${quoted(field)} in column ${quoted(name)} ${place}`, 'a number');
  return value;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** The records of a CSV one after another, without blank lines and comments. */
class Lines {
  readonly #text: string;
  #at: number;
  #nextLine = 1;
  #line = 0;

  constructor(text: string) {
    this.#text = text;
    this.#at = text.startsWith('\ufeff') ? 1 : 0;
  }

  /** The line in which the latest record began, from 1. */
  get line(): number {
    return this.#line;
  }

  next(): string[] | undefined {
    while (this.#at < this.#text.length) {
      this.#line = this.#nextLine;
      const start = this.#at;
      const end = this.#endOfLine(start);
      const line = this.#text.slice(start, end);
      if (line.trim() === '' || line.startsWith('#')) {
        this.#pass(end);
        continue;
      }
      if (!line.includes('"')) {
        this.#pass(end);
        return line.split(',');
      }
      return this.#quotedRecord();
    }
    return undefined;
  }

  #endOfLine(from: number): number {
    let end = this.#text.indexOf('\n', from);
    if (end < 0) end = this.#text.length;
    return end > from && this.#text[end - 1] === '\r' ? end - 1 : end;
  }

  /** Goes on after the line break at `end`, if there is one. */
  #pass(end: number): void {
    this.#at = this.#text[end] === '\r' ? end + 2 : end + 1;
    this.#nextLine += 1;
  }

  /** A record with fields in double quotes; "" inside them is one quote, and they may hold commas and line breaks. */
  #quotedRecord(): string[] {
    const fields: string[] = [];
    let end = this.#endOfLine(this.#at);
    for (;;) {
      let field = '';
      if (this.#text[this.#at] === '"') field = this.#quotedField();
      if (this.#at > end) end = this.#endOfLine(this.#at); // a line break stood inside the quotes
      const comma = this.#text.slice(this.#at, end).indexOf(',');
      if (comma < 0) {
        fields.push(field + this.#text.slice(this.#at, end));
        this.#pass(end);
        return fields;
      }
      fields.push(field + this.#text.slice(this.#at, this.#at + comma));
      this.#at += comma + 1;
    }
  }

  #quotedField(): string {
    let field = '';
    for (;;) {
      const from = this.#at + 1;
      const quote = this.#text.indexOf('"', from);
      const until = quote < 0 ? this.#text.length : quote;
      field += this.#text.slice(from, until);
      this.#at = Math.min(until + 1, this.#text.length);
      if (this.#text[this.#at] !== '"') break;
      field += '"';
    }
    this.#nextLine += field.split('\n').length - 1;
    return field;
  }
}
