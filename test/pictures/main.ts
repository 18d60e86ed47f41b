/**
 * `npm run pictures`: the built bench as it looks in hold, fall, landing and so on, at the sizes it is designed for,
 * to be looked at: test/pictures/out/fall-1440x900.png and so on. `--only fall` and `--size 1440x900` pick some (both
 * may be given again); `--readme` makes README.md's pictures instead. GRAPHICS=llvmpipe is faster where Mesa is.
 */
import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Browser, BrowserContextOptions } from 'playwright-core';
import { projectRoot } from '../../src/command/install.mjs';
import { withBuiltPage } from '../browser/support/built-page.ts';
import { ScriptedBench } from '../browser/support/scripted-bench.ts';
import { withoutWebGL } from '../browser/support/without-webgl.ts';
import { README_SCENES, SCENES, type Scene, SIZES, type Size } from './scenes.ts';

const OUT = join(projectRoot, 'test', 'pictures', 'out');
const README = join(projectRoot, 'test', 'pictures', 'readme');
/** Width of README.md's pictures and of the page shown in them [px]. */
const README_WIDTH = { picture: 1200, page: 1440 };
const JPEG_QUALITY = 76;
/** Drawings of a scene that stands still after which its shadows are as soft as they get, and one to spare. */
const DRAWINGS = 17;
/** Until a browser without a graphics card has drawn all that [ms]. */
const DRAWN_WITHIN_MS = 120_000;

const options = { only: { type: 'string', multiple: true }, size: { type: 'string', multiple: true } } as const;
const { values } = parseArgs({ options: { ...options, readme: { type: 'boolean', default: false } } });
const names = chosen(
  'only',
  values.only,
  SCENES.map(({ name }) => name),
);
const sizes = chosen('size', values.size, SIZES);
const scenes = SCENES.filter(({ name }) => names.includes(name) && (!values.readme || README_SCENES.includes(name)));

await withBuiltPage(async ({ browser, address }) => {
  mkdirSync(values.readme ? README : OUT, { recursive: true });
  for (const scene of scenes) {
    if (values.readme) {
      const deviceScaleFactor = README_WIDTH.picture / README_WIDTH.page;
      await take(browser, address, scene, '1440x900', join(README, `${scene.name}.jpg`), { deviceScaleFactor });
      continue;
    }
    for (const size of sizes.filter((each) => scene.sizes?.includes(each) ?? true))
      await take(browser, address, scene, size, join(OUT, `${scene.name}-${size}.png`), deviceOf(size));
  }
});

function chosen<Name extends string>(option: string, wanted: readonly string[] | undefined, known: readonly Name[]) {
  const unknown = wanted?.find((name) => !known.includes(name as Name));
  if (unknown !== undefined) {
    process.stderr.write(`--${option} takes one of ${known.join(', ')}; got "${unknown}"\n`);
    process.exit(1);
  }
  return wanted === undefined ? known : known.filter((name) => wanted.includes(name));
}

/** The narrow one is a phone: fine pixels, touched. */
function deviceOf(size: Size): BrowserContextOptions {
  return size === '390x844' ? { deviceScaleFactor: 2, isMobile: true, hasTouch: true } : {};
}

async function take(
  browser: Browser,
  address: string,
  scene: Scene,
  size: Size,
  path: string,
  device: BrowserContextOptions,
): Promise<void> {
  const [width = 0, height = 0] = size.split('x').map(Number);
  const context = await browser.newContext({
    viewport: { width, height },
    locale: 'en-GB',
    timezoneId: 'UTC',
    ...device,
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => console.log(`  uncaught: ${error.stack ?? error.message}`));
  if (scene.webgl === false) await withoutWebGL(page);
  await page.goto(`${address}?script`);
  const bench = await ScriptedBench.drive(page);
  await bench.frames(100, 10);
  await skipShortWayIn(bench);
  await scene.play(bench);
  await drawStill(bench);
  await page.screenshot({
    path,
    fullPage: scene.wholePage ?? false,
    timeout: DRAWN_WITHIN_MS,
    ...(path.endsWith('.jpg') ? { type: 'jpeg', quality: JPEG_QUALITY } : {}),
  });
  await context.close();
  console.log(`${path.slice(projectRoot.length + 1)}  ${(statSync(path).size / 1000).toFixed(0)} kB`);
}

/** As a visitor does who knows the bench; the lessons then lie open. */
async function skipShortWayIn(bench: ScriptedBench): Promise<void> {
  const { page } = bench;
  await page.getByRole('button', { name: 'skip to the lessons' }).click();
  const lesson = page.locator('lesson-sheet').getByRole('button').first();
  for (let k = 0; !(await lesson.isVisible()); k += 1) {
    if (k > 100) throw new Error('the lessons do not come');
    await page.waitForTimeout(100); // they are fetched
    await bench.frames(bench.wallMs + 10, 100);
  }
  await page.evaluate(() => window.scrollTo(0, 0));
}

/** Draws the same instant until boxes, words and shadows have come to rest. */
async function drawStill({ page, wallMs }: ScriptedBench): Promise<void> {
  await page.waitForTimeout(100); // what the last frame changed on the page may move a box
  await page.evaluate(
    ([at, drawings]) => {
      for (let k = 0; k < drawings!; k += 1) window.benchScript!.frame(at!);
    },
    [wallMs, DRAWINGS],
  );
  await page.waitForTimeout(300); // keys and lever move to their places
}
