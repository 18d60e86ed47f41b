import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { QuantityKind } from '../units/unit-table.ts';
import './quantity-field.ts';
import { exactText, quantityText } from '../units/quantity-text.ts';
import { help, isHelped } from './help.ts';
import { riderShare, riderStep, riderValue, ruleMarks } from './rider-position.ts';
import { riderStyles } from './rider-styles.ts';
import { baseStyles } from './shared-styles.ts';
import { sendSetting } from './ui-events.ts';

/** Resolution of the slider underneath, finer than a pixel. */
const PARTS = 1000;

/** A quantity that is set by sliding a brass rider along a rule, or by typing it. Sends `setting` while it slides and at the end. */
@customElement('quantity-slider')
export class QuantitySlider extends LitElement {
  static override styles = [
    baseStyles,
    riderStyles,
    css`
      .top {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 6px;
        margin-bottom: 2px;
      }
      label {
        min-width: 0;
        white-space: nowrap;
        font-weight: 540;
        line-height: 1.15;
      }
      @media (max-width: 1150px) {
        label {
          font-size: 12.5px;
        }
      }
      quantity-field {
        flex: none;
        --field-width: calc(70px * var(--scale));
      }
      @media (min-width: 900px) and (max-width: 1150px) {
        quantity-field {
          --field-width: 58px;
        }
      }
      .ends {
        display: flex;
        justify-content: space-between;
        font-size: var(--type-mark);
        color: var(--soft);
        line-height: 1.2;
      }
    `,
  ];

  @property() name = '';
  @property() label = '';
  @property() kind: QuantityKind = 'dimensionless';
  @property() unit: string | undefined;
  /** SI. */
  @property({ type: Number }) value = Number.NaN;
  @property({ type: Number }) low = 0;
  @property({ type: Number }) high = 1;
  @property() spacing: 'linear' | 'logarithmic' = 'linear';
  @property({ attribute: 'limit-reason' }) limitReason: string | undefined;

  override render() {
    const share = riderShare(this.value, this);
    return html`
      <div class="top">
        <label for="rider" ${help(isHelped(this.name) ? this.name : undefined)}>${this.label}</label>
        <quantity-field
          .name=${this.name}
          .label=${this.label}
          .kind=${this.kind}
          .unit=${this.unit}
          .value=${this.value}
          .low=${this.low}
          .high=${this.high}
          .limitReason=${this.limitReason}
          @setting=${this.#typed}
        ></quantity-field>
      </div>
      <div class="rule" .style=${`--share: ${share}`}>
        <svg class="marks" aria-hidden="true" preserveAspectRatio="none" viewBox="0 0 100 9">
          ${ruleMarks(this).map((mark) => {
            const x = 0.35 + mark.share * 99.3;
            return svg`<line x1=${x} x2=${x} y1=${mark.major ? 0 : 3.5} y2="9" vector-effect="non-scaling-stroke" />`;
          })}
        </svg>
        <div class="line"></div>
        <input
          id="rider"
          ${help(isHelped(this.name) ? this.name : undefined)}
          type="range"
          min="0"
          max=${PARTS}
          step="any"
          aria-valuetext=${quantityText(this.value, this.kind, this.unit)}
          .value=${String(share * PARTS)}
          @input=${this.#slide}
          @change=${this.#stop}
          @keydown=${this.#step}
        />
      </div>
      <div class="ends">
        <span>${exactText(this.low, this.kind, this.unit)}</span><span>${exactText(this.high, this.kind, this.unit)}</span>
      </div>
    `;
  }

  #set(value: number, final: boolean): void {
    this.value = value;
    sendSetting(this, { name: this.name, value, final });
  }

  readonly #typed = (event: CustomEvent<{ readonly value: number | string | boolean }>): void => {
    event.stopPropagation();
    if (typeof event.detail.value === 'number') this.#set(event.detail.value, true);
  };

  readonly #slide = (event: Event): void => {
    const share = Number((event.target as HTMLInputElement).value) / PARTS;
    this.#set(riderValue(share, this), false);
  };

  readonly #stop = (): void => {
    this.#set(this.value, true);
  };

  /** Steps of a hundredth (a tenth with Page keys) of the rule, whatever the browser's own would be. */
  readonly #step = (event: KeyboardEvent): void => {
    const direction = { ArrowUp: 1, ArrowRight: 1, PageUp: 1, ArrowDown: -1, ArrowLeft: -1, PageDown: -1 }[event.key];
    if (direction === undefined) {
      if (event.key === 'Home') this.#set(this.low, true);
      else if (event.key === 'End') this.#set(this.high, true);
      else return;
    } else {
      this.#set(riderStep(this.value, this, direction === 1 ? 1 : -1, event.key.startsWith('Page')), true);
    }
    event.preventDefault();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'quantity-slider': QuantitySlider;
  }
}
