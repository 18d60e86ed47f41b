import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import './caution-note.ts';
import './quantity-field.ts';
import { help, isHelped } from './help.ts';
import { baseStyles, selectStyles, sheetStyles } from './shared-styles.ts';
import { type SliderSpec, sliderList } from './slider-list.ts';
import { sendSetting } from './ui-events.ts';

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
        <select
          ${help('place')}
          id="place"
          @change=${(event: Event) =>
            sendSetting(this, { name: 'place', value: (event.target as HTMLSelectElement).value, final: true })}
        >
          <option value="" .selected=${this.place === ''} ?hidden=${this.place !== ''}>as typed</option>
          ${this.places.map(({ id, name }) => html`<option value=${id} .selected=${id === this.place}>${name}</option>`)}
        </select>
      </div>
      ${this.#field('gravity', 'gravity', 'acceleration', this.gravity, 0, 300)}
      ${this.#field('latitude', 'latitude, north positive', 'angle', this.latitude, -Math.PI / 2, Math.PI / 2)}
      ${this.#field('placeHeight', 'height above the sea', 'length', this.height, -500, 20_000)}
      <h3>The drop</h3>
      <label class="check"
        ><input
          ${help('air')}
          type="checkbox"
          .checked=${this.air}
          @change=${(event: Event) =>
            sendSetting(this, { name: 'air', value: (event.target as HTMLInputElement).checked, final: true })}
        />through air: a fall then reads a little more than zero</label
      >
      <div class="sliders">${sliderList(this.drop)}</div>
      <caution-note about="drop"></caution-note>
      <h3>The felt</h3>
      <div class="sliders">${sliderList(this.pad)}</div>
    `;
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
