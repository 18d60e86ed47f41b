import { css, html, LitElement, type PropertyValues, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type LabelSide, type PlacedLabel, placeLabels, type Rectangle } from './place-labels.ts';
import { baseStyles } from './shared-styles.ts';

export interface SceneLabel {
  readonly name: string;
  readonly text: string;
  /** A second line under it. */
  readonly under?: string | undefined;
  readonly anchorXPx: number;
  readonly anchorYPx: number;
  readonly side: LabelSide;
  readonly distancePx: number;
  /** A fine line from the label to the anchor. */
  readonly leader: boolean;
  /** In the second voice: part names rather than figures. */
  readonly quiet: boolean;
}

/** Labels over a picture, near what they name and clear of each other. They move with their anchors every frame. */
@customElement('scene-labels')
export class SceneLabels extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        pointer-events: none;
        overflow: hidden;
      }
      svg {
        position: absolute;
        inset: 0;
        width: 100%;
        height: 100%;
      }
      path {
        stroke: var(--soft);
        stroke-width: 0.9;
        fill: none;
      }
      circle {
        fill: var(--soft);
      }
      span {
        position: absolute;
        left: 0;
        top: 0;
        padding: 0 2px;
        font-size: var(--type-mark);
        line-height: 1.25;
        font-weight: 560;
        white-space: nowrap;
        /* Readable over whatever lies behind it. */
        text-shadow:
          0 0 2px var(--sheet),
          0 0 5px var(--sheet);
        text-align: center;
        visibility: hidden;
      }
      span.quiet {
        font-weight: 500;
      }
      span.left {
        text-align: right;
      }
      span.right {
        text-align: left;
      }
      span.placed {
        visibility: visible;
      }
      small {
        display: block;
        font-size: inherit;
        font-weight: inherit;
      }
    `,
  ];

  @property({ attribute: false }) labels: readonly SceneLabel[] = [];
  /** Places in the picture that no label may cover. */
  @property({ attribute: false }) keepClear: readonly Rectangle[] = [];
  /** Size of the picture [px]. */
  @property({ type: Number }) widthPx = 0;
  @property({ type: Number }) heightPx = 0;

  #placed: readonly PlacedLabel[] = [];
  /** Sizes of texts already measured, by text: measuring costs a layout. */
  readonly #sizes = new Map<string, { readonly widthPx: number; readonly heightPx: number }>();

  override render() {
    return html`
      <svg aria-hidden="true">
        ${this.labels.map(
          (label) =>
            svg`${label.leader ? svg`<path data-name=${label.name} /><circle data-name=${label.name} r="2" />` : ''}`,
        )}
      </svg>
      ${this.labels.map(
        (label) => html`<span data-name=${label.name} class=${label.quiet ? 'quiet' : ''}
          >${label.text}${label.under === undefined ? '' : html`<small>${label.under}</small>`}</span
        >`,
      )}
    `;
  }

  protected override updated(_changed: PropertyValues): void {
    const spans = new Map(
      [...this.renderRoot.querySelectorAll('span')].map((span) => [span.dataset.name ?? '', span] as const),
    );
    const boxes = this.labels.map((label) => ({ ...label, ...this.#size(label, spans.get(label.name)) }));
    this.#placed = placeLabels(boxes, this.widthPx, this.heightPx, this.keepClear, this.#placed);
    for (const label of this.labels) this.#show(label, spans.get(label.name));
  }

  /** Sizes are kept by length of text: figures are tabular, so "+2.42 g" and "−0.13 g" are as wide as each other. */
  #size(label: SceneLabel, span: HTMLElement | undefined) {
    const key = `${label.name}|${label.text.length}|${label.under?.length ?? 0}|${this.widthPx}|${this.heightPx}`;
    const known = this.#sizes.get(key);
    if (known !== undefined || span === undefined) return known ?? { widthPx: 0, heightPx: 0 };
    const size = { widthPx: span.offsetWidth, heightPx: span.offsetHeight };
    // A picture that is not shown yet has no sizes to keep.
    if (size.widthPx > 0) this.#sizes.set(key, size);
    return size;
  }

  #show(label: SceneLabel, span: HTMLElement | undefined): void {
    const place = this.#placed.find((candidate) => candidate.name === label.name);
    if (span === undefined) return;
    span.classList.toggle('placed', place !== undefined);
    span.classList.toggle('left', place?.side === 'left');
    span.classList.toggle('right', place?.side === 'right');
    if (place !== undefined) span.style.transform = `translate(${place.xPx}px, ${place.yPx}px)`;
    const leader = this.renderRoot.querySelector(`path[data-name="${label.name}"]`);
    const end = this.renderRoot.querySelector(`circle[data-name="${label.name}"]`);
    leader?.setAttribute(
      'd',
      place === undefined ? '' : `M${place.leaderXPx} ${place.leaderYPx}L${label.anchorXPx} ${label.anchorYPx}`,
    );
    end?.setAttribute('cx', String(place === undefined ? -9 : label.anchorXPx));
    end?.setAttribute('cy', String(place === undefined ? -9 : label.anchorYPx));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'scene-labels': SceneLabels;
  }
}
