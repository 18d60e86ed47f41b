import { quoted } from '../scenario/fault.ts';

/** What is wrong with a lesson: where, what was found there, and what is allowed. */
export interface LessonFault {
  /** Line in the file, from 1. */
  readonly line: number;
  /** E.g. `drop · check[1].within`; `lesson` for the whole. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
}

/** Gathers faults; reading goes on, so that one pass finds them all. */
export type Faults = LessonFault[];

/** One line: `lessons/a.md:12: drop · check[1].within: found "5 parsecs"; allowed: …`. */
export function lessonFaultSentence(file: string, { line, path, found, allowed }: LessonFault): string {
  return `${file}:${line}: ${path}: found ${found}; allowed: ${allowed}`;
}

export { quoted };
