/** What is begun and not kept as an answer, by step and by question or explanation: plain data, stored on the device. */
import type { Draft } from '../contract/lesson.ts';
import { isPoint, isRecord, mapped } from './progress.ts';

export type StepDrafts = Readonly<Record<string, Draft>>;
export type Drafts = Readonly<Record<string, StepDrafts>>;

/** What was stored, as far as it can be read. */
export function readDrafts(stored: unknown): Drafts {
  return mapped(stored, (step) => mapped(step, readDraft));
}

function readDraft(stored: unknown): Draft | undefined {
  if (!isRecord(stored)) return undefined;
  const { kind, choice, typed, points, written } = stored;
  if (kind === 'choice' && typeof choice === 'string') return { kind, choice };
  if (kind === 'number' && typeof typed === 'string') return { kind, typed };
  if (kind === 'sketch' && Array.isArray(points) && points.every(isPoint)) return { kind, points };
  if (kind === 'words' && typeof written === 'string') return { kind, written };
  return undefined;
}

/** With a draft put in, or taken out when there is none. */
export function withDraft(drafts: Drafts, step: string, name: string, draft: Draft | undefined): Drafts {
  const { [name]: _, ...others } = drafts[step] ?? {};
  return { ...drafts, [step]: draft ? { ...others, [name]: draft } : others };
}
