import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { help } from './help.ts';
import { baseStyles, linkStyles, selectStyles } from './shared-styles.ts';
import { type PaperSubject, sendAct } from './ui-events.ts';

const SUBJECTS: readonly { readonly id: PaperSubject; readonly words: string }[] = [
  { id: 'frequency', words: 'over frequency' },
  { id: 'step', words: 'to a step, to a release' },
  { id: 'landing', words: 'to landings' },
];

/**
 * A second paper that unrolls under the tape: what the element as it is set answers to. Its two graphs are drawn into the
 * slots `left` and `right`.
 */
@customElement('second-paper')
export class SecondPaper extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    selectStyles,
    css`
      :host {
        display: flex;
        flex-direction: column;
        gap: 6px;
        box-sizing: border-box;
        height: 100%;
        padding: 8px 12px 10px;
        background: var(--paper);
        box-shadow: var(--shadow-sheet);
        border-radius: 0 0 3px 3px;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 10px;
      }
      h2 {
        margin: 0;
        font: 560 var(--type-head) / 1.2 var(--book);
      }
      header button {
        margin-left: auto;
      }
      .graphs {
        flex: 1;
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 10px;
        min-height: 0;
      }
      p {
        margin: 0;
        font: 460 var(--type-note) / 1.35 var(--plain);
        color: var(--soft);
      }
      @media (max-width: 899px) {
        :host {
          height: auto;
        }
        .graphs {
          grid-template-columns: 1fr;
          grid-auto-rows: 190px;
        }
      }
    `,
  ];

  @property() subject: PaperSubject = 'frequency';
  /** What the graphs come to, in words. */
  @property() found = '';

  override render() {
    return html`
      <header>
        <h2><label for="subject">It answers</label></h2>
        <select
          id="subject"
          ${help('second paper')}
          @change=${(event: Event) =>
            sendAct(this, {
              what: 'second paper',
              subject: (event.target as HTMLSelectElement).value as PaperSubject,
            })}
        >
          ${SUBJECTS.map(
            ({ id, words }) => html`<option value=${id} .selected=${id === this.subject}>${words}</option>`,
          )}
        </select>
        <button class="link" ${help('roll away')} @click=${() => sendAct(this, { what: 'second paper', subject: undefined })}>
          roll it away
        </button>
      </header>
      <div class="graphs"><slot name="left"></slot><slot name="right"></slot></div>
      <p role="status">${this.found}</p>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'second-paper': SecondPaper;
  }
}
