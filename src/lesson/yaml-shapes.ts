/** Reads the YAML of a lesson into typed values. Each shape reads one node; what is wrong becomes a fault with its line. */
import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, type YAMLMap } from 'yaml';
import type { Prose } from '../contract/lesson.ts';
import { nearest } from '../scenario/fault.ts';
import { parseQuantity } from '../units/parse.ts';
import type { QuantityKind } from '../units/unit-table.ts';
import { type Expression, ExpressionFault, parseExpression, RESERVED } from './expression.ts';
import { type Faults, quoted } from './fault.ts';
import { readProse } from './prose.ts';

/** Where a node stands. */
export interface Place {
  readonly path: string;
  readonly lineOf: (node: Node | null) => number;
  readonly faults: Faults;
}

/** Reads one node; undefined when it is not as it should be, which has then been said. */
export type Shape<T> = (node: Node | null, place: Place) => T | undefined;

interface Member<T> {
  readonly shape: Shape<T>;
  readonly needed: boolean;
}

/** A member that must be there. */
export const need = <T>(shape: Shape<T>): Member<T> & { readonly needed: true } => ({ shape, needed: true });
/** A member that may be left out. */
export const may = <T>(shape: Shape<T>): Member<T> & { readonly needed: false } => ({ shape, needed: false });

type Members = Readonly<Record<string, Member<unknown>>>;
export type Read<M extends Members> = {
  readonly [K in keyof M]: M[K] extends Member<infer T> & { readonly needed: true }
    ? T
    : M[K] extends Member<infer T>
      ? T | undefined
      : never;
};

/** Reads a whole YAML text that begins at a line of the file. */
export function readYaml<T>(
  text: string,
  firstLine: number,
  path: string,
  shape: Shape<T>,
  faults: Faults,
): T | undefined {
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter, schema: 'core' });
  const lineAt = (offset: number) => firstLine + counter.linePos(offset).line - 1;
  for (const error of document.errors) {
    const found = `what is no YAML (${error.message.split('\n')[0]})`;
    faults.push({
      line: lineAt(error.pos[0]),
      path,
      found,
      allowed: 'YAML 1.2; a text with a colon in it stands indented below “|”',
    });
  }
  if (document.errors.length > 0) return undefined;
  const lineOf = (node: Node | null) => (node?.range ? lineAt(node.range[0]) : firstLine);
  return shape(document.contents, { path, lineOf, faults });
}

export function refuse(node: Node | null, place: Place, found: string, allowed: string): undefined {
  place.faults.push({ line: place.lineOf(node), path: place.path, found, allowed });
  return undefined;
}

/** What a node is, for `found …`. */
export function foundIn(node: Node | null): string {
  if (node === null) return 'nothing';
  if (isMap(node)) return 'a list of names and values';
  if (isSeq(node)) return 'a list';
  if (isScalar(node))
    return node.value === null ? 'nothing' : typeof node.value === 'string' ? quoted(node.value) : String(node.value);
  return 'a reference to another place'; // a YAML alias
}

function scalarText(node: Node | null): string | undefined {
  if (!isScalar(node) || node.value === null || typeof node.value === 'boolean') return undefined;
  return typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
}

export function record<M extends Members>(members: M): Shape<Read<M>> {
  return (node, place) => {
    if (!isMap(node)) return refuse(node, place, foundIn(node), `names and values: ${Object.keys(members).join(', ')}`);
    let whole = true;
    refuseUnknown(node, place, Object.keys(members));
    const read: Record<string, unknown> = {};
    for (const [key, { shape, needed }] of Object.entries(members)) {
      const child = (node.get(key, true) ?? null) as Node | null;
      if (child === null) {
        if (needed) {
          refuse(node, place, `no “${key}”`, `${key} must be there`);
          whole = false;
        }
        read[key] = undefined;
        continue;
      }
      read[key] = shape(child, { ...place, path: `${place.path}.${key}` });
      if (read[key] === undefined) whole = false;
    }
    return whole ? (read as Read<M>) : undefined;
  };
}

function refuseUnknown(map: YAMLMap, place: Place, known: readonly string[]): void {
  for (const { key } of map.items) {
    const name = isScalar(key) ? String(key.value) : '';
    if (known.includes(name)) continue;
    const likely = nearest(name, known);
    refuse(
      key as Node,
      place,
      `the name ${quoted(name)}`,
      `${known.join(', ')}${likely ? `; did you mean ${likely}?` : ''}`,
    );
  }
}

export function list<T>(shape: Shape<T>, atLeast = 1): Shape<readonly T[]> {
  return (node, place) => {
    if (!isSeq(node)) return refuse(node, place, foundIn(node), 'a list');
    if (node.items.length < atLeast)
      return refuse(node, place, `a list of ${node.items.length}`, `at least ${atLeast}`);
    const read = node.items.map((item, index) => shape(item as Node, { ...place, path: `${place.path}[${index}]` }));
    return read.every((each) => each !== undefined) ? (read as T[]) : undefined;
  };
}

