/** The ways to take a lesson's sheet in hand: with a pointer, or by keys alone. */
import type { Locator, Page } from 'playwright-core';

export interface Hands {
  /** Presses the button on which these words stand. */
  press(words: string): Promise<void>;
  /** Chooses one of the open question's choices, by its name in the lesson. */
  choose(choice: string): Promise<void>;
  /** Puts the focus into a field of the sheet, by its id. */
  intoField(id: string): Promise<void>;
  ontoSketch(): Promise<void>;
  ontoTape(): Promise<void>;
}

export function pointerHands(page: Page): Hands {
  const sheet = page.locator('lesson-sheet');
  // The whole text, as written: “shake it” is not “Shake it slowly”.
  const button = (words: string): Locator =>
    sheet.getByRole('button').filter({ hasText: new RegExp(`^\\s*${escaped(words)}\\s*$`, 'u') });
  return {
    press: (words) => button(words).click(),
    choose: (choice) => sheet.locator(`input[value="${choice}"]`).check(),
    intoField: (id) => sheet.locator(`#${id}`).last().click(),
    ontoSketch: () => sheet.locator('.pad').focus(),
    ontoTape: () => page.locator('.tape-paper-hand').focus(),
  };
}

/** What has the focus, through all shadows. */
interface Focused {
  readonly tag: string;
  readonly id: string;
  readonly look: string;
  readonly type: string;
  readonly value: string;
  readonly words: string;
}

/** Stops on the way round the page; more, and the focus goes in circles. */
const MOST_STOPS = 160;

export function keyHands(page: Page): Hands {
  const focused = (): Promise<Focused> =>
    page.evaluate(() => {
      let element = document.activeElement;
      while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
      const field = element as HTMLInputElement | null;
      return {
        tag: element?.localName ?? '',
        id: element?.id ?? '',
        look: element?.className ?? '',
        type: field?.type ?? '',
        value: field?.value ?? '',
        words: (element?.textContent ?? '').trim().replace(/\s+/gu, ' '),
      };
    });
  /** Tab after Tab until the focus stands on what is wanted. */
  const tabTo = async (what: string, wanted: (focused: Focused) => boolean): Promise<void> => {
    const passed: string[] = [];
    for (let stop = 0; stop < MOST_STOPS; stop += 1) {
      const here = await focused();
      if (wanted(here)) return;
      passed.push(`${here.tag}#${here.id} ${here.words.slice(0, 30)}`);
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab does not lead to ${what}; it passed:\n${passed.join('\n')}`);
  };
  return {
    async press(words) {
      await tabTo(`“${words}”`, (here) => here.tag === 'button' && here.words === words);
      await page.keyboard.press('Enter');
    },
    async choose(choice) {
      await tabTo('a choice', (here) => here.type === 'radio');
      if ((await focused()).value === choice) {
        await page.keyboard.press('Space');
        return;
      }
      for (let k = 0; (await focused()).value !== choice; k += 1) {
        if (k > 9) throw new Error(`the arrow keys do not lead to “${choice}”`);
        await page.keyboard.press('ArrowDown');
      }
    },
    intoField: (id) => tabTo(`#${id}`, (here) => here.id === id),
    ontoSketch: () => tabTo('the sketch', (here) => here.look.includes('pad')),
    ontoTape: () => tabTo('the tape', (here) => here.look.includes('tape-paper-hand')),
  };
}

function escaped(words: string): string {
  return words.replace(/[.*+?^${}()|[\]\\/]/gu, '\\$&');
}
