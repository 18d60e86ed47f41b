/**
 * `npm run mutants`: plants one deliberate fault after the other and demands that the check named beside it,
 * which rests on an outside source, fails. Prints a table; a survivor, or a check that fails without a fault,
 * makes it exit with 1. `npm run mutants -- words` takes only those whose name holds the words.
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { MUTANTS } from './mutants.ts';
import type { Mutant } from './plant.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** One for each of the two cores that the project is measured on. */
const AT_ONCE = 2;
/** A fault may make a run endless; that counts as found [ms]. */
const LONGEST_MS = 90_000;

type Outcome = 'passes' | 'fails' | 'no such test';

/** Runs one named check, with a fault planted or without. */
function check(mutant: Mutant, planted: boolean): Promise<Outcome> {
  const args = ['vitest', 'run', mutant.killedBy, '-t', mutant.test, '--project', 'node', '--reporter', 'json'];
  const env = { ...process.env, MUTANT: planted ? JSON.stringify(mutant) : '' };
  return new Promise((resolve) => {
    const child = spawn('npx', args, { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'ignore'], detached: true });
    let output = '';
    child.stdout.on('data', (chunk: Buffer) => {
      output += chunk.toString();
    });
    const timer = setTimeout(() => {
      if (child.pid) process.kill(-child.pid, 'SIGKILL');
      resolve('fails');
    }, LONGEST_MS);
    child.on('close', (code) => {
      clearTimeout(timer);
      const ran = /"numPassedTests":(\d+)/.exec(output)?.[1] ?? '0';
      if (code === 0) resolve(Number(ran) > 0 ? 'passes' : 'no such test');
      else resolve('fails');
    });
  });
}

async function verdict(
  mutant: Mutant,
): Promise<{ readonly mutant: Mutant; readonly words: string; readonly ok: boolean }> {
  const count = readFileSync(`${ROOT}/${mutant.file}`, 'utf8').split(mutant.find).length - 1;
  if (count !== 1) return { mutant, words: `cannot be planted: found ${count} times`, ok: false };
  const sound = await soundness(mutant);
  if (sound !== 'passes') return { mutant, words: `the check ${sound} without the fault`, ok: false };
  const outcome = await check(mutant, true);
  return { mutant, words: outcome === 'fails' ? 'found' : 'SURVIVED', ok: outcome === 'fails' };
}

const sound = new Map<string, Promise<Outcome>>();

/** Each check must pass, and run at all, without a fault; looked at once a check. */
function soundness(mutant: Mutant): Promise<Outcome> {
  const key = `${mutant.killedBy} ${mutant.test}`;
  let outcome = sound.get(key);
  if (!outcome) {
    outcome = check(mutant, false);
    sound.set(key, outcome);
  }
  return outcome;
}

const wanted = process.argv[2];
const left = MUTANTS.filter(({ name }) => !wanted || name.includes(wanted));
const all = left.length;
let found = 0;
const width = Math.max(...left.map(({ name }) => name.length));
await Promise.all(
  Array.from({ length: AT_ONCE }, async () => {
    for (let next = left.shift(); next; next = left.shift()) {
      const { mutant, words, ok } = await verdict(next);
      if (ok) found += 1;
      console.log(`${mutant.name.padEnd(width)}  ${words.padEnd(10)}  ${mutant.killedBy}: ${mutant.test}`);
    }
  }),
);
console.log(`${found} of ${all} faults found`);
process.exit(found === all && all > 0 ? 0 : 1);
