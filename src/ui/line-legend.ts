import { css, html, LitElement, type SVGTemplateResult, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { quantityText } from '../units/quantity-text.ts';
import { G_N } from '../units/standard-gravity.ts';
import { help, isHelped } from './help.ts';
import { settingCheck, settingChoice } from './setting-choice.ts';
import { baseStyles, linkStyles, selectStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

/** Reaches of the paper to choose from [g_n]. */
const RANGES_G = [0.1, 1, 2, 5, 10, 20, 50, 100, 500];

/** How a line is told apart: by its stroke, not by its colour alone. */
export type LineStroke = 'solid' | 'dash' | 'dots' | 'dash-dot' | 'fine-dash' | 'long-dash';

export interface LegendLine {
  readonly id: string;
  readonly name: string;
  /** Said where there is little room. */
  readonly shortName: string;
  readonly stroke: LineStroke;
  readonly shown: boolean;
  /** Called up by "more lines" only. */
  readonly further: boolean;
}

const SAMPLES: Readonly<Record<LineStroke, SVGTemplateResult>> = {
  solid: svg`<path class="ink" d="M0 6h28" />`,
  dash: svg`<path class="pencil dash" d="M0 6h29" />`,
  dots: svg`<g class="dot"><circle cx="5" cy="6" r="2.4" /><circle cx="14" cy="6" r="2.4" /><circle cx="23" cy="6" r="2.4" /></g>`,
  'dash-dot': svg`<path class="pencil dash-dot" d="M0 6h28" />`,
  'fine-dash': svg`<path class="pencil fine-dash" d="M0 6h28" />`,
  'long-dash': svg`<path class="pencil long-dash" d="M0 6h33" />`,
};

/** Names of the tape's lines with a sample of each; a name pressed shows or hides its line. */
@customElement('line-legend')
export class LineLegend extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    selectStyles,
    css`
      :host {
        container-type: inline-size;
      }
      .legend {
        display: flex;
        align-items: center;
        position: relative;
        gap: 3px;
        justify-content: space-between;
        font-size: max(13px, calc(14px * var(--scale)));
        white-space: nowrap;
      }
      button.line {
        display: inline-flex;
        align-items: center;
        gap: 7px;
        min-height: 26px;
        padding: 0 2px;
        border: 0;
        background: none;
        font-weight: 520;
        cursor: pointer;
        border-radius: 3px;
      }
      button.line[aria-pressed='false'] {
        color: var(--soft);
      }
      .legend > button.line[aria-pressed='false'] {
        text-decoration: line-through;
      }
      button.line[aria-pressed='false'] svg {
        opacity: 0.4;
      }
      svg {
        flex: none;
        width: 28px;
        height: 12px;
        overflow: visible;
        fill: none;
        stroke-linecap: round;
      }
      .more {
        flex: none;
        display: grid;
        place-items: center;
        width: 26px;
        height: 26px;
        padding: 0;
        border: 0;
        background: none;
        cursor: pointer;
      }
      svg.plus {
        width: 13px;
        height: 13px;
        stroke: var(--link);
        stroke-width: 2;
      }
      .ink {
        stroke: var(--ink);
        stroke-width: 2.5;
      }
      .pencil {
        stroke: var(--pencil);
        stroke-width: 1.9;
      }
      label {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 10px;
        padding: 0 4px;
      }
      label.check {
        justify-content: flex-start;
        gap: 8px;
      }
      .dash {
        stroke-dasharray: 7 3.5;
        stroke-linecap: butt;
      }
      .dash-dot {
        stroke-dasharray: 8 4 0.1 4;
      }
      .long-dash {
        stroke-dasharray: 14 5;
        stroke-linecap: butt;
      }
      .fine-dash {
        stroke-dasharray: 2 3;
        stroke-linecap: butt;
      }
      .many .long {
        display: none;
      }
      .many .short {
        display: inline;
      }
      .many {
        gap: 9px;
      }
      .many svg {
        width: 20px;
      }
      .many .further .long {
        display: inline;
      }
      .many .further .short {
        display: none;
      }
      .dot {
        fill: var(--dot);
        stroke: none;
      }
      .short {
        display: none;
      }
      .further {
        position: absolute;
        z-index: 5;
        top: 100%;
        right: 0;
        display: grid;
        gap: 2px;
        padding: 8px 12px;
        background: var(--sheet);
        box-shadow: var(--shadow-sheet);
        border-radius: var(--radius-field);
      }
      @container (max-width: 494px) {
        .legend {
          justify-content: flex-start;
          gap: calc(15px * var(--scale));
        }
        .more {
          margin-left: auto;
        }
        .long {
          display: none;
        }
        .short {
          display: inline;
        }
        .further .long {
          display: inline;
        }
        .further .short {
          display: none;
        }
      }
      @container (max-width: 300px) {
        .legend {
          gap: 4px;
        }
        svg {
          width: 22px;
        }
        button.line {
          gap: 5px;
        }
      }
    `,
  ];

  @property({ attribute: false }) lines: readonly LegendLine[] = [];
  /** In what the paper is ruled, and up to where [m/s²]. */
  @property() unit: 'g_n' | 'm/s2' = 'g_n';
  @property({ attribute: false }) range: 'automatic' | number = 'automatic';
  /** A drag over the tape marks a span instead of pulling the paper. */
  @property({ type: Boolean }) marks = false;
  @state() private unfolded = false;

  override render() {
    const further = this.lines.filter((line) => line.further);
    const standing = this.lines.filter((line) => !line.further || line.shown);
    return html`<div class="legend ${standing.length > 3 ? 'many' : ''}">
      ${standing.map((line) => this.#line(line))}
      ${
        further.length === 0
          ? ''
          : html`<button class="more" ${help('more lines')} aria-label="more lines" aria-expanded=${this.unfolded} @click=${this.#unfold}>
              <svg class="plus" viewBox="0 0 16 16" aria-hidden="true"><path d="M8 2v12M2 8h12" /></svg>
            </button>`
      }
      ${
        this.unfolded
          ? html`<div class="further" @keydown=${this.#foldOnEscape}>
              ${further.map((line) => this.#line(line))} ${this.#ruling()}
            </div>`
          : ''
      }
    </div>`;
  }

  #line(line: LegendLine) {
    const name = line.id === 'mass' ? 'mass line' : line.id;
    return html`<button
      class="line"
      ${help(isHelped(name) ? name : undefined)}
      aria-pressed=${line.shown}
      aria-label=${line.name}
      @click=${() => sendAct(this, { what: 'line', line: line.id, shown: !line.shown })}
    >
      <svg viewBox="0 0 28 12" class=${line.stroke} aria-hidden="true">${SAMPLES[line.stroke]}</svg>
      <span class="long">${line.name}</span><span class="short">${line.shortName}</span>
    </button>`;
  }

  /** The paper's unit, and how far it reaches: by what is on it, or fixed. */
  #ruling() {
    const reach = (rangeMS2: number): string =>
      `±${quantityText(rangeMS2, 'acceleration', this.unit === 'g_n' ? 'g' : 'm/s²')}`;
    const reaches = RANGES_G.map((rangeG) => {
      const rangeMS2 = rangeG * G_N;
      return { value: String(rangeMS2), words: reach(rangeMS2) };
    });
    return html`${settingCheck(this, 'drag', this.marks, 'dragging marks a span')}
      <label>
        ruled in
        ${settingChoice(this, 'unit', this.unit, [
          { value: 'g_n', words: 'g' },
          { value: 'm/s2', words: 'm/s²' },
        ])}
      </label>
      <label>
        reaches
        ${settingChoice(this, 'range', String(this.range), [{ value: 'automatic', words: 'as needed' }, ...reaches])}
      </label>
      <button class="link" ${help('trigger')} @click=${() => sendAct(this, { what: 'arm trigger', on: true })}>
        stop when something happens
      </button>`;
  }

  readonly #unfold = (): void => {
    this.unfolded = !this.unfolded;
  };

  readonly #foldOnEscape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    this.unfolded = false;
    this.renderRoot.querySelector<HTMLElement>('.more')?.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'line-legend': LineLegend;
  }
}
