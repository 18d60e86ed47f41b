/** The shapes of a lesson's blocks: what may stand where, in which unit, within which limits. */

import { isMap, isScalar, type Node } from 'yaml';
import { STARTING_BENCHES } from '../session/starting-benches.ts';
import { parseQuantity } from '../units/parse.ts';
import { findUnit } from '../units/unit-table.ts';
import { lessonSettings } from './act-schema.ts';
import type { BenchSetup } from './bench-setup.ts';
import { MOMENTS, type Moment, type MomentName } from './evidence.ts';
import type { Expression } from './expression.ts';
import { quoted } from './fault.ts';
import type { Check, Choice, Judgement, Question, SketchFeature, Slip, Tolerance } from './lesson.ts';
import { LINES } from './lesson.ts';
import { KINDS, type Quantity, usual } from './quantity.ts';
import {
  expression,
  foundIn,
  identifier,
  into,
  list,
  may,
  need,
  oneOf,
  type Place,
  prose,
  quantity,
  record,
  refuse,
  type Shape,
  text,
  wholeNumber,
  yes,
} from './yaml-shapes.ts';

const LINE_NAMES = Object.keys(LINES) as (keyof typeof LINES)[];
const LONGEST_S = 600;
/** Less across the paper shows nothing but straight lines between its rows. */
const SHORTEST_PAPER_S = 0.02;
const SHORTEST_REACH_MS2 = 1e-3;
const LONGEST_REACH_MS2 = 1e5;

export const line = oneOf(LINE_NAMES);
export const momentName: Shape<MomentName> = oneOf(MOMENTS);

const MOMENT = /^(.*?)(?: *([-+−]) *([0-9].*))?$/u;

/** `let go`, `touch - 5 ms`. */
export const moment: Shape<Moment> = (node, place) => {
  const written = isScalar(node) && typeof node.value === 'string' ? node.value : '';
  const [, name = '', sign, offset = '0 s'] = MOMENT.exec(written) ?? [];
  const known = MOMENTS.find((each) => each === name);
  const parsed = parseQuantity(offset, 'time');
  if (!known || 'error' in parsed)
    return refuse(node, place, foundIn(node), `${MOMENTS.join(', ')}; also with a time, e.g. let go + 20 ms`);
  return { name: known, offsetS: sign === undefined || sign === '+' ? parsed.value : -parsed.value };
};

const tolerance: Shape<Tolerance> = (node, place) => {
  const size = expression(node, place);
  return size && { size, relative: size.text.trimEnd().endsWith('%') };
};

const stepRecord = record({
  name: need(identifier),
  bench: need(oneOf(Object.keys(STARTING_BENCHES) as BenchSetup['bench'][])),
  settings: may(lessonSettings),
  seed: may(wholeNumber(0, 0xffff_ffff)),
  slowed: may(wholeNumber(1, 10_000)),
  paper: may(quantity('time', SHORTEST_PAPER_S, LONGEST_S)),
  reach: may(quantity('acceleration', SHORTEST_REACH_MS2, LONGEST_REACH_MS2)),
  attempt: may(momentName),
});

export interface StepHead {
  readonly name: string;
  readonly setup: BenchSetup;
  readonly slowed: number | undefined;
  readonly paperS: number | undefined;
  readonly reachMS2: number | undefined;
  readonly attempt: MomentName;
}

export const stepHead: Shape<StepHead> = (node, place) => {
  const read = stepRecord(node, place);
  return (
    read && {
      name: read.name,
      setup: { bench: read.bench, settings: read.settings ?? new Map(), seed: read.seed ?? 1 },
      slowed: read.slowed,
      paperS: read.paper,
      reachMS2: read.reach,
      attempt: read.attempt ?? 'start',
    }
  );
};

export const lessonHead = record({
  lesson: need(text),
  format: need(wholeNumber(1, 1)),
  title: need(text),
  minutes: need(wholeNumber(1, 240)),
  summary: need(prose),
  cautions: may(prose),
});

const kindAndUnit = record({ kind: need(oneOf(KINDS)), unit: may(text) });

/** `kind` with the unit to print in. */
export const printedQuantity: Shape<Quantity> = (node, place) => {
  const read = kindAndUnit(node, place);
  if (!read) return undefined;
  if (read.unit !== undefined && !findUnit(read.kind, read.unit))
    return refuse(node, place, quoted(read.unit), `a unit of ${read.kind}`);
  return usual(read.kind, read.unit);
};

