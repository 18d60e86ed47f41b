import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { baseStyles } from './shared-styles.ts';

/** The reading in large figures over the pen's rule, with what the mass does for it beside. */
@customElement('reading-figure')
export class ReadingFigure extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: flex;
        align-items: baseline;
        gap: 30px;
        white-space: nowrap;
      }
      .figure {
        font: 600 var(--type-reading) / 1 var(--book);
        font-feature-settings: 'tnum', 'lnum';
        letter-spacing: -0.005em;
      }
      .unit {
        padding-left: 0.24em;
      }
      .beside {
        color: var(--soft);
        font-size: var(--type-mark);
        letter-spacing: 0.01em;
      }
      @media (max-width: 1150px) {
        :host {
          gap: 12px;
        }
        .figure {
          font-size: calc(var(--type-reading) * 0.86);
        }
        .second {
          display: none;
        }
      }
      @media (max-width: 899px) {
        .figure {
          font-size: 24px;
        }
        .beside {
          display: none;
        }
      }
    `,
  ];

  /** The reading as printed, "+2.42", and its unit, "g" or "m/s²". */
  @property() figure = '';
  @property() unit = 'g';
  /** "mass 9.20 mm low" */
  @property() mass = '';
  /** "bend drawn ×2.40" */
  @property() drawn = '';

  override render() {
    return html`
      <span class="figure"><span class="only-heard">The pen reads </span>${this.figure}<span class="unit">${this.unit}</span></span>
      ${
        this.mass === ''
          ? nothing
          : html`<span class="beside">${this.mass}${
              this.drawn === '' ? nothing : html`<span class="second">, ${this.drawn}</span>`
            }</span>`
      }
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'reading-figure': ReadingFigure;
  }
}
