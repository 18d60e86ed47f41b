/**
 * Opens the built page as its user would see it and keeps what it complained about. All test files share one
 * browser and one server (global-setup.ts); every page has a context, hence storage, of its own.
 *
 *     const { page } = await openPage({ width: 1440, height: 900 });
 *
 * A page opened in a test closes at its end and fails the test if it complained, be it only in the console.
 */
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, expect, inject, onTestFinished } from 'vitest';
import { withoutWebGL } from './without-webgl.ts';

export interface PageOptions {
  /** Viewport [CSS px]; default 1440 × 900. */
  readonly width?: number;
  readonly height?: number;
  /** Address below the page's own, e.g. `?theme=evening` or `#lesson`; default the page itself. */
  readonly path?: string;
  /** false: as on a machine without WebGL; default true. */
  readonly webgl?: boolean;
  /** Further settings of the browser context: colorScheme, reducedMotion, hasTouch, deviceScaleFactor, offline … */
  readonly context?: BrowserContextOptions;
  /** Runs before the page is loaded: to fake a sensor or a port, or to listen. */
  readonly prepare?: (page: Page) => Promise<void>;
  /** Stays open to the end of the file, for pages opened in `beforeAll`; complaints are then the test's to check. */
  readonly keep?: boolean;
  /** Complaints that the test provokes on purpose; each must occur. */
  readonly provokes?: readonly RegExp[];
}

export interface OpenedPage {
  readonly page: Page;
  /** Console errors and warnings, uncaught errors, failed or foreign requests, and breaches of the policy, in order. */
  readonly complaints: readonly string[];
  /** Every address asked for, in order. */
  readonly requests: readonly string[];
  readonly close: () => Promise<void>;
}

let shared: Promise<Browser> | undefined;

afterAll(async () => {
  await (await shared)?.close();
  shared = undefined;
});

export async function openPage(options: PageOptions = {}): Promise<OpenedPage> {
  shared ??= chromium.connect(inject('browserAddress'));
  const browser = await shared;
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1440, height: options.height ?? 900 },
    locale: 'en-GB',
    timezoneId: 'UTC',
    ...options.context,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  await listen(page, complaints, requests);
  if (options.webgl === false) await withoutWebGL(page);
  await options.prepare?.(page);

  const close = () => context.close();
  if (!options.keep) {
    onTestFinished(async () => {
      // Breaches are reported by a task of the page that may still wait in its queue.
      if (!page.isClosed()) await page.evaluate(() => new Promise<void>((done) => setTimeout(done)));
      await close();
      const provoked = options.provokes ?? [];
      expect(complaints.filter((text) => !provoked.some((pattern) => pattern.test(text)))).toEqual([]);
      expect(provoked.filter((pattern) => !complaints.some((text) => pattern.test(text)))).toEqual([]);
    });
  }
  await page.goto(new URL(options.path ?? '', inject('pageAddress')).href);
  return { page, complaints, requests, close };
}

async function listen(page: Page, complaints: string[], requests: string[]): Promise<void> {
  const home = new URL(inject('pageAddress')).origin;
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') {
      complaints.push(`console ${message.type()}: ${message.text()}`);
    }
  });
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.stack ?? error.message}`));
  page.on('crash', () => complaints.push('the page crashed'));
  page.on('request', (request) => {
    const url = request.url();
    requests.push(url);
    if (!url.startsWith('blob:') && new URL(url).origin !== home) complaints.push(`foreign request: ${url}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`answer ${response.status()}: ${response.url()}`);
  });
  await page.exposeFunction('reportPolicyBreach', (text: string) => complaints.push(`policy: ${text}`));
  await page.addInitScript(() => {
    const report = (globalThis as unknown as { reportPolicyBreach: (text: string) => void }).reportPolicyBreach;
    document.addEventListener('securitypolicyviolation', (event) => {
      report(`${event.effectiveDirective} forbids ${event.blockedURI} (${event.sourceFile}:${event.lineNumber})`);
    });
  });
}
