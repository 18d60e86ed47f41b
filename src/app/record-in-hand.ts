import type { RecordedMotion } from '../contract/motion.ts';
import { readRecordedFile } from '../scenario/recorded-file.ts';
import type { RecordChoice } from '../ui/records-sheet.ts';
import { formatQuantity } from '../units/format.ts';

type Axis = RecordChoice['axis'];
const AXES: Readonly<Record<Axis, readonly [number, number, number]>> = {
  sideways: [1, 0, 0],
  'up and down': [0, 1, 0],
  'to and fro': [0, 0, 1],
};

/** Larger files are refused: the text is held in memory as a whole [bytes]. */
const LARGEST_FILE = 64e6;

/** A recorded file, what has been chosen of it, and whether it can be played so. */
export interface RecordInHand {
  readonly text: string;
  readonly choice: RecordChoice;
  readonly motion: Omit<RecordedMotion, 'from' | 'kind'> | undefined;
}

export async function takeRecord(file: File): Promise<RecordInHand> {
  const text = file.size > LARGEST_FILE ? '' : await file.text();
  const columns = headerOf(text);
  const time = columns.find((name) => /^t(ime)?(_|$)/i.test(name)) ?? columns[0] ?? '';
  const value = columns.find((name) => name !== time) ?? '';
  const unit = /_m?g$/i.test(value) ? (/_mg$/i.test(value) ? 'mg' : 'g') : 'm/s2';
  const choice: RecordChoice = {
    fileName: file.name,
    columns,
    time,
    values: [value],
    unit,
    is: 'acceleration',
    axis: 'sideways',
    summary: '',
    fault: '',
  };
  if (file.size > LARGEST_FILE)
    return refused(
      text,
      choice,
      `The file has ${Math.round(file.size / 1e6)} MB; at most ${LARGEST_FILE / 1e6} MB can be read.`,
    );
  return withChoice(text, choice);
}

/** The record with something else chosen of it. */
export function chooseOfRecord({ text, choice }: RecordInHand, name: string, value: string): RecordInHand {
  const others = choice.columns.filter((column) => column !== choice.time);
  const values = [...choice.values];
  switch (name) {
    case 'record.time':
      return withChoice(text, { ...choice, time: value });
    case 'record.value':
      values[0] = value;
      return withChoice(text, { ...choice, values });
    case 'record.valueY':
      values[1] = value;
      return withChoice(text, { ...choice, values });
    case 'record.valueZ':
      values[2] = value;
      return withChoice(text, { ...choice, values });
    case 'record.count':
      return withChoice(text, {
        ...choice,
        values: value === 'three' ? [0, 1, 2].map((k) => others[k] ?? '') : values.slice(0, 1),
      });
    case 'record.unit':
      return withChoice(text, { ...choice, unit: value as RecordChoice['unit'] });
    case 'record.is':
      return withChoice(text, { ...choice, is: value as RecordChoice['is'] });
    case 'record.axis':
      return withChoice(text, { ...choice, axis: value as Axis });
    default:
      return { text, choice, motion: undefined };
  }
}

function withChoice(text: string, choice: RecordChoice): RecordInHand {
  const faults: string[] = [];
  const data = readRecordedFile(
    text,
    { file: choice.fileName, time: choice.time, columns: choice.values, unit: choice.unit },
    choice.fileName,
    (_, found, allowed) => faults.push(`${found}; ${allowed}.`),
  );
  if (!data) return refused(text, choice, faults[0] ?? 'The file cannot be read.');
  const { timeS, valuesMS2 } = data;
  const peak = valuesMS2.reduce(
    (most, column) => column.reduce((each, value) => Math.max(each, Math.abs(value)), most),
    0,
  );
  const summary = `${timeS.length} rows, ${formatQuantity(timeS[timeS.length - 1]!, 'time')}, up to ${formatQuantity(peak, 'acceleration', 'g')}`;
  return {
    text,
    choice: { ...choice, summary, fault: '' },
    motion: {
      file: choice.fileName,
      time: choice.time,
      columns: choice.values,
      unit: choice.unit,
      is: choice.is,
      axis: choice.values.length === 1 ? AXES[choice.axis] : undefined,
      data,
    },
  };
}

function refused(text: string, choice: RecordChoice, fault: string): RecordInHand {
  return { text, choice: { ...choice, summary: '', fault }, motion: undefined };
}

/** Column names: the first line that is not a comment. */
function headerOf(text: string): string[] {
  const line = text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/, 200)
    .find((each) => each.trim() !== '' && !each.startsWith('#'));
  return line ? line.split(',').map((name) => name.trim().replace(/^"|"$/g, '')) : [];
}
