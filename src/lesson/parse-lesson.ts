/**
 * Reads a lesson file: Markdown with a YAML head; each heading of the second level begins a step, whose blocks are
 * fenced YAML. All faults come at once, each with its line.
 */
import { lexer, type Token, type Tokens } from 'marked';
import type { Prose } from '../contract/lesson.ts';
import { nearest } from '../scenario/fault.ts';
import { action } from './act-schema.ts';
import { crossFaults } from './cross-check.ts';
import { type Faults, type LessonFault, quoted } from './fault.ts';
import { figure } from './figure-schema.ts';
import { TERM_IDS } from './glossary.ts';
import { type Check, EXPLANATION, type Lesson, type LessonStep, type Part } from './lesson.ts';
import { proof } from './proof-schema.ts';
import { linesIn, ProseReader } from './prose.ts';
import { check, explanation, hints, lessonHead, question, type StepHead, stepHead } from './schema.ts';
import { into, list, readYaml, type Shape } from './yaml-shapes.ts';

export type ParsedLesson = { readonly lesson: Lesson } | { readonly faults: readonly LessonFault[] };

const HEAD = /^---\n([\s\S]*?\n)---\n/u;
const BLOCKS = ['step', 'predict', 'do', 'ask', 'measure', 'check', 'explain', 'hints', 'proof'] as const;
type BlockName = (typeof BLOCKS)[number];

/** `terms`: what links may lead to. */
export function parseLesson(source: string, terms: ReadonlySet<string> = TERM_IDS): ParsedLesson {
  const faults: Faults = [];
  const text = source.replace(/\r\n?/gu, '\n').replace(/^\uFEFF/u, '');
  const head = HEAD.exec(text);
  if (!head) {
    const fault = {
      line: 1,
      path: 'lesson',
      found: quoted(text.split('\n')[0] ?? ''),
      allowed: 'a YAML head between lines of ---',
    };
    return { faults: [fault] };
  }
  const read = readYaml(head[1]!, 2, 'head', lessonHead, faults);
  const body = new BodyReader(faults);
  const steps = body.read(lexer(text.slice(head[0].length)), linesIn(head[0]) + 1);
  if (faults.length === 0 && steps.length === 0)
    faults.push({
      line: linesIn(head[0]) + 1,
      path: 'lesson',
      found: 'no step',
      allowed: 'at least one heading ## with its step block',
    });
  if (!read || faults.length > 0) return { faults: faults.sort((a, b) => a.line - b.line) };
  const lesson: Lesson = {
    name: read.lesson,
    title: read.title,
    minutes: read.minutes,
    summary: read.summary,
    cautions: read.cautions ?? [],
    steps: steps.map(({ step }) => step),
  };
  const crossed = crossFaults(lesson, (name) => steps.find(({ step }) => step.name === name)!.lines, terms);
  return crossed.length > 0 ? { faults: crossed } : { lesson };
}

/** Line at which each named thing of a step is declared; the step's own under ''. */
export type StepLines = ReadonlyMap<string, number>;

interface ReadStep {
  readonly step: LessonStep;
  readonly lines: StepLines;
}

type UnfinishedCheck = Omit<Check, 'quantity'> & { readonly quantity: Check['quantity'] | undefined };
type UnfinishedPart =
  | Exclude<Part, { part: 'check' }>
  | { readonly part: 'check'; readonly checks: readonly UnfinishedCheck[] };

interface Unfinished {
  readonly title: string;
  readonly line: number;
  head: StepHead | undefined;
  proof: LessonStep['proof'];
  readonly parts: UnfinishedPart[];
  readonly lines: Map<string, number>;
}

class BodyReader {
  readonly #faults: Faults;
  readonly #steps: Unfinished[] = [];

  constructor(faults: Faults) {
    this.#faults = faults;
  }

  read(tokens: readonly Token[], firstLine: number): readonly ReadStep[] {
    let line = firstLine;
    for (const token of tokens) {
      this.#token(token, line);
      line += linesIn(token.raw);
    }
    return this.#steps.flatMap((step) => this.#finish(step));
  }

