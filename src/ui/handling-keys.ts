import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { HANDLINGS, type Handling } from './handling-fields.ts';
import { help } from './help.ts';
import { keyIcons, smallIcons } from './key-icons.ts';
import { KeyLetters } from './key-letters.ts';
import { baseStyles } from './shared-styles.ts';
import { type HandlingName, sendAct } from './ui-events.ts';

/** The brass keys on felt: hold, drop, shake, tilt; folded out, the further ways too. Nothing needs a drag. */
@customElement('handling-keys')
export class HandlingKeys extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    baseStyles,
    css`
      .bed {
        display: flex;
        gap: 8px;
        height: var(--bed-height, calc(104px * var(--scale)));
        padding: 7px 9px 11px;
        border-radius: var(--radius-tab);
        background: linear-gradient(var(--felt-from), var(--felt-to));
        box-shadow:
          inset 0 2px 5px rgb(0 0 0 / 0.35),
          0 0 0 1px var(--felt-edge),
          0 1px 0 1px rgb(255 255 255 / 0.25);
      }
      .rows {
        flex: 1;
        display: flex;
        flex-direction: column;
        gap: 10px;
        min-width: 0;
      }
      .row {
        flex: 1;
        display: flex;
        gap: 8px;
        min-height: 0;
      }
      button {
        position: relative;
        flex: 1 1 0;
        display: flex;
        flex-direction: column;
        align-items: center;
        justify-content: center;
        gap: 3px;
        min-width: 24px;
        padding: 0;
        border: 0;
        border-radius: var(--radius-key);
        background: linear-gradient(176deg, var(--key-high), var(--key-middle) 52%, var(--key-low));
        box-shadow:
          var(--shadow-key),
          inset 0 1px 0 rgb(255 255 255 / 0.4),
          inset 0 0 0 1px rgb(255 255 255 / 0.12);
        color: var(--key-text);
        font-size: var(--type-key);
        font-weight: 660;
        line-height: 1.1;
        cursor: pointer;
        transition:
          transform 70ms,
          box-shadow 70ms;
      }
      button:hover {
        background: linear-gradient(176deg, var(--key-high), var(--key-high) 40%, var(--key-middle));
      }
      button:active,
      button[aria-pressed='true'] {
        transform: translateY(3.4px);
        background: linear-gradient(176deg, var(--key-middle), var(--key-middle) 60%, var(--key-low));
        box-shadow:
          var(--shadow-key-pressed),
          inset 0 2px 4px rgb(var(--shadow) / 0.35);
      }
      button:focus-visible {
        outline-color: var(--on-felt);
        outline-offset: 1px;
        box-shadow:
          var(--shadow-key),
          0 0 0 1.5px var(--key-text) inset;
      }
      svg {
        width: calc(34px * var(--scale));
        height: calc(27px * var(--scale));
        fill: none;
        stroke: currentColor;
        stroke-width: 1.7;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      kbd {
        position: absolute;
        top: 4px;
        right: 7px;
        font: 560 var(--type-mark) / 1.2 var(--plain);
      }
      .more {
        flex: 0 0 26px;
      }
      .more svg {
        width: 16px;
        height: 16px;
        stroke-width: 3;
      }
      .out button {
        flex: 1 1 auto;
        flex-direction: row;
        gap: 6px;
        font-size: max(14px, calc(15px * var(--scale)));
      }
      .out svg {
        width: 24px;
        height: 20px;
        stroke-width: 2;
      }
      .out .further svg {
        display: none;
      }
      .further .letters {
        flex-grow: 0.4;
        font-weight: 520;
      }
      .out kbd {
        display: none;
      }
      @media (max-width: 1150px) {
        .bed {
          gap: 6px;
          padding: 6px 7px 10px;
        }
        .row {
          gap: 6px;
        }
        .out button svg {
          display: none;
        }
        .out button {
          font-size: 14px;
        }
      }
      @media (max-width: 899px) {
        .bed {
          height: 78px;
        }
        kbd {
          font-weight: 500;
        }
      }
    `,
  ];

  /** The handling that leads the housing now. */
  @property() active: HandlingName | undefined;
  /** Letters press keys from anywhere. */
  @property({ type: Boolean }) letters = true;
  @state() private out = false;
  /** The key that Tab comes to. */
  @state() private reachable: HandlingName = 'hold';

  constructor() {
    super();
    new KeyLetters(
      this,
      () => this.letters,
      (letter) => {
        const handling = HANDLINGS.find((candidate) => candidate.letter === letter);
        if (handling !== undefined) sendAct(this, { what: 'handle', handling: handling.name });
        return handling !== undefined;
      },
    );
  }

  override render() {
    const main = HANDLINGS.filter((handling) => handling.letter !== undefined);
    const further = HANDLINGS.filter((handling) => handling.letter === undefined);
    return html`
      <div class="bed" role="toolbar" aria-label="Handle the housing" @keydown=${this.#alongKeys} @focusin=${this.#keyFocused}>
        <div class="rows ${this.out ? 'out' : ''}">
          <div class="row">${main.map((handling) => this.#key(handling))}</div>
          ${
            this.out
              ? html`<div class="row further">
                  ${further.map((handling) => this.#key(handling))}
                  <button
                    class="letters"
                    ${help('letters')}
                    tabindex="-1"
                    aria-pressed=${this.letters}
                    aria-label="letters press keys"
                    @click=${() => sendAct(this, { what: 'letters', on: !this.letters })}
                  >
                    letters
                  </button>
                </div>`
              : nothing
          }
        </div>
        <button
          class="more"
          ${help('more ways')}
          tabindex="-1"
          aria-expanded=${this.out}
          aria-label=${this.out ? 'fewer ways to handle it' : 'more ways to handle it'}
          @click=${() => {
            this.out = !this.out;
            if (!this.out) this.reachable = 'hold';
          }}
        >
          <svg viewBox="0 0 16 16" aria-hidden="true">${this.out ? smallIcons.fold : smallIcons.unfold}</svg>
        </button>
      </div>
    `;
  }

  /** Left and right go along the keys, Home and End to the ends (WAI-ARIA Authoring Practices, toolbar). */
  readonly #alongKeys = (event: KeyboardEvent): void => {
    const keys = [...this.renderRoot.querySelectorAll('button')];
    const at = keys.findIndex((key) => key.matches(':focus'));
    const to = {
      ArrowRight: (at + 1) % keys.length,
      ArrowLeft: (at + keys.length - 1) % keys.length,
      Home: 0,
      End: keys.length - 1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    keys[to]?.focus();
  };

  /** The words beside the keys speak of the key that has the focus, so that Tab leads on to its fields. */
  readonly #keyFocused = (event: FocusEvent): void => {
    const name = (event.target as HTMLElement).dataset.handling;
    const handling = HANDLINGS.find((candidate) => candidate.name === name);
    if (handling === undefined) return;
    this.reachable = handling.name;
    sendAct(this, { what: 'show handling', handling: handling.name });
  };

  #key(handling: Handling) {
    const { name, key, letter, spoken } = handling;
    return html`<button
      ${help(name)}
      aria-pressed=${this.active === name}
      aria-label=${spoken}
      aria-keyshortcuts=${this.letters && letter !== undefined ? letter.toUpperCase() : nothing}
      @click=${() => sendAct(this, { what: 'handle', handling: name })}
      data-handling=${name}
      tabindex=${name === this.reachable ? 0 : -1}
    >
      <svg viewBox="0 0 36 28" aria-hidden="true">${keyIcons[name]}</svg>
      <span>${key}</span>
      ${this.letters && letter !== undefined ? html`<kbd aria-hidden="true">${letter.toUpperCase()}</kbd>` : nothing}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'handling-keys': HandlingKeys;
  }
}
