import type { Answer, Outcome, Prose, SketchPoint } from '../contract/lesson.ts';
import { ANSWER } from './cross-check.ts';
import type { Lookup } from './expression.ts';
import type { Judgement, Question, SketchFeature, Tolerance } from './lesson.ts';
import { printed, type Quantity } from './quantity.ts';

/** What came of judging: the outcome, the wrong turn that was recognised, and what is said to it. */
export interface Verdict {
  readonly outcome: Outcome;
  /** Name of a slip, or of the choice made; of a sketch, whether each feature was met, y or n in their order. */
  readonly reason: string | undefined;
  readonly says: Prose;
}

const WAITING: Verdict = { outcome: 'waiting', reason: undefined, says: [] };

/** Judges a number. Not known yet, it can still be a wrong turn that is to be named early: gravity switched off, say. */
export function judge(judgement: Judgement, value: number | undefined, lookup: Lookup): Verdict {
  const { slips, says, otherwise, provided } = judgement;
  const limits = value === undefined ? undefined : limitsOf(judgement, lookup);
  if (value === undefined || !limits) {
    const slip = slips.find(({ early, when }) => early && when.value(lookup) > 0);
    return slip ? { outcome: 'wrong', reason: slip.name, says: slip.says } : WAITING;
  }
  const slip = slips.find(({ when }) => when.value(lookup) > 0);
  const holds = !provided || provided.value(lookup) > 0;
  if (holds && value >= limits.low && value <= limits.high) return { outcome: 'passed', reason: undefined, says };
  return { outcome: 'wrong', reason: slip?.name, says: slip?.says ?? otherwise };
}

/** What a number was to be, in words. */
export function expectedText(judgement: Judgement, quantity: Quantity, lookup: Lookup): string {
  const limits = limitsOf(judgement, lookup);
  if (!limits) return '';
  const { low, high } = limits;
  if (judgement.near) return `${printed((low + high) / 2, quantity)} ± ${printed((high - low) / 2, quantity)}`;
  if (low === Number.NEGATIVE_INFINITY) return `below ${printed(high, quantity)}`;
  if (high === Number.POSITIVE_INFINITY) return `above ${printed(low, quantity)}`;
  return `${printed(low, quantity)} to ${printed(high, quantity)}`;
}

/** Limits within which a number is right; undefined while they are not known. */
function limitsOf({ near, within, above, below }: Judgement, lookup: Lookup) {
  let low = above ? above.value(lookup) : Number.NEGATIVE_INFINITY;
  let high = below ? below.value(lookup) : Number.POSITIVE_INFINITY;
  if (near && within) {
    const middle = near.value(lookup);
    const half = toleranceOf(within, middle, lookup);
    low = Math.max(low, middle - half);
    high = Math.min(high, middle + half);
  }
  return Number.isNaN(low) || Number.isNaN(high) ? undefined : { low, high };
}

function toleranceOf({ size, relative }: Tolerance, middle: number, lookup: Lookup): number {
  return relative ? size.value(lookup) * Math.abs(middle) : size.value(lookup);
}

/** Judges an answer by what the run has shown. */
export function judgeAnswer(question: Question, answer: Answer, lookup: Lookup): Verdict {
  if (question.kind === 'choice' && answer.kind === 'choice') {
    const choice = question.choices.find(({ name }) => name === answer.choice);
    if (!choice) return WAITING;
    const right = typeof choice.right === 'boolean' ? choice.right : choice.right.value(lookup) > 0;
    const outcome = right ? 'passed' : 'wrong';
    return { outcome, reason: choice.name, says: saidTo(question, outcome, choice.name) };
  }
  if (question.kind === 'number' && answer.kind === 'number')
    return judge(question.judgement, answer.value, (name) => (name === ANSWER ? answer.value : lookup(name)));
  if (question.kind === 'sketch' && answer.kind === 'sketch')
    return judgeSketch(question.features, answer.points, lookup);
  return WAITING;
}

/** A sketch is right when all its features are. */
function judgeSketch(features: readonly SketchFeature[], points: readonly SketchPoint[], lookup: Lookup): Verdict {
  let met = '';
  for (const feature of features) {
    const wanted = feature.near.value(lookup);
    const off = Math.abs(sketched(feature, points) - wanted);
    if (Number.isNaN(off)) return WAITING;
    met += off <= toleranceOf(feature.within, wanted, lookup) ? 'y' : 'n';
  }
  return { outcome: met.includes('n') ? 'wrong' : 'passed', reason: met, says: sketchSays(features, met) };
}

/** What is said to a sketch joins what is said to each feature. */
function sketchSays(features: readonly SketchFeature[], met: string): Prose {
  return features.flatMap(({ says, otherwise }, index) => (met[index] === 'y' ? says : otherwise));
}

/** What is said to an answer that was judged before. */
export function saidTo(question: Question, outcome: Outcome, reason: string | undefined): Prose {
  if (question.kind === 'choice') {
    const choice = question.choices.find(({ name }) => name === reason);
    return (outcome === 'wrong' ? choice?.otherwise : undefined) ?? choice?.says ?? [];
  }
  if (question.kind === 'sketch') return sketchSays(question.features, reason ?? '');
  return saidToNumber(question.judgement, outcome, reason);
}

export function saidToNumber(
  { says, slips, otherwise }: Judgement,
  outcome: Outcome,
  reason: string | undefined,
): Prose {
  if (outcome === 'passed') return says;
  return slips.find(({ name }) => name === reason)?.says ?? otherwise;
}

/** Number of straight pieces by which a span of a sketch is brought to one number; a hand draws no finer [–]. */
const SKETCH_PIECES = 64;

/** A span of a sketch, whose points rise in time, brought to one number; beyond its ends the end points hold. */
function sketched({ fromS, toS, take }: SketchFeature, points: readonly SketchPoint[]): number {
  let sum = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= SKETCH_PIECES; k += 1) {
    const value = sketchAt(points, fromS + ((toS - fromS) * k) / SKETCH_PIECES);
    sum += k === 0 || k === SKETCH_PIECES ? value / 2 : value;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (take === 'mean') return sum / SKETCH_PIECES;
  return take === 'lowest' ? low : high;
}

function sketchAt(points: readonly SketchPoint[], timeS: number): number {
  const next = points.findIndex(([at]) => at >= timeS);
  if (next === -1) return points.at(-1)![1];
  const [afterS, after] = points[next]!;
  const [beforeS, before] = points[next - 1] ?? [afterS, after];
  return afterS === beforeS ? after : before + ((after - before) * (timeS - beforeS)) / (afterS - beforeS);
}
