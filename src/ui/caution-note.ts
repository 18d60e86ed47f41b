import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { smallIcons } from './key-icons.ts';
import { baseStyles } from './shared-styles.ts';

/** Usual cautions of workshops and classrooms (common practice), each deferring to the rules of the place. */
const CAUTIONS = {
  drop: 'Dropping a real one: soft landing, clear zone, nobody on a chair.',
  shake: 'Shaking a real one: goggles on, all screws tight; stop at the first loose one.',
  throw: 'Throwing a real one: rather let it fall onto thick foam, with the zone clear.',
  spin: 'Spinning a real one: closed guard, goggles, nobody in its plane.',
  spring: 'Building a real one: goggles near loaded springs, no fingers at the stops, no heavy mass over toes.',
} as const;

export type CautionName = keyof typeof CAUTIONS;

const DEFERENCE = 'Local rules first.';

/** A short caution for whoever would do the same with real things. */
@customElement('caution-note')
export class CautionNote extends LitElement {
  static override styles = [
    baseStyles,
    css`
      p {
        display: flex;
        gap: 6px;
        margin: 0;
        font-size: var(--type-mark);
        line-height: 1.3;
        color: var(--soft);
        text-wrap: pretty;
      }
      svg {
        flex: none;
        width: 15px;
        height: 15px;
        margin-top: 1px;
        fill: none;
        stroke: currentColor;
        stroke-width: 1.3;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
    `,
  ];

  @property() about: CautionName = 'drop';

  override render() {
    return html`<p role="note">
      <svg viewBox="0 0 16 16" role="img" aria-label="Caution">${smallIcons.caution}</svg>
      <span>${CAUTIONS[this.about]} ${DEFERENCE}</span>
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'caution-note': CautionNote;
  }
}
