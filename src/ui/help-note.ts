import { css, html, LitElement } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { baseStyles } from './shared-styles.ts';

/** Pointer, focus or finger rests this long before the note comes [ms], and the pointer may be away this long on its way to it. */
const COMES_AFTER_MS = 650;
const GOES_AFTER_MS = 250;
/** Clear of the control and of the screen's edge [px]. */
const CLEAR_PX = 6;

/**
 * The sentence of the control that is hovered, focused by keys or touched long, on a slip beside it. Escape sends it
 * away, the pointer may go over it, and it stays until pointer or focus leaves (WCAG 2.2, 1.4.13).
 */
@customElement('help-note')
export class HelpNote extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        position: fixed;
        inset: auto;
        margin: 0;
        border: 0;
        padding: 7px 11px;
        max-width: 290px;
        background: var(--sheet);
        color: var(--text);
        box-shadow: var(--shadow-sheet);
        border-radius: var(--radius-field);
        font: italic 460 var(--type-note) / 1.35 var(--book);
      }
      :host(:not(:popover-open)) {
        display: none;
      }
    `,
  ];

  @state() private sentence = '';
  readonly #abort = new AbortController();
  #control: Element | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    this.popover = 'manual';
    this.role = 'tooltip';
    const options = { signal: this.#abort.signal, passive: true } as const;
    document.addEventListener('pointerover', (event) => this.#over(event), options);
    document.addEventListener('pointerdown', (event) => this.#down(event), options);
    document.addEventListener('pointerup', (event) => event.pointerType === 'touch' && this.#stopWaiting(), options);
    document.addEventListener('pointercancel', () => this.#stopWaiting(), options);
    document.addEventListener('focusin', (event) => this.#focused(event), options);
    document.addEventListener('focusout', () => this.#leave(), options);
    document.addEventListener('keydown', (event) => event.key === 'Escape' && this.#hide(), options);
    document.addEventListener('scroll', () => this.#hide(), { ...options, capture: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#abort.abort();
    this.#stopWaiting();
  }

  override render() {
    return html`${this.sentence}`;
  }

  #over(event: PointerEvent): void {
    if (event.pointerType === 'touch') return;
    if (event.composedPath().includes(this)) {
      this.#stopWaiting();
      return;
    }
    const control = helped(event);
    if (control === undefined) this.#leave();
    else if (control !== this.#control || !this.matches(':popover-open')) this.#wait(control);
    else this.#stopWaiting();
  }

  #down(event: PointerEvent): void {
    if (event.composedPath().includes(this)) return;
    this.#hide();
    const control = helped(event);
    if (event.pointerType === 'touch' && control) this.#wait(control);
  }

  #focused(event: FocusEvent): void {
    const control = helped(event);
    const [target] = event.composedPath();
    if (control && target instanceof HTMLElement && target.matches(':focus-visible')) this.#wait(control);
  }

  #wait(control: Element): void {
    this.#stopWaiting();
    this.#timer = setTimeout(() => void this.#show(control), COMES_AFTER_MS);
  }

  #leave(): void {
    this.#stopWaiting();
    if (this.#control) this.#timer = setTimeout(() => this.#hide(), GOES_AFTER_MS);
  }

  #stopWaiting(): void {
    clearTimeout(this.#timer);
  }

  async #show(control: Element): Promise<void> {
    if (!control.isConnected || !control.checkVisibility()) return;
    this.#control = control;
    this.sentence = control.getAttribute('data-help') ?? '';
    await this.updateComplete;
    this.showPopover();
    const beside = control.getBoundingClientRect();
    const own = this.getBoundingClientRect();
    const below = beside.bottom + CLEAR_PX + own.height <= window.innerHeight - CLEAR_PX;
    const top = below ? beside.bottom + CLEAR_PX : beside.top - CLEAR_PX - own.height;
    const left = Math.min(Math.max(beside.left, CLEAR_PX), window.innerWidth - own.width - CLEAR_PX);
    this.style.top = `${Math.max(top, CLEAR_PX)}px`;
    this.style.left = `${left}px`;
  }

  #hide(): void {
    this.#stopWaiting();
    this.#control = undefined;
    if (this.matches(':popover-open')) this.hidePopover();
  }
}

/** The control with a sentence that an event came through. */
function helped(event: Event): Element | undefined {
  return event
    .composedPath()
    .find((target): target is Element => target instanceof Element && target.hasAttribute('data-help'));
}

declare global {
  interface HTMLElementTagNameMap {
    'help-note': HelpNote;
  }
}
