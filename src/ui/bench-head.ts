import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { help } from './help.ts';
import { KeyLetters } from './key-letters.ts';
import { baseStyles, linkStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

/** The line along the top: what stands on the bench, where (its gravity), and how the page looks. */
@customElement('bench-head')
export class BenchHead extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    css`
      :host {
        display: flex;
        align-items: baseline;
        justify-content: space-between;
        gap: var(--space-5);
        white-space: nowrap;
      }
      h1 {
        margin: 0;
        min-width: 0;
        font: 460 calc(20px * var(--scale)) / 1.2 var(--book);
        overflow: hidden;
        text-overflow: ellipsis;
      }
      h1 span {
        font-style: italic;
        font-size: 0.83em;
        color: var(--soft);
      }
      .right {
        display: flex;
        align-items: baseline;
        gap: calc(22px * var(--scale));
      }
      button.gravity {
        color: var(--text);
        text-decoration-color: transparent;
        gap: 0.3em;
      }
      button.gravity:hover {
        text-decoration-color: currentColor;
      }
      button.gravity b {
        font-weight: 680;
      }
      .place {
        color: var(--soft);
      }
      @media (max-width: 899px) {
        h1 span,
        .place,
        button.on-wide {
          display: none;
        }
        .right {
          gap: 16px;
        }
      }
    `,
  ];

  /** What stands on the bench, "spring arm in a falling case". */
  @property() subject = '';
  /** "9.81 m/s²" */
  @property() gravity = '';
  /** "here", "at the pole" */
  @property() place = '';
  @property() theme: 'day' | 'evening' = 'day';
  @property({ type: Boolean }) stage = false;

  constructor() {
    super();
    // Esc is no letter: it works with the letters turned off as well.
    new KeyLetters(
      this,
      () => this.stage,
      (key) => {
        if (key !== 'escape') return false;
        sendAct(this, { what: 'stage', on: false });
        return true;
      },
    );
  }

  override render() {
    return html`
      <h1>Bench <span>${this.subject}</span></h1>
      <div class="right">
        <button class="link gravity" ${help('gravity here')} @click=${() => sendAct(this, { what: 'open sheet', sheet: 'place' })}>
          <span>gravity <b>${this.gravity}</b> <span class="place">${this.place}</span></span>
        </button>
        <button class="link" ${help('words')} @click=${() => sendAct(this, { what: 'open sheet', sheet: 'words' })}>words</button>
        <button
          class="link"
          ${help('theme')}
          @click=${() => sendAct(this, { what: 'theme', theme: this.theme === 'day' ? 'evening' : 'day' })}
        >
          ${this.theme === 'day' ? 'evening' : 'daylight'}
        </button>
        <button
          class="link on-wide"
          ${help('stage')}
          @click=${() => sendAct(this, { what: 'stage', on: !this.stage })}
        >
          ${this.stage ? 'leave the stage (Esc)' : 'stage'}
        </button>
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bench-head': BenchHead;
  }
}
