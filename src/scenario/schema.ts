/**
 * Objects with their keys, and lists of them. A kind reads a node, reports what is wrong with it, and says in words
 * what it allows: the same words stand in the fault and in the table of ranges.
 */
import { nearest, pathTo, quoted, type Report } from './fault.ts';
import type { JsonNode } from './json.ts';
import { found, type Kind } from './kind.ts';
import { choice } from './plain-kinds.ts';

/** A key of an object: its kind, what it means, and what holds without it. */
export interface Key<T, Missing = never> {
  readonly kind: Kind<T>;
  readonly words: string;
  readonly whenMissing: { readonly value: Missing; readonly words: string } | 'a fault';
}

export type KeyTable = Readonly<Record<string, Key<unknown, unknown>>>;
type KeyValue<K> = K extends Key<infer T, infer Missing> ? T | Missing : never;
export type ObjectOf<K extends KeyTable> = { readonly [P in keyof K]: KeyValue<K[P]> };

/** A value in which any part may be missing because it was faulty: what the rules across keys look at. */
export type Loose<T> = T extends readonly (infer U)[]
  ? readonly (Loose<U> | undefined)[]
  : T extends object
    ? { readonly [P in keyof T]?: Loose<T[P]> | undefined }
    : T;

export function required<T>(kind: Kind<T>, words: string): Key<T> {
  return { kind, words, whenMissing: 'a fault' };
}

/** `value` holds when the key is missing. */
export function otherwise<T>(kind: Kind<T>, value: T, words: string, shown = JSON.stringify(value)): Key<T, T> {
  return { kind, words, whenMissing: { value, words: shown } };
}

/** Nothing holds when the key is missing, or what `shown` says (worked out from other keys). */
export function optional<T>(kind: Kind<T>, words: string, shown = 'none'): Key<T, undefined> {
  return { kind, words, whenMissing: { value: undefined, words: shown } };
}

export function list<T>(of: Kind<T>, least: number, most: number, what: string): Kind<readonly T[]> {
  const allowed = `a list of ${least} to ${most} ${what}`;
  return {
    allowed,
    below: of.below,
    read(node, path, report) {
      if (node.type !== 'list' || node.items.length < least || node.items.length > most) {
        report(path, found(node), allowed);
        return undefined;
      }
      return node.items.map((item, i) => of.read(item, pathTo(path, i), report)) as readonly T[];
    },
  };
}

export function object<const K extends KeyTable>(keys: K): Kind<ObjectOf<K>> {
  const allowed = `an object { ${Object.keys(keys).join(', ')} }`;
  return {
    allowed,
    below: keys,
    read(node, path, report) {
      if (node.type !== 'object') {
        report(path, found(node), allowed);
        return undefined;
      }
      const value: Record<string, unknown> = {};
      for (const [name, key] of Object.entries(keys))
        value[name] = readKey(node.members.get(name), key, pathTo(path, name), report);
      reportUnknown(node.members, Object.keys(keys), path, report);
      return value as ObjectOf<K>; // whole only if nothing was reported; parseScenario looks
    },
  };
}

function readKey(node: JsonNode | undefined, key: Key<unknown, unknown>, path: string, report: Report): unknown {
  if (node !== undefined) return key.kind.read(node, path, report);
  if (key.whenMissing !== 'a fault') return key.whenMissing.value;
  report(path, 'nothing', key.kind.allowed);
  return undefined;
}

function reportUnknown(
  members: ReadonlyMap<string, JsonNode>,
  known: readonly string[],
  path: string,
  report: Report,
): void {
  for (const name of members.keys()) {
    if (known.includes(name)) continue;
    const near = nearest(name, known);
    const hint = near === undefined ? '' : `perhaps ${quoted(near)}; `;
    report(pathTo(path, name), `the unknown key ${quoted(name)}`, `${hint}the keys ${known.join(', ')}`);
  }
}

type Variants = Readonly<Record<string, KeyTable>>;
export type VariantOf<V extends Variants> = { [P in keyof V & string]: { readonly kind: P } & ObjectOf<V[P]> }[keyof V &
  string];

/** An object whose `kind` says which keys it has. */
export function variant<const V extends Variants>(tables: V): Kind<VariantOf<V>> {
  const kinds = Object.keys(tables);
  const kindKey = choice(kinds);
  const kinded = new Map(kinds.map((name) => [name, object({ kind: required(kindKey, ''), ...tables[name] })]));
  const allowed = `an object with a kind: ${kindKey.allowed}`;
  return {
    allowed,
    read(node, path, report) {
      if (node.type !== 'object') {
        report(path, found(node), allowed);
        return undefined;
      }
      const named = node.members.get('kind');
      if (named?.type === 'string') {
        const as = kinded.get(named.value);
        if (as !== undefined) return as.read(node, path, report) as VariantOf<V> | undefined;
        const near = nearest(named.value, kinds);
        report(
          pathTo(path, 'kind'),
          found(named),
          `${near === undefined ? '' : `perhaps ${quoted(near)}; `}${kindKey.allowed}`,
        );
      } else report(pathTo(path, 'kind'), named === undefined ? 'nothing' : found(named), kindKey.allowed);
      return undefined;
    },
  };
}
