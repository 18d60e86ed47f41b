import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';
import { baseStyles, sheetStyles } from './shared-styles.ts';

/** The equations as used, their limits, their sources. */
@customElement('physics-sheet')
export class PhysicsSheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    css`
      .law {
        margin: var(--space-2) 0;
        padding-left: var(--space-3);
        border-left: 2px solid var(--edge);
        font-style: italic;
      }
      .source {
        color: var(--soft);
        font-size: var(--type-mark);
      }
      li {
        margin-bottom: 4px;
      }
    `,
  ];

  override render() {
    return html`
      <h2>The physics</h2>
      <h3>The mass on its spring</h3>
      <p class="law">ẍ + 2ζω₀ẋ + ω₀²x = −f</p>
      <p>
        x is where the mass is in the housing, f what the housing feels along the arm's direction. At rest x = −f/ω₀²: the
        mass sags, and −ω₀²x reads f. The equation is solved exactly from tick to tick, not approximated.
      </p>
      <h3>What the housing feels</h3>
      <p class="law">f = Rᵀ(a − g) + α×r + ω×(ω×r)</p>
      <p>
        Its acceleration less gravity, turned into its own directions R, and what turning adds at the mounting point r. In
        a free fall a = g: f is exactly 0. The convention is that of the W3C: standing still reads +1 g on the axis
        that points up.
      </p>
      <h3>The landing</h3>
      <p class="law">N = max(0, k·d + c·ḋ), peak without damping: 1 + √(1 + 2hk/mg) in g</p>
      <p>
        The felt pushes at each corner that is in it, harder the deeper and the faster, and never pulls; near its full
        thickness it stiffens.
        <span class="source">R. D. Mindlin, Bell System Technical Journal 24 (1945) 353–461.</span>
      </p>
      <h3>The air</h3>
      <p class="law">f = (ρ·C·A/2m)·v², against the motion</p>
      <p>
        Only when it is let in, on the sheet Place: ρ = 1.204 kg/m³, the front A = 0.012 m², C = 1.05 for a box face on,
        m = 0.5 kg. The front counts as the same however the box is turned; lift, and the air that is dragged along, are
        left out.
        <span class="source">Density: ISO 2533, for 20 °C by the sea. Coefficient: from memory.</span>
      </p>
      <h3>What is left out</h3>
      <ul>
        <li>The proof mass does not push its housing back: it is taken to be far lighter.</li>
        <li>The housing is rigid; it has no vibrations of its own.</li>
        <li>f is taken where the element is mounted, not where the mass has moved to.</li>
        <li>The drawing enlarges the deflection; the factor stands beside the reading.</li>
      </ul>
      <h3>How it is checked</h3>
      <p>
        Against published tables, an independent integrator and a recorded earthquake; each source is named beside its
        check. Every figure on this page comes from the run, none from a drawn curve.
        <span class="source"
          >A. K. Chopra, Dynamics of Structures; K. Ogata, Modern Control Engineering; NIMA TR8350.2 for gravity.</span
        >
      </p>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'physics-sheet': PhysicsSheet;
  }
}
