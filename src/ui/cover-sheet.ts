import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { baseStyles } from './shared-styles.ts';

/** A card that lies over a part of the bench while what it shows is still to be predicted. */
@customElement('cover-sheet')
export class CoverSheet extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        z-index: 2;
      }
      .card {
        position: absolute;
        inset: 30px 4px 2px 0;
        display: grid;
        place-items: center;
        padding: 8px;
        border-radius: var(--radius-button);
        background: linear-gradient(125deg, var(--manila), var(--manila-low));
        box-shadow: var(--shadow-folder);
      }
      p {
        margin: 0;
        max-width: 24ch;
        font: italic 460 max(14px, calc(16px * var(--scale))) / 1.35 var(--book);
        text-align: center;
        text-wrap: balance;
      }
    `,
  ];

  @property() words = '';

  override render() {
    return html`<div class="card"><p>${this.words}</p></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'cover-sheet': CoverSheet;
  }
}