  #token(token: Token, line: number): void {
    const step = this.#steps.at(-1);
    if (token.type === 'heading') return this.#heading(token as Tokens.Heading, line);
    if (token.type === 'space') return;
    if (!step)
      return this.#fault(
        line,
        'lesson',
        quoted(token.raw.trim()),
        'nothing before the first heading ##; the summary stands in the head',
      );
    if (
      token.type === 'code' &&
      (token as Tokens.Code).lang !== undefined &&
      (token as Tokens.Code).codeBlockStyle === undefined
    )
      return this.#block(step, token as Tokens.Code, line);
    const text: Prose = new ProseReader({ path: step.head?.name ?? step.title, line }, this.#faults).blocks([token]);
    const last = step.parts.at(-1);
    if (last?.part === 'text') step.parts[step.parts.length - 1] = { part: 'text', text: [...last.text, ...text] };
    else if (text.length > 0) step.parts.push({ part: 'text', text });
  }

  #heading(token: Tokens.Heading, line: number): void {
    if (token.depth !== 2)
      return this.#fault(
        line,
        'lesson',
        quoted(token.raw.trim()),
        'headings of the second level (##), one for each step',
      );
    const title = token.text.trim();
    this.#steps.push({ title, line, head: undefined, proof: undefined, parts: [], lines: new Map([['', line]]) });
  }

  #block(step: Unfinished, token: Tokens.Code, line: number): void {
    const name = token.lang?.trim() ?? '';
    const known = BLOCKS.find((each) => each === name);
    if (!known) return this.#fault(line, step.title, `a block called ${quoted(name)}`, BLOCKS.join(', '));
    const path = `${step.head?.name ?? step.title} · ${name}`;
    this.#read(known, step, (shape) => readYaml(token.text, line + 1, path, shape, this.#faults), line);
  }

  #read(name: BlockName, step: Unfinished, read: <T>(shape: Shape<T>) => T | undefined, line: number): void {
    if (name === 'step') {
      if (step.head) this.#fault(line, step.title, 'a second step block', 'one for each heading');
      step.head = read(stepHead) ?? step.head;
      return;
    }
    if (name === 'proof') {
      if (step.proof) this.#fault(line, step.title, 'a second proof block', 'one for each step');
      step.proof = read(proof) ?? step.proof;
      return;
    }
    const part = read(PARTS[name]);
    if (!part) return;
    for (const declared of namesIn(part)) step.lines.set(declared, line);
    step.parts.push(part);
  }

  #finish(step: Unfinished): ReadStep[] {
    const { head, title, line, lines, parts } = step;
    if (!head) {
      if (this.#faults.length === 0)
        this.#fault(line, title, 'no step block', 'one below each heading, with name and bench');
      return [];
    }
    const finished = parts.map(
      (part): Part =>
        part.part === 'check' ? { part: 'check', checks: this.#checks(part.checks, parts, head.name, lines) } : part,
    );
    return [{ step: { ...head, title, parts: finished, proof: step.proof }, lines }];
  }

  /** A check of one figure is printed as that figure. */
  #checks(
    checks: readonly UnfinishedCheck[],
    parts: readonly UnfinishedPart[],
    step: string,
    lines: StepLines,
  ): Check[] {
    const figures = parts.flatMap((part) => (part.part === 'measure' ? part.figures : []));
    return checks.flatMap((each) => {
      const quantity = each.quantity ?? figures.find(({ name }) => name === each.value.text.trim())?.quantity;
      if (quantity) return [{ ...each, quantity }];
      const named = figures.map(({ name }) => name);
      const likely = nearest(each.value.text.trim(), named);
      this.#fault(
        lines.get(each.name) ?? 0,
        `${step} · check ${each.name}`,
        `a value, ${quoted(each.value.text)}, of no stated kind`,
        `the name of a figure, or \`as\` with its kind${likely ? `; did you mean ${likely}?` : ''}`,
      );
      return [];
    });
  }

  #fault(line: number, path: string, found: string, allowed: string): void {
    this.#faults.push({ line, path, found, allowed });
  }
}

const PARTS: Readonly<Record<Exclude<BlockName, 'step' | 'proof'>, Shape<UnfinishedPart>>> = {
  predict: into(question, (read) => ({ part: 'predict', question: read })),
  ask: into(question, (read) => ({ part: 'ask', question: read })),
  do: into(list(action), (actions) => ({ part: 'do', actions })),
  measure: into(list(figure), (figures) => ({ part: 'measure', figures })),
  check: into(list(check), (checks) => ({ part: 'check', checks })),
  explain: into(explanation, ({ words, model }) => ({ part: 'explain', name: EXPLANATION, words, model })),
  hints: into(hints, (read) => ({ part: 'hints', hints: read })),
};

function namesIn(part: UnfinishedPart): string[] {
  if (part.part === 'predict' || part.part === 'ask') return [part.question.name];
  if (part.part === 'measure') return part.figures.map(({ name }) => name);
  return part.part === 'check' ? part.checks.map(({ name }) => name) : [];
}
