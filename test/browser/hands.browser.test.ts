/** Fingers, still eyes and helping words. */
import { describe, expect, it } from 'vitest';
import { ScriptedBench } from './support/scripted-bench.ts';

const PHONE = { width: 390, height: 844, context: { hasTouch: true, isMobile: true } };
const SMALL = { width: 1024, height: 768 };

describe('by touch, on a phone', () => {
  it('a tap on Drop lets it fall', async () => {
    const bench = await ScriptedBench.open(PHONE);
    await bench.frames(300, 20);
    await bench.page.locator('handling-keys button[data-handling=drop]').tap();
    await bench.frames(5000, 10);
    const kinds = await bench.page.evaluate(() =>
      window.benchScript!.page.session.run.world.events.all.map(({ kind }) => kind),
    );
    expect(kinds).toContain('let go');
    expect(kinds).toContain('touch');
  });

  it('a finger takes the housing, carries it and lets it fall; the page does not scroll under it', async () => {
    const bench = await ScriptedBench.open(PHONE);
    await bench.frames(600, 20);
    const { x, y } = await bench.housing();
    const box = (await bench.page.locator('.room-canvas').boundingBox())!;
    const touch = await bench.page.context().newCDPSession(bench.page);
    const at = (dy: number) => [{ x: box.x + x, y: box.y + y + dy }];
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
    for (let k = 1; k <= 10; k += 1) {
      await bench.frames(600 + 40 * k, 25);
      await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(-3 * k) });
    }
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await bench.frames(5000, 10);
    const { text } = await bench.exported();
    expect(JSON.parse(text).motions.map(({ kind }: { kind: string }) => kind)).toEqual(['held', 'hand', 'free']);
    expect(await bench.page.evaluate(() => window.scrollY)).toBe(0);
  });

  it('every key is at least 24 by 24 px large (WCAG 2.2, 2.5.8)', async () => {
    const bench = await ScriptedBench.open(PHONE);
    await bench.frames(300, 20);
    const small = await bench.page.evaluate(() => {
      const found: string[] = [];
      const visit = (root: Document | ShadowRoot): void => {
        for (const element of root.querySelectorAll('*')) {
          if (element.shadowRoot) visit(element.shadowRoot);
          // Words in a sentence that lead elsewhere are excepted there.
          if (!element.matches('button:not(.link), select, input:not([type=file]), [role=slider]')) continue;
          if (!element.checkVisibility()) continue;
          const { width, height } = element.getBoundingClientRect();
          if (width > 0 && Math.min(width, height) < 23.9)
            found.push(
              `${element.localName} ${element.className} ${element.getAttribute('aria-label')} ${width}×${height}`,
            );
        }
      };
      visit(document);
      return found;
    });
    expect(small).toEqual([]);
  });
});

it('for eyes that want little motion nothing moves but the model', async () => {
  const bench = await ScriptedBench.open({ ...SMALL, context: { reducedMotion: 'reduce' } });
  await bench.letter('d');
  await bench.frames(600, 20);
  await bench.tell('act', { what: 'open sheet', sheet: 'element' });
  await bench.frames(900, 20);
  expect(await bench.page.evaluate(() => document.getAnimations().length)).toBe(0);
});

describe('a sentence beside each control', () => {
  it('comes with hovering and with the focus of keys, and goes with Escape', async () => {
    const bench = await ScriptedBench.open(SMALL);
    await bench.frames(300, 20);
    const note = bench.page.locator('help-note');
    await bench.page.locator('handling-keys button[data-handling=shake]').hover();
    await note.waitFor({ state: 'visible' });
    expect(await note.evaluate((element) => element.shadowRoot!.textContent)).toContain('shaker');
    await bench.page.keyboard.press('Escape');
    await note.waitFor({ state: 'hidden' });
    await bench.page.mouse.move(5, 5);
    await bench.page.locator('quantity-slider[slot=settings] input[type=range]').first().focus();
    await bench.page.keyboard.press('ArrowRight');
    await bench.page.keyboard.press('Shift+Tab');
    await bench.page.keyboard.press('Tab');
    await note.waitFor({ state: 'visible' });
    expect(await note.evaluate((element) => element.shadowRoot!.textContent)).toContain('proof mass');
  });

  it('none lacks one', async () => {
    const bench = await ScriptedBench.open(SMALL);
    await bench.frames(300, 20);
    const without = await bench.page.evaluate(() => {
      const found: string[] = [];
      // Said in words of their own: tabs, the short way in, lessons, benches, the tape, and fields within a labelled control.
      const own =
        'folder-sheets, short-way-in, lesson-sheet, bench-layout, quantity-field, slowdown-field, span-figures';
      const visit = (root: Document | ShadowRoot): void => {
        for (const element of root.querySelectorAll('*')) {
          if (element.shadowRoot) visit(element.shadowRoot);
          if (!element.matches('button, select, input:not([type=file]), [role=slider]')) continue;
          const host = (element.getRootNode() as ShadowRoot).host as Element | undefined;
          if (host?.matches(own) && !element.matches('.fold')) continue;
          if (host?.matches('element-sheet') && element.matches('.bench')) continue;
          if (host?.matches('handling-words') || element.matches('.tape-paper-hand')) continue;
          if (!element.hasAttribute('data-help'))
            found.push(
              `${host?.localName} ${element.localName} ${element.getAttribute('aria-label') ?? element.textContent}`,
            );
        }
      };
      visit(document);
      return found;
    });
    expect(without).toEqual([]);
  });
});
