import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { smallIcons } from './key-icons.ts';
import { baseStyles, linkStyles, sheetStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

export type FirstStep = 'drop' | 'look' | 'slow' | 'grab';

interface Step {
  readonly id: FirstStep;
  readonly head: string;
  readonly text: string;
}

const STEPS: readonly Step[] = [
  { id: 'drop', head: 'Let it fall', text: 'Press the key Drop, or D. The clamp opens.' },
  {
    id: 'look',
    head: 'Watch the pen',
    text: 'It stands at the height of the reading. Where does it go when the clamp lets go, and where at the felt?',
  },
  { id: 'slow', head: 'Slow it down', text: 'Turn the brass lever: the fall takes as long as you like.' },
  {
    id: 'grab',
    head: 'Take it in your hand',
    text: 'Drag the housing in the room. Carry it, shake it, tilt it; let go and it falls.',
  },
];

/** The sheet that lies open at the first visit: four things to do, each ticked when it was done. */
@customElement('short-way-in')
export class ShortWayIn extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    linkStyles,
    css`
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        position: relative;
        padding: 0 0 4px 26px;
      }
      h3 {
        margin: var(--space-3) 0 2px;
      }
      p {
        margin-bottom: 4px;
      }
      svg {
        position: absolute;
        left: 0;
        top: 2px;
        width: 15px;
        height: 15px;
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      .next svg {
        fill: var(--ink);
      }
      li:not(.next, .done) h3,
      li:not(.next, .done) p {
        color: var(--soft);
      }
      .found {
        font-family: var(--book);
        font-weight: 640;
      }
      .foot {
        display: flex;
        justify-content: space-between;
        align-items: center;
        gap: 10px;
        margin: var(--space-4) 0;
      }
    `,
  ];

  @property({ attribute: false }) done: ReadonlySet<FirstStep> = new Set();
  /** What the learner's own fall came to, "It fell 0.286 s and rang about 0 g." */
  @property() found = '';

  override render() {
    const next = STEPS.find((step) => !this.done.has(step.id))?.id;
    return html`
      <p class="eyebrow">Four things to try</p>
      <h2>What does it read while it falls?</h2>
      <ol>
        ${STEPS.map((step) => this.#step(step, next))}
      </ol>
      <div class="foot">
        ${
          next === undefined
            ? html`<button class="main" @click=${() => sendAct(this, { what: 'skip' })}>On to the lessons</button>`
            : html`<button class="link" @click=${() => sendAct(this, { what: 'skip' })}>skip to the lessons</button>`
        }
        ${
          next === 'drop'
            ? html`<button class="main" @click=${() => sendAct(this, { what: 'handle', handling: 'drop' })}>
                Drop it
              </button>`
            : nothing
        }
      </div>
    `;
  }

  #step({ id, head, text }: Step, next: FirstStep | undefined) {
    const done = this.done.has(id);
    return html`<li class=${done ? 'done' : id === next ? 'next' : ''} aria-current=${id === next ? 'step' : nothing}>
      <h3>
        ${
          done
            ? html`<svg viewBox="0 0 16 16" role="img" aria-label="done">${smallIcons.done}</svg>`
            : id === next
              ? html`<svg viewBox="0 0 16 16" aria-hidden="true">${smallIcons.next}</svg>`
              : nothing
        }${head}
      </h3>
      <p>${text}</p>
      ${id === 'look' && this.found !== '' ? html`<p class="found">${this.found}</p>` : nothing}
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'short-way-in': ShortWayIn;
  }
}
