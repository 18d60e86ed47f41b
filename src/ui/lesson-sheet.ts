import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { Draft, LessonView } from '../contract/lesson.ts';
import { smallIcons } from './key-icons.ts';
import './lesson-list.ts';
import type { LessonEntry } from './lesson-list.ts';
import { proseBlocks } from './lesson-prose.ts';
import { partSign } from './lesson-signs.ts';
import './lesson-step.ts';
import type { LessonRefusal } from './lesson-step.ts';
import { lessonStyles } from './lesson-styles.ts';
import { baseStyles, linkStyles, sheetStyles } from './shared-styles.ts';
import type { Ink } from './sketch-picture.ts';
import { sendWish } from './ui-events.ts';

/** A lesson that lies open, and what the page knows about it. */
export interface OpenLesson {
  readonly view: LessonView;
  /** Its place in the list, from 1. */
  readonly place: number;
  /** Rises each time a lesson is opened or begun anew: nothing half typed outlives it. */
  readonly sitting: number;
  readonly refusal: LessonRefusal | undefined;
  /** The pen's line where a sketch was laid, by the name of the question. */
  readonly inks: Readonly<Record<string, Ink>>;
  /** What was begun and not kept in the open step, by the name of the question or explanation. */
  readonly drafts: Readonly<Record<string, Draft>>;
  /** Where a mark stands on the tape, "0.534 s"; '' without one. */
  readonly marked: string;
}

export interface LessonSheetView {
  readonly lessons: readonly LessonEntry[];
  /** Name of the lesson that was open when the page was left. */
  readonly last: string | undefined;
  readonly open: OpenLesson | undefined;
  /** Why answers cannot be kept on this device; '' when they can. */
  readonly trouble: string;
}

