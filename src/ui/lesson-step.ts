import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type {
  ActionView,
  CheckView,
  Draft,
  FigureView,
  LessonPart,
  LessonStepView,
  Prose,
} from '../contract/lesson.ts';
import './lesson-explanation.ts';
import { proseBlocks, valueText } from './lesson-prose.ts';
import './lesson-question.ts';
import { lockSign, outcomeSign, partSign, VERDICT_WORDS } from './lesson-signs.ts';
import { lessonStyles } from './lesson-styles.ts';
import { preparedWords } from './prepared-words.ts';
import { baseStyles, linkStyles } from './shared-styles.ts';
import type { Ink } from './sketch-picture.ts';
import { sendWish } from './ui-events.ts';

type PartOf<K extends LessonPart['part']> = Extract<LessonPart, { part: K }>;

/** Why something was not taken; about a question by its name, or about what is done at the bench (''). */
export interface LessonRefusal {
  readonly about: string;
  readonly says: string;
}

/** What the button leaves to the learner. */
const BY_HAND =
  'From there on: drag the paper; the wheel brings it closer. By keys, on the tape: arrows and Page keys, Enter, + and −.';

/** The open step of a lesson, part by part in the order of its file. */
@customElement('lesson-step')
export class LessonStep extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    lessonStyles,
    css`
      .banner {
        display: flex;
        gap: 9px;
        margin: 0 0 var(--space-3);
        padding: 6px 9px;
        border: 1px solid var(--edge);
        border-radius: var(--radius-field);
        background: color-mix(in srgb, var(--ink) 7%, transparent);
        font-family: var(--plain);
        font-size: var(--type-note);
        line-height: 1.35;
      }
      .banner svg {
        margin-top: 2px;
      }
      ol.acts,
      ul.checks {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .acts > li,
      .checks > li {
        display: grid;
        grid-template-columns: 15px minmax(0, 1fr);
        gap: 0 8px;
        margin-bottom: 6px;
      }
      .acts svg,
      .checks svg {
        margin-top: 3px;
      }
      .acts p,
      .checks p {
        margin: 0;
      }
      dl {
        margin: 0;
      }
      dl > div {
        display: flex;
        align-items: baseline;
        justify-content: space-between;
        gap: 10px;
        padding: 2px 0;
        border-bottom: 1px dotted var(--hairline);
      }
      dt {
        min-width: 0;
      }
      dt p {
        margin: 0;
      }
      dd {
        flex: none;
        margin: 0;
        font-weight: 680;
      }
      .hints li {
        margin-bottom: 3px;
      }
    `,
  ];

  @property({ attribute: false }) step!: LessonStepView;
  @property({ attribute: false }) refusal: LessonRefusal | undefined;
  @property({ attribute: false }) inks: Readonly<Record<string, Ink>> = {};
  /** What was begun and not kept before the page was left, by the name of the question or explanation. */
  @property({ attribute: false }) drafts: Readonly<Record<string, Draft>> = {};
  /** "0.534 s" where a mark stands on the tape; '' without one. */
  @property() marked = '';

  override render() {
    const { locked, notice, parts } = this.step;
    return html`
      <div role="status">
        ${locked === undefined ? nothing : html`<p class="banner">${lockSign}<span>${locked}</span></p>`}
        ${notice === undefined ? nothing : html`<p class="banner"><span>${notice}</span></p>`}
      </div>
      ${parts.map((part) => this.#part(part))}
    `;
  }

  #part(part: LessonPart): TemplateResult {
    switch (part.part) {
      case 'text':
        return html`<div class="part">${proseBlocks(part.text)}</div>`;
      case 'predict':
      case 'ask':
        return this.#question(part);
      case 'do':
        return this.#actions(part);
      case 'measure':
        return this.#figures(part);
      case 'check':
        return this.#checks(part);
      case 'explain':
        return this.#explanation(part);
      case 'hints':
        return this.#hints(part);
    }
  }

  #explanation({ name, words, written, model }: PartOf<'explain'>) {
    const draft = this.drafts[name];
    return html`<lesson-explanation
      .name=${name}
      .words=${words}
      .written=${written}
      .begun=${draft?.kind === 'words' ? draft.written : undefined}
      .model=${model}
    ></lesson-explanation>`;
  }

  #question({ part, question }: PartOf<'predict' | 'ask'>) {
    const draft = this.drafts[question.name];
    return html`<lesson-question
      .kind=${part}
      .question=${question}
      .begun=${draft?.kind === question.form.kind ? draft : undefined}
      .ink=${this.inks[question.name] ?? []}
      .refusal=${this.refusal?.about === question.name ? this.refusal.says : ''}
    ></lesson-question>`;
  }

  #actions({ actions }: PartOf<'do'>) {
    return html`<section class="part" aria-label="Do">
      <div class="sign">${partSign(actions.every(({ done }) => done))}</div>
      <h4>Do</h4>
      <ol class="acts">
        ${actions.map((action, index) => this.#action(action, index))}
      </ol>
      <p class="refusal" role="alert">${this.refusal?.about === '' ? this.refusal.says : ''}</p>
    </section>`;
  }

  #action({ words, done, prepared }: ActionView, index: number) {
    return html`<li>
      ${outcomeSign(done ? 'passed' : 'waiting')}
      <div>
        <div id="act-${index}">${proseBlocks(words)}</div>
        <button
          class="link"
          id="do-${index}"
          aria-labelledby="do-${index} act-${index}"
          @click=${() => sendWish(this, { wish: 'prepare', act: prepared })}
        >
          ${preparedWords(prepared)}
        </button>
        ${prepared.act === 'pull back' ? html`<p class="note">${BY_HAND}</p>` : nothing}
        ${
          prepared.act === 'mark'
            ? html`<p class="note" role="status">${this.marked === '' ? nothing : `Your mark stands at ${this.marked}.`}</p>`
            : nothing
        }
      </div>
    </li>`;
  }

  #figures({ figures }: PartOf<'measure'>) {
    return html`<section class="part" aria-label="Measured on the tape">
      <div class="sign">${partSign(figures.every(({ value }) => value !== undefined))}</div>
      <h4>Measured</h4>
      <dl>
        ${figures.map(({ words, text, value }: FigureView) => {
          const shown =
            value === undefined
              ? html`<span class="only-heard">not yet measured</span><span aria-hidden="true">—</span>`
              : valueText(text);
          return html`<div><dt>${proseBlocks(words)}</dt><dd>${shown}</dd></div>`;
        })}
      </dl>
    </section>`;
  }

  #checks({ checks }: PartOf<'check'>) {
    return html`<section class="part" aria-label="Checked">
      <div class="sign">${partSign(checks.every(({ outcome }) => outcome === 'passed'))}</div>
      <h4>Checked</h4>
      <ul class="checks">
        ${checks.map((check) => this.#check(check))}
      </ul>
    </section>`;
  }

  #check({ words, outcome, says, measured, expected }: CheckView) {
    const compared =
      measured === '' || expected === ''
        ? nothing
        : html`<p class="note">${`measured ${valueText(measured)}, asked for ${valueText(expected)}`}</p>`;
    return html`<li>
      ${outcomeSign(outcome)}
      <div>
        ${proseBlocks(words)} ${outcome === 'waiting' ? nothing : compared}
        <div class="says ${outcome}" role="status">
          ${outcome === 'waiting' ? nothing : html`<span class="verdict">${VERDICT_WORDS[outcome]}</span> ${proseBlocks(says)}`}
        </div>
      </div>
    </li>`;
  }

  #hints({ shown, left }: PartOf<'hints'>) {
    const more =
      left === 0
        ? nothing
        : html`<button class="link" @click=${() => sendWish(this, { wish: 'tell', act: { kind: 'hint' } })}>
            ${shown.length === 0 ? 'a hint' : 'another hint'} (${left} left)
          </button>`;
    return html`<div class="part">
      <ol class="list hints" role="status">${shown.map((hint: Prose) => html`<li>${proseBlocks(hint)}</li>`)}</ol>
      ${more}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lesson-step': LessonStep;
  }
}
