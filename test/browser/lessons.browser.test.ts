import { describe, expect, it } from 'vitest';
import type { Lesson } from '../../src/lesson/lesson.ts';
import { readProgress } from '../../src/lesson/progress.ts';
import { lessonResults } from '../../src/lesson/results.ts';
import type { SketchPad } from '../../src/ui/sketch-pad.ts';
import { accessibilityFaults } from './support/accessibility.ts';
import { type Hands, keyHands, pointerHands } from './support/hands.ts';
import { LessonWalk, readLesson } from './support/lesson-walk.ts';
import { ScriptedBench } from './support/scripted-bench.ts';

const SIZE = { width: 1024, height: 768 };
/** A whole lesson at the pace of its steps; measured: 30 s to 190 s on two cores, the more the busier. */
const LESSON_LIMIT_MS = 400_000;

/** The sheet with a lesson on it, opened by hand from the first visit on. */
async function opened(lesson: Lesson, hands: (bench: ScriptedBench) => Hands): Promise<[ScriptedBench, Hands]> {
  const bench = await ScriptedBench.open(SIZE);
  const hand = hands(bench);
  await bench.tell('act', { what: 'skip' });
  await shown(bench);
  await bench.page.locator('lesson-sheet').getByRole('button', { name: lesson.title }).focus();
  await bench.page.keyboard.press('Enter');
  await bench.frames(bench.wallMs + 200, 10);
  return [bench, hand];
}

/** The lessons have been fetched and their list lies there. */
async function shown(bench: ScriptedBench): Promise<void> {
  await bench.page.waitForFunction(() => customElements.get('lesson-sheet') !== undefined);
  await bench.frames(bench.wallMs + 200, 10);
  await bench.page.locator('lesson-list').waitFor();
}

/** What the device keeps of a lesson. */
async function kept(bench: ScriptedBench, lesson: Lesson) {
  const text = await bench.page.evaluate((key) => localStorage.getItem(key), `proof-mass-bench/lesson/${lesson.name}`);
  const { progress } = JSON.parse(text ?? '{}') as { progress: unknown };
  const read = readProgress(JSON.stringify(progress), lesson.name);
  if (!read) throw new Error(`nothing is kept of ${lesson.name}`);
  return lessonResults(lesson, read);
}

describe('each lesson can be taken in the page by its model answer', () => {
  it('the paper of the smallest bench is as wide as the tolerances of what is to be marked on it count on', async () => {
    const bench = await ScriptedBench.open(SIZE);
    await bench.frames(200, 10);
    const widthPx = await bench.page.evaluate(() => {
      const pen = document.querySelector('pen-rule')!.getBoundingClientRect().left;
      return pen - document.querySelector('.paper-host')!.getBoundingClientRect().left;
    });
    // SMALLEST_PAPER_PX of test/lesson/proof.test.ts.
    expect(widthPx).toBeGreaterThanOrEqual(300);
  });

  it('why falling reads zero, by keyboard only', { timeout: LESSON_LIMIT_MS }, async () => {
    const lesson = readLesson('falling-reads-zero');
    const [bench, hands] = await opened(lesson, ({ page }) => keyHands(page));
    await new LessonWalk(bench, hands).take(lesson);
    const { passed, checks } = await kept(bench, lesson);
    expect(checks).toBeGreaterThan(8);
    expect(passed).toBe(checks);
  });

  it.each(['ringing-and-damping', 'resonance'])('%s, by pointer', { timeout: LESSON_LIMIT_MS }, async (name) => {
    const lesson = readLesson(name);
    const [bench, hands] = await opened(lesson, ({ page }) => pointerHands(page));
    await new LessonWalk(bench, hands).take(lesson);
    const { passed, checks } = await kept(bench, lesson);
    expect(checks).toBeGreaterThan(4);
    expect(passed).toBe(checks);
  });
});

describe('a prediction comes first', () => {
  it('until it is stored keys, letters, hands and settings are refused, and the sentence says why', async () => {
    const lesson = readLesson('falling-reads-zero');
    const [bench] = await opened(lesson, ({ page }) => pointerHands(page));
    const { page } = bench;
    const state = () =>
      page.evaluate(() => {
        const { session } = window.benchScript!.page;
        return {
          timeS: session.run.world.timeS,
          motion: session.motionShown.kind,
          damping: session.settings.dampingRatio,
          says: document.querySelector('run-sentence')!.shadowRoot!.textContent!.trim(),
        };
      });
    const before = await state();
    for (const letter of ['d', 's', 'n', 'p']) await bench.letter(letter);
    const damping = page.locator('quantity-slider[slot="settings"]').last();
    await damping.locator('#rider').press('End');
    await bench.pointer('pointerdown', ...(Object.values(await bench.housing()) as [number, number]), bench.wallMs);
    await bench.runTo(bench.wallMs + 3000, 20);
    const after = await state();
    expect(after.says).toContain('prediction');
    expect({ ...after, says: '' }).toEqual({ ...before, says: '' });
    // The rider goes back to where the setting stands.
    const stands = await damping.evaluate((slider) => (slider as HTMLElement & { value: number }).value);
    expect(stands).toBe(before.damping);
  });
});

