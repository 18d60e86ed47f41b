/** `npm run benchmark`: prints what the engine costs. Figures are medians (10 … 90 %); nothing is asserted. */
import { cpus } from 'node:os';
import { checksum } from './pairs.ts';
import { propagation } from './propagation.ts';
import { growth, tenMinutes, wholeWorld } from './whole-world.ts';

console.log(`Node ${process.versions.node}, ${cpus()[0]?.model ?? 'processor unknown'}; time on the processor`);
for (const part of [propagation, wholeWorld, growth, tenMinutes]) console.log(`\n${part().join('\n')}`);
console.log(`\n(sum of all results, so that none was left out: ${checksum()})`);
