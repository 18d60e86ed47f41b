import { expect, it } from 'vitest';
import { openPage } from './support/page.ts';
import { runInPage } from './support/run-in-page.ts';
import { transcendentalBits } from './support/transcendental-bits.ts';

it('transcendental functions give the same bits in the browser as in Node', async () => {
  const { page } = await openPage();
  const module = new URL('./support/transcendental-bits.ts', import.meta.url);
  const inPage = await runInPage<Record<string, string>>(page, module, 'transcendentalBits');
  expect(Object.keys(inPage).length).toBeGreaterThan(10);
  expect(inPage).toEqual(transcendentalBits());
});
