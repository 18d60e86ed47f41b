/** The table of ranges for people, made from the very table that checks scenarios. */
import { MATERIAL_KEYS, SUSPENSION_KEYS } from './design-keys.ts';
import { MOTION_KEYS, scenario } from './keys.ts';
import type { Kind } from './kind.ts';
import type { Key, KeyTable } from './schema.ts';

const HEAD = ['key', 'allowed', 'without it', 'meaning'];

/** Markdown: a table for the run, for an element, for each kind of suspension of a design, for a material, for each kind of motion, for changes. */
export function rangesTable(): string {
  const run = scenario.below ?? {};
  const { elements, motions, changes, ...rest } = run;
  const sections = [
    section('The run', [...rows('', rest), ...rows('', { elements, motions, changes }, false)]),
    section('An element: `elements[…]`', rows('', belowOf(elements?.kind))),
    ...Object.entries(SUSPENSION_KEYS).map(([kind, keys]) =>
      section(`A suspension of a design with \`"kind": "${kind}"\``, rows('', keys)),
    ),
    section('Own values of a material', rows('', MATERIAL_KEYS)),
    ...Object.entries(MOTION_KEYS).map(([kind, keys]) =>
      section(`A motion with \`"kind": "${kind}"\``, rows('', keys)),
    ),
    section('A change: `changes[…]`', rows('', belowOf(changes?.kind))),
  ];
  return sections.join('\n');
}

function section(title: string, lines: readonly string[]): string {
  return `**${title}**\n\n${line(HEAD)}\n${line(HEAD.map(() => '---'))}\n${lines.join('\n')}\n`;
}

function rows(
  prefix: string,
  keys: Readonly<Record<string, Key<unknown, unknown> | undefined>>,
  deeper = true,
): string[] {
  return Object.entries(keys).flatMap(([name, key]) => {
    if (key === undefined) return [];
    const { kind, words, whenMissing } = key;
    const missing = whenMissing === 'a fault' ? 'a fault' : whenMissing.words;
    const own = line([`\`${prefix}${name}\``, kind.allowed, missing, words]);
    const item = kind.allowed.startsWith('a list') ? '[…]' : '';
    return deeper ? [own, ...rows(`${prefix}${name}${item}.`, belowOf(kind))] : [own];
  });
}

function belowOf(kind: Kind<unknown> | undefined): KeyTable {
  return kind?.below ?? {};
}

function line(cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}