const slip: Shape<Slip> = into(
  record({ name: need(identifier), if: need(expression), early: may(yes), says: need(prose) }),
  ({ name, if: when, early, says }) => ({ name, when, early: early ?? false, says }),
);

const JUDGEMENT = {
  near: may(expression),
  within: may(tolerance),
  above: may(expression),
  below: may(expression),
  provided: may(expression),
  says: need(prose),
  slips: may(list(slip)),
  otherwise: need(prose),
} as const;

interface ReadJudgement extends Omit<Judgement, 'slips'> {
  readonly slips: readonly Slip[] | undefined;
}

function judgement(read: ReadJudgement, node: Node | null, place: Place): Judgement | undefined {
  const { near, within, above, below, provided, says, slips, otherwise } = read;
  if ((near === undefined) !== (within === undefined) || (!near && !above && !below))
    return refuse(node, place, 'no measure of right and wrong', 'near with within, above, below, or above with below');
  return { near, within, above, below, provided, says, slips: slips ?? [], otherwise };
}

const checkRecord = record({
  name: need(identifier),
  words: need(prose),
  value: need(expression),
  as: may(printedQuantity),
  ...JUDGEMENT,
});

/** `as` is left out where the value is a figure's: it is taken from it when the whole step is read. */
export const check: Shape<Omit<Check, 'quantity'> & { readonly quantity: Quantity | undefined }> = (node, place) => {
  const read = checkRecord(node, place);
  const judged = read && judgement(read, node, place);
  return judged && { ...judged, name: read.name, words: read.words, value: read.value, quantity: read.as };
};

const right: Shape<Expression | boolean> = (node, place) =>
  isScalar(node) && typeof node.value === 'boolean' ? yes(node, place) : expression(node, place);

const choice: Shape<Choice> = into(
  record({ name: need(identifier), words: need(prose), right: may(right), says: need(prose), otherwise: may(prose) }),
  (read) => ({ ...read, right: read.right ?? false }),
);

const sketchAxes = record({
  line: need(line),
  zero: need(moment),
  zeroWords: need(text),
  from: need(quantity('time', -LONGEST_S, LONGEST_S)),
  to: need(quantity('time', -LONGEST_S, LONGEST_S)),
  low: need(expression),
  high: need(expression),
  unit: may(text),
});

const feature: Shape<SketchFeature> = into(
  record({
    from: need(quantity('time', -LONGEST_S, LONGEST_S)),
    to: need(quantity('time', -LONGEST_S, LONGEST_S)),
    take: need(oneOf(['mean', 'highest', 'lowest'])),
    near: need(expression),
    within: need(tolerance),
    says: need(prose),
    otherwise: need(prose),
  }),
  ({ from, to, ...rest }) => ({ ...rest, fromS: from, toS: to }),
);

const ASKED = { name: need(identifier), words: need(prose), after: may(moment) } as const;
const choiceQuestion = record({ ...ASKED, choices: need(list(choice, 2)) });
const numberQuestion = record({ ...ASKED, number: need(printedQuantity), ...JUDGEMENT });
const sketchQuestion = record({ ...ASKED, sketch: need(sketchAxes), features: need(list(feature)) });

export const question: Shape<Question> = (node, place) => {
  const has = (key: string) => isMap(node) && node.has(key);
  if (has('choices')) {
    const read = choiceQuestion(node, place);
    return read && { ...read, kind: 'choice' };
  }
  if (has('number')) {
    const read = numberQuestion(node, place);
    const judged = read && judgement(read, node, place);
    if (!read || !judged) return undefined;
    const { name, words, after, number } = read;
    return { kind: 'number', name, words, after, quantity: number, judgement: judged };
  }
  if (has('sketch')) {
    const read = sketchQuestion(node, place);
    return read && sketched(read);
  }
  return refuse(node, place, foundIn(node), 'a question with choices, number or sketch');
};

function sketched(read: NonNullable<ReturnType<typeof sketchQuestion>>): Question {
  const { name, words, after, features, sketch } = read;
  const { kind } = LINES[sketch.line];
  const none = () => Number.NaN;
  return {
    kind: 'sketch',
    name,
    words,
    after,
    features,
    zero: sketch.zero,
    axes: {
      kind: 'sketch',
      quantity: kind,
      unit: usual(kind, sketch.unit).unit,
      line: sketch.line,
      fromS: sketch.from,
      toS: sketch.to,
      low: sketch.low.value(none),
      high: sketch.high.value(none),
      zero: sketch.zeroWords,
    },
  };
}

export const explanation = record({ words: need(prose), model: need(prose) });
export const hints = list(prose);
