/**
 * `npm test`: type checks, lint and format, then the tests in Node and those that drive the built page in a
 * browser. Everything runs even if something before it failed; the last line counts it all.
 * `npm test -- --only types|node|browser` runs a part.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Count } from './count-reporter.ts';
import { type Browser, findBrowser, NO_BROWSER } from './find-browser.ts';
import { projectRoot } from './install.mjs';

const PARTS = ['types', 'node', 'browser'];

const { values } = parseArgs({ options: { only: { type: 'string' } } });
if (values.only !== undefined && !PARTS.includes(values.only)) {
  process.stderr.write(`--only takes one of ${PARTS.join(', ')}; got "${values.only}"\n`);
  process.exit(1);
}
const parts = values.only === undefined ? PARTS : [values.only];

const counts: Count[] = [];
if (parts.includes('types')) {
  counts.push(check('types without the DOM', 'typescript/bin/tsc', '-p', 'tsconfig.headless.json'));
  counts.push(check('types', 'typescript/bin/tsc', '-p', 'tsconfig.json'));
  counts.push(check('lint and format', '@biomejs/biome/bin/biome', 'check', '--error-on-warnings'));
}
const projects = parts.filter((part) => part !== 'types');
if (projects.includes('browser') && browser() === undefined) {
  projects.pop();
  counts.push({ passed: 0, failed: 1, skipped: 0 });
}
if (projects.length > 0) counts.push(runTests(projects));

const total = (key: keyof Count) => counts.reduce((sum, count) => sum + count[key], 0);
const skipped = total('skipped') > 0 ? `, ${total('skipped')} skipped` : '';
console.log(`${total('passed')} passed, ${total('failed')} failed${skipped}`);
process.exitCode = total('failed') > 0 ? 1 : 0;

/** Runs a tool out of node_modules on the whole project. */
function tool(path: string, ...args: readonly string[]): boolean {
  const script = join(projectRoot, 'node_modules', path);
  return (
    spawnSync(process.execPath, [script, ...args], { cwd: projectRoot, stdio: ['ignore', 'inherit', 'inherit'] })
      .status === 0
  );
}

function check(name: string, path: string, ...args: readonly string[]): Count {
  console.log(`Checking ${name} …`);
  const passed = tool(path, ...args);
  if (!passed) console.log(`✗ ${name}`);
  return { passed: Number(passed), failed: Number(!passed), skipped: 0 };
}

function browser(): Browser | undefined {
  try {
    const found = findBrowser();
    console.log(found === undefined ? NO_BROWSER : `Browser for the tests: ${found.path}`);
    return found;
  } catch (error) {
    console.log(error instanceof Error ? error.message : String(error));
    return undefined;
  }
}

/** Runs tests and reads what count-reporter.ts counted. */
function runTests(names: readonly string[]): Count {
  const cache = join(projectRoot, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const file = join(cache, `test-count-${process.pid}.json`);
  process.env.COUNT_FILE = file;
  const projects = names.flatMap((name) => ['--project', name]);
  const succeeded = tool(
    'vitest/vitest.mjs',
    'run',
    ...projects,
    '--reporter=default',
    '--reporter=./src/command/count-reporter.ts',
  );
  if (!existsSync(file)) return { passed: 0, failed: 1, skipped: 0 }; // the runner did not come to its end
  const count = JSON.parse(readFileSync(file, 'utf8')) as Count;
  rmSync(file);
  return succeeded ? count : { ...count, failed: Math.max(count.failed, 1) };
}
