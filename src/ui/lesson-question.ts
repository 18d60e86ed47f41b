import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { GivenAnswer, QuestionForm, QuestionView, SketchPoint } from '../contract/lesson.ts';
import { proseBlocks, proseWords } from './lesson-prose.ts';
import { partSign, VERDICT_WORDS } from './lesson-signs.ts';
import { lessonStyles } from './lesson-styles.ts';
import { baseStyles } from './shared-styles.ts';
import './sketch-pad.ts';
import type { Ink } from './sketch-picture.ts';
import { sendWish } from './ui-events.ts';

type FormOf<K extends QuestionForm['kind']> = Extract<QuestionForm, { kind: K }>;

const WORDS = {
  predict: { head: 'Predict', keep: 'Keep my prediction', said: 'You predicted: ' },
  ask: { head: 'Observe', keep: 'Keep my answer', said: 'You said: ' },
} as const;

/** A prediction or a question: a choice, a number with its unit, or a line to sketch; then what is said to it. */
@customElement('lesson-question')
export class LessonQuestion extends LitElement {
  static override styles = [
    baseStyles,
    lessonStyles,
    css`
      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
      }
      legend {
        padding: 0;
      }
      .choices {
        display: grid;
        gap: 3px;
        margin-top: 4px;
      }
      .choices label {
        display: flex;
        align-items: baseline;
        gap: 8px;
        min-height: 26px;
        padding: 3px 0;
        font-family: var(--book);
        line-height: 1.3;
        cursor: pointer;
      }
      input[type='radio'] {
        flex: none;
        width: 16px;
        height: 16px;
        margin: 0;
        accent-color: var(--ink);
        transform: translateY(2px);
        cursor: pointer;
      }
      .number {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 8px;
        margin-top: 4px;
      }
      input[type='text'] {
        width: 118px;
        min-height: 28px;
        padding: 2px 7px;
        border: 1px solid var(--edge);
        border-radius: var(--radius-field);
        background: var(--sheet);
        font-weight: 620;
        font-size: var(--type-field);
      }
      .given {
        color: var(--ink);
        font-style: italic;
      }
      figure {
        margin: 4px 0;
      }
      figcaption {
        display: flex;
        gap: 14px;
      }
      figcaption svg {
        width: 26px;
        height: 8px;
        margin-right: 4px;
        vertical-align: 1px;
      }
      .pencil {
        stroke: var(--pencil);
        stroke-width: 4.5;
        stroke-opacity: 0.72;
      }
      .ink {
        stroke: var(--ink);
        stroke-width: 1.8;
      }
    `,
  ];

  @property({ attribute: false }) question!: QuestionView;
  @property() kind: 'predict' | 'ask' = 'ask';
  /** The pen's line where a sketch was laid. */
  @property({ attribute: false }) ink: Ink = [];
  /** Why the last answer was not taken. */
  @property() refusal = '';
  /** What was chosen, typed or drawn and not kept, before the page was left. */
  @property({ attribute: false }) begun: GivenAnswer | undefined;
  /** The same since. */
  @state() private draft: GivenAnswer | undefined;
  @state() private missing = '';
  @query('.part') private readonly whole!: HTMLElement;
  #kept = false;

  override render() {
    const { question } = this;
    const { head } = WORDS[this.kind];
    return html`<section class="part" tabindex="-1" aria-labelledby="head">
      <div class="sign">${partSign(this.kind === 'predict' ? question.answer !== undefined : question.outcome === 'passed')}</div>
      <h4 id="head">${head}</h4>
      ${question.open ? this.#asked() : this.#answered()}
      <p class="refusal" role="alert">${this.missing || this.refusal}</p>
      <div class="says ${question.outcome}" role="status">${this.#said()}</div>
    </section>`;
  }

  /** The form gives way to what was answered: the focus stays here, not at the top of the page. */
  protected override updated(changed: PropertyValues): void {
    // Below the sheet's edge a refusal would make the button look dead.
    if ((changed.has('refusal') || changed.has('missing')) && (this.missing || this.refusal))
      this.renderRoot.querySelector('.refusal')?.scrollIntoView({ block: 'nearest' });
    if (!changed.has('question') || !this.#kept) return;
    this.#kept = false;
    if (this.question.open) return;
    this.whole.focus({ preventScroll: true });
    this.renderRoot.querySelector('.says')?.scrollIntoView({ block: 'nearest' });
  }

  #said() {
    const { outcome, says } = this.question;
    if (outcome === 'waiting') return nothing;
    // Not every prediction has to come true: of one that did not, only what was seen is said.
    const verdict = this.kind === 'ask' || outcome === 'passed' ? VERDICT_WORDS[outcome] : 'It came out otherwise.';
    return html`<span class="verdict">${verdict}</span> ${proseBlocks(says)}`;
  }

