/**
 * What the page's controls say to the app. There are two events, both bubbling and composed, so that two listeners at
 * the top hear everything: `setting` (a value was chosen) and `act` (something is to be done). SI units throughout.
 */

import type { Draft, LessonAct, PreparedAct } from '../contract/lesson.ts';

/** A value chosen by hand. `final` is false while a rider is still sliding. */
export interface Setting {
  readonly name: string;
  readonly value: number | string | boolean;
  readonly final: boolean;
}

/** The four ways to handle the housing that have a key of their own, and the further ones. */
export type HandlingName = 'hold' | 'drop' | 'shake' | 'tilt' | 'throw' | 'move' | 'push' | 'spin' | 'recorded';

/** What the second paper shows of the element. */
export type PaperSubject = 'frequency' | 'step' | 'landing';

export type Act =
  | { readonly what: 'handle'; readonly handling: HandlingName }
  | { readonly what: 'show handling'; readonly handling: HandlingName }
  | { readonly what: 'pause' | 'go on' | 'one tick on' }
  | { readonly what: 'fresh run' | 'clear' | 'undo' | 'redo' }
  | { readonly what: 'line'; readonly line: string; readonly shown: boolean }
  | { readonly what: 'turn sign' }
  | { readonly what: 'fold'; readonly folded: boolean }
  | { readonly what: 'open sheet'; readonly sheet: string }
  | { readonly what: 'starting bench'; readonly bench: string }
  | { readonly what: 'theme'; readonly theme: 'day' | 'evening' }
  | { readonly what: 'stage'; readonly on: boolean }
  | { readonly what: 'letters'; readonly on: boolean }
  | { readonly what: 'file'; readonly file: File }
  | { readonly what: 'save run' | 'copy link' }
  | { readonly what: 'open run'; readonly file: File }
  /** Brings a kept run back, counted from the newest. */
  | { readonly what: 'bring back'; readonly index: number }
  | { readonly what: 'loop span'; readonly on: boolean }
  | { readonly what: 'clear span' }
  | { readonly what: 'arm trigger'; readonly on: boolean }
  | { readonly what: 'skip' }
  /** Unrolls the second paper with a subject; undefined: rolls it away. */
  | { readonly what: 'second paper'; readonly subject: PaperSubject | undefined }
  | { readonly what: 'lesson'; readonly wish: LessonWish };

/** What is asked on the lesson sheet. */
export type LessonWish =
  /** Opens a lesson where it was left. */
  | { readonly wish: 'open'; readonly lesson: string }
  /** Back to the list of lessons; the bench is free. */
  | { readonly wish: 'leave' }
  /** Forgets what was answered in the open lesson and begins it anew. */
  | { readonly wish: 'anew' }
  | { readonly wish: 'print' }
  /** Leads to a term of the glossary, and back to where it was asked for. */
  | { readonly wish: 'look up'; readonly term: string; readonly from: HTMLElement }
  /** Something is chosen, typed or drawn and not kept yet; `of`: a question, or the explanation. */
  | { readonly wish: 'draft'; readonly of: string; readonly draft: Draft }
  /** Does at the bench what an action of the step prepares. */
  | { readonly wish: 'prepare'; readonly act: PreparedAct }
  | { readonly wish: 'tell'; readonly act: LessonAct };

declare global {
  interface HTMLElementEventMap {
    setting: CustomEvent<Setting>;
    act: CustomEvent<Act>;
  }
}

export function sendSetting(from: HTMLElement, setting: Setting): void {
  from.dispatchEvent(new CustomEvent('setting', { detail: setting, bubbles: true, composed: true }));
}

export function sendAct(from: HTMLElement, act: Act): void {
  from.dispatchEvent(new CustomEvent('act', { detail: act, bubbles: true, composed: true }));
}

export function sendWish(from: HTMLElement, wish: LessonWish): void {
  sendAct(from, { what: 'lesson', wish });
}
