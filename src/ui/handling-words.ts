import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type HandlingPiece, type HandlingValues, handlingNamed } from './handling-fields.ts';
import './quantity-field.ts';
import { baseStyles, linkStyles, selectStyles } from './shared-styles.ts';
import { type HandlingName, sendAct, sendSetting } from './ui-events.ts';

/** How the housing is handled, as a sentence whose numbers and choices are fields. */
@customElement('handling-words')
export class HandlingWords extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    selectStyles,
    css`
      p {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 3px 6px;
        margin: 0;
      }
      quantity-field {
        font-size: var(--type-label);
      }
      @media (min-width: 900px) and (max-width: 1150px) {
        p {
          gap: 1px 5px;
        }
        select {
          min-height: 24px;
        }
        quantity-field {
          --field-height: 24px;
        }
      }
    `,
  ];

  @property() handling: HandlingName = 'drop';
  @property({ attribute: false }) values: HandlingValues = {};
  /** Name of the record that is ready to be played. */
  @property({ attribute: 'record-name' }) recordName = '';

  override render() {
    return html`<p>
      ${handlingNamed(this.handling)
        .sentence(this.values)
        .map((piece) => this.#piece(piece))}
    </p>`;
  }

  #piece(piece: HandlingPiece) {
    switch (piece.piece) {
      case 'words':
        return html`<span>${piece.words}</span>`;
      case 'quantity':
        return html`<quantity-field
          .name=${piece.name}
          .label=${piece.label}
          .kind=${piece.kind}
          .unit=${piece.unit}
          .low=${piece.low}
          .high=${piece.high}
          .value=${Number(this.values[piece.name] ?? piece.start)}
        ></quantity-field>`;
      case 'choice': {
        const chosen = this.values[piece.name] ?? piece.start;
        return html`<select
          aria-label=${piece.label}
          @change=${(event: Event) =>
            sendSetting(this, { name: piece.name, value: (event.target as HTMLSelectElement).value, final: true })}
        >
          ${piece.choices.map(
            ({ value, words }) => html`<option value=${value} .selected=${value === chosen}>${words}</option>`,
          )}
        </select>`;
      }
      case 'record':
        return html`${this.recordName === '' ? nothing : html`<b>${this.recordName}</b>`}
          <button class="link" @click=${() => sendAct(this, { what: 'open sheet', sheet: 'records' })}>
            ${this.recordName === '' ? 'a file of yours' : 'another'}
          </button>`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'handling-words': HandlingWords;
  }
}
