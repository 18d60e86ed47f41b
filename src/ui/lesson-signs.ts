import { html, svg, type TemplateResult } from 'lit';
import type { Outcome } from '../contract/lesson.ts';
import { smallIcons } from './key-icons.ts';

/** How a verdict reads and is spoken; never by its colour alone. */
export const VERDICT_WORDS: Readonly<Record<Outcome, string>> = {
  passed: 'Right.',
  wrong: 'Not so.',
  waiting: 'still open',
};

const CROSS = svg`<path d="M4 4l8 8M12 4l-8 8" />`;
const RING = svg`<circle cx="8" cy="8" r="5.5" />`;

/** A tick, a cross, or a dotted ring while it is open. */
export function outcomeSign(outcome: Outcome): TemplateResult {
  const [look, icon, words] = {
    passed: ['done', smallIcons.done, 'right'],
    wrong: ['wrong', CROSS, 'not right yet'],
    waiting: ['open', RING, 'still open'],
  }[outcome] as [string, typeof CROSS, string];
  return html`<svg class="sign ${look}" viewBox="0 0 16 16" role="img" aria-label=${words}>${icon}</svg>`;
}

/** Beside the head of a part: a tick when nothing is left to do in it, else an arrow. */
export function partSign(done: boolean): TemplateResult {
  return done
    ? html`<svg class="sign" viewBox="0 0 16 16" role="img" aria-label="done">${smallIcons.done}</svg>`
    : html`<svg class="sign next" viewBox="0 0 16 16" aria-hidden="true">${smallIcons.next}</svg>`;
}

export const lockSign = html`<svg class="sign" viewBox="0 0 16 16" aria-hidden="true">
  <path d="M3.500 7.500h9v6.500h-9zM5.500 7.500V5a2.500 2.500 0 0 1 5 0v2.500" />
</svg>`;
