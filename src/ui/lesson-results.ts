import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { AnsweredQuestion, CheckView, LessonResults, LessonStepResults, Outcome } from '../contract/lesson.ts';
import { proseBlocks, proseWords, valueText } from './lesson-prose.ts';
import { baseStyles } from './shared-styles.ts';
import { sketchFrame } from './sketch-frame.ts';
import { type Ink, sketchPicture, sketchPictureStyles } from './sketch-picture.ts';

/** Of a sketch on paper [px]; A4 and Letter are both wide enough for it. */
const SKETCH_PX = { width: 420, height: 190 } as const;

/** Words, since grey paper knows no colours. */
const OUTCOMES: Readonly<Record<Outcome, string>> = { passed: 'Right.', wrong: 'Not right.', waiting: 'Open.' };

/**
 * A learner's results on paper: of each step what came out, the prediction under it, checks, own words, settings and
 * seed. Black on white at any theme; it is laid out for A4 and Letter and is only seen in print.
 */
@customElement('lesson-results')
export class LessonResultsSheet extends LitElement {
  static override styles = [
    baseStyles,
    sketchPictureStyles,
    css`
      :host {
        --text: #000;
        --soft: #333;
        --hairline: #999;
        --ink: #000;
        --pencil: #767676;
        color: #000;
        font: 10.5pt / 1.35 var(--book);
      }
      @media screen {
        :host {
          display: none;
        }
      }
      h1 {
        margin: 0 0 4pt;
        font-size: 17pt;
        line-height: 1.15;
      }
      header {
        margin-bottom: 8pt;
        padding-bottom: 6pt;
        border-bottom: 1pt solid #000;
      }
      .line {
        display: flex;
        justify-content: space-between;
        gap: 20pt;
      }
      .blank {
        flex: 1;
        max-width: 60%;
        border-bottom: 0.6pt solid #000;
      }
      section {
        margin: 0 0 12pt;
      }
      h2 {
        margin: 0 0 4pt;
        font-size: 13pt;
        break-after: avoid;
      }
      h3 {
        margin: 7pt 0 2pt;
        font: 700 9pt / 1.3 var(--plain);
        break-after: avoid;
      }
      p {
        margin: 0 0 2pt;
        orphans: 2;
        widows: 2;
      }
      table {
        width: 100%;
        border-collapse: collapse;
        break-inside: auto;
      }
      tr,
      .answered,
      figure {
        break-inside: avoid;
      }
      th,
      td {
        padding: 1.5pt 6pt 1.5pt 0;
        border-bottom: 0.4pt solid #999;
        font-weight: 400;
        text-align: left;
        vertical-align: baseline;
      }
      td:last-child {
        padding-right: 0;
      }
      .number {
        font-family: var(--plain);
        font-weight: 700;
        text-align: right;
        white-space: nowrap;
      }
      .answered {
        margin-bottom: 4pt;
        padding-left: 8pt;
        border-left: 1.5pt solid #999;
      }
      .given {
        font-style: italic;
      }
      .outcome {
        font-family: var(--plain);
        font-weight: 700;
      }
      figure {
        margin: 3pt 0;
      }
      svg.sketch {
        width: ${SKETCH_PX.width}px;
        max-width: 100%;
      }
      .settings {
        font: 8.5pt / 1.35 var(--plain);
      }
    `,
  ];

  @property({ attribute: false }) results!: LessonResults;
  /** The pen's line over the sketches of each step, in the order of its predictions. */
  @property({ attribute: false }) inks: readonly (readonly Ink[])[] = [];

  override render() {
    const { title, passed, checks, steps } = this.results;
    return html`
      <header>
        <h1>${title}</h1>
        <p class="line"><span>${passed} of ${checks} checks passed</span><span class="blank">Name:</span></p>
      </header>
      ${steps.map((step, index) => this.#step(step, this.inks[index] ?? []))}
    `;
  }

  #step(step: LessonStepResults, inks: readonly Ink[]) {
    const begun = step.predictions.length + step.answers.length + step.settings.length > 0;
    return html`<section>
      <h2>${step.title}</h2>
      ${begun ? this.#found(step, inks) : html`<p>Not begun.</p>`}
    </section>`;
  }

  #found(
    { predictions, answers, figures, checks, explanation, hints, settings }: LessonStepResults,
    inks: readonly Ink[],
  ) {
    return html`
      ${
        figures.length === 0
          ? nothing
          : html`<h3>What came out</h3>
              <table>
                ${figures.map(
                  ({ words, text }) =>
                    html`<tr><th scope="row">${proseWords(words)}</th><td class="number">${valueText(text)}</td></tr>`,
                )}
              </table>`
      }
      ${predictions.length === 0 ? nothing : html`<h3>What was predicted</h3>`}
      ${predictions.map((each, index) => this.#answered(each, inks[index] ?? []))}
      ${answers.length === 0 ? nothing : html`<h3>What was observed</h3>`}
      ${answers.map((each) => this.#answered(each, []))}
      ${
        checks.length === 0
          ? nothing
          : html`<h3>What was checked</h3>
              <table>
                ${checks.map((check) => this.#check(check))}
              </table>`
      }
      ${
        explanation === undefined
          ? nothing
          : html`<h3>In my own words</h3>
              <div class="answered">${proseBlocks(explanation.words)}<p class="given">${explanation.written || '—'}</p></div>`
      }
      <p class="settings">
        ${settings.length === 0 ? 'Not measured yet' : settings.map(({ words, text }) => `${words} ${valueText(text)}`).join(' · ')}${hints === 0 ? '' : ` · hints taken: ${hints}`}
      </p>`;
  }

  #answered({ words, answer, sketch, outcome, says }: AnsweredQuestion, ink: Ink) {
    const frame = sketch && sketchFrame(sketch.axes, SKETCH_PX.width, SKETCH_PX.height);
    return html`<div class="answered">
      ${proseBlocks(words)}
      ${
        sketch && frame
          ? html`<figure>
              ${svg`<svg class="sketch" viewBox=${`0 0 ${SKETCH_PX.width} ${SKETCH_PX.height}`}>${sketchPicture(frame, sketch.points, ink)}</svg>`}
              <figcaption>broad grey: the sketch${ink.length === 0 ? '' : '; thin black: the pen'}</figcaption>
            </figure>`
          : html`<p class="given">${answer}</p>`
      }
      <p><span class="outcome">${OUTCOMES[outcome]}</span></p>
      ${proseBlocks(says)}
    </div>`;
  }

  #check({ words, outcome, measured, expected, says }: CheckView) {
    return html`<tr>
      <td>${proseWords(words)}– <span class="outcome">${OUTCOMES[outcome]}</span> ${proseWords(says)}</td>
      <td class="number">${measured === '' ? '—' : valueText(measured)}</td>
      <td>${expected === '' ? nothing : `asked for: ${valueText(expected)}`}</td>
    </tr>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lesson-results': LessonResultsSheet;
  }
}
