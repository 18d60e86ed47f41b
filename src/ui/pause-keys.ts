import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { help } from './help.ts';
import { smallIcons } from './key-icons.ts';
import { KeyLetters } from './key-letters.ts';
import { baseStyles, slipKeyStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

/** Pause or go on, and one tick on. */
@customElement('pause-keys')
export class PauseKeys extends LitElement {
  static override styles = [
    baseStyles,
    slipKeyStyles,
    css`
      :host {
        display: flex;
        gap: 7px;
      }
      button.slip {
        flex: 1 1 auto;
        gap: 5px;
        padding: 2px 7px;
      }
      /* As wide with either word, so that nothing moves under the pointer. */
      button.pause {
        flex-basis: 72px;
      }
      svg {
        width: 0.9em;
        height: 0.9em;
        fill: none;
        stroke: currentColor;
        stroke-width: 2;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      kbd {
        font: 500 var(--type-mark) / 1 var(--plain);
      }
      @media (min-width: 900px) and (max-width: 1150px) {
        kbd {
          display: none;
        }
      }
    `,
  ];

  @property({ type: Boolean }) paused = false;
  /** Letters press keys from anywhere. */
  @property({ type: Boolean }) letters = true;

  constructor() {
    super();
    new KeyLetters(
      this,
      () => this.letters,
      (letter) => {
        if (letter === 'p') this.#pause();
        else if (letter === 'n') sendAct(this, { what: 'one tick on' });
        else return false;
        return true;
      },
    );
  }

  override render() {
    return html`
      <button
        class="slip pause"
        ${help('pause')}
        aria-keyshortcuts=${this.letters ? 'P' : nothing}
        @click=${this.#pause}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">${this.paused ? smallIcons.goOn : smallIcons.pause}</svg>
        ${this.paused ? 'Go on' : 'Pause'} ${this.letters ? html`<kbd aria-hidden="true">P</kbd>` : nothing}
      </button>
      <button
        class="slip"
        ${help('one tick on')}
        aria-keyshortcuts=${this.letters ? 'N' : nothing}
        aria-label="one tick on"
        @click=${() => sendAct(this, { what: 'one tick on' })}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">${smallIcons.tick}</svg>
        tick
        ${this.letters ? html`<kbd aria-hidden="true">N</kbd>` : nothing}
      </button>
    `;
  }

  readonly #pause = (): void => {
    sendAct(this, { what: this.paused ? 'go on' : 'pause' });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'pause-keys': PauseKeys;
  }
}
