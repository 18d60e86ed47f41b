import { expect, it } from 'vitest';
import { NAMED_SCENARIOS } from '../../src/scenario/named.ts';
import { openPage } from './support/page.ts';
import { runHashes } from './support/run-hashes.ts';
import { runInPage } from './support/run-in-page.ts';

it('every ready-made run leaves the same bits in the browser as in Node', async () => {
  const { page } = await openPage();
  const module = new URL('./support/run-hashes.ts', import.meta.url);
  const inPage = await runInPage<Record<string, string>>(page, module, 'runHashes');
  const inNode = runHashes();
  expect(Object.keys(inNode).length).toBe(NAMED_SCENARIOS.length + 1);
  // Each run is another: none of them stands still.
  expect(new Set(Object.values(inNode)).size).toBe(NAMED_SCENARIOS.length + 1);
  expect(inPage).toEqual(inNode);
});
