import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { help } from './help.ts';
import { smallIcons } from './key-icons.ts';
import { KeyLetters } from './key-letters.ts';
import { baseStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

export interface FolderSheet {
  /** Name of the slot that holds it. */
  readonly id: string;
  /** On its tab. */
  readonly name: string;
  /** false: it is opened from elsewhere. */
  readonly hasTab: boolean;
}

/**
 * A manila folder of sheets, one open at a time; folded, its spine remains with the tabs' names. Each sheet
 * stands in the slot named by its id.
 */
@customElement('folder-sheets')
export class FolderSheets extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    baseStyles,
    css`
      :host {
        height: 100%;
      }
      .folder {
        position: relative;
        display: flex;
        flex-direction: column;
        height: 100%;
        padding: 0 10px;
      }
      /* The folder's boards lie behind the tabs. */
      .folder::before {
        content: '';
        position: absolute;
        inset: 7px 0 0;
        border-radius: var(--radius-folder);
        background: linear-gradient(100deg, var(--manila-low), var(--manila) 6%, var(--manila) 90%, var(--manila-low));
        box-shadow:
          var(--shadow-folder),
          inset 0 1px 0 rgb(255 255 255 / 0.22);
      }
      .tabs {
        position: relative;
        display: flex;
        align-items: flex-end;
        margin-right: -4px;
      }
      .tablist {
        display: flex;
        flex: 1 1 auto;
        flex-wrap: wrap-reverse;
        align-items: flex-end;
        min-width: 0;
      }
      button {
        border: 0;
        cursor: pointer;
      }
      .tab {
        flex: 0 1 auto;
        min-height: 32px;
        padding: 5px 6px 6px;
        border-radius: var(--radius-tab) var(--radius-tab) 0 0;
        background: var(--tab);
        box-shadow:
          inset -1px 0 0 rgb(var(--shadow) / 0.16),
          inset 0 1px 0 rgb(255 255 255 / 0.25);
        font-size: max(12.5px, calc(13.8px * var(--scale)));
        font-weight: 540;
        white-space: nowrap;
      }
      .tab[aria-selected='true'] {
        z-index: 1;
        min-height: 42px;
        background: var(--sheet);
        font-weight: 680;
        box-shadow:
          inset 1px 1px 0 rgb(255 255 255 / 0.3),
          2px -1px 3px rgb(var(--shadow) / 0.2);
      }
      .tab:focus-visible {
        outline-offset: -3px;
      }
      .fold {
        position: relative;
        display: flex;
        align-items: center;
        gap: 5px;
        align-self: flex-start;
        min-height: 26px;
        margin: 4px 0 2px;
        padding: 0 8px 0 2px;
        background: none;
        border-radius: 4px;
        font-size: var(--type-mark);
        font-weight: 540;
      }
      kbd {
        margin-left: 5px;
        font: inherit;
      }
      svg {
        width: 15px;
        height: 15px;
        fill: none;
        stroke: currentColor;
        stroke-width: 1.8;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      /* Two sheets below the open one show at its edges. */
      .sheets {
        position: relative;
        flex: 1;
        min-height: 0;
        background: var(--sheet);
        border-radius: 0 2px 2px 2px;
        box-shadow:
          var(--shadow-sheet),
          2px 3px 0 -1px color-mix(in srgb, var(--sheet) 86%, var(--manila-low)),
          4px 5px 1px -1px rgb(var(--shadow) / 0.18);
      }
      .panel {
        height: 100%;
        padding: 15px 18px;
        overflow: auto;
        scrollbar-width: thin;
        scrollbar-color: var(--edge) transparent;
        /* A shadow at an edge beyond which there is more: the covers scroll with the text, the shadows do not. */
        background:
          linear-gradient(var(--sheet) 40%, transparent) top / 100% 28px no-repeat local,
          linear-gradient(transparent, var(--sheet) 60%) bottom / 100% 28px no-repeat local,
          linear-gradient(rgb(var(--shadow) / 0.2), transparent) top / 100% 9px no-repeat scroll,
          linear-gradient(transparent, rgb(var(--shadow) / 0.2)) bottom / 100% 9px no-repeat scroll;
      }
      .panel[hidden] {
        display: none;
      }
      .panel:focus-visible {
        outline-offset: -3px;
      }

      :host([folded]) .folder {
        padding: 0;
      }
      .spine {
        position: relative;
        display: flex;
        flex-direction: column;
        align-items: center;
        gap: 4px;
        height: 100%;
        padding: 14px 0;
      }
      .spine button {
        flex: none;
        background: none;
        border-radius: 4px;
        font-size: var(--type-note);
        font-weight: 560;
        padding: 9px 4px;
        min-width: 28px;
      }
      .spine .name {
        writing-mode: vertical-rl;
        transform: rotate(180deg);
      }

      @media (max-width: 1150px) {
        .folder {
          padding: 0 8px;
        }
        .tab {
          padding: 5px 4px 6px;
        }
        .panel {
          padding: 13px 15px;
        }
      }
      @media (max-width: 899px) {
        .folder {
          min-height: 300px;
          padding: 0 5px 5px;
        }
        .fold {
          display: none;
        }
        .tab {
          flex: 1 1 auto;
        }
        .panel {
          height: auto;
        }
      }
    `,
  ];

  @property({ attribute: false }) sheets: readonly FolderSheet[] = [];
  /** Id of the open sheet. */
  @property() open = '';
  @property({ type: Boolean, reflect: true }) folded = false;
  /** Letters press keys from anywhere. */
  @property({ type: Boolean }) letters = true;

  constructor() {
    super();
    new KeyLetters(
      this,
      () => this.letters,
      (letter) => {
        if (letter !== 'f') return false;
        sendAct(this, { what: 'fold', folded: !this.folded });
        return true;
      },
    );
  }

  override render() {
    return html`<div class="folder">${this.folded ? this.#spine() : this.#openFolder()}</div>`;
  }

  #openFolder() {
    return html`
      <div class="tabs">
        <div class="tablist" role="tablist" aria-label="Sheets" @keydown=${this.#alongTabs}>
          ${this.#tabs().map(
            ({ id, name }, index) => html`<button
              class="tab"
              role="tab"
              id="tab-${id}"
              aria-controls="panel-${id}"
              aria-selected=${id === this.open}
              tabindex=${id === this.open || (index === 0 && !this.#tabs().some((tab) => tab.id === this.open)) ? 0 : -1}
              @click=${() => sendAct(this, { what: 'open sheet', sheet: id })}
            >
              ${name}
            </button>`,
          )}
        </div>
      </div>
      <div class="sheets">
        ${this.sheets.map(
          ({ id, name, hasTab }) => html`<div
            class="panel"
            role=${hasTab ? 'tabpanel' : 'region'}
            id="panel-${id}"
            aria-label=${name}
            tabindex="0"
            ?hidden=${id !== this.open}
          >
            <slot name=${id}></slot>
          </div>`,
        )}
      </div>
      <button
        class="fold"
        ${help('fold')}
        aria-keyshortcuts=${this.letters ? 'F' : nothing}
        @click=${() => sendAct(this, { what: 'fold', folded: true })}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">${smallIcons.fold}</svg>
        fold away ${this.letters ? html`<kbd aria-hidden="true">F</kbd>` : nothing}
      </button>
    `;
  }

  #tabs(): readonly FolderSheet[] {
    return this.sheets.filter(({ hasTab }) => hasTab);
  }

  #spine() {
    return html`<div class="spine">
      <button
        aria-label="open the folder"
        aria-keyshortcuts=${this.letters ? 'F' : nothing}
        @click=${() => sendAct(this, { what: 'fold', folded: false })}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">${smallIcons.unfold}</svg>
      </button>
      ${this.#tabs().map(
        ({ id, name }) =>
          html`<button class="name" @click=${() => sendAct(this, { what: 'open sheet', sheet: id })}>${name}</button>`,
      )}
    </div>`;
  }

  /** Arrow keys, Home and End move along the tabs and open them (WAI-ARIA Authoring Practices, tabs). */
  readonly #alongTabs = async (event: KeyboardEvent): Promise<void> => {
    const tabs = this.#tabs();
    const at = tabs.findIndex(({ id }) => id === this.open);
    const last = tabs.length - 1;
    const to = {
      ArrowRight: at === last ? 0 : at + 1,
      ArrowLeft: at <= 0 ? last : at - 1,
      Home: 0,
      End: last,
    }[event.key];
    const sheet = to === undefined ? undefined : tabs[to];
    if (sheet === undefined) return;
    event.preventDefault();
    sendAct(this, { what: 'open sheet', sheet: sheet.id });
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`#tab-${sheet.id}`)?.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'folder-sheets': FolderSheets;
  }
}
