import { once } from 'node:events';
import { get, type IncomingMessage } from 'node:http';
import { describe, expect, inject, it } from 'vitest';
import { accessibilityFaults } from './support/accessibility.ts';
import { openPage } from './support/page.ts';

describe('the built page', () => {
  it('opens without a message in the console, a breach of its policy or a request to another host', async () => {
    const { page, complaints, requests } = await openPage();
    await page.waitForLoadState('networkidle');
    expect(await page.title()).toBe('Proof-Mass Bench');
    expect(requests.length).toBeGreaterThan(1); // the listening works
    expect(complaints).toEqual([]);
  });

  it('has no fault that axe-core finds by WCAG 2.2 A and AA', async () => {
    const { page } = await openPage();
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('is served with a policy that forbids inline script and other hosts, in its header and in the page', async () => {
    const { page } = await openPage({ provokes: [/policy: script-src-elem forbids inline/, /console error/] });
    const policies = await page.evaluate(async () => {
      const header = (await fetch(location.href)).headers.get('content-security-policy');
      const meta = document.querySelector<HTMLMetaElement>('meta[http-equiv="Content-Security-Policy"]')?.content;
      return [header, meta];
    });
    for (const policy of policies) expect(policy).toContain("default-src 'self'; img-src 'self' blob:;");

    const ran = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "inline script ran"';
      document.head.append(script);
      return document.title;
    });
    expect(ran).toBe('Proof-Mass Bench');
  });

  it.for(['package.json', '../package.json', '..%2fpackage.json', 'assets/%2e%2e/%2e%2e/package.json'])(
    'answers 404 to /%s: only the built files are served',
    async (path) => {
      expect(await statusOf(path)).toBe(404);
    },
  );

  it('answers 200 to its own address', async () => {
    expect(await statusOf('')).toBe(200);
  });
});

/** HTTP status of a path asked for literally; `fetch` would resolve its dots. */
async function statusOf(path: string): Promise<number | undefined> {
  const { hostname, port } = new URL(inject('pageAddress'));
  const asked = get({ hostname, port, path: `/${path}` });
  const [answer] = (await once(asked, 'response')) as [IncomingMessage];
  answer.resume();
  return answer.statusCode;
}
