/**
 * `node src/command/run.mjs <entry.ts> [arguments]`: installs what is missing, then runs a TypeScript entry in
 * this very process, so that its streams, signals and exit code are untouched. Prints nothing on stdout.
 */
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, projectRoot } from './install.mjs';

/** Major and minor; package.json says the same to npm. */
const OLDEST_NODE = [20, 19];

const [node, , entry, ...rest] = process.argv;
if (entry === undefined || node === undefined)
  throw new Error('run.mjs needs the path of an entry, e.g. src/command/start.ts');
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE;
if (major < oldestMajor || (major === oldestMajor && minor < oldestMinor)) {
  fail(`Node ${OLDEST_NODE.join('.')} or newer is needed; this is ${process.versions.node}.`);
}
try {
  ensureInstalled();
} catch (error) {
  fail(error instanceof Error ? error.message : String(error));
}
const { register } = await import('tsx/esm/api');
register({ tsconfig: resolve(projectRoot, 'tsconfig.json') });
const path = resolve(projectRoot, entry);
process.argv = [node, path, ...rest]; // as if Node had been started with the entry itself
await import(pathToFileURL(path).href);

/**
 * @param {string} message
 * @returns {never}
 */
function fail(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}
