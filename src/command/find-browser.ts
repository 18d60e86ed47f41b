/**
 * Which browser the tests drive: the one CHROMIUM names, else an installed Chromium or Chrome, else the one
 * packed in @sparticuz/chromium (Linux on x64), unpacked once into node_modules/.cache. Nothing is downloaded.
 */
import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { projectRoot } from './install.mjs';

export interface Browser {
  readonly path: string;
  /** Environment it has to be started with, beside the usual one. */
  readonly environment: Readonly<Record<string, string>>;
}

export const NO_BROWSER =
  'No browser found for the browser tests: install Chromium or Chrome (Debian: apt-get install chromium) ' +
  'or name the program in the environment variable CHROMIUM.';

const PROGRAMS = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

const APPLICATIONS = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** The browser, or undefined where there is none. A CHROMIUM that cannot be run is an error. */
export function findBrowser(): Browser | undefined {
  const named = process.env.CHROMIUM;
  if (named !== undefined && named !== '') {
    if (!isProgram(named)) throw new Error(`CHROMIUM names no program that can be run: "${named}"`);
    return { path: named, environment: {} };
  }
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = [...folders.flatMap((folder) => PROGRAMS.map((name) => join(folder, name))), ...APPLICATIONS];
  const installed = candidates.find(isProgram);
  if (installed !== undefined) return { path: installed, environment: {} };
  return process.platform === 'linux' && process.arch === 'x64' ? unpackedBrowser() : undefined;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function unpackedBrowser(): Browser {
  const cache = join(projectRoot, 'node_modules', '.cache');
  const home = join(cache, 'chromium');
  if (!existsSync(home)) {
    // Unpacked aside and moved into place at once: another run never finds half a browser.
    mkdirSync(cache, { recursive: true });
    const aside = mkdtempSync(join(cache, 'unpacking-'));
    unpackInto(aside);
    try {
      renameSync(aside, home);
    } catch (error) {
      rmSync(aside, { recursive: true });
      if (!existsSync(home)) throw error; // else another run was first
    }
  }
  const libraries = join(home, 'al2023', 'lib');
  const inherited = process.env.LD_LIBRARY_PATH;
  return {
    path: join(home, 'chromium'),
    environment: {
      FONTCONFIG_PATH: join(home, 'fonts'),
      // Its own copies of NSS and others, for machines without them.
      LD_LIBRARY_PATH: inherited ? `${libraries}${delimiter}${inherited}` : libraries,
    },
  };
}

/** In a process of its own, since the package changes the environment of the one that loads it. */
function unpackInto(folder: string): void {
  const script = "import browser from '@sparticuz/chromium'; await browser.executablePath();";
  execFileSync(process.execPath, ['--input-type=module', '--eval', script], {
    cwd: projectRoot,
    // It unpacks into the temporary folder, and its libraries only where it takes the machine for a bare one.
    env: { ...process.env, TMPDIR: folder, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}
