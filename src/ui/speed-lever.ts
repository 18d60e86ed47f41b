import { css, html, LitElement, type SVGTemplateResult, svg } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import {
  dialAngle,
  LARGEST_SLOWDOWN,
  pointerAngle,
  slowdownAtAngle,
  slowdownText,
  steppedSlowdown,
} from './dial-angle.ts';
import { baseStyles } from './shared-styles.ts';
import './slowdown-field.ts';
import { help } from './help.ts';
import { type Setting, sendSetting } from './ui-events.ts';

/** The drawing's own coordinates: hub in the middle, dial from `INNER` to `OUTER`. */
const HUB = { x: 78, y: 84 };
const INNER = 44;
const OUTER = 64;
const DECADES = [1, 10, 100, 1000, 10_000];

/** The brass lever that sets how slowly the bench is shown. Name of its setting: `slowdown` [–]. */
@customElement('speed-lever')
export class SpeedLever extends LitElement {
  static override styles = [
    baseStyles,
    css`
      .dial {
        display: block;
        width: 100%;
        max-width: calc(156px * var(--scale));
        overflow: visible;
        cursor: grab;
        touch-action: none;
        border-radius: 8px;
      }
      .dial:active {
        cursor: grabbing;
      }
      .dial text {
        fill: var(--text);
        font: 460 13px var(--plain);
        font-feature-settings: 'tnum', 'lnum';
        text-anchor: middle;
      }
      .plate {
        stroke: var(--brass-shade);
        stroke-width: 0.8;
      }
      .mark {
        stroke: var(--wood-text);
        stroke-width: 1.1;
      }
      .words {
        position: relative;
        display: flex;
        align-items: baseline;
        gap: 7px;
        margin-top: 8px;
        font-size: var(--type-label);
      }
      .words span {
        font-weight: 540;
      }
      slowdown-field {
        --field-width: 6.4em;
        --refusal-side: left;
      }
      @media (max-width: 1150px) {
        .dial text {
          font-size: 14.5px;
        }
        .words {
          gap: 5px;
        }
      }
    `,
  ];

  /** How many times slower than true [–], 1 … 10 000. */
  @property({ type: Number }) slowdown = 1;

  @query('.dial') private readonly dial!: SVGSVGElement;

  override render() {
    const angle = dialAngle(this.slowdown);
    const spoken = this.slowdown === 1 ? 'as fast as it happens' : `slowed ${slowdownText(this.slowdown)} times`;
    return html`
      <svg
        class="dial"
        viewBox="0 0 156 100"
        tabindex="0"
        role="slider"
        aria-label="speed"
        aria-valuemin="1"
        aria-valuemax=${LARGEST_SLOWDOWN}
        ${help('slowdown')}
        aria-valuenow=${this.slowdown}
        aria-valuetext=${spoken}
        @keydown=${this.#key}
        @pointerdown=${this.#grab}
        @pointermove=${this.#drag}
        @pointerup=${this.#letGo}
        @pointercancel=${this.#letGo}
      >
        <defs>
          <linearGradient id="plate" x1="0" y1="0" x2="1" y2="1">
            <stop offset="0" stop-color="var(--brass-light)" />
            <stop offset="0.45" stop-color="var(--brass)" />
            <stop offset="0.6" stop-color="var(--brass-light)" />
            <stop offset="1" stop-color="var(--brass-shade)" />
          </linearGradient>
          <radialGradient id="knob" cx="0.36" cy="0.3" r="0.75">
            <stop offset="0" stop-color="var(--knob-light)" />
            <stop offset="0.5" stop-color="var(--knob)" />
            <stop offset="1" stop-color="var(--knob-shade)" />
          </radialGradient>
          <filter id="cast" x="-30%" y="-30%" width="170%" height="190%">
            <feDropShadow dx="1.6" dy="3.4" stdDeviation="1.9" flood-color="rgb(var(--shadow))" flood-opacity="0.42" />
          </filter>
        </defs>
        <path
          class="plate"
          fill="url(#plate)"
          filter="url(#cast)"
          d="M${HUB.x - OUTER} ${HUB.y}a${OUTER} ${OUTER} 0 0 1 ${2 * OUTER} 0h${INNER - OUTER}a${INNER} ${INNER} 0 0 0 ${-2 * INNER} 0z"
        />
        ${dialMarks()} ${DECADES.map((factor) => dialNumber(factor))}
        <g transform="rotate(${-angle} ${HUB.x} ${HUB.y})" filter="url(#cast)">
          <path
            class="plate"
            fill="url(#plate)"
            d="M${HUB.x - 4} ${HUB.y - 3.2}h${INNER}v6.4h${-INNER}z"
          />
          <circle cx=${HUB.x + INNER - 4} cy=${HUB.y} r="11.5" fill="url(#knob)" />
        </g>
        <circle class="plate" cx=${HUB.x} cy=${HUB.y} r="7" fill="url(#plate)" />
        <path d="M${HUB.x - 3.6} ${HUB.y + 2.4}l7.2-4.8" class="mark" />
      </svg>
      <div class="words">
        <span>slowed</span>
        <slowdown-field name="slowdown" label="slowed" .value=${this.slowdown} @setting=${this.#typed}></slowdown-field>
      </div>
    `;
  }

