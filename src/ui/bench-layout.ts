import { html, LitElement } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { narrowLayoutStyles } from './bench-layout-narrow-styles.ts';
import { stageLayoutStyles } from './bench-layout-stage-styles.ts';
import { wideLayoutStyles } from './bench-layout-styles.ts';
import { baseStyles, linkStyles } from './shared-styles.ts';

/** Areas whose boxes the app needs in order to draw in them. */
export type LayoutArea = 'paper' | 'rule' | 'riding' | 'room';

/**
 * The page's frame: a place for each thing on the bench, at every size. It knows nothing of what stands in its slots.
 *
 * Slots: `head`, `folder`, `legend`, `paper`, `rule`, `reading`, `riding` (any number, laid over each other), `sign`,
 * `slip` (a paper slip under the tape), `second` (a paper unrolled over the room), `room` (any number), `caution`, `handling`, `how`, `sentence`, `speed`, `pace`,
 * `settings`, `words`, `help`, `run` (what concerns the whole run), `stage` (large text beside the keys in stage mode).
 */
@customElement('bench-layout')
export class BenchLayout extends LitElement {
  static override styles = [baseStyles, linkStyles, wideLayoutStyles, narrowLayoutStyles, stageLayoutStyles];

  /** The folder is folded down to its spine. */
  @property({ type: Boolean, reflect: true }) folded = false;
  /** Large type, folder and settings put away. */
  @property({ type: Boolean, reflect: true }) stage = false;
  /** A second paper is unrolled in place of the room. */
  @property({ type: Boolean, reflect: true }) second = false;
  /** On a narrow screen the settings are folded in; this unfolds them. */
  @property({ type: Boolean, reflect: true, attribute: 'settings-open' }) settingsOpen = false;

  @query('.paper') private readonly paperArea!: HTMLElement;
  @query('.rule') private readonly ruleArea!: HTMLElement;
  @query('.riding') private readonly ridingArea!: HTMLElement;
  @query('.room') private readonly roomArea!: HTMLElement;

  /** The element that spans an area, to be observed and measured. Ready after the first update. */
  area(name: LayoutArea): HTMLElement {
    return { paper: this.paperArea, rule: this.ruleArea, riding: this.ridingArea, room: this.roomArea }[name];
  }

  /** Box of an area in the page's viewport [CSS px]. */
  box(name: LayoutArea): DOMRect {
    return this.area(name).getBoundingClientRect();
  }

  override render() {
    return html`
      <nav aria-label="Short ways">
        <button class="link" @click=${() => this.#goTo('handling')}>to the keys that handle the housing</button>
        <button class="link" @click=${() => this.#goTo('folder')}>to the folder</button>
      </nav>
      <header class="head"><slot name="head"></slot></header>
      <div class="run"><slot name="run"></slot></div>
      <section class="room-part" aria-label="The room">
        <div class="slip"><slot name="slip"></slot></div>
        <div class="room"><slot name="room"></slot></div>
        <div class="second"><slot name="second"></slot></div>
        <div class="caution"><slot name="caution"></slot></div>
      </section>
      <div class="legend"><slot name="legend"></slot></div>
      <section class="paper-part" aria-label="The tape">
        <div class="paper"><slot name="paper"></slot></div>
        <div class="curl"></div>
      </section>
      <section class="riding" aria-label="Inside the housing"><slot name="riding"></slot></section>
      <div class="rule"><slot name="rule"></slot></div>
      <div class="reading"><slot name="reading"></slot></div>
      <div class="sign"><slot name="sign"></slot></div>
      <section class="controls" aria-label="Handling and settings">
        <div class="handling"><slot name="handling"></slot></div>
        <div class="how"><slot name="how"></slot></div>
        <div class="speed"><slot name="speed"></slot></div>
        <div class="pace"><slot name="pace"></slot></div>
        <div class="sentence"><slot name="sentence"></slot></div>
        <button
          class="link unfold-settings"
          aria-expanded=${this.settingsOpen}
          @click=${() => {
            this.settingsOpen = !this.settingsOpen;
          }}
        >
          ${this.settingsOpen ? 'fold the settings in' : 'settings'}
        </button>
        <div class="settings"><slot name="settings"></slot></div>
        <div class="words"><slot name="words"></slot></div>
      </section>
      <div class="stage-text"><slot name="stage"></slot></div>
      <section class="folder" aria-label="Folder of sheets"><slot name="folder"></slot></section>
      <slot name="help"></slot>
    `;
  }

  /** Moves the focus to what stands in a slot: past everything before it. */
  #goTo(slotName: string): void {
    const slot = this.renderRoot.querySelector<HTMLSlotElement>(`slot[name="${slotName}"]`);
    slot
      ?.assignedElements()
      .find((element): element is HTMLElement => element instanceof HTMLElement)
      ?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bench-layout': BenchLayout;
  }
}
