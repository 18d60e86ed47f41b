/**
 * Small formulas in a lesson: numbers with or without a unit, names, + − * /, comparisons, `and`, `or`, sqrt, abs,
 * min, max, exp, ln. All in SI: `0.5 * gravity * fallTime * fallTime`, `answer > 0.9 g and answer < 1.1 g`.
 * A true comparison is 1, a false one 0; what is not known is NaN, and a comparison with it is false.
 */
import { exp, ln } from '../numerics/transcendental.ts';
import { parseQuantity } from '../units/parse.ts';
import { G_N } from '../units/standard-gravity.ts';
import type { QuantityKind } from '../units/unit-table.ts';

/** Gives the SI value of a name; NaN while it is not known. */
export type Lookup = (name: string) => number;

export interface Expression {
  readonly text: string;
  /** Names that it asks for, without the constants. */
  readonly names: readonly string[];
  readonly value: (lookup: Lookup) => number;
}

/** What is wrong, in words for `found …`. */
export class ExpressionFault extends Error {}

const CONSTANTS: ReadonlyMap<string, number> = new Map([
  ['pi', Math.PI],
  ['g', G_N],
]);

const FUNCTIONS: ReadonlyMap<string, (...values: number[]) => number> = new Map([
  ['sqrt', (value = Number.NaN) => Math.sqrt(value)],
  ['abs', (value = Number.NaN) => Math.abs(value)],
  ['min', (...values: number[]) => Math.min(...values)],
  ['max', (...values: number[]) => Math.max(...values)],
  ['exp', (value = Number.NaN) => exp(value)],
  ['ln', (value = Number.NaN) => ln(value)],
]);

/** A unit belongs to the first of these kinds that knows it: `g` is an acceleration here. */
const UNIT_KINDS: readonly QuantityKind[] = [
  'acceleration',
  'time',
  'frequency',
  'length',
  'speed',
  'angle',
  'percent',
];

const TOKEN =
  /\s*(?:([0-9]+(?:\.[0-9]+)?(?:e-?[0-9]+)?) ?((?!(?:and|or)\b)(?:%|°|[µA-Za-z]+(?:\/[A-Za-z]+)?²?))?|([A-Za-z][A-Za-z0-9]*)|(<=|>=|[-+*/()<>,]))/uy;

type Value = (lookup: Lookup) => number;

export function parseExpression(text: string): Expression {
  const parser = new Parser(text);
  const value = parser.whole();
  return { text, names: [...parser.names], value };
}

/** Words that a name must not be. */
export const RESERVED: ReadonlySet<string> = new Set(['and', 'or', ...CONSTANTS.keys(), ...FUNCTIONS.keys()]);

/** Recursive descent; each method reads what binds at least as strongly as it. */
class Parser {
  readonly names = new Set<string>();
  readonly #tokens: readonly Token[];
  #at = 0;

  constructor(text: string) {
    this.#tokens = tokens(text);
  }

  whole(): Value {
    const value = this.#either();
    const rest = this.#tokens[this.#at];
    if (rest) throw new ExpressionFault(`“${rest.text}” where the formula should end or go on with an operator`);
    return value;
  }

  #either(): Value {
    return this.#chain(['or'], () => this.#both());
  }

  #both(): Value {
    return this.#chain(['and'], () => this.#comparison());
  }

  #comparison(): Value {
    const left = this.#sum();
    const operator = this.#take('<', '>', '<=', '>=');
    if (!operator) return left;
    const right = this.#sum();
    return (lookup) => compare(operator, left(lookup), right(lookup));
  }

  #sum(): Value {
    return this.#chain(['+', '-'], () => this.#product());
  }

  #product(): Value {
    return this.#chain(['*', '/'], () => this.#factor());
  }

  #chain(operators: readonly string[], next: () => Value): Value {
    let left = next();
    for (let operator = this.#take(...operators); operator; operator = this.#take(...operators)) {
      const before = left;
      const right = next();
      const combine = COMBINE[operator]!;
      left = (lookup) => combine(before(lookup), right(lookup));
    }
    return left;
  }

  #factor(): Value {
    if (this.#take('-')) {
      const value = this.#factor();
      return (lookup) => -value(lookup);
    }
    if (this.#take('(')) {
      const value = this.#either();
      this.#need(')');
      return value;
    }
    const token = this.#tokens[this.#at];
    if (!token) throw new ExpressionFault('a formula that breaks off');
    this.#at += 1;
    if (token.kind === 'number') return () => token.value;
    if (token.kind === 'name') return this.#named(token.text);
    throw new ExpressionFault(`“${token.text}” where a number or a name should stand`);
  }

  #named(name: string): Value {
    const constant = CONSTANTS.get(name);
    if (constant !== undefined) return () => constant;
    const call = FUNCTIONS.get(name);
    if (!call) {
      this.names.add(name);
      return (lookup) => lookup(name);
    }
    this.#need('(');
    const values = [this.#either()];
    while (this.#take(',')) values.push(this.#either());
    this.#need(')');
    const takes = name === 'min' || name === 'max' ? 2 : 1;
    if (values.length !== takes) throw new ExpressionFault(`${name} of ${values.length} values; it takes ${takes}`);
    return (lookup) => call(...values.map((value) => value(lookup)));
  }

  #take(...texts: readonly string[]): string | undefined {
    const token = this.#tokens[this.#at];
    if (!token || token.kind === 'number' || !texts.includes(token.text)) return undefined;
    this.#at += 1;
    return token.text;
  }

  #need(text: string): void {
    if (!this.#take(text)) throw new ExpressionFault(`a formula with “${text}” missing`);
  }
}

type Token =
  | { readonly kind: 'number'; readonly text: string; readonly value: number }
  | { readonly kind: 'name' | 'sign'; readonly text: string };

function tokens(text: string): Token[] {
  const found: Token[] = [];
  // People write the minus sign U+2212 as well.
  const plain = text.replace(/−/gu, '-').trimEnd();
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < plain.length) {
    const from = TOKEN.lastIndex;
    const match = TOKEN.exec(plain);
    if (!match) throw new ExpressionFault(`“${plain.slice(from).trim()}”, which is no part of a formula`);
    const [whole, number, unit, name, sign] = match;
    if (number !== undefined) found.push({ kind: 'number', text: whole.trim(), value: inSi(number, unit) });
    else if (name !== undefined) found.push({ kind: name === 'and' || name === 'or' ? 'sign' : 'name', text: name });
    else found.push({ kind: 'sign', text: sign! });
  }
  if (found.length === 0) throw new ExpressionFault('an empty formula');
  return found;
}

function inSi(number: string, unit: string | undefined): number {
  if (unit === undefined) return Number(number);
  for (const kind of UNIT_KINDS) {
    const parsed = parseQuantity(`${number} ${unit}`, kind);
    if ('value' in parsed) return parsed.value;
  }
  throw new ExpressionFault(`“${unit}”, which is no unit`);
}

function compare(operator: string, left: number, right: number): number {
  if (operator === '<') return Number(left < right);
  if (operator === '>') return Number(left > right);
  return Number(operator === '<=' ? left <= right : left >= right);
}

const COMBINE: Readonly<Record<string, (left: number, right: number) => number>> = {
  '+': (left, right) => left + right,
  '-': (left, right) => left - right,
  '*': (left, right) => left * right,
  '/': (left, right) => left / right,
  and: (left, right) => Number(left > 0 && right > 0),
  or: (left, right) => Number(left > 0 || right > 0),
};
