import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { GlossaryTerm } from '../contract/lesson.ts';
import { baseStyles, linkStyles, sheetStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';
import { whenShown } from './when-shown.ts';

/** A term that was asked for, and what asked for it. */
export interface SoughtTerm {
  readonly term: string;
  readonly from: HTMLElement;
}

/** Terms of the trade, each with its source and a place on the bench where it can be seen to move. */
@customElement('glossary-sheet')
export class GlossarySheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    linkStyles,
    css`
      .entry {
        padding-top: var(--space-3);
      }
      .entry:focus {
        outline: none;
      }
      .entry.sought {
        margin: var(--space-2) -9px 0;
        padding: var(--space-2) 9px;
        border-radius: var(--radius-field);
        background: color-mix(in srgb, var(--ink) 7%, transparent);
      }
      .entry:focus-visible {
        outline: 2px solid var(--ink);
      }
      dt {
        font-weight: 640;
      }
      dd {
        margin: 0;
      }
      .source {
        color: var(--soft);
        font-size: var(--type-mark);
      }
      .see {
        font-style: italic;
      }
    `,
  ];

  @property({ attribute: false }) terms: readonly GlossaryTerm[] = [];
  /** The term to lead to. */
  @property({ attribute: false }) sought: SoughtTerm | undefined;

  override render() {
    return html`
      <h2>The words</h2>
      <dl>${this.terms.map((term) => this.#entry(term))}</dl>
    `;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('sought') || !this.sought) return;
    const entry = this.renderRoot.querySelector<HTMLElement>('.sought');
    if (!entry) return;
    whenShown(entry, () => {
      entry.focus();
      entry.scrollIntoView({ block: 'center' });
    });
  }

  #entry({ id, term, line, source, see }: GlossaryTerm) {
    const sought = this.sought?.term === id;
    return html`<div class="entry ${sought ? 'sought' : ''}" id=${id} tabindex=${sought ? -1 : nothing}>
      <dt>${term}</dt>
      <dd>${line} <span class="source">(${source})</span> <span class="see">See: ${see}.</span></dd>
      ${sought ? html`<dd><button class="link" @click=${this.#back}>back to the lesson</button></dd>` : nothing}
    </div>`;
  }

  readonly #back = (): void => {
    const from = this.sought?.from;
    sendAct(this, { what: 'open sheet', sheet: 'lesson' });
    if (from) whenShown(from, () => from.focus());
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'glossary-sheet': GlossarySheet;
  }
}
