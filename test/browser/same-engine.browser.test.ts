import { expect, it } from 'vitest';
import { NAMED_SCENARIOS } from '../../src/scenario/named.ts';
import { openPage } from './support/page.ts';
import { runHashes } from './support/run-hashes.ts';
import { runInPage } from './support/run-in-page.ts';

it('every ready-made run leaves the same bits in the browser as in Node', async () => {
  // The page's own scripts stand still: they would draw meanwhile. What is put in through the debugger runs all the same.
  const { page, close } = await openPage({ keep: true, context: { javaScriptEnabled: false } });
  const module = new URL('./support/run-hashes.ts', import.meta.url);
  const inPage = await runInPage<Record<string, string>>(page, module, 'runHashes');
  await close();
  const inNode = runHashes();
  expect(Object.keys(inNode).length).toBe(NAMED_SCENARIOS.length + 1);
  // Each run is another one: a hash that stood still would agree everywhere.
  expect(new Set(Object.values(inNode)).size).toBe(NAMED_SCENARIOS.length + 1);
  expect(inPage).toEqual(inNode);
});