describe('what a learner did stays on the device', () => {
  it('a reload brings the list with the lesson to go on with, and in it the answers, until they are to be forgotten', async () => {
    const lesson = readLesson('falling-reads-zero');
    const [bench, hands] = await opened(lesson, ({ page }) => pointerHands(page));
    await hands.choose('same');
    await hands.press('Keep my prediction');
    await bench.frames(bench.wallMs + 400, 10);
    const { page } = bench;
    await page.reload();
    await page.waitForFunction(() => window.benchScript !== undefined);
    await shown(bench);
    await hands.press('Go on with it');
    await bench.frames(bench.wallMs + 300, 10);
    const sheet = page.locator('lesson-sheet');
    await expect.poll(() => sheet.getByText('As good as where it stands now.').count()).toBe(1);
    expect(await sheet.locator('input[type="radio"]').count()).toBe(0);
    await hands.press('begin the lesson anew');
    await hands.press('yes, forget them');
    await bench.frames(bench.wallMs + 300, 10);
    await expect.poll(() => sheet.locator('input[type="radio"]').count()).toBe(3);
    expect(await sheet.locator('input[type="radio"]:checked').count()).toBe(0);
  });

  it('what is stored and cannot be read is said, and the lesson begins anew', async () => {
    const bench = await ScriptedBench.open({
      ...SIZE,
      prepare: async (page) => {
        await page.addInitScript(() =>
          localStorage.setItem('proof-mass-bench/lesson/resonance', '{"format":1,"progress":7}'),
        );
      },
    });
    await bench.tell('act', { what: 'skip' });
    await shown(bench);
    await expect.poll(() => bench.page.locator('lesson-sheet').getByText('cannot be read').count()).toBe(1);
  });

  it('a full storage is said, and the lesson goes on', async () => {
    const bench = await ScriptedBench.open({
      ...SIZE,
      prepare: async (page) => {
        await page.addInitScript(() => {
          Storage.prototype.setItem = () => {
            throw new DOMException('full', 'QuotaExceededError');
          };
        });
      },
    });
    await bench.tell('act', { what: 'skip' });
    await shown(bench);
    const hands = pointerHands(bench.page);
    await hands.press('Begin the first lesson');
    await bench.frames(bench.wallMs + 200, 10);
    await hands.choose('same');
    await hands.press('Keep my prediction');
    await bench.frames(bench.wallMs + 200, 10);
    const sheet = bench.page.locator('lesson-sheet');
    await expect.poll(() => sheet.getByText('cannot be kept on this device').count()).toBe(1);
    await expect.poll(() => sheet.getByText('As good as where it stands now.').count()).toBe(1);
  });

  it('what was chosen, typed, drawn or written and not kept yet is there again after a reload', async () => {
    const lesson = readLesson('falling-reads-zero');
    const [bench, hands] = await opened(lesson, ({ page }) => pointerHands(page));
    const { page } = bench;
    const sheet = page.locator('lesson-sheet');
    const drawn = () => page.locator('lesson-sheet sketch-pad').evaluate((pad) => (pad as SketchPad).points.length);
    /** Half a second is all that a crash may cost. */
    const leaveAndReturn = async () => {
      await bench.frames(bench.wallMs + 900, 10);
      // As in a crash: nothing can be written any more when the page goes.
      await page.evaluate(() => {
        Storage.prototype.setItem = () => undefined;
      });
      await page.reload();
      await page.waitForFunction(() => window.benchScript !== undefined);
      bench.wallMs = 0;
      await shown(bench);
      await hands.press('Go on with it');
      await bench.frames(bench.wallMs + 300, 10);
    };
    await sheet.locator('input[value="zero"]').check();
    await leaveAndReturn();
    expect(await sheet.locator('input[value="zero"]').isChecked()).toBe(true);
    await hands.press('Keep my prediction');
    await bench.frames(bench.wallMs + 300, 10);
    await hands.press('move it');
    await bench.runTo(bench.wallMs + 6000, 10);
    await hands.intoField('typed');
    await page.keyboard.type('1.0');
    await leaveAndReturn();
    expect(await sheet.locator('#typed').inputValue()).toBe('1.0');
    await hands.intoField('typed');
    await page.keyboard.press('End');
    await page.keyboard.type(' g');
    await page.keyboard.press('Enter');
    await bench.frames(bench.wallMs + 400, 10);
    await hands.intoField('own-words');
    await page.keyboard.type('The arm, because');
    await leaveAndReturn();
    expect(await sheet.locator('#own-words').inputValue()).toBe('The arm, because');
    await bench.tell('act', { what: 'lesson', wish: { wish: 'tell', act: { kind: 'open', step: 'drop' } } });
    await bench.frames(bench.wallMs + 300, 10);
    await hands.ontoSketch();
    for (const key of ['Home', 'Enter', 'End', 'Enter']) await page.keyboard.press(key);
    expect(await drawn()).toBe(2);
    await leaveAndReturn();
    expect(await drawn()).toBe(2);
  });
});

