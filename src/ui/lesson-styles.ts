import { css } from 'lit';

/** What the parts of a lesson share: their heads, their text, what is said to an answer. */
export const lessonStyles = css`
  :host {
    font-size: var(--type-body);
    line-height: 1.42;
  }
  h4 {
    margin: 0 0 2px;
    font: 640 var(--type-head) / 1.25 var(--book);
  }
  .part {
    position: relative;
    margin: 0 0 var(--space-4);
    padding-left: 26px;
  }
  .part:focus {
    outline: none;
  }
  .part:focus-visible {
    outline: var(--focus);
    outline-offset: 3px;
  }
  .part > .sign {
    position: absolute;
    left: 0;
    top: 2px;
  }
  svg.sign {
    flex: none;
    width: 15px;
    height: 15px;
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  svg.sign.next {
    fill: var(--ink);
  }
  svg.sign.wrong {
    stroke: var(--refusal);
  }
  svg.sign.open {
    stroke: var(--soft);
    stroke-width: 1.6;
    stroke-dasharray: 2 2.4;
  }
  p,
  .list {
    margin: 0 0 var(--space-2);
    font-family: var(--book);
    text-wrap: pretty;
  }
  .list {
    padding-left: 20px;
  }
  .aside {
    margin: 0 0 var(--space-2);
    padding-left: 10px;
    border-left: 2px solid var(--edge);
  }
  b.figure {
    font-family: var(--plain);
    font-weight: 680;
    white-space: nowrap;
    text-decoration: underline;
    text-decoration-color: var(--hairline);
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  /* In the middle of a line: as tall as the line, which is enough for a target that has text around it. */
  button.term {
    display: inline;
    padding: 0;
    border: 0;
    background: none;
    color: var(--link);
    font: inherit;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 3px;
    cursor: pointer;
  }
  .says:not(:empty) {
    margin-top: 6px;
    padding: 5px 0 0 10px;
    border-left: 3px solid var(--ink);
  }
  .says.wrong:not(:empty) {
    border-left-color: var(--refusal);
  }
  .says p:last-child {
    margin-bottom: 0;
  }
  .verdict {
    font-family: var(--plain);
    font-weight: 660;
    color: var(--ink);
  }
  .wrong > .verdict {
    color: var(--refusal);
  }
  .refusal {
    margin: 6px 0 0;
    padding-left: 9px;
    border-left: 3px solid var(--refusal);
    color: var(--refusal);
    font: 520 var(--type-note) / 1.35 var(--plain);
  }
  .refusal:empty {
    display: none;
  }
  .note {
    margin: 0 0 4px;
    font: 460 var(--type-note) / 1.4 var(--plain);
    color: var(--soft);
  }
  .keep {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 8px;
    margin-top: var(--space-2);
  }
  .keep button.main {
    margin-left: auto;
  }
  button.main {
    min-height: 30px;
    padding: 4px 14px;
    border: 0;
    border-radius: var(--radius-button);
    background: var(--ink);
    color: var(--on-ink);
    box-shadow: 0 2px 3px rgb(var(--shadow) / 0.3);
    font-weight: 660;
    font-size: var(--type-label);
    cursor: pointer;
  }
`;
