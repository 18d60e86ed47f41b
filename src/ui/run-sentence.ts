import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { baseStyles } from './shared-styles.ts';

/**
 * What happened, in one generated sentence. Spoken by screen readers when it changes; `now` (a clock running along)
 * is shown only.
 */
@customElement('run-sentence')
export class RunSentence extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        font: italic 460 max(14px, calc(15.5px * var(--scale))) / 1.3 var(--book);
        color: var(--soft);
        text-wrap: pretty;
      }
    `,
  ];

  /** "Fell 0.286 s, reading settled at 0.0 g, landed 33.0 g." */
  @property() sentence = '';
  /** "0.55 s ago" */
  @property() now = '';

  override render() {
    return html`<span role="status">${this.sentence}</span> <span aria-hidden="true">${this.now}</span>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'run-sentence': RunSentence;
  }
}
