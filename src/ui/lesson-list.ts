import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Prose } from '../contract/lesson.ts';
import { proseBlocks } from './lesson-prose.ts';
import { partSign } from './lesson-signs.ts';
import { lessonStyles } from './lesson-styles.ts';
import { baseStyles, linkStyles, sheetStyles } from './shared-styles.ts';
import { sendWish } from './ui-events.ts';

export interface LessonEntry {
  readonly name: string;
  readonly title: string;
  readonly summary: Prose;
  readonly minutes: number;
  readonly steps: number;
  /** Steps in which nothing is left to do. */
  readonly done: number;
  /** Something has been answered. */
  readonly begun: boolean;
}

/** The lessons in their order, how long they take and how far each has come. */
@customElement('lesson-list')
export class LessonList extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    baseStyles,
    sheetStyles,
    linkStyles,
    lessonStyles,
    css`
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding: var(--space-2) 0 var(--space-3);
        border-top: 1px solid var(--hairline);
      }
      li h3 {
        display: flex;
        gap: 8px;
        align-items: baseline;
        margin: 0 0 2px;
      }
      li h3 svg {
        align-self: center;
      }
      .first {
        margin-bottom: var(--space-3);
      }
      .row {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 10px;
      }
    `,
  ];

  @property({ attribute: false }) lessons: readonly LessonEntry[] = [];
  /** Name of the lesson that was open when the page was left. */
  @property() last: string | undefined;

  override render() {
    const last = this.lessons.find(({ name }) => name === this.last);
    const first = this.lessons[0];
    const untouched = this.lessons.every(({ begun }) => !begun);
    return html`
      <p class="eyebrow">Predict, try, explain</p>
      <h2>Lessons</h2>
      ${last ? this.#again(last) : untouched && first ? this.#begin(first) : nothing}
      <ol>
        ${this.lessons.map((entry, index) => this.#entry(entry, index))}
      </ol>
      <p class="note">What you answer stays on this device.</p>
    `;
  }

  #begin({ name }: LessonEntry) {
    return html`<div class="keep first"><button class="main" @click=${() => this.#open(name)}>Begin the first lesson</button></div>`;
  }

  #again({ name, title, done, steps }: LessonEntry) {
    return html`<p>You were in “${title}”, ${done} of ${steps} steps done.</p>
      <div class="keep first"><button class="main" @click=${() => this.#open(name)}>Go on with it</button></div>`;
  }

  #entry({ name, title, summary, minutes, steps, done, begun }: LessonEntry, index: number) {
    const complete = done === steps;
    return html`<li>
      <h3>${complete ? partSign(true) : nothing}<span>${index + 1}. ${title}</span></h3>
      ${proseBlocks(summary)}
      <div class="row">
        <p class="note">about ${minutes} minutes · ${begun ? `${done} of ${steps} steps done` : `${steps} steps`}</p>
        <button class="link" id="open-${index}" aria-label="${begun ? 'go on with' : 'begin'}: ${title}" @click=${() => this.#open(name)}>
          ${complete ? 'look again' : begun ? 'go on' : 'begin'}
        </button>
      </div>
    </li>`;
  }

  #open(lesson: string): void {
    sendWish(this, { wish: 'open', lesson });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lesson-list': LessonList;
  }
}
