import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Prose } from '../contract/lesson.ts';
import { proseBlocks } from './lesson-prose.ts';
import { partSign } from './lesson-signs.ts';
import { lessonStyles } from './lesson-styles.ts';
import { baseStyles } from './shared-styles.ts';
import { sendWish } from './ui-events.ts';

/** An explanation in the learner's own words, on ruled lines; once it is kept, another wording to compare with. */
@customElement('lesson-explanation')
export class LessonExplanation extends LitElement {
  static override styles = [
    baseStyles,
    lessonStyles,
    css`
      textarea {
        --line: 25px;
        display: block;
        width: 100%;
        min-height: calc(4 * var(--line) + 4px);
        padding: 0 2px;
        border: 1px solid transparent;
        border-bottom-color: var(--edge);
        border-radius: var(--radius-field);
        background: repeating-linear-gradient(transparent 0 calc(var(--line) - 1px), var(--edge) calc(var(--line) - 1px) var(--line)) local;
        color: var(--ink);
        font: italic 460 var(--type-body) / var(--line) var(--book);
        resize: vertical;
        field-sizing: content;
      }
      .model h5 {
        margin: var(--space-3) 0 2px;
        font: 640 var(--type-note) / 1.3 var(--plain);
      }
    `,
  ];

  @property({ attribute: false }) words: Prose = [];
  @property() written = '';
  @property({ attribute: false }) model: Prose = [];
  /** Its name among what is kept of a step. */
  @property() name = '';
  /** Typed and not kept, before the page was left. */
  @property() begun: string | undefined;
  /** Typed since. */
  @state() private draft: string | undefined;
  @state() private missing = '';
  @query('textarea') private readonly field!: HTMLTextAreaElement;

  override render() {
    return html`<section class="part" aria-labelledby="head">
      <div class="sign">${partSign(this.written !== '')}</div>
      <h4 id="head">Explain</h4>
      <div id="words">${proseBlocks(this.words)}</div>
      <textarea
        id="own-words"
        aria-labelledby="head"
        aria-describedby="words"
        .value=${live(this.draft ?? this.begun ?? this.written)}
        @input=${() => {
          this.draft = this.field.value;
          this.missing = '';
          sendWish(this, { wish: 'draft', of: this.name, draft: { kind: 'words', written: this.draft } });
        }}
      ></textarea>
      <p class="refusal" role="alert">${this.missing}</p>
      <div class="keep"><button class="main" @click=${this.#keep}>Keep my words</button></div>
      <div class="model" role="status">
        ${this.model.length === 0 ? nothing : html`<h5>Another wording, to compare with yours</h5>${proseBlocks(this.model)}`}
      </div>
    </section>`;
  }

  readonly #keep = (): void => {
    const written = this.field.value.trim();
    if (written === '') {
      this.missing = 'Write a sentence of your own first.';
      return;
    }
    sendWish(this, { wish: 'tell', act: { kind: 'explain', written } });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'lesson-explanation': LessonExplanation;
  }
}
