/**
 * What the page costs: script for a frame, script fetched before the first one, and a tape of ten minutes pulled about.
 * Nearly nothing is drawn (a few hundred pixels, no shadows), so that a machine without a graphics card measures the
 * page and not its graphics.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type BuiltPage, withBuiltPage } from '../browser/support/built-page.ts';
import { ScriptedBench } from '../browser/support/scripted-bench.ts';
import { line, scaled, spreadOf } from './pairs.ts';
import { type Deed, FRAME_MS, timedFrames } from './timed-frames.ts';

/** Of the 16.7 ms of a frame, the most that should be script [ms]. */
const FRAME_AIM_MS = 4;
/** The most script that should be fetched before something moves [kB]. */
const LOAD_AIM_KB = 350;

/** Half as fast as life a fall from 0.4 m takes 34 frames, to be carried back up some 120. */
const SLOWED = 2;
/** Letters pressed, by frame: held, let fall, landed and bounced, carried up, shaken. */
const HANDLED: Readonly<Record<number, string>> = { 20: 'd', 110: 's' };
const FRAMES = 320;

const LONG_TAPE_S = 600;
const PULLED_FRAMES = 50;

export async function page(): Promise<string[]> {
  return withBuiltPage(async (built) => [
    'The page, in a browser',
    ...(await firstLoad(built)),
    ...(await frames(built)),
    ...(await longTape(built)),
  ]);
}

/** A bench on a page of its own. */
async function withBench<Result>(
  { browser, address }: BuiltPage,
  work: (bench: ScriptedBench, fetched: readonly string[]) => Promise<Result>,
): Promise<Result> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
  const opened = await context.newPage();
  const fetched: string[] = [];
  opened.on('response', (response) => fetched.push(new URL(response.url()).pathname));
  await opened.goto(`${address}?script=light`);
  const result = await work(await ScriptedBench.drive(opened), fetched);
  await context.close();
  return result;
}

/** Script that had been fetched when the first two frames had been drawn, as a web server would pack it. */
function firstLoad(built: BuiltPage): Promise<string[]> {
  return withBench(built, async (bench, fetched) => {
    await bench.frames(2 * FRAME_MS);
    const kilobytes = (ending: string, packed: (data: Buffer) => number): number =>
      fetched
        .filter((path) => path.endsWith(ending))
        .reduce((sum, path) => sum + packed(readFileSync(join(built.folder, path))), 0) / 1000;
    const zipped = (data: Buffer): number => gzipSync(data).length;
    const script = kilobytes('.js', zipped);
    const files = fetched.filter((path) => path.endsWith('.js')).length;
    const beside = `styles ${kilobytes('.css', zipped).toFixed(0)} kB, typefaces ${kilobytes('.woff2', (data) => data.length).toFixed(0)} kB`;
    return [
      `  script before the first moving frame, gzipped: ${script.toFixed(0)} kB in ${files} files (aim: at most ${LOAD_AIM_KB} kB)`,
      `  beside it: ${beside}`,
    ];
  });
}

function frames(built: BuiltPage): Promise<string[]> {
  return withBench(built, async (bench) => {
    for (const name of ['acceleration', 'velocity', 'height'])
      await bench.tell('act', { what: 'line', line: name, shown: true });
    await bench.tell('setting', { name: 'slowdown', value: SLOWED, final: true });
    const deeds = Array.from({ length: FRAMES }, (_, k): Deed | undefined => {
      const letter = HANDLED[k];
      return letter === undefined ? undefined : { letter };
    });
    const handled = async (drawn = true) => {
      await bench.tell('act', { what: 'fresh run' });
      await bench.runTo(bench.wallMs + 6000); // the tape is written full
      return timedFrames(bench, deeds, { drawn });
    };
    await handled(); // until everything has been compiled
    const first = spreadOf(await handled());
    const again = spreadOf(await handled());
    const engine = spreadOf(await handled(false));
    const buffers = await bench.page.evaluate(() =>
      ['.riding-canvas', '.room-canvas'].map((name) => {
        const { width, height } = document.querySelector<HTMLCanvasElement>(name)!;
        return `${width} × ${height}`;
      }),
    );
    return [
      `  ${FRAMES} frames of hold, fall, landing and shaking at 1440 × 900, all lines; ${buffers.join(' and ')} pixels drawn, no shadows`,
      line('script of a frame', first, `ms, aim: at most ${FRAME_AIM_MS} ms`),
      line('the same run once more, over it (noise)', scaled(again, 1 / first.median), '×'),
      line('a frame over the engine’s part of one', scaled(first, 1 / engine.median), '×'),
    ];
  });
}

/** Ten minutes with a drop every six seconds, then paused: zoomed and pulled by the wheel, once a frame. */
function longTape(built: BuiltPage): Promise<string[]> {
  return withBench(built, async (bench) => {
    await bench.tell('setting', { name: 'slowdown', value: 1, final: true });
    for (let fromS = 0; fromS < LONG_TAPE_S; fromS += 6) {
      await bench.letter('h');
      await bench.runTo((fromS + 2.5) * 1000, 5);
      await bench.letter('d');
      await bench.runTo((fromS + 6) * 1000, 5);
    }
    await bench.tell('act', { what: 'pause' });
    const { rows, seconds } = await bench.page.evaluate(() => {
      const { tape } = window.benchScript!.page.session.run;
      return { rows: tape.endRow - tape.firstRow, seconds: tape.endRow / tape.rateHz };
    });
    const stretches: readonly (readonly [string, readonly [number, number]])[] = [
      ['zooming out, from 2.4 s to all of it', [0, 46.4]],
      ['pulling back five minutes of it', [-5, 0]],
      ['zooming in to 6 s', [0, -38.6]],
      ['pulling on at that width', [5, 0]],
      ['zooming in to 0.06 s', [0, -38.6]],
      ['pulling back at that width', [-5, 0]],
    ];
    const lines = [
      `  A tape of ${seconds.toFixed(0)} s, ${rows} rows, at hand: script of a frame, with the wheel's own`,
    ];
    const all: number[] = [];
    for (const [words, wheel] of stretches) {
      const deeds = Array.from({ length: PULLED_FRAMES }, (): Deed => ({ wheel }));
      const times = await timedFrames(bench, deeds);
      lines.push(line(words, spreadOf(times), 'ms'));
      all.push(...times);
    }
    lines.push(line('all of these', spreadOf(all), `ms, aim: at most ${FRAME_AIM_MS} ms`));
    return lines;
  });
}
