import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { QuantityKind } from '../units/unit-table.ts';
import './quantity-field.ts';
import { quantityText } from '../units/quantity-text.ts';
import { baseStyles, linkStyles, selectStyles } from './shared-styles.ts';
import { sendAct, sendSetting } from './ui-events.ts';

/** What a marked span of one line comes to; SI, worked out by the app. */
export interface SpanFigures {
  /** Name of the line. */
  readonly line: string;
  readonly kind: QuantityKind;
  readonly unit?: string | undefined;
  readonly durationS: number;
  readonly mean: number;
  readonly peak: number;
  readonly rms: number;
  /** Change per second. */
  readonly slope: number;
  /** Time integral. */
  readonly area: number;
  /** Unit of the slope and of the area as printed after their numbers: "g/s", "m/s". */
  readonly slopeText: string;
  readonly areaText: string;
}

/** Catches an event: what line has to pass which level, and how much time is kept around it. SI. */
export interface TriggerSettings {
  readonly armed: boolean;
  readonly line: string;
  readonly lines: readonly { readonly id: string; readonly name: string }[];
  readonly rising: boolean;
  readonly levelMS2: number;
  readonly beforeS: number;
  readonly afterS: number;
}

/** A slip under the tape: figures of the marked span, and what is waited for. */
@customElement('span-figures')
export class SpanFiguresSlip extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    selectStyles,
    css`
      .slip {
        position: relative;
        padding: 7px 12px 8px;
        background: var(--paper);
        box-shadow: var(--shadow-sheet);
        border-radius: 0 0 3px 3px;
      }
      dl {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 16px;
        margin: 0;
      }
      dl div {
        display: flex;
        gap: 5px;
        white-space: nowrap;
      }
      dt {
        color: var(--soft);
      }
      dd {
        margin: 0;
        font-weight: 620;
      }
      .of {
        font-style: italic;
        font-family: var(--book);
        color: var(--soft);
      }
      p {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 3px 6px;
        margin: 0;
      }
      .keys {
        display: inline-flex;
        gap: 12px;
        margin-left: auto;
      }
      quantity-field {
        font-size: var(--type-label);
      }
    `,
  ];

  @property({ attribute: false }) span: SpanFigures | undefined;
  @property({ type: Boolean }) looping = false;
  @property({ attribute: false }) trigger: TriggerSettings | undefined;

  override render() {
    if (this.span === undefined && this.trigger === undefined) return nothing;
    return html`<div class="slip">
      ${this.span === undefined ? nothing : this.#figures(this.span)}
      ${this.trigger === undefined ? nothing : this.#trigger(this.trigger)}
    </div>`;
  }

  #figures(span: SpanFigures) {
    const value = (number: number) => quantityText(number, span.kind, span.unit);
    const row = (term: string, figure: string) => html`<div><dt>${term}</dt><dd>${figure}</dd></div>`;
    return html`
      <p>
        <span class="of">${span.line}, ${quantityText(span.durationS, 'time')} marked</span>
        <span class="keys">
          <button
            class="link"
            aria-pressed=${this.looping}
            @click=${() => sendAct(this, { what: 'loop span', on: !this.looping })}
          >
            ${this.looping ? 'stop the loop' : 'loop it'}
          </button>
          <button class="link" aria-label="take the mark away" @click=${() => sendAct(this, { what: 'clear span' })}>
            unmark
          </button>
        </span>
      </p>
      <dl>
        ${row('mean', value(span.mean))} ${row('peak', value(span.peak))} ${row('rms', value(span.rms))}
        ${row('slope', span.slopeText)} ${row('area', span.areaText)}
      </dl>
    `;
  }

  #trigger(trigger: TriggerSettings) {
    const choose = (name: string) => (event: Event) =>
      sendSetting(this, { name, value: (event.target as HTMLSelectElement).value, final: true });
    const field = (name: string, label: string, kind: QuantityKind, value: number, low: number, high: number) =>
      html`<quantity-field
        .name=${name}
        .label=${label}
        .kind=${kind}
        .unit=${kind === 'acceleration' ? 'g' : undefined}
        .value=${value}
        .low=${low}
        .high=${high}
      ></quantity-field>`;
    return html`<p>
      <span>Stop when</span>
      <select aria-label="line that is watched" @change=${choose('trigger.line')}>
        ${trigger.lines.map(
          ({ id, name }) => html`<option value=${id} .selected=${id === trigger.line}>${name}</option>`,
        )}
      </select>
      <select aria-label="direction" @change=${choose('trigger.direction')}>
        <option value="rising" .selected=${trigger.rising}>rises past</option>
        <option value="falling" .selected=${!trigger.rising}>falls past</option>
      </select>
      ${field('trigger.level', 'level', 'acceleration', trigger.levelMS2, -1e5, 1e5)}
      <span>and keep</span> ${field('trigger.before', 'time before', 'time', trigger.beforeS, 0, 60)}
      <span>before,</span> ${field('trigger.after', 'time after', 'time', trigger.afterS, 0, 60)} <span>after.</span>
      <span class="keys">
        <button
          class="link"
          aria-pressed=${trigger.armed}
          @click=${() => sendAct(this, { what: 'arm trigger', on: !trigger.armed })}
        >
          ${trigger.armed ? 'waiting: stop waiting' : 'wait for it'}
        </button>
      </span>
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'span-figures': SpanFiguresSlip;
  }
}
