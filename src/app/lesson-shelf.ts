/** The lessons that come with the page, in the order in which they are meant to be taken. */
import { lessonFaultSentence } from '../lesson/fault.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { parseLesson } from '../lesson/parse-lesson.ts';

const SOURCES = import.meta.glob<string>('../../lessons/*.md', { query: '?raw', import: 'default', eager: true });

/** What is not named comes after these, by its file's name. */
const ORDER = ['falling-reads-zero', 'ringing-and-damping', 'resonance'];

export function lessonsOnTheShelf(): readonly Lesson[] {
  const lessons = Object.entries(SOURCES).map(([path, source]) => {
    const parsed = parseLesson(source);
    if ('faults' in parsed) throw new Error(parsed.faults.map((fault) => lessonFaultSentence(path, fault)).join('\n'));
    return parsed.lesson;
  });
  const place = ({ name }: Lesson) => (ORDER.includes(name) ? ORDER.indexOf(name) : ORDER.length);
  return lessons.sort((a, b) => place(a) - place(b));
}
