/**
 * `npm run -s lesson -- check lessons/*.md`: reads lessons and proves them: the model answer passes, doing nothing
 * passes nothing, each wrong turn fails the one check that it names. Exit code 0 when all holds, 1 when something does
 * not, 2 for a lesson or an argument with faults (one line each on standard error).
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { lessonFaultSentence } from '../lesson/fault.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { parseLesson } from '../lesson/parse-lesson.ts';
import { type ProofLine, proveLesson } from '../lesson/prove.ts';
import { quoted } from '../scenario/fault.ts';
import { reasonOf } from './simulate-files.ts';

const HELP = `npm run -s lesson -- check LESSON …

Proves lessons: plays the model answer, nothing at all, and each wrong turn that a lesson states.

  LESSON    a lesson file, e.g. lessons/falling-reads-zero.md
  --help    show this

Exit code: 0 if every proof holds, 1 if one does not, 2 if something is wrong with a file or the arguments.
`;

process.exitCode = main();

function main(): number {
  const [command, ...paths] = wanted();
  if (command === 'help') {
    process.stdout.write(HELP);
    return 0;
  }
  if (command !== 'check' || paths.length === 0)
    return refused(['arguments: found no lessons to check; allowed: check, and one path or more (--help shows more)']);
  const lessons: Lesson[] = [];
  const faults: string[] = [];
  for (const path of paths) faults.push(...read(path, lessons));
  if (faults.length > 0) return refused(faults);
  const lines = lessons.flatMap((lesson) => proveLesson(lesson));
  process.stdout.write(table(lines));
  const held = lines.filter(({ holds }) => holds).length;
  process.stdout.write(`${held} of ${lines.length} proofs hold\n`);
  return held === lines.length && held > 0 ? 0 : 1;
}

/** The words typed; `help` for --help. */
function wanted(): string[] {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { help: { type: 'boolean', short: 'h', default: false } },
    });
    return values.help ? ['help'] : positionals;
  } catch {
    return [];
  }
}

/** Adds a lesson, or tells what is wrong with it. */
function read(path: string, lessons: Lesson[]): readonly string[] {
  let text: string;
  try {
    text = readFileSync(resolve(startFolder(), path), 'utf8');
  } catch (error) {
    return [`lesson: found ${quoted(path)}, which cannot be read (${reasonOf(error)}); allowed: a lesson file`];
  }
  const parsed = parseLesson(text);
  if ('faults' in parsed) return parsed.faults.map((fault) => lessonFaultSentence(path, fault));
  lessons.push(parsed.lesson);
  return [];
}

/** Where the command was typed: npm goes to the project's folder first, and tells where it came from. */
function startFolder(): string {
  const typedIn = process.env.npm_lifecycle_event === 'lesson' ? process.env.INIT_CWD : undefined;
  return typedIn ?? process.cwd();
}

function refused(sentences: readonly string[]): number {
  process.stderr.write(sentences.map((sentence) => `${sentence}\n`).join(''));
  return 2;
}

function table(lines: readonly ProofLine[]): string {
  const rows = lines.map(({ lesson, step, played, expected, found, holds }) => [
    holds ? 'holds' : 'FAILS',
    `${lesson} · ${step}`,
    played,
    holds ? expected : `${expected}; found ${found}`,
  ]);
  const widths = [0, 1, 2].map((column) => Math.max(0, ...rows.map((row) => row[column]!.length)));
  return rows
    .map(
      (row) =>
        `${row
          .map((cell, column) => cell.padEnd(widths[column] ?? 0))
          .join('  ')
          .trimEnd()}\n`,
    )
    .join('');
}
