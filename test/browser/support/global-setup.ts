/**
 * Once for all browser tests: builds and serves the page with the very command a user starts it with, and
 * starts the browser. Both are real processes; the tests only learn their addresses.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { projectRoot } from '../../../src/command/install.mjs';
import { launchBrowser } from './launch.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built page, with a slash at its end. */
    pageAddress: string;
    /** Where to reach the browser. */
    browserAddress: string;
  }
}

/** Longest wait for the page to be built and served [ms]; measured: 2 s on two cores. */
const START_LIMIT_MS = 120_000;

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const browser = await launchBrowser();
  // A folder of its own: neither another run of the tests nor a running `npm start` may lose its page.
  const cache = join(projectRoot, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'page-'));
  const server = spawn(process.execPath, ['src/command/run.mjs', 'src/command/start.ts', '--folder', folder], {
    cwd: projectRoot,
    env: { ...process.env, PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const teardown = async () => {
    server.kill();
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    project.provide('pageAddress', await servedAddress(server));
    project.provide('browserAddress', browser.wsEndpoint());
  } catch (error) {
    await teardown();
    throw error;
  }
  return teardown;
}

function servedAddress(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let output = '';
    const timer = setTimeout(
      () => reject(new Error(`the page was not served in time; it said:\n${output}`)),
      START_LIMIT_MS,
    );
    server.stdout?.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      const address = /http:\/\/\S+\//.exec(output)?.[0];
      if (address === undefined) return;
      clearTimeout(timer);
      resolve(address);
    });
    server.once('exit', (code) => {
      clearTimeout(timer);
      reject(new Error(`the page could not be built and served (code ${code}); it said:\n${output}`));
    });
  });
}
