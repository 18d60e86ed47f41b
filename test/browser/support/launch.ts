/** Starts the browser for the tests: no graphics card, no network but this machine. */
import { type BrowserServer, chromium } from 'playwright-core';
import { findBrowser, NO_BROWSER } from '../../../src/command/find-browser.ts';

/** How WebGL is drawn without a graphics card; GRAPHICS picks one. The pictures of the two differ in single pixels. */
const GRAPHICS = {
  /** Part of the browser: runs everywhere. */
  swiftshader: ['--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
  /** Mesa's (Debian: libegl-mesa0, libgl1-mesa-dri): two to three times as fast. */
  llvmpipe: ['--use-angle=gl-egl', '--ignore-gpu-blocklist'],
};

const ARGUMENTS = [
  '--disable-background-networking',
  '--disable-component-update',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1',
];

export async function launchBrowser(): Promise<BrowserServer> {
  const browser = findBrowser();
  if (browser === undefined) throw new Error(NO_BROWSER);
  const graphics = process.env.GRAPHICS ?? 'swiftshader';
  if (graphics !== 'swiftshader' && graphics !== 'llvmpipe') {
    throw new Error(`GRAPHICS must be swiftshader or llvmpipe, got "${graphics}"`);
  }
  return await chromium.launchServer({
    executablePath: browser.path,
    // The sandbox cannot be set up by root nor in many containers; what is opened is our own page only.
    chromiumSandbox: false,
    args: [...ARGUMENTS, ...GRAPHICS[graphics]],
    env: { ...process.env, ...browser.environment },
  });
}
