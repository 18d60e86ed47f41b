/** What is wrong with a scenario: where, what was found there, and what is allowed. */
export interface Fault {
  /** JSON path, e.g. `motions[1].pad.stiffness`; `scenario` for the whole. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
}

/** Takes a fault; reading goes on, so that one pass finds them all. */
export type Report = (path: string, found: string, allowed: string) => void;

/** The path of the whole scenario. */
export const ROOT = 'scenario';

/** Longest piece of a scenario repeated in a sentence [characters]: keeps every fault on one readable line. */
const QUOTED_LENGTH = 60;

/** Control, line-breaking and direction-changing characters that JSON.stringify lets through: they could break a line or garble a terminal. */
const UNPRINTABLE = /[\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufeff]/g;

/** One line, ready for standard error: `gravity: found -1; allowed: a number from 0 to 1000, in m/s²`. */
export function faultSentence(fault: Fault): string {
  return `${fault.path}: found ${fault.found}; allowed: ${fault.allowed}`;
}

/** `text` in double quotes on one line, shortened. */
export function quoted(text: string): string {
  const short = text.length > QUOTED_LENGTH ? `${text.slice(0, QUOTED_LENGTH)}…` : text;
  return JSON.stringify(short).replace(UNPRINTABLE, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** The path of a member or item below `parent`. */
export function pathTo(parent: string, key: string | number): string {
  if (typeof key === 'number') return `${parent}[${key}]`;
  if (!/^[A-Za-z_]\w{0,59}$/.test(key)) return `${parent}[${quoted(key)}]`;
  return parent === ROOT ? key : `${parent}.${key}`;
}

/** The member of `known` most like `key`, if one is near enough to be a slip of the pen. */
export function nearest(key: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.max(2, Math.floor(key.length / 3)) + 1;
  if (key.length > 40) return undefined;
  for (const candidate of known) {
    const distance = editDistance(key.toLowerCase(), candidate.toLowerCase());
    if (distance < bestDistance) [best, bestDistance] = [candidate, distance];
  }
  return best;
}

/** Fewest single-character insertions, deletions and replacements that turn `a` into `b`. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
