import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { SketchAxes, SketchPoint } from '../contract/lesson.ts';
import { quantityText, readField } from '../units/quantity-text.ts';
import type { QuantityKind } from '../units/unit-table.ts';
import { baseStyles, linkStyles } from './shared-styles.ts';
import { keyStep, pointAt, type SketchFrame, sketchFrame, timeUnit, xOf, yOf } from './sketch-frame.ts';
import { valueAt, withoutNearest, withPoint, withStroke } from './sketch-line.ts';
import { type Ink, sketchPicture, sketchPictureStyles } from './sketch-picture.ts';

/** Height of the graph as a share of its width. */
const HEIGHT_SHARE = 0.62;
/** With Shift the cursor moves so many steps. */
const SHIFT_STEPS = 5;
/** Shorter pieces of a stroke are left out [px]. */
const SHORTEST_PX = 1.5;

declare global {
  interface HTMLElementEventMap {
    /** The line as it is now drawn. */
    sketched: CustomEvent<readonly SketchPoint[]>;
  }
}

/**
 * A small graph to draw a line on: with pointer or finger, with keys that move a cursor and set points, or by typing
 * points. Once `fixed` it only shows the line, and the pen's ink over it.
 */
@customElement('sketch-pad')
export class SketchPad extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    sketchPictureStyles,
    css`
      :host {
        max-width: 400px;
      }
      .pad {
        border: 1px solid var(--edge);
        border-radius: var(--radius-field);
        background: var(--paper);
        touch-action: pinch-zoom;
        cursor: crosshair;
        user-select: none;
      }
      .pad.fixed {
        border-color: transparent;
        background: none;
        cursor: default;
        touch-action: auto;
      }
      .cursor {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.6;
      }
      .keys,
      .typed {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 12px;
        margin-top: 4px;
      }
      .typed label {
        display: inline-flex;
        align-items: center;
        gap: 5px;
      }
      .typed input {
        width: 84px;
        min-height: 26px;
        padding: 1px 6px;
        border: 1px solid var(--edge);
        border-radius: var(--radius-field);
        background: var(--sheet);
      }
      summary {
        min-height: 26px;
        padding-top: 3px;
        color: var(--link);
        cursor: pointer;
      }
      .help,
      .refusal {
        margin: 4px 0 0;
        font-size: var(--type-note);
        line-height: 1.35;
        color: var(--soft);
      }
      .refusal {
        color: var(--refusal);
      }
    `,
  ];

  @property({ attribute: false }) axes!: SketchAxes;
  @property({ attribute: false }) points: readonly SketchPoint[] = [];
  @property({ attribute: false }) ink: Ink = [];
  /** Only shown, no longer drawn on. */
  @property({ type: Boolean }) fixed = false;

  @state() private widthPx = 240;
  @state() private cursor: SketchPoint | undefined;
  @state() private spoken = '';
  @state() private reason = '';
  @query('.pad') private readonly pad!: HTMLElement;
  @query('#time') private readonly timeField!: HTMLInputElement;
  @query('#value') private readonly valueField!: HTMLInputElement;
  #before: (readonly SketchPoint[])[] = [];
  #stroke:
    | { readonly pointer: number; readonly last: SketchPoint; readonly xPx: number; readonly yPx: number }
    | undefined;
  readonly #observer = new ResizeObserver(([entry]) => {
    if (entry && entry.contentRect.width > 0) this.widthPx = Math.round(entry.contentRect.width);
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.#observer.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer.disconnect();
  }

  get #frame(): SketchFrame {
    return sketchFrame(this.axes, this.widthPx, Math.round(this.widthPx * HEIGHT_SHARE) + 30);
  }

  override render() {
    const frame = this.#frame;
    const picture = html`<svg class="sketch" viewBox=${`0 0 ${frame.widthPx} ${frame.heightPx}`}
      height=${frame.heightPx} aria-hidden="true">
      ${sketchPicture(frame, this.points, this.ink)} ${this.#cursorMark(frame)}
    </svg>`;
    if (this.fixed)
      return html`<div class="pad fixed" role="img" aria-label=${`Your sketch: ${this.#inWords()}`}>${picture}</div>`;
    return html`
      <div
        class="pad"
        role="application"
        tabindex="0"
        aria-roledescription="sketch"
        aria-label=${this.#label()}
        aria-describedby="help"
        @pointerdown=${this.#down}
        @pointermove=${this.#move}
        @pointerup=${this.#up}
        @pointercancel=${this.#up}
        @keydown=${this.#key}
        @focus=${this.#begin}
      >
        ${picture}
      </div>
      <p class="help" id="help">
        Draw with pointer or finger. By keys: arrows move the cursor (with Shift further), Enter sets a point, Backspace
        takes the nearest away.
      </p>
      <span class="only-heard" role="status">${this.spoken}</span>
      <div class="keys">
        <button class="link" ?disabled=${this.#before.length === 0} @click=${this.#takeBack}>take back</button>
        <button class="link" ?disabled=${this.points.length === 0} @click=${() => this.#change([])}>rub out</button>
      </div>
      <details>
        <summary>type points</summary>
        <div class="typed" @keydown=${this.#typedKey}>
          <label>time <input id="time" type="text" autocomplete="off" aria-describedby="typed-reason" /></label>
          <label>value <input id="value" type="text" autocomplete="off" aria-describedby="typed-reason" /></label>
          <button class="link" @click=${this.#setTyped}>set the point</button>
        </div>
        <p class="refusal" id="typed-reason" role="alert">${this.reason}</p>
        <p class="help">${this.points.length === 0 ? nothing : `So far: ${this.#inWords()}.`}</p>
      </details>
    `;
  }

  #cursorMark(frame: SketchFrame) {
    if (this.fixed || !this.cursor) return nothing;
    const [x, y] = [xOf(frame, this.cursor[0]), yOf(frame, this.cursor[1])];
    return svg`<path class="cursor" d=${`M${x - 9} ${y}h6m6 0h6M${x} ${y - 9}v6m0 6v6`} /><circle class="cursor" cx=${x} cy=${y} r="3" />`;
  }

  get #kind(): QuantityKind {
    return this.axes.quantity as QuantityKind;
  }

  #label(): string {
    const { axes } = this;
    const value = (each: number) => quantityText(each, this.#kind, axes.unit);
    return `Sketch of the line over time, from ${time(axes.fromS)} to ${time(axes.toS)}, 0 being when ${axes.zero}; from ${value(axes.low)} to ${value(axes.high)}`;
  }

  /** A few points of the line, as many as can be listened to. */
  #inWords(): string {
    const { points } = this;
    const most = 9;
    const shown =
      points.length <= most
        ? points
        : Array.from({ length: most }, (_, k) => points[Math.round((k * (points.length - 1)) / (most - 1))]!);
    return shown.map((point) => this.#pointText(point)).join(', ');
  }

  #pointText([timeS, value]: SketchPoint): string {
    return `${quantityText(value, this.#kind, this.axes.unit)} at ${time(timeS)}`;
  }

  get #spanS(): number {
    return this.axes.toS - this.axes.fromS;
  }

  /** Every change can be taken back. */
  #change(points: readonly SketchPoint[]): void {
    this.#before.push(this.points);
    this.#show(points);
  }

  #show(points: readonly SketchPoint[]): void {
    this.points = points;
    this.dispatchEvent(new CustomEvent('sketched', { detail: points }));
  }

  readonly #takeBack = (): void => {
    const before = this.#before.pop();
    if (before) this.#show(before);
  };

  // ——— pointer and finger ———

  readonly #down = (event: PointerEvent): void => {
    if (event.button !== 0 || this.#stroke) return;
    const { xPx, yPx } = this.#place(event);
    const last = pointAt(this.#frame, xPx, yPx);
    this.#stroke = { pointer: event.pointerId, last, xPx, yPx };
    this.pad.setPointerCapture(event.pointerId);
    this.cursor = last;
    this.#change(withPoint(this.points, last, this.#spanS));
  };

  readonly #move = (event: PointerEvent): void => {
    const stroke = this.#stroke;
    if (!stroke || event.pointerId !== stroke.pointer) return;
    const { xPx, yPx } = this.#place(event);
    if (Math.abs(xPx - stroke.xPx) + Math.abs(yPx - stroke.yPx) < SHORTEST_PX) return;
    const next = pointAt(this.#frame, xPx, yPx);
    this.#show(withStroke(this.points, stroke.last, next, this.#spanS));
    this.#stroke = { pointer: stroke.pointer, last: next, xPx, yPx };
    this.cursor = next;
  };

  readonly #up = (event: PointerEvent): void => {
    if (event.pointerId === this.#stroke?.pointer) this.#stroke = undefined;
  };

  /** In the graph's own pixels. */
  #place(event: PointerEvent): { readonly xPx: number; readonly yPx: number } {
    const box = this.renderRoot.querySelector('svg.sketch')!.getBoundingClientRect();
    const shrunk = this.widthPx / box.width;
    return { xPx: (event.clientX - box.left) * shrunk, yPx: (event.clientY - box.top) * shrunk };
  }

  // ——— keys ———

  readonly #begin = (): void => {
    this.cursor ??= [this.axes.fromS, valueAt(this.points, this.axes.fromS) ?? 0];
  };

  readonly #key = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    this.#begin();
    const { axes } = this;
    const [timeS, value] = this.cursor!;
    const times = event.shiftKey ? SHIFT_STEPS : 1;
    const across = times * keyStep(axes.fromS, axes.toS, 'time', timeUnit(axes));
    const up = times * keyStep(axes.low, axes.high, this.#kind, axes.unit);
    switch (event.key) {
      case 'ArrowLeft':
      case 'ArrowRight':
        this.#moveTo(timeS + (event.key === 'ArrowLeft' ? -across : across), value);
        break;
      case 'ArrowDown':
      case 'ArrowUp':
        this.#moveTo(timeS, value + (event.key === 'ArrowDown' ? -up : up));
        break;
      case 'Home':
        this.#moveTo(axes.fromS, value);
        break;
      case 'End':
        this.#moveTo(axes.toS, value);
        break;
      case 'Enter':
      case ' ':
        this.#change(withPoint(this.points, this.cursor!, this.#spanS));
        this.spoken = `Point set, ${this.#pointText(this.cursor!)}; ${this.points.length} in all`;
        break;
      case 'Backspace':
      case 'Delete':
        if (this.points.length > 0) this.#change(withoutNearest(this.points, timeS));
        this.spoken = `${this.points.length} points are left`;
        break;
      default:
        return;
    }
    event.preventDefault();
    event.stopPropagation();
  };

  #moveTo(timeS: number, value: number): void {
    const { fromS, toS, low, high } = this.axes;
    this.cursor = [Math.min(toS, Math.max(fromS, timeS)), Math.min(high, Math.max(low, value))];
    this.spoken = this.#pointText(this.cursor);
  }

  // ——— typed points ———

  readonly #typedKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    this.#setTyped();
  };

  readonly #setTyped = (): void => {
    const { axes } = this;
    const at = readField(
      this.timeField.value,
      { label: 'time', kind: 'time', low: axes.fromS, high: axes.toS },
      timeUnit(axes),
    );
    const value = readField(
      this.valueField.value,
      { label: 'value', kind: this.#kind, unit: axes.unit, low: axes.low, high: axes.high },
      axes.unit,
    );
    this.reason = 'reason' in at ? at.reason : 'reason' in value ? value.reason : '';
    if ('reason' in at || 'reason' in value) return;
    this.#change(withPoint(this.points, [at.value, value.value], this.#spanS));
    this.spoken = `Point set, ${this.#pointText([at.value, value.value])}`;
    this.timeField.value = '';
    this.valueField.value = '';
    this.timeField.focus();
  };
}

function time(timeS: number): string {
  return timeS === 0 ? '0' : quantityText(timeS, 'time');
}

declare global {
  interface HTMLElementTagNameMap {
    'sketch-pad': SketchPad;
  }
}
