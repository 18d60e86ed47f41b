import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { help } from './help.ts';
import { baseStyles, linkStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

/** What concerns the run as a whole: settings undone and redone, a fresh run with the same seed, a clear paper. */
@customElement('run-keys')
export class RunKeys extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    css`
      :host {
        display: flex;
        gap: calc(16px * var(--scale));
        white-space: nowrap;
      }
    `,
  ];

  /** What undo would take back, "mass 25.0 g"; '' when there is nothing. */
  @property({ attribute: 'undo-what' }) undoWhat = '';
  @property({ attribute: 'redo-what' }) redoWhat = '';

  override render() {
    return html`
      ${this.#step('undo', this.undoWhat)} ${this.#step('redo', this.redoWhat)}
      <button class="link" ${help('fresh run')} aria-label="fresh run with the same seed" @click=${() => sendAct(this, { what: 'fresh run' })}>
        fresh run
      </button>
      <button class="link" ${help('clear')} aria-label="clear the paper" @click=${() => sendAct(this, { what: 'clear' })}>clear</button>
    `;
  }

  #step(what: 'undo' | 'redo', of: string) {
    return html`<button
      ${help(what)}
      class="link"
      ?disabled=${of === ''}
      aria-label=${of === '' ? what : `${what}: ${of}`}
      @click=${() => sendAct(this, { what })}
    >
      ${what}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'run-keys': RunKeys;
  }
}
