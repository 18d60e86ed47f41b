import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { quantityText } from '../units/quantity-text.ts';
import { settingCheck, settingChoice } from './setting-choice.ts';
import { baseStyles, selectStyles, sheetStyles } from './shared-styles.ts';
import { type SliderSpec, sliderList } from './slider-list.ts';

const BITS = [0, 4, 6, 8, 10, 12, 14, 16, 20, 24].map((bits) => ({
  value: String(bits),
  words: bits === 0 ? 'no steps' : `${bits} bits`,
}));

/** How readings become numbers: samples a second, range, bits. */
@customElement('read-out-sheet')
export class ReadOutSheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    selectStyles,
    css`
      .row {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
      }
      label {
        font-weight: 540;
      }
      .sliders {
        margin-top: var(--space-4);
      }
      .note {
        margin-top: var(--space-5);
      }
    `,
  ];

  /** Samples are taken at all. */
  @property({ type: Boolean }) sampling = true;
  /** Rate and range. */
  @property({ attribute: false }) sliders: readonly SliderSpec[] = [];
  /** Bits of the converter; undefined: no steps. */
  @property({ type: Number }) bits: number | undefined;
  /** Size of one step [m/s²], as the model has it. */
  @property({ type: Number }) stepMS2: number | undefined;

  override render() {
    return html`
      <h2>The read-out</h2>
      <p>What the sensor reports: the reading, taken now and then, cut off at its range and rounded to a step.</p>
      ${settingCheck(this, 'readout.on', this.sampling, 'take samples')}
      ${this.sampling ? this.#settings() : nothing}
    `;
  }

  #settings() {
    const step = this.stepMS2 === undefined ? '' : quantityText(this.stepMS2, 'acceleration', 'g');
    return html`
      <div class="sliders">
        ${sliderList(this.sliders)}
        <div class="row">
          <label for="readout.bits">bits</label>
          ${settingChoice(this, 'readout.bits', String(this.bits ?? 0), BITS)}
        </div>
      </div>
      ${step === '' ? nothing : html`<p class="note">One step is ${step}.</p>`}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'read-out-sheet': ReadOutSheet;
  }
}
