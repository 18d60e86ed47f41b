/** The built bench driven at stated wall times, so that what a test sees does not depend on the machine. */
import type { Page } from 'playwright-core';
import type {} from '../../../src/app/script-door.ts';
import type { RunEvent } from '../../../src/contract/event.ts';
import type { PageOptions } from './page.ts';

export interface Measured {
  readonly timeS: number;
  readonly deflection: number;
  readonly reading: number;
  readonly lowestM: number;
  readonly inContact: boolean;
  readonly penYPx: number;
  readonly massYPx: number;
  readonly unbentYPx: number;
  readonly enlargement: number;
  readonly leverRatio: number;
  readonly offPaper: boolean;
  readonly zeroYPx: number;
  readonly pxPerMS2: number;
  readonly lowestYPx: number;
  readonly padTopYPx: number;
}

export class ScriptedBench {
  readonly page: Page;
  #wallMs = 0;

  private constructor(page: Page) {
    this.page = page;
  }

  /** Draws next to nothing unless `full`: what is drawn where is the same. */
  static async open({
    full = false,
    ...options
  }: PageOptions & { readonly full?: boolean } = {}): Promise<ScriptedBench> {
    // Only inside a test is there a test runner to import; pictures and benchmarks drive a page of their own.
    const { openPage } = await import('./page.ts');
    const { page } = await openPage({ ...options, path: `?script${full ? '' : '=light'}${options.path ?? ''}` });
    return ScriptedBench.drive(page);
  }

  /** Takes over a page that was opened with `?script` in its address. */
  static async drive(page: Page): Promise<ScriptedBench> {
    await page.waitForFunction(() => window.benchScript !== undefined);
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    return new ScriptedBench(page);
  }

  get wallMs(): number {
    return this.#wallMs;
  }

  /** To be told where the page was driven by another way. */
  set wallMs(wallMs: number) {
    this.#wallMs = wallMs;
  }

  /** Frames up to a wall time [ms], so many a second. */
  async frames(untilMs: number, perSecond = 60): Promise<void> {
    const fromMs = this.#wallMs;
    this.#wallMs = untilMs;
    await this.page.evaluate(
      ([from, until, step]) => {
        for (let t = from! + step!; t <= until! + 1e-9; t += step!) window.benchScript!.frame(t);
      },
      [fromMs, untilMs, 1000 / perSecond],
    );
  }

  /** Runs to a wall time [ms] in frames that are not drawn but for the last. */
  async runTo(untilMs: number, perSecond = 60): Promise<void> {
    const fromMs = this.#wallMs;
    this.#wallMs = untilMs;
    await this.page.evaluate(
      ([from, until, step]) => {
        for (let t = from! + step!; t < until! - 1e-9; t += step!) window.benchScript!.run(t);
        window.benchScript!.frame(until!);
      },
      [fromMs, untilMs, 1000 / perSecond],
    );
  }

  /** Runs, without drawing, until something has happened. */
  async runUntil(kind: RunEvent['kind'], perSecond = 100): Promise<void> {
    this.#wallMs = await this.page.evaluate(
      ([wanted, from, step]) => {
        const { run } = window.benchScript!.page.session;
        const happened = run.world.events.all.length;
        let t = from;
        while (!run.world.events.all.slice(happened).some((event) => event.kind === wanted)) {
          if (t > from + 600_000) throw new Error(`ten minutes without the event "${wanted}"`);
          t += step;
          window.benchScript!.run(t);
        }
        return t;
      },
      [kind, this.#wallMs, 1000 / perSecond] as const,
    );
  }

  /** Presses a letter as if at a wall time [ms]. */
  async letter(key: string, wallMs = this.#wallMs): Promise<void> {
    await this.page.evaluate(
      ([letter, at]) =>
        window.benchScript!.at(at as number, () =>
          window.dispatchEvent(
            new KeyboardEvent('keydown', { key: letter as string, bubbles: true, cancelable: true }),
          ),
        ),
      [key, wallMs] as const,
    );
  }

