/**
 * Once for all browser tests: serves the built page and starts the browser. Both are real processes; the tests
 * only learn their addresses.
 */
import type { TestProject } from 'vitest/node';
import { launchBrowser } from './launch.ts';
import { servePage } from './serve-page.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built page, with a slash at its end. */
    pageAddress: string;
    /** Where to reach the browser. */
    browserAddress: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const browser = await launchBrowser();
  try {
    const page = await servePage();
    project.provide('pageAddress', page.address);
    project.provide('browserAddress', browser.wsEndpoint());
    return async () => {
      page.close();
      await browser.close();
    };
  } catch (error) {
    await browser.close();
    throw error;
  }
}
