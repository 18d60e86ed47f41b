import { expect, it } from 'vitest';
import { MOTION_KEYS, scenario } from '../../src/scenario/keys.ts';
import { rangesTable } from '../../src/scenario/ranges-table.ts';

const table = rangesTable();
const lines = table.split('\n');

it('every line of the table has four cells, so that it shows as a table', () => {
  for (const line of lines.filter((text) => text.startsWith('|')))
    expect(line.replaceAll('\\|', '').split('|')).toHaveLength(6);
});

it('every key of the run, of each motion, of an element and of a change has its line', () => {
  const tables = [
    scenario.below,
    scenario.below?.elements?.kind.below,
    scenario.below?.changes?.kind.below,
    ...Object.values(MOTION_KEYS),
  ];
  for (const keys of tables) for (const name of Object.keys(keys ?? {})) expect(table).toContain(`| \`${name}\` |`);
  for (const kind of Object.keys(MOTION_KEYS)) expect(table).toContain(`"kind": "${kind}"`);
});

it('limits, units and defaults stand in it', () => {
  expect(lines).toContain('| `gravity` | a number from 0 to 1000, in m/s² | 9.80665 | local gravity, downward |');
  expect(lines).toContain('| `duration` | a number above 0, at most 1e6, in s | a fault | length of the run |');
  expect(table).toMatch(/\| `pad\.damping` \| a number from 0 to 1e8, in N·s\/m \| 0 \|/);
  expect(table).toMatch(/\| `sine\.ease` \| .* \| 4\/frequency \|/);
});
