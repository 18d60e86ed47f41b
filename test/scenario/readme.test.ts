import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { rangesTable } from '../../src/scenario/ranges-table.ts';

it('the README’s table of ranges is the one that checks scenarios', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const block = /<!-- ranges -->\n([\s\S]*)\n<!-- \/ranges -->/.exec(readme)?.[1];
  expect(block).toBe(rangesTable().trim());
});
