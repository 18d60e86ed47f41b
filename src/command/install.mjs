/**
 * Brings node_modules to the state of the lock file. Plain JavaScript and no dependency: it runs on a fresh
 * clone, before anything is installed. Says what it does on stderr, so that stdout stays a command's own.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectRoot = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/**
 * Whether what npm says it has installed is what the lock file asks for. Contents are compared, not file
 * times: copying and switching branches change those. Packages for other platforms may be absent.
 *
 * @param {string} lockText package-lock.json
 * @param {string} installedText node_modules/.package-lock.json
 * @returns {boolean}
 */
export function matchesLock(lockText, installedText) {
  /** @typedef {{version?: string, optional?: boolean, devOptional?: boolean}} Entry */
  /** @type {Record<string, Entry>} */
  const wanted = JSON.parse(lockText).packages;
  /** @type {Record<string, Entry>} */
  const present = JSON.parse(installedText).packages;
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === '') return true; // the project itself
    const found = present[path];
    if (found === undefined) return entry.optional === true || entry.devOptional === true;
    return found.version === entry.version;
  });
}

/** Runs `npm ci` if needed. Throws an error fit to be shown to a person if it fails. */
export function ensureInstalled() {
  const installed = join(projectRoot, 'node_modules', '.package-lock.json');
  const lock = join(projectRoot, 'package-lock.json');
  if (existsSync(installed) && matchesLock(readFileSync(lock, 'utf8'), readFileSync(installed, 'utf8'))) return;

  process.stderr.write('Installing dependencies (npm ci) …\n');
  // Inside an npm script this names npm's own entry point, which needs no shell on any platform.
  const npm = process.env.npm_execpath?.endsWith('npm-cli.js') ? process.env.npm_execpath : undefined;
  // NODE_ENV=production would leave out the build tools; they are needed to build the page.
  const options = ['ci', '--include=dev', '--loglevel=error'];
  const result = npm
    ? spawnSync(process.execPath, [npm, ...options], { cwd: projectRoot, stdio: ['ignore', 2, 2] })
    : spawnSync('npm', options, { cwd: projectRoot, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
  if (result.status !== 0) {
    const why = result.error ? result.error.message : `it ended with code ${result.status ?? result.signal}`;
    throw new Error(`"npm ci" could not install the dependencies: ${why}. It needs access to an npm registry.`);
  }
}