describe('the words of the trade', () => {
  it('a term in a lesson leads to its place among the words, and back to where it was asked for', async () => {
    const lesson = readLesson('ringing-and-damping');
    const [bench, hands] = await opened(lesson, ({ page }) => keyHands(page));
    const { page } = bench;
    await bench.tell('act', { what: 'lesson', wish: { wish: 'tell', act: { kind: 'open', step: 'best' } } });
    await bench.frames(bench.wallMs + 300, 10);
    await hands.press('settling time');
    await bench.frames(bench.wallMs + 200, 20);
    const focused = () =>
      page.evaluate(() => {
        let element = document.activeElement;
        while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
        const box = element?.getBoundingClientRect();
        const inside = box !== undefined && box.top >= 0 && box.bottom <= window.innerHeight && box.height > 0;
        return [element?.id || element?.textContent?.trim(), inside];
      });
    await expect.poll(focused, { timeout: 20_000 }).toEqual(['settling-time', true]);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await bench.frames(bench.wallMs + 200, 20);
    await expect.poll(focused, { timeout: 20_000 }).toEqual(['settling time', true]);
  });
});

describe('the sheet', () => {
  it.each([
    ['at 1440 × 900', { width: 1440, height: 900 }, 'day'],
    ['at 1024 × 768 in the evening', { width: 1024, height: 768 }, 'evening'],
    ['on a phone', { width: 390, height: 844 }, 'day'],
  ])('%s: axe-core finds nothing, and nothing is wider than the sheet', async (_, size, theme) => {
    const bench = await ScriptedBench.open(size);
    await bench.tell('act', { what: 'theme', theme });
    await bench.tell('act', { what: 'skip' });
    await shown(bench);
    expect(await accessibilityFaults(bench.page)).toEqual([]);
    await bench.tell('act', { what: 'lesson', wish: { wish: 'open', lesson: 'falling-reads-zero' } });
    await bench.tell('act', { what: 'lesson', wish: { wish: 'tell', act: { kind: 'open', step: 'drop' } } });
    await bench.frames(bench.wallMs + 200, 10);
    const points = [
      [-0.1, 9.8],
      [0.1, -3],
      [0.3, 2],
    ];
    const sketch = { kind: 'answer', question: 'trace', answer: { kind: 'sketch', points } };
    expect(await accessibilityFaults(bench.page)).toEqual([]);
    await bench.tell('act', { what: 'lesson', wish: { wish: 'tell', act: sketch } });
    await bench.letter('d');
    await bench.runTo(bench.wallMs + 6000, 10);
    expect(await accessibilityFaults(bench.page)).toEqual([]);
    const beyond = await bench.page.evaluate(() => {
      const panel = document.querySelector('folder-sheets')!.shadowRoot!.querySelector('#panel-lesson')!;
      return panel.scrollWidth - panel.clientWidth;
    });
    expect(beyond).toBeLessThanOrEqual(0);
  });

  it('prints the results alone: the prediction under what came out, with settings, seed and figures', async () => {
    const lesson = readLesson('falling-reads-zero');
    const bench = await ScriptedBench.open({
      ...SIZE,
      prepare: async (page) => {
        await page.addInitScript(() => {
          window.print = () => undefined;
        });
      },
    });
    const { page } = bench;
    await bench.tell('act', { what: 'skip' });
    await shown(bench);
    const hands = pointerHands(page);
    await hands.press('Begin the first lesson');
    await bench.frames(bench.wallMs + 200, 10);
    await hands.choose('zero');
    await hands.press('Keep my prediction');
    await bench.frames(bench.wallMs + 200, 10);
    await hands.press('move it');
    await bench.runTo(bench.wallMs + 6000, 10);
    await hands.intoField('typed');
    await page.keyboard.type('1 g');
    await page.keyboard.press('Enter');
    await bench.frames(bench.wallMs + 200, 10);
    await hands.press('print my results');
    await bench.frames(bench.wallMs + 100, 10);
    expect(await page.locator('lesson-results').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#bench').isVisible()).toBe(false);
    const sheet = page.locator('lesson-results');
    expect(await sheet.isVisible()).toBe(true);
    const words = await sheet.evaluate((element) => element.shadowRoot!.textContent!.replace(/\s+/gu, ' '));
    expect(words).toContain(lesson.title);
    expect(words).toMatch(/What came out.*1\.00 g.*What was predicted.*On zero/u);
    expect(words).toMatch(/seed \d+/u);
    expect(words).toContain('damping ratio 0.300');
    expect(words).toContain('air in the fall no');
    const widths = await sheet.evaluate((element) => [element.scrollWidth, element.clientWidth]);
    expect(widths[0]).toBeLessThanOrEqual(widths[1]!);
  });
});
