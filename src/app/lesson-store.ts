/** A learner's answers and progress on the device: written at each act, so that a reload or a crash loses nothing. */
import { type Drafts, readDrafts } from '../lesson/drafts.ts';
import { type LessonProgress, progressText, readProgress } from '../lesson/progress.ts';
import { OPEN_LESSON, PREFIX } from './device-storage.ts';
import { type InkValues, readInks } from './lesson-ink.ts';

const FORMAT = 1;

export interface KeptLesson {
  readonly progress: LessonProgress;
  /** The pen's line over sketches, by step and question. */
  readonly inks: InkValues;
  /** What is begun and not kept as an answer. */
  readonly drafts: Drafts;
}

const CANNOT_KEEP =
  'Your answers cannot be kept on this device, because its storage is full or switched off. They are lost when this page closes; print your results before.';
const CANNOT_READ = 'What was kept of this lesson cannot be read; it begins anew.';

export class LessonStore {
  readonly #storage: Storage | undefined;
  /** What went wrong last, in a sentence; '' when nothing did. */
  trouble = '';

  constructor(storage: Storage | undefined) {
    this.#storage = storage;
    if (!storage) this.trouble = CANNOT_KEEP;
  }

  read(lesson: string): KeptLesson | undefined {
    const text = this.#storage?.getItem(keyOf(lesson)) ?? undefined;
    if (text === undefined) return undefined;
    const kept = readKept(text, lesson);
    if (!kept) this.trouble = CANNOT_READ;
    return kept;
  }

  write({ progress, inks, drafts }: KeptLesson): void {
    const beside = `"inks":${JSON.stringify(inks)},"drafts":${JSON.stringify(drafts)}`;
    const text = `{"format":${FORMAT},"progress":${progressText(progress)},${beside}}`;
    this.#set(keyOf(progress.lesson), text);
  }

  forget(lesson: string): void {
    this.#storage?.removeItem(keyOf(lesson));
  }

  /** Notes which lesson lies open; undefined: none. */
  noteOpen(lesson: string | undefined): void {
    if (lesson === undefined) this.#storage?.removeItem(OPEN_LESSON);
    else this.#set(OPEN_LESSON, lesson);
  }

  #set(key: string, text: string): void {
    if (!this.#storage) return;
    try {
      this.#storage.setItem(key, text);
      if (this.trouble === CANNOT_KEEP) this.trouble = '';
    } catch {
      this.trouble = CANNOT_KEEP;
    }
  }
}

function keyOf(lesson: string): string {
  return `${PREFIX}lesson/${lesson}`;
}

function readKept(text: string, lesson: string): KeptLesson | undefined {
  let stored: unknown;
  try {
    stored = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof stored !== 'object' || stored === null) return undefined;
  const { format, progress, inks, drafts } = stored as Record<string, unknown>;
  const read = format === FORMAT ? readProgress(JSON.stringify(progress) ?? '', lesson) : undefined;
  return read && { progress: read, inks: readInks(inks), drafts: readDrafts(drafts) };
}
