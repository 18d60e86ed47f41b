import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';
import { baseStyles, sheetStyles } from './shared-styles.ts';

/** A term, one line, where the term comes from, and where on the bench to see it move. */
interface Term {
  readonly term: string;
  readonly line: string;
  readonly source: string;
  readonly see: string;
}

/** Sources: titles of standards as published; their single definitions were not all read (marked "trade"). */
const TERMS: readonly Term[] = [
  {
    term: 'specific force',
    line: 'What pushes on a thing per kilogram, gravity left out. It is what an accelerometer feels.',
    source: 'IEEE Std 528, 1293',
    see: 'the dashed line: +1 g held, 0 falling',
  },
  {
    term: 'proof mass',
    line: 'The mass whose movement inside the housing is read. Also: seismic mass.',
    source: 'IEEE Std 1293',
    see: 'the brass block on its arm',
  },
  {
    term: 'housing',
    line: 'The body that is fixed to what is measured. Also: case, frame.',
    source: 'trade',
    see: 'the glass box in both views',
  },
  {
    term: 'deflection',
    line: 'Where the mass is relative to the housing, counted from where the unloaded spring has it.',
    source: 'ISO 2041 (relative displacement)',
    see: 'the figure beside the big reading: so much low, so much high',
  },
  {
    term: 'input axis',
    line: 'The direction in which the element feels.',
    source: 'IEEE Std 1293',
    see: 'tilt the housing by 90°: the reading goes from 1 g to 0',
  },
  {
    term: 'natural frequency',
    line: 'How fast the mass would swing without damping: √(k/m)/2π.',
    source: 'ISO 2041',
    see: 'count the swings after a drop',
  },
  {
    term: 'damping ratio ζ',
    line: 'Damping as a share of the least that keeps it from swinging: 1 just does not overshoot.',
    source: 'ISO 2041',
    see: 'slide the damping while it rings',
  },
  {
    term: 'logarithmic decrement',
    line: 'Natural logarithm of one swing over the next on the same side: 2πζ/√(1 − ζ²).',
    source: 'ISO 2041',
    see: 'the shrinking swings on the tape',
  },
  {
    term: 'resonance',
    line: 'Shaken near its natural frequency a lightly damped mass swings more than it should.',
    source: 'ISO 2041',
    see: 'shake it, sweeping from 1 Hz to 30 Hz',
  },
  {
    term: 'settling time',
    line: 'From a sudden change until the mass stays within a stated band, here 2 %.',
    source: 'trade',
    see: 'the plain-words line',
  },
  {
    term: 'standard gravity gₙ',
    line: 'A unit: 9.80665 m/s² exactly. Gravity where you stand differs a little.',
    source: 'CGPM 1901, ISO 80000-3',
    see: 'sheet Place: the reading at rest on the equator and at a pole',
  },
  {
    term: 'full-scale range',
    line: 'The largest reading that is reported; beyond it the report is clipped.',
    source: 'IEEE Std 2700',
    see: 'the red dots at a landing',
  },
  {
    term: 'output data rate',
    line: 'Reported values per second. What happens between two of them is not seen.',
    source: 'IEEE Std 2700',
    see: 'set 10 samples a second and drop',
  },
  {
    term: 'shock pulse, velocity change',
    line: 'A short push and its area over time: what the landing does to the speed.',
    source: 'ISO 2041',
    see: 'mark a landing on the tape, read its area',
  },
  {
    term: 'linear acceleration',
    line: 'Change of velocity in the room. It is computed, never felt.',
    source: 'W3C Accelerometer',
    see: 'call up "acceleration in the room": −1 g in the fall while the felt is 0',
  },
];

/** Terms of the trade, each with its source and a place on the bench where it can be seen to move. */
@customElement('glossary-sheet')
export class GlossarySheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    css`
      dt {
        margin-top: var(--space-3);
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

  override render() {
    return html`
      <h2>The words</h2>
      <dl>
        ${TERMS.map(
          ({ term, line, source, see }) => html`<dt>${term}</dt>
            <dd>${line} <span class="source">(${source})</span> <span class="see">See: ${see}.</span></dd>`,
        )}
      </dl>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'glossary-sheet': GlossarySheet;
  }
}
