import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Single letters that press a key from anywhere on the page. Off while something is typed or chosen from a list, with
 * Ctrl, Alt or Meta held, and when the host says so (WCAG 2.2, criterion 2.1.4: they can be turned off).
 */
export class KeyLetters implements ReactiveController {
  readonly #on: () => boolean;
  readonly #pressed: (letter: string) => boolean;

  /** `pressed` gets the lower-case key and returns whether it was one of its own. */
  constructor(host: ReactiveControllerHost, on: () => boolean, pressed: (letter: string) => boolean) {
    this.#on = on;
    this.#pressed = pressed;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('keydown', this.#keyDown);
  }

  hostDisconnected(): void {
    window.removeEventListener('keydown', this.#keyDown);
  }

  readonly #keyDown = (event: KeyboardEvent): void => {
    if (!this.#on() || event.defaultPrevented || event.repeat) return;
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const target = event.composedPath()[0];
    if (target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable]')) return;
    if (this.#pressed(event.key.toLowerCase())) event.preventDefault();
  };
}