/** The folder's lesson sheet: the list of lessons, or the open one with its steps, of which one lies open. */
@customElement('lesson-sheet')
export class LessonSheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    linkStyles,
    lessonStyles,
    css`
      .top {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 10px;
        margin-bottom: 2px;
      }
      .top .note {
        margin: 0;
      }
      h2:focus {
        outline: none;
      }
      ol.steps {
        margin: var(--space-3) 0 0;
        padding: 0;
        list-style: none;
      }
      .steps h3 {
        margin: 0;
        font: inherit;
      }
      .steps h3 button {
        display: grid;
        grid-template-columns: 26px minmax(0, 1fr);
        align-items: baseline;
        width: 100%;
        min-height: 30px;
        padding: 4px 0;
        border: 0;
        border-top: 1px solid var(--hairline);
        background: none;
        color: inherit;
        font: 560 var(--type-head) / 1.25 var(--book);
        text-align: left;
        cursor: pointer;
      }
      .steps h3 button:hover {
        background: color-mix(in srgb, var(--ink) 6%, transparent);
      }
      .steps [aria-expanded='true'] {
        font-weight: 680;
      }
      .steps h3 svg {
        align-self: center;
      }
      .body {
        padding: 6px 0 var(--space-3);
      }
      .foot {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 4px 14px;
        margin-top: var(--space-4);
        padding-top: 6px;
        border-top: 1px solid var(--hairline);
      }
      .caution {
        display: flex;
        gap: 6px;
        margin-top: var(--space-3);
        font-size: var(--type-mark);
        color: var(--soft);
      }
      .caution svg {
        flex: none;
        width: 15px;
        height: 15px;
        margin-top: 2px;
        fill: none;
        stroke: currentColor;
        stroke-width: 1.3;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      .caution p {
        margin: 0;
        font: 460 var(--type-mark) / 1.35 var(--plain);
      }
    `,
  ];

  @property({ attribute: false }) view: LessonSheetView | undefined;
  /** Asked once more before answers are forgotten. */
  @state() private sure = false;
  /** A press here opened something: the focus goes along. */
  #follow = false;

  override render() {
    const { view } = this;
    if (!view) return html`<p>The lessons are being fetched.</p>`;
    const { open, trouble } = view;
    return html`
      <p class="refusal" role="alert">${trouble}</p>
      ${open ? this.#lesson(open, view.lessons) : html`<lesson-list .lessons=${view.lessons} .last=${view.last} @click=${this.#followOn}></lesson-list>`}
    `;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('view') && changed.get('view')?.open?.view.lesson !== this.view?.open?.view.lesson)
      this.sure = false;
  }

  protected override updated(changed: PropertyValues<this>): void {
    const before = changed.get('view')?.open?.view;
    const now = this.view?.open?.view;
    if (
      !changed.has('view') ||
      !this.#follow ||
      (before?.lesson === now?.lesson && before?.step.name === now?.step.name)
    )
      return;
    this.#follow = false;
    const target = before?.lesson === now?.lesson ? 'h3 [aria-expanded="true"]' : now ? 'h2' : 'lesson-list';
    const found = this.renderRoot.querySelector<HTMLElement>(target);
    found?.focus();
    found?.scrollIntoView({ block: 'start' });
  }

  readonly #followOn = (): void => {
    this.#follow = true;
  };

  #lesson({ view, place, sitting, refusal, inks, drafts, marked }: OpenLesson, lessons: readonly LessonEntry[]) {
    return html`
      <div class="top">
        <p class="note">Lesson ${place} of ${lessons.length}</p>
        <button class="link" @click=${() => this.#wish('leave')}>all lessons</button>
      </div>
      <h2 tabindex="-1">${view.title}</h2>
      ${view.steps[0]?.open ? proseBlocks(view.summary) : nothing}
      <ol class="steps">
        ${view.steps.map(
          ({ name, title, open, complete }) => html`<li>
            <h3>
              <button aria-expanded=${open} aria-controls=${open ? 'step' : nothing} @click=${() => this.#open(name, open)}>
                ${complete || open ? partSign(complete) : html`<span></span>`}<span>${title}</span>
              </button>
            </h3>
            ${
              open
                ? html`<div class="body" id="step">
                    ${keyed(
                      `${sitting} ${name}`,
                      html`<lesson-step
                        .step=${view.step}
                        .refusal=${refusal}
                        .inks=${inks}
                        .drafts=${drafts}
                        .marked=${marked}
                      ></lesson-step>`,
                    )}
                    ${this.#after(view)}
                  </div>`
                : nothing
            }
          </li>`,
        )}
      </ol>
      ${this.#cautions(view)}
      <div class="foot">
        <button class="link" @click=${() => this.#open(view.step.name, false)}>lay the bench out anew</button>
        <button class="link" @click=${() => sendWish(this, { wish: 'print' })}>print my results</button>
        ${this.#anew()}
      </div>
    `;
  }

  /** What comes after a step that is done. */
  #after({ step, steps }: LessonView) {
    if (!step.complete) return nothing;
    const at = steps.findIndex(({ open }) => open);
    const next = steps.slice(at + 1).find(({ complete }) => !complete) ?? steps.find(({ complete }) => !complete);
    return html`<div class="keep" role="status">
      <span class="note">${next ? 'This step is done.' : 'The lesson is done.'}</span>
      ${
        next
          ? html`<button class="main" @click=${() => this.#open(next.name, false)}>Next: ${next.title}</button>`
          : html`<button class="main" @click=${() => sendWish(this, { wish: 'print' })}>Print my results</button>`
      }
    </div>`;
  }

  #cautions({ cautions }: LessonView) {
    if (cautions.length === 0) return nothing;
    return html`<div class="caution" role="note">
      <svg viewBox="0 0 16 16" role="img" aria-label="Caution">${smallIcons.caution}</svg>
      <div>${proseBlocks(cautions)}<p>Local rules first.</p></div>
    </div>`;
  }

  #anew() {
    if (!this.sure)
      return html`<button class="link" @click=${() => {
        this.sure = true;
      }}>begin the lesson anew</button>`;
    return html`<span class="note" role="status">Forget all answers of this lesson?</span>
      <button class="link" @click=${() => this.#wish('anew')}>yes, forget them</button>
      <button class="link" @click=${() => {
        this.sure = false;
      }}>no, keep them</button>`;
  }

  #open(step: string, isOpen: boolean): void {
    if (isOpen) return;
    this.#follow = true;
    sendWish(this, { wish: 'tell', act: { kind: 'open', step } });
  }

  #wish(wish: 'leave' | 'anew'): void {
    this.#follow = true;
    this.sure = false;
    sendWish(this, { wish });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lesson-sheet': LessonSheet;
  }
}
