/**
 * `npm run benchmark`: prints what the engine and the page cost. Figures are medians (10 … 90 %); nothing is asserted.
 * `--only engine` and `--only page` run a part; the page needs a browser.
 */
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import { page } from './page.ts';
import { checksum } from './pairs.ts';
import { propagation } from './propagation.ts';
import { growth, tenMinutes, wholeWorld } from './whole-world.ts';

const { values } = parseArgs({ options: { only: { type: 'string' } } });
const { only } = values;
if (only !== undefined && only !== 'engine' && only !== 'page') {
  process.stderr.write(`--only takes engine or page; got "${only}"\n`);
  process.exit(1);
}

console.log(`Node ${process.versions.node}, ${cpus()[0]?.model ?? 'processor unknown'}`);
if (only !== 'page') {
  for (const part of [propagation, wholeWorld, growth, tenMinutes]) console.log(`\n${part().join('\n')}`);
  console.log(`\n(time on the processor; sum of all results, so that none was left out: ${checksum()})`);
}
if (only !== 'engine') console.log(`\n${(await page()).join('\n')}`);
