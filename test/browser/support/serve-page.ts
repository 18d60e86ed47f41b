/** Builds and serves the page with the very command a user starts it with, in a process of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from '../../../src/command/install.mjs';

export interface ServedPage {
  /** With a slash at its end. */
  readonly address: string;
  /** Folder of the built page. */
  readonly folder: string;
  readonly close: () => void;
}

/** Longest wait for the page to be built and served [ms]; measured: 2 s on two cores. */
const START_LIMIT_MS = 120_000;

export async function servePage(): Promise<ServedPage> {
  // A folder of its own: neither another run of the tests nor a running `npm start` may lose its page.
  const cache = join(projectRoot, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'page-'));
  const server = spawn(process.execPath, ['src/command/run.mjs', 'src/command/start.ts', '--folder', folder], {
    cwd: projectRoot,
    env: { ...process.env, PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const close = () => {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    return { address: await servedAddress(server), folder, close };
  } catch (error) {
    close();
    throw error;
  }
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
