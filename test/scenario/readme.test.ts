import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { rangesTable } from '../../src/scenario/ranges-table.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

it('the README’s table of ranges is the one that checks scenarios', () => {
  const block = /<!-- ranges -->\n([\s\S]*)\n<!-- \/ranges -->/.exec(readme)?.[1];
  expect(block).toBe(rangesTable().trim());
});

it('the README’s element by design can be built', () => {
  const element = /```json\n(\{ "name": "arm"[\s\S]*?)\n```/.exec(readme)?.[1] ?? '';
  const text = `{ "duration": 1, "elements": [${element}], "motions": [{ "from": 0, "kind": "held" }] }`;
  expect(parseScenario(text, { readFile: () => '' }).faults).toBeUndefined();
});
