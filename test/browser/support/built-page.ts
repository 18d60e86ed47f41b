import { type Browser, chromium } from 'playwright-core';
import { launchBrowser } from './launch.ts';
import { type ServedPage, servePage } from './serve-page.ts';

export interface BuiltPage extends ServedPage {
  readonly browser: Browser;
}

/** The built page and a browser for what is no test: pictures and benchmarks. Both end with the work. */
export async function withBuiltPage<Result>(work: (built: BuiltPage) => Promise<Result>): Promise<Result> {
  const page = await servePage();
  try {
    const server = await launchBrowser();
    try {
      return await work({ ...page, browser: await chromium.connect(server.wsEndpoint()) });
    } finally {
      await server.close();
    }
  } finally {
    page.close();
  }
}
