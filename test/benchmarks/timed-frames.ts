/**
 * Frames of the page, each timed: at wall times of our own, one for each that the screen asks for. What counts is the
 * time that the page's thread spends in script, on the processor, by the browser's own books: other processes do not count.
 */
import type { ScriptedBench } from '../browser/support/scripted-bench.ts';

/** What is done at a frame: a letter pressed, or the wheel turned over the tape [px]. */
export type Deed = { readonly letter: string } | { readonly wheel: readonly [across: number, along: number] };

/** Between two frames [ms]. */
export const FRAME_MS = 1000 / 60;

/** Script of each frame [ms], one for each entry: the deed, the run up to it and, unless told otherwise, drawing it. */
export async function timedFrames(
  bench: ScriptedBench,
  deeds: readonly (Deed | undefined)[],
  { drawn = true } = {},
): Promise<readonly number[]> {
  const { page } = bench;
  const books = await page.context().newCDPSession(page);
  await books.send('Performance.enable', { timeDomain: 'threadTicks' });
  const scriptMs = async (): Promise<number> => {
    const { metrics } = await books.send('Performance.getMetrics');
    return 1000 * metrics.find(({ name }) => name === 'ScriptDuration')!.value;
  };
  const times: number[] = [];
  let before = await scriptMs();
  for (const deed of deeds) {
    bench.wallMs += FRAME_MS;
    await frame(bench, deed, drawn);
    const after = await scriptMs();
    times.push(after - before);
    before = after;
  }
  await books.detach();
  return times;
}

/** In a callback of the page's own, as on the screen: what the debugger has evaluated stands in no book. */
async function frame({ page, wallMs }: ScriptedBench, deed: Deed | undefined, drawn: boolean): Promise<void> {
  await page.evaluate(
    ([atMs, wanted, draws]) =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => {
          const door = window.benchScript!;
          if (wanted && 'letter' in wanted)
            door.at(atMs, () =>
              window.dispatchEvent(new KeyboardEvent('keydown', { key: wanted.letter, bubbles: true })),
            );
          if (wanted && 'wheel' in wanted)
            door.at(atMs, () => {
              const tape = document.querySelector('.tape-paper-hand')!;
              const [deltaX, deltaY] = wanted.wheel;
              const { left, top, width } = tape.getBoundingClientRect();
              const place = { clientX: left + width / 2, clientY: top + 50, bubbles: true, cancelable: true };
              tape.dispatchEvent(new WheelEvent('wheel', { ...place, deltaX, deltaY }));
            });
          if (draws) door.frame(atMs);
          else door.run(atMs);
          setTimeout(done);
        });
      }),
    [wallMs, deed, drawn] as const,
  );
}
