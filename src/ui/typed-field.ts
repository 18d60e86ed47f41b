import { html, LitElement, nothing } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { fieldStyles, refusalStyles } from './field-styles.ts';
import { baseStyles } from './shared-styles.ts';
import { sendSetting } from './ui-events.ts';

/**
 * A number that can be typed over. What it cannot take it refuses with a reason, and the old value stays. Enter or
 * leaving takes it, Esc gives the old one back.
 */
export abstract class TypedField extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [baseStyles, fieldStyles, refusalStyles];

  /** Name of its setting. */
  @property() name = '';
  /** For screen readers and refusals, "drop height". */
  @property() label = '';
  /** SI. */
  @property({ type: Number }) value = Number.NaN;

  /** What stands in the field while it has the focus. */
  @state() private typed: string | undefined;
  @state() private reason = '';
  @query('input') private readonly input!: HTMLInputElement;

  /** The value as printed, its unit apart. */
  protected abstract shown(): { readonly number: string; readonly unit: string };
  /** The value as it is offered for typing over. */
  protected abstract text(): string;
  protected abstract read(typed: string): { readonly value: number } | { readonly reason: string };

  override render() {
    const { number, unit } = this.shown();
    return html`
      <span class="field" ?data-refused=${this.reason !== ''}>
        <input
          type="text"
          autocomplete="off"
          spellcheck="false"
          aria-label=${this.label}
          aria-invalid=${this.reason === '' ? 'false' : 'true'}
          aria-describedby="reason"
          size=${Math.max(4, (this.typed ?? number).length)}
          .value=${live(this.typed ?? number)}
          @focus=${this.#begin}
          @input=${this.#type}
          @keydown=${this.#key}
          @blur=${this.#leave}
        />${
          this.typed === undefined && unit !== ''
            ? html`<span class="unit ${unit === '°' ? 'close' : ''}">${unit}</span>`
            : nothing
        }
      </span>
      <span id="reason" role="alert" class="refusal" ?hidden=${this.reason === ''}>${this.reason}</span>
    `;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('pointerdown', this.#forget);
    document.removeEventListener('keydown', this.#forget);
  }

  readonly #begin = async (): Promise<void> => {
    this.#forget();
    this.typed = this.text();
    await this.updateComplete;
    this.input.select();
  };

  readonly #type = (): void => {
    this.typed = this.input.value;
    this.reason = '';
  };

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      if (this.#take()) void this.#begin();
    } else if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      void this.#begin();
    }
  };

  readonly #leave = (): void => {
    this.#take();
    this.typed = undefined;
    if (this.reason === '') return;
    // The reason stays to be read until the next thing is done.
    setTimeout(() => {
      document.addEventListener('pointerdown', this.#forget);
      document.addEventListener('keydown', this.#forget);
    });
  };

  readonly #forget = (): void => {
    this.reason = '';
    document.removeEventListener('pointerdown', this.#forget);
    document.removeEventListener('keydown', this.#forget);
  };

  /** True when nothing stands in the way: taken, or not changed. */
  #take(): boolean {
    const typed = this.typed;
    // What was printed is rounded; giving it back unchanged must not round the value.
    if (typed === undefined || typed === this.text()) return true;
    const read = this.read(typed);
    if ('reason' in read) {
      this.reason = read.reason;
      return false;
    }
    this.value = read.value;
    sendSetting(this, { name: this.name, value: read.value, final: true });
    return true;
  }
}
