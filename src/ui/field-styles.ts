import { css } from 'lit';

/** A number on a slip of white paper with a fine edge. */
export const fieldStyles = css`
  :host {
    display: inline-block;
    position: relative;
    vertical-align: baseline;
    font-size: var(--type-field);
  }
  .field {
    display: inline-flex;
    align-items: baseline;
    justify-content: flex-end;
    min-width: var(--field-width, 0);
    min-height: var(--field-height, 26px);
    padding: calc((var(--field-height, 26px) - 26px) / 2) 6px;
    border: 1px solid var(--edge);
    border-radius: var(--radius-field);
    background: var(--sheet);
    cursor: text;
  }
  .field:focus-within {
    outline: var(--focus);
    outline-offset: 1px;
  }
  .field[data-refused] {
    border-color: var(--refusal);
    box-shadow: inset 0 0 0 1px var(--refusal);
  }
  input {
    flex: 1 1 auto;
    width: 100%;
    min-width: 0;
    padding: 0;
    border: 0;
    background: none;
    outline: none;
    font-weight: 620;
    font-size: inherit;
    text-align: right;
    line-height: 24px;
    field-sizing: content;
  }
  input:disabled {
    color: var(--soft);
  }
  .unit {
    flex: none;
    padding-left: 0.25em;
    font-weight: 460;
    color: var(--soft);
  }
  .unit.close {
    padding-left: 0;
  }
`;

/** A slip that says why a value was refused, hung under its field so that nothing else has to move. */
export const refusalStyles = css`
  .refusal {
    position: absolute;
    z-index: 20;
    top: calc(100% + 5px);
    right: 0;
    width: max-content;
    max-width: min(270px, 70vw);
    padding: 6px 9px;
    border-left: 3px solid var(--refusal);
    border-radius: var(--radius-field);
    background: var(--sheet);
    box-shadow: var(--shadow-sheet);
    color: var(--refusal);
    font: 520 var(--type-mark) / 1.35 var(--plain);
    text-align: left;
    white-space: normal;
  }
  .refusal[hidden] {
    display: none;
  }
`;