  #set(slowdown: number, final: boolean): void {
    this.slowdown = slowdown;
    sendSetting(this, { name: 'slowdown', value: slowdown, final });
  }

  readonly #key = (event: KeyboardEvent): void => {
    switch (event.key) {
      case 'ArrowRight':
      case 'ArrowUp':
        this.#set(steppedSlowdown(this.slowdown, 1), true);
        break;
      case 'ArrowLeft':
      case 'ArrowDown':
        this.#set(steppedSlowdown(this.slowdown, -1), true);
        break;
      case 'PageUp':
        this.#set(Math.min(LARGEST_SLOWDOWN, this.slowdown * 10), true);
        break;
      case 'PageDown':
        this.#set(Math.max(1, this.slowdown / 10), true);
        break;
      case 'Home':
        this.#set(1, true);
        break;
      case 'End':
        this.#set(LARGEST_SLOWDOWN, true);
        break;
      default:
        return;
    }
    event.preventDefault();
  };

  readonly #grab = (event: PointerEvent): void => {
    this.dial.setPointerCapture(event.pointerId);
    this.#follow(event, false);
  };

  readonly #drag = (event: PointerEvent): void => {
    if (this.dial.hasPointerCapture(event.pointerId)) this.#follow(event, false);
  };

  readonly #letGo = (event: PointerEvent): void => {
    if (this.dial.hasPointerCapture(event.pointerId)) this.#set(this.slowdown, true);
  };

  #follow(event: PointerEvent, final: boolean): void {
    const box = this.dial.getBoundingClientRect();
    const pxPerUnit = box.width / 156;
    const dx = (event.clientX - box.left) / pxPerUnit - HUB.x;
    const dy = (event.clientY - box.top) / pxPerUnit - HUB.y;
    this.#set(slowdownAtAngle(pointerAngle(dx, dy)), final);
  }

  readonly #typed = (event: CustomEvent<Setting>): void => {
    this.slowdown = Number(event.detail.value);
  };
}

function dialNumber(factor: number) {
  const degrees = dialAngle(factor);
  const radians = (degrees * Math.PI) / 180;
  const ends = degrees === 0 || degrees === 180;
  const x = HUB.x + (OUTER + 14) * Math.cos(radians);
  const y = HUB.y - (OUTER + 9) * Math.sin(radians);
  // The two ends are named under the dial, where they have room.
  return ends
    ? svg`<text x=${HUB.x + (OUTER - 8) * Math.cos(radians)} y=${HUB.y + 15}>${slowdownText(factor)}</text>`
    : svg`<text x=${x} y=${y + 3}>${slowdownText(factor)}</text>`;
}

function dialMarks() {
  const marks: SVGTemplateResult[] = [];
  for (let decade = 1; decade <= LARGEST_SLOWDOWN; decade *= 10) {
    for (const digit of [1, 2, 5]) {
      const factor = decade * digit;
      if (factor > LARGEST_SLOWDOWN || factor === 1 || factor === LARGEST_SLOWDOWN) continue;
      const from = digit === 1 ? INNER + 8 : INNER + 12;
      marks.push(
        svg`<path class="mark" transform="rotate(${-dialAngle(factor)} ${HUB.x} ${HUB.y})"
          d="M${HUB.x + from} ${HUB.y}h${OUTER - 2 - from}" />`,
      );
    }
  }
  return marks;
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-lever': SpeedLever;
  }
}