  /** Sends a control's word to the page. */
  async tell(kind: 'act' | 'setting', detail: object, wallMs = this.#wallMs): Promise<void> {
    await this.page.evaluate(
      ([name, value, at]) =>
        window.benchScript!.at(at as number, () =>
          document.querySelector('bench-layout')!.dispatchEvent(new CustomEvent(name as string, { detail: value })),
        ),
      [kind, detail, wallMs] as const,
    );
  }

  /** Sends a pointer event to a picture as if at a wall time [ms]; place in the picture's own box [px]. */
  async pointer(type: string, x: number, y: number, wallMs: number, picture = '.room-canvas'): Promise<void> {
    await this.page.evaluate(
      ([kind, px, py, at, selector]) =>
        window.benchScript!.at(at as number, () => {
          const canvas = document.querySelector<HTMLCanvasElement>(selector as string)!;
          // A made-up pointer cannot be captured; the real one is.
          canvas.setPointerCapture = () => undefined;
          const box = canvas.getBoundingClientRect();
          canvas.dispatchEvent(
            new PointerEvent(kind as string, {
              pointerId: 7,
              button: 0,
              buttons: 1,
              bubbles: true,
              clientX: box.left + (px as number),
              clientY: box.top + (py as number),
            }),
          );
        }),
      [type, x, y, wallMs, picture] as const,
    );
  }

  /** One frame a step and what was drawn in each. */
  async measure(untilMs: number, perSecond = 60): Promise<readonly Measured[]> {
    const fromMs = this.#wallMs;
    this.#wallMs = untilMs;
    return this.page.evaluate(
      ([from, until, step]) => {
        const all: object[] = [];
        const { page } = window.benchScript!;
        for (let t = from! + step!; t <= until! + 1e-9; t += step!) {
          window.benchScript!.frame(t);
          const riding = page.painter.riding!;
          const room = page.painter.room!;
          const { timeS, elements, housing } = page.session.look(page.nowS);
          const { deflection, reading } = elements[0]!;
          const { zeroYPx, pxPerMS2 } = page.painter.ridingScale!;
          const { penYPx, massYPx, unbentYPx, enlargement, leverRatio, offPaper } = riding;
          const { lowestM, inContact } = housing;
          const { lowestYPx, padTopYPx } = room;
          all.push({
            timeS,
            deflection,
            reading,
            lowestM,
            inContact,
            penYPx,
            massYPx,
            unbentYPx,
            enlargement,
            leverRatio,
            offPaper,
            zeroYPx,
            pxPerMS2,
            lowestYPx,
            padTopYPx,
          });
        }
        return all as unknown as Measured[];
      },
      [fromMs, untilMs, 1000 / perSecond],
    );
  }

  /** Grabs the housing, shakes it, throws it up and lets it land; the pointer's times are the same at every frame rate. */
  async grabAndThrow(perSecond: number): Promise<void> {
    await this.frames(400, perSecond);
    const { x, y } = await this.housing();
    await this.pointer('pointerdown', x, y, 410);
    for (let k = 1; k <= 24; k += 1) {
      const at = 410 + k * 23;
      await this.frames(at - (at % (1000 / perSecond)), perSecond);
      await this.pointer('pointermove', x + 18 * Math.sin(k), y - 2.4 * k, at);
    }
    await this.pointer('pointerup', x, y - 60, 410 + 25 * 23);
  }

  hash(): Promise<string> {
    return this.page.evaluate(() => window.benchScript!.page.session.run.world.hash);
  }

  /** The run so far as the scenario that the page exports, with the hash of the rows it stands for. */
  exported(): Promise<{ readonly text: string; readonly hash: string }> {
    return this.page.evaluate(() => {
      const { page } = window.benchScript!;
      return { text: page.scenario, hash: page.session.run.world.hash };
    });
  }

  /** Middle of the housing in the room picture [px]. */
  housing(): Promise<{ readonly x: number; readonly y: number }> {
    return this.page.evaluate(() => {
      const { housingXPx, housingYPx } = window.benchScript!.page.painter.room!;
      return { x: housingXPx, y: housingYPx };
    });
  }
}
