import type { Page } from 'playwright-core';

/** What the page loads next finds a browser without WebGL. */
export async function withoutWebGL(page: Page): Promise<void> {
  await page.addInitScript(withholdWebGL);
}

/** Runs in the page. */
function withholdWebGL(): void {
  for (const canvas of [HTMLCanvasElement, OffscreenCanvas]) {
    const original = canvas.prototype.getContext as (kind: string, settings?: unknown) => unknown;
    canvas.prototype.getContext = function (this: unknown, kind: string, settings?: unknown) {
      return kind.startsWith('webgl') || kind === 'webgpu' ? null : original.call(this, kind, settings);
    } as typeof canvas.prototype.getContext;
  }
}
