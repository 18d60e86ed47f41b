import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { exactText, quantityText } from '../units/quantity-text.ts';
import { baseStyles } from './shared-styles.ts';

/** What a suspension does, in the figures that the model gives. SI. */
export interface PlainFigures {
  /** Frequency at which it rings [Hz]; undefined: it does not swing past its rest. */
  readonly ringsHz: number | undefined;
  /** Static deflection under one g_n [m]. */
  readonly sagM: number;
  /** Time to stay within `settleBand` of rest [s]; undefined: it never does. */
  readonly settlesS: number | undefined;
  /** [–] */
  readonly settleBand: number;
  /** Specific force at which it meets its stops, [m/s²]; undefined: no stops. */
  readonly rangeMS2: number | undefined;
}

/** The element in plain words: "rings at 8.10 Hz · sags 3.79 mm per g · settles in 0.650 s · range ±6.00 g". */
@customElement('plain-words')
export class PlainWords extends LitElement {
  static override styles = [
    baseStyles,
    css`
      p {
        margin: 0;
        font: 460 var(--type-words) / 1.3 var(--book);
        font-feature-settings: 'tnum', 'lnum';
      }
      b {
        font-weight: 640;
      }
      .part {
        white-space: nowrap;
      }
      small {
        display: block;
        margin-top: 2px;
        font: 460 var(--type-mark) / 1.3 var(--plain);
        color: var(--soft);
      }
      :host([brief]) small {
        display: none;
      }
      :host([brief]) .part {
        white-space: normal;
      }
      @media (max-width: 1150px), (max-height: 830px) {
        small {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) figures: PlainFigures | undefined;
  /** Without the second line. */
  @property({ type: Boolean, reflect: true }) brief = false;
  /** Said after the second line, "the strip is 0.410 mm thick". */
  @property() further = '';

  override render() {
    if (this.figures === undefined) return nothing;
    const { ringsHz, sagM, settlesS, settleBand, rangeMS2 } = this.figures;
    const parts = [
      html`<b>${ringsHz === undefined ? 'does not ring' : `rings at ${quantityText(ringsHz, 'frequency')}`}</b>`,
      html`sags ${quantityText(sagM, 'length')} per\u00a0g`,
      html`${settlesS === undefined ? 'never settles' : `settles in ${quantityText(settlesS, 'time')}`}`,
      html`${rangeMS2 === undefined ? 'no stops' : `range ±${quantityText(rangeMS2, 'acceleration', 'g')}`}`,
    ];
    const detail = [
      settlesS === undefined ? '' : `to rest within ${exactText(settleBand, 'percent')}`,
      rangeMS2 === undefined ? '' : `reaches its stops at ±${quantityText(rangeMS2, 'acceleration', 'g')}`,
      this.further,
    ].filter((text) => text !== '');
    // The dot stays with the part before it, so that no line begins with one.
    return html`<p>
        ${parts.map((part, index) => html`<span class="part">${part}${index < parts.length - 1 ? '\u00a0·' : ''}</span> `)}
      </p>
      <small>${detail.join('; ')}</small>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'plain-words': PlainWords;
  }
}
