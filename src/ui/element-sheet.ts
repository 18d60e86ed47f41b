import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import './caution-note.ts';
import type { PlainFigures } from './plain-words.ts';
import './plain-words.ts';
import { help } from './help.ts';
import { settingCheck, settingChoice } from './setting-choice.ts';
import { baseStyles, selectStyles, sheetStyles, slipKeyStyles } from './shared-styles.ts';
import { type SliderSpec, sliderList } from './slider-list.ts';
import { sendAct } from './ui-events.ts';

/** One of the benches to start from. */
export interface StartingBench {
  readonly id: string;
  readonly name: string;
  readonly figures: PlainFigures;
}

/** The element's design: a bench to start from, then mass, spring, damping and stops. */
@customElement('element-sheet')
export class ElementSheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    selectStyles,
    slipKeyStyles,
    css`
      .bench {
        display: block;
        width: 100%;
        margin: 0 0 6px;
        padding: 6px 10px 7px;
        border: 1px solid var(--edge);
        border-radius: var(--radius-button);
        background: none;
        text-align: left;
        cursor: pointer;
      }
      .bench[aria-checked='true'] {
        border-color: var(--ink);
        box-shadow: inset 3px 0 0 var(--ink);
      }
      .bench b {
        display: block;
        font: 640 var(--type-head) / 1.25 var(--book);
      }
      plain-words {
        --type-words: var(--type-note);
        color: var(--soft);
      }
      .spring {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 7px;
      }
      button.slip {
        margin-top: var(--space-4);
      }
      .check {
        margin-top: var(--space-4);
      }
      caution-note {
        margin-top: var(--space-5);
      }
    `,
  ];

  @property({ attribute: false }) benches: readonly StartingBench[] = [];
  /** Id of the bench that stands now; '' once it has been changed. */
  @property() bench = '';
  @property({ attribute: false }) sliders: readonly SliderSpec[] = [];
  /** Whether the spring is given by its stiffness or by the frequency at which mass and spring ring. */
  @property({ attribute: 'spring-by' }) springBy: 'stiffness' | 'frequency' = 'frequency';

  /** There are stops that the mass can meet. */
  @property({ type: Boolean }) stops = true;
  /** Which way it senses, in the housing's frame. */
  @property() senses = 'up and down';

  override render() {
    return html`
      <h2>The element</h2>
      <div role="radiogroup" aria-label="Benches to start from" @keydown=${this.#alongBenches}>
        ${this.benches.map(
          ({ id, name, figures }, index) => html`<button
            class="bench"
            role="radio"
            aria-checked=${id === this.bench}
            tabindex=${id === this.bench || (index === 0 && !this.benches.some((other) => other.id === this.bench)) ? 0 : -1}
            @click=${() => sendAct(this, { what: 'starting bench', bench: id })}
          >
            <b>${name}</b>
            <plain-words brief .figures=${figures}></plain-words>
          </button>`,
        )}
      </div>
      <h3>Change it</h3>
      <div class="sliders">
        <div class="spring">
          <label for="springBy">spring given by its</label>
          ${settingChoice(this, 'springBy', this.springBy, [
            { value: 'frequency', words: 'natural frequency' },
            { value: 'stiffness', words: 'stiffness' },
          ])}
        </div>
        ${sliderList(this.sliders)}
      </div>
      <button class="slip" ${help('answers')} @click=${() => sendAct(this, { what: 'second paper', subject: 'frequency' })}>
        what it answers, on a second paper
      </button>
      ${settingCheck(this, 'stops', this.stops, 'stops on both sides')}
      <div class="spring">
        <label for="senses">it senses</label>
        ${settingChoice(
          this,
          'senses',
          this.senses,
          ['up and down', 'sideways', 'to and fro'].map((way) => ({ value: way, words: way })),
        )}
      </div>
      <p class="note">Turning the element begins a fresh run; the old one is kept.</p>
      ${this.sliders.length === 0 ? nothing : html`<caution-note about="spring"></caution-note>`}
    `;
  }

  readonly #alongBenches = async (event: KeyboardEvent): Promise<void> => {
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const buttons = [...this.renderRoot.querySelectorAll<HTMLElement>('.bench')];
    const focused = buttons.findIndex((button) => button.matches(':focus'));
    const to = (focused + step + buttons.length) % buttons.length;
    const bench = this.benches[to];
    if (bench === undefined) return;
    buttons[to]?.focus();
    sendAct(this, { what: 'starting bench', bench: bench.id });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'element-sheet': ElementSheet;
  }
}
