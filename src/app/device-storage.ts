/** What stays on the device between two visits. */

/** The page may share its origin with others: its own entries begin with its name. */
export const PREFIX = 'proof-mass-bench/';
export const OPEN_LESSON = `${PREFIX}open-lesson`;

/** The browser's storage; undefined where it is switched off. */
export function deviceStorage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

/** Name of the lesson that lay open when the page was left. */
export function lessonLeftOpen(storage: Storage | undefined): string | undefined {
  return storage?.getItem(OPEN_LESSON) ?? undefined;
}