  #asked() {
    const { form, words } = this.question;
    const { keep } = WORDS[this.kind];
    const kept = html`<div class="keep"><button class="main" @click=${this.#keep}>${keep}</button></div>`;
    switch (form.kind) {
      case 'choice':
        return html`<fieldset><legend>${proseBlocks(words)}</legend>${this.#choices(form)}</fieldset>${kept}`;
      case 'number':
        return html`<div id="words">${proseBlocks(words)}</div>${this.#number(form)}${kept}`;
      case 'sketch':
        return html`<div id="words">${proseBlocks(words)}</div>${this.#sketch(form)}${kept}`;
    }
  }

  #choices({ choices }: FormOf<'choice'>) {
    const given = this.#given;
    const chosen = given?.kind === 'choice' ? given.choice : '';
    return html`<div class="choices">
      ${choices.map(
        ({ name, words }) => html`<label>
          <input
            type="radio"
            name="choice"
            value=${name}
            .checked=${live(name === chosen)}
            @change=${() => this.#draw({ kind: 'choice', choice: name })}
          />
          <span>${proseWords(words)}</span>
        </label>`,
      )}
    </div>`;
  }

  #number({ unit }: FormOf<'number'>) {
    const given = this.#given;
    return html`<div class="number">
      <label for="typed" class="note">${unit === '' ? 'a number' : `number and unit (${unit})`}</label>
      <input
        id="typed"
        type="text"
        autocomplete="off"
        spellcheck="false"
        aria-describedby="words"
        .value=${live(given?.kind === 'number' ? given.typed : '')}
        @input=${(event: Event) => this.#draw({ kind: 'number', typed: (event.target as HTMLInputElement).value })}
        @keydown=${(event: KeyboardEvent) => {
          if (event.key === 'Enter') this.#keep();
        }}
      />
    </div>`;
  }

  #sketch(form: FormOf<'sketch'>) {
    return html`<sketch-pad .axes=${form} .points=${this.#points} @sketched=${(
      event: CustomEvent<readonly SketchPoint[]>,
    ) => this.#draw({ kind: 'sketch', points: event.detail })}></sketch-pad>`;
  }

  get #points(): readonly SketchPoint[] {
    const given = this.#given;
    return given?.kind === 'sketch' ? given.points : [];
  }

  #answered() {
    const { form, words, answer } = this.question;
    const { said } = WORDS[this.kind];
    return html`${proseBlocks(words)}
    ${
      form.kind === 'sketch'
        ? html`<figure>
            <sketch-pad fixed .axes=${form} .points=${answer?.kind === 'sketch' ? answer.points : []} .ink=${this.ink}></sketch-pad>
            <figcaption class="note">
              <span><svg viewBox="0 0 26 8" aria-hidden="true"><path class="pencil" d="M2 4h22" /></svg>your sketch</span>
              ${
                this.ink.length === 0
                  ? nothing
                  : html`<span><svg viewBox="0 0 26 8" aria-hidden="true"><path class="ink" d="M2 4h22" /></svg>the pen</span>`
              }
            </figcaption>
          </figure>`
        : html`<p class="given"><span class="only-heard">${said}</span>${this.#givenWords()}</p>`
    }`;
  }

  #givenWords() {
    const { form, answer } = this.question;
    if (answer?.kind === 'number') return answer.typed;
    if (answer?.kind !== 'choice' || form.kind !== 'choice') return nothing;
    return proseWords(form.choices.find(({ name }) => name === answer.choice)?.words ?? []);
  }

  #draw(draft: GivenAnswer): void {
    this.draft = draft;
    this.missing = '';
    sendWish(this, { wish: 'draft', of: this.question.name, draft });
  }

  get #given(): GivenAnswer | undefined {
    return this.draft ?? this.begun ?? this.question.answer;
  }

  readonly #keep = (): void => {
    const { name, form } = this.question;
    const given = this.#given;
    if (form.kind === 'choice' && !given) {
      this.missing = 'Choose one of them first.';
      return;
    }
    this.#kept = true;
    const empty: GivenAnswer = form.kind === 'sketch' ? { kind: 'sketch', points: [] } : { kind: 'number', typed: '' };
    sendWish(this, { wish: 'tell', act: { kind: 'answer', question: name, answer: given ?? empty } });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'lesson-question': LessonQuestion;
  }
}
