import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { plantMutant } from './test/mutants/plant.ts';

/** Everything from our own host only; blob: for pictures and clips that the page itself makes. */
const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "img-src 'self' blob:",
  "media-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy into the built page as well, so that it holds on any web server. Not in development: Vite's own styles are inline there. */
const policyInPage: Plugin = {
  name: 'policy-in-page',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY_POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

export default defineConfig(({ command }) => {
  // A test runner's or a shell's NODE_ENV would bundle the development builds of the libraries.
  if (command === 'build') process.env.NODE_ENV = 'production';
  return {
    root: fileURLToPath(new URL('.', import.meta.url)),
    base: './', // runs from any folder of a web server
    appType: 'mpa', // an unknown address is an error, not the page again
    plugins: [policyInPage, plantMutant()],
    build: {
      target: 'es2022',
      assetsInlineLimit: 0, // the policy allows no data: addresses
      modulePreload: { polyfill: false },
    },
    preview: {
      cors: false,
      headers: {
        // frame-ancestors works in a header only.
        'Content-Security-Policy': `${CONTENT_SECURITY_POLICY}; frame-ancestors 'none'`,
        'X-Content-Type-Options': 'nosniff',
        'Referrer-Policy': 'no-referrer',
      },
    },
    test: {
      allowOnly: false,
      projects: [
        {
          extends: true,
          test: {
            name: 'node',
            include: ['test/**/*.test.ts'],
            exclude: ['test/**/*.browser.test.ts'],
            testTimeout: 30_000,
            sequence: { groupOrder: 0 },
          },
        },
        {
          extends: true,
          test: {
            name: 'browser',
            include: ['test/browser/**/*.browser.test.ts'],
            globalSetup: 'test/browser/support/global-setup.ts',
            testTimeout: 120_000,
            hookTimeout: 120_000,
            maxWorkers: 1, // one page at a time: without a graphics card drawing fills every core
            sequence: { groupOrder: 1 },
          },
        },
      ],
    },
  };
});
