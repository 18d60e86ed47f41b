import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import './caution-note.ts';
import './quantity-field.ts';
import { help, isHelped } from './help.ts';
import { type Choice, settingCheck, settingChoice } from './setting-choice.ts';
import { baseStyles, selectStyles, sheetStyles } from './shared-styles.ts';
import { type SliderSpec, sliderList } from './slider-list.ts';

/** A place by name; its gravity is worked out by the app from latitude and height, or given. */
export interface NamedPlace {
  readonly id: string;
  readonly name: string;
}

/** Where the bench stands: its gravity, the height of the drop and what lies below. */
@customElement('place-sheet')
export class PlaceSheet extends LitElement {
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
        min-height: 30px;
      }
      label,
      .label {
        font-weight: 540;
      }
      quantity-field {
        --field-width: 96px;
      }
      select {
        max-width: 190px;
      }
      caution-note {
        margin-top: var(--space-4);
      }
    `,
  ];

  @property({ attribute: false }) places: readonly NamedPlace[] = [];
  /** Id of the place; '' when gravity was typed. */
  @property() place = '';
  /** [m/s²] */
  @property({ type: Number }) gravity = Number.NaN;
  /** Geodetic latitude [rad] and height above sea level [m]. */
  @property({ type: Number }) latitude = Number.NaN;
  @property({ type: Number }) height = Number.NaN;
  /** The housing falls through air. */
  @property({ type: Boolean }) air = false;
  /** Drop height. */
  @property({ attribute: false }) drop: readonly SliderSpec[] = [];
  /** Stiffness, damping, friction of the pad. */
  @property({ attribute: false }) pad: readonly SliderSpec[] = [];

  override render() {
    return html`
      <h2>The place</h2>
      <div class="row">
        <label for="place">where</label>
        ${settingChoice(this, 'place', this.place, this.#choices())}
      </div>
      ${this.#field('gravity', 'gravity', 'acceleration', this.gravity, 0, 300)}
      ${this.#field('latitude', 'latitude, north positive', 'angle', this.latitude, -Math.PI / 2, Math.PI / 2)}
      ${this.#field('placeHeight', 'height above the sea', 'length', this.height, -500, 20_000)}
      <h3>The drop</h3>
      ${settingCheck(this, 'air', this.air, 'through air: a fall then reads a little more than zero')}
      <div class="sliders">${sliderList(this.drop)}</div>
      <caution-note about="drop"></caution-note>
      <h3>The felt</h3>
      <div class="sliders">${sliderList(this.pad)}</div>
    `;
  }

  #choices(): readonly Choice[] {
    const typed = this.place === '' ? [{ value: '', words: 'as typed' }] : [];
    return [...typed, ...this.places.map(({ id, name }) => ({ value: id, words: name }))];
  }

  #field(
    name: string,
    label: string,
    kind: 'acceleration' | 'angle' | 'length',
    value: number,
    low: number,
    high: number,
  ) {
    return html`<div class="row">
      <span class="label">${label}</span>
      <quantity-field
        ${help(isHelped(name) ? name : undefined)}
        .name=${name}
        .label=${label}
        .kind=${kind}
        .value=${value}
        .low=${low}
        .high=${high}
      ></quantity-field>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'place-sheet': PlaceSheet;
  }
}
