import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { PaperScale } from '../contract/view.ts';
import { ruleTicks } from './rule-ticks.ts';
import { baseStyles } from './shared-styles.ts';

/** The wooden rule on which the pen's slider runs: numbers at the heights at which the paper has them. */
@customElement('pen-rule')
export class PenRule extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        overflow: hidden;
        background: linear-gradient(
          90deg,
          var(--wood-shade),
          var(--wood-light) 12%,
          var(--wood-light) 40%,
          var(--wood) 78%,
          var(--wood-shade)
        );
        box-shadow:
          inset 0 1px 0 rgb(255 255 255 / 0.3),
          inset 0 0 0 0.5px rgb(var(--shadow) / 0.45),
          9px 12px 10px rgb(var(--shadow) / 0.3);
      }
      svg {
        display: block;
        width: 100%;
        height: 100%;
        overflow: visible;
      }
      line {
        stroke: var(--wood-text);
        stroke-width: 0.9;
      }
      text {
        fill: var(--wood-text);
        font: 640 var(--type-mark) var(--plain);
        font-feature-settings: 'tnum', 'lnum';
        text-anchor: end;
        dominant-baseline: central;
      }
      .unit {
        font-weight: 700;
        font-size: calc(var(--type-mark) + 1px);
      }
    `,
  ];

  /** Where 0 stands and how far a m/s² reaches, in this element's own box. */
  @property({ attribute: false }) scale: PaperScale | undefined;
  @property() unit: 'g' | 'm/s²' = 'g';
  /** Width of the box [px]; numbers end 4 px before its right edge. */
  @property({ type: Number }) widthPx = 30;

  override render() {
    if (this.scale === undefined) return html``;
    const { topYPx, bottomYPx } = this.scale;
    // The unit stands at the top: numbers make way for it.
    const unitY = topYPx + 13;
    const narrow = this.widthPx < 28;
    return html`
      <svg aria-hidden="true">
        ${ruleTicks(this.scale, this.unit)
          .filter((tick) => tick.yPx > unitY + 14 && (tick.text === undefined || tick.yPx < bottomYPx - 7))
          .map(
            (tick) => svg`
              <line x1="0" x2=${{ number: narrow || (tick.text?.length ?? 0) > 3 ? 4 : 10, half: narrow ? 4 : 7, fine: narrow ? 2 : 4 }[tick.length]}
                y1=${tick.yPx} y2=${tick.yPx} />
              ${tick.text === undefined ? '' : svg`<text x=${this.widthPx - (narrow ? 4.5 : 2.5)} y=${tick.yPx}>${tick.text}</text>`}`,
          )}
        <text class="unit" x=${this.widthPx - (this.unit === 'g' ? 6 : 1)} y=${unitY}>${this.unit}</text>
      </svg>
      <span class="only-heard">rule in ${this.unit === 'g' ? 'g' : 'metres per second squared'}</span>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'pen-rule': PenRule;
  }
}
