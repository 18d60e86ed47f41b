/** Runs our own modules inside the browser, to compare with what they do in Node. */
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';

/**
 * Bundles a TypeScript module and calls one of its exported functions in the page, with arguments and a result
 * that JSON can carry. It goes in through the debugger, so the page's policy stays as it is.
 */
export async function runInPage<Result>(page: Page, module: URL, name: string, ...args: unknown[]): Promise<Result> {
  const bundle = await bundled(fileURLToPath(module));
  return (await page.evaluate(
    `(() => { ${bundle}; return bundle[${JSON.stringify(name)}](...${JSON.stringify(args)}); })()`,
  )) as Result;
}

const bundles = new Map<string, Promise<string>>();

function bundled(path: string): Promise<string> {
  const known = bundles.get(path) ?? bundle(path);
  bundles.set(path, known);
  return known;
}

async function bundle(path: string): Promise<string> {
  const output = await build({
    configFile: false,
    logLevel: 'warn',
    // Unminified, as Node runs it; strict mode and ES2022 like the page.
    build: { write: false, minify: false, target: 'es2022', lib: { entry: path, formats: ['iife'], name: 'bundle' } },
  });
  const [first] = Array.isArray(output) ? output : [output];
  if (first === undefined || !('output' in first)) throw new Error(`nothing was bundled from ${path}`);
  return first.output[0].code;
}