/** Names and values, all of one shape. */
export function dictionary<T>(
  shape: (name: string) => Shape<T> | undefined,
  allowed: string,
): Shape<ReadonlyMap<string, T>> {
  return (node, place) => {
    if (!isMap(node)) return refuse(node, place, foundIn(node), allowed);
    const read = new Map<string, T>();
    let whole = true;
    for (const { key, value } of node.items) {
      const name = isScalar(key) ? String(key.value) : '';
      const of = shape(name);
      const each = of?.(value as Node | null, { ...place, path: `${place.path}.${name}` });
      if (!of) refuse(key as Node, place, quoted(name), allowed);
      if (each === undefined) whole = false;
      else read.set(name, each);
    }
    return whole ? read : undefined;
  };
}

/** What a shape reads, made into something else. */
export function into<A, B>(shape: Shape<A>, make: (read: A) => B): Shape<B> {
  return (node, place) => {
    const read = shape(node, place);
    return read === undefined ? undefined : make(read);
  };
}

/** A map whose member `key` names the shape of the rest. */
export function variant<T>(key: string, shapes: Readonly<Record<string, Shape<T>>>): Shape<T> {
  const names = Object.keys(shapes);
  return (node, place) => {
    const name = isMap(node) ? node.get(key) : undefined;
    const shape = typeof name === 'string' && Object.hasOwn(shapes, name) ? shapes[name] : undefined;
    if (!isMap(node) || !shape) {
      const found = typeof name === 'string' ? quoted(name) : isMap(node) ? `no “${key}”` : foundIn(node);
      return refuse(node, place, found, `${key}: ${names.join(', ')}`);
    }
    return shape(without(node, key), place);
  };
}

/** A map without some of its members; what is left keeps its lines. */
export function without(map: YAMLMap, ...keys: readonly string[]): YAMLMap {
  const rest = map.clone() as YAMLMap;
  rest.items = map.items.filter(({ key }) => !(isScalar(key) && keys.includes(String(key.value))));
  return rest;
}

/** A map with only some of its members. */
export function onlyThese(map: YAMLMap, ...keys: readonly string[]): YAMLMap {
  const rest = map.clone() as YAMLMap;
  rest.items = map.items.filter(({ key }) => isScalar(key) && keys.includes(String(key.value)));
  return rest;
}

export const text: Shape<string> = (node, place) => {
  const value = scalarText(node);
  return value === undefined || value.trim() === '' ? refuse(node, place, foundIn(node), 'a text') : value.trim();
};

export const yes: Shape<true> = (node, place) =>
  isScalar(node) && node.value === true ? true : refuse(node, place, foundIn(node), 'true, or leave it out');

export const trueOrFalse: Shape<boolean> = (node, place) =>
  isScalar(node) && typeof node.value === 'boolean' ? node.value : refuse(node, place, foundIn(node), 'true or false');

/** Text with emphasis, lists, terms and figures. */
export const prose: Shape<Prose> = (node, place) => {
  const markdown = text(node, place);
  if (markdown === undefined) return undefined;
  const before = place.faults.length;
  const read = readProse(markdown, { path: place.path, line: place.lineOf(node) }, place.faults);
  return place.faults.length === before ? read : undefined;
};

const NAME = /^[a-z][A-Za-z0-9]*$/u;

/** Every object has these already: a look-up by such a name would find something. */
const EVERYWHERE = new Set(Object.getOwnPropertyNames(Object.prototype));

/** A name of our own: letters and digits, a small letter first, so that it can stand in a formula. */
export const identifier: Shape<string> = (node, place) => {
  const value = scalarText(node);
  if (value === undefined || !NAME.test(value) || RESERVED.has(value) || EVERYWHERE.has(value))
    return refuse(node, place, foundIn(node), 'a name of letters and digits, a small letter first, e.g. fallTime');
  return value;
};

export function oneOf<const T extends string>(choices: readonly T[]): Shape<T> {
  return (node, place) => {
    const value = scalarText(node);
    const found = choices.find((choice) => choice === value);
    return found ?? refuse(node, place, foundIn(node), choices.join(', '));
  };
}

export function wholeNumber(low: number, high: number): Shape<number> {
  return (node, place) => {
    const value = isScalar(node) ? node.value : undefined;
    if (typeof value === 'number' && Number.isInteger(value) && value >= low && value <= high) return value;
    return refuse(node, place, foundIn(node), `a whole number from ${low} to ${high}`);
  };
}

/** A number with its unit, e.g. `0.5 m`; SI, within limits. */
export function quantity(
  kind: QuantityKind,
  low = Number.NEGATIVE_INFINITY,
  high = Number.POSITIVE_INFINITY,
): Shape<number> {
  return (node, place) => {
    const written = scalarText(node);
    if (written === undefined) return refuse(node, place, foundIn(node), `${kind} with its unit`);
    const parsed = parseQuantity(written, kind);
    if ('error' in parsed) return refuse(node, place, quoted(written), parsed.error);
    if (parsed.value >= low && parsed.value <= high) return parsed.value;
    return refuse(node, place, quoted(written), `${kind} from ${low} to ${high} in SI units`);
  };
}

export const expression: Shape<Expression> = (node, place) => {
  const written = scalarText(node);
  if (written === undefined) return refuse(node, place, foundIn(node), 'a formula, e.g. 0.5 * gravity * fallTime');
  try {
    return parseExpression(written);
  } catch (fault) {
    if (!(fault instanceof ExpressionFault)) throw fault;
    return refuse(node, place, fault.message, 'a formula of numbers with units, names and + - * / < > and or');
  }
};
