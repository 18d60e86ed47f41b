/** What every kind of value of a scenario can do: say what it allows, and read a node. */
import { quoted, type Report } from './fault.ts';
import type { JsonNode } from './json.ts';
import type { KeyTable } from './schema.ts';

export interface Kind<T> {
  /** What is allowed, in words, with the unit. */
  readonly allowed: string;
  /** Keys below it, for the table of ranges. */
  readonly below?: KeyTable | undefined;
  /** The value, or undefined once a fault is reported. Objects and lists come back with gaps where there was one. */
  read(node: JsonNode, path: string, report: Report): T | undefined;
}

/** What stands at a node, in few words. */
export function found(node: JsonNode): string {
  switch (node.type) {
    case 'null':
      return 'null';
    case 'boolean':
      return String(node.value);
    case 'number':
      return node.text.length > 40 ? `${node.text.slice(0, 40)}…` : node.text;
    case 'string':
      return quoted(node.value);
    case 'list':
      return node.items.length === 0 ? 'an empty list' : `a list of ${node.items.length}`;
    case 'object':
      return node.members.size === 0 ? 'an empty object' : `an object { ${firstKeys(node.members)} }`;
  }
}

function firstKeys(members: ReadonlyMap<string, JsonNode>): string {
  const shown = [...members.keys()].slice(0, 4).map((key) => quoted(key));
  return (members.size > shown.length ? [...shown, '…'] : shown).join(', ');
}
