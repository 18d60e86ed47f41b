import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { help } from './help.ts';
import { baseStyles, linkStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

/** The sign convention, in words, under the paper; turning it round turns the tape, the rule and the pen with it. */
@customElement('sign-line')
export class SignLine extends LitElement {
  static override styles = [
    baseStyles,
    linkStyles,
    css`
      :host {
        font: italic 460 var(--type-label) / 1.3 var(--book);
        color: var(--soft);
      }
      p {
        margin: 0;
      }
      button.link {
        font-style: normal;
        font-weight: 500;
      }
      @media (max-width: 899px) {
        p {
          display: flex;
          align-items: baseline;
          flex-wrap: wrap;
          column-gap: 8px;
        }
      }
    `,
  ];

  @property({ type: Boolean }) turned = false;
  /** It senses across the vertical. */
  @property({ type: Boolean }) across = false;

  override render() {
    return html`<p>
      <span>${this.#words()}</span>
      <button class="link" ${help('turn sign')} @click=${() => sendAct(this, { what: 'turn sign' })}>
        ${this.turned ? 'turn it back' : 'turn the sign round'}
      </button>
    </p>`;
  }

  #words(): string {
    if (this.across) return 'Standing level reads 0 g: it senses across, the support pushes upward.';
    return `Standing still reads ${this.turned ? '−1 g: the pull of gravity, not the support' : '+1 g upward'}.`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sign-line': SignLine;
  }
}
