import { css } from 'lit';

/** What every control shares: box model, a focus ring that is always seen, and text for screen readers alone. */
export const baseStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: block;
    font-family: var(--plain);
    font-size: var(--type-label);
    font-feature-settings: 'tnum', 'lnum';
    color: var(--text);
  }
  :host([hidden]) {
    display: none;
  }
  :focus-visible {
    outline: var(--focus);
    outline-offset: 2px;
  }
  button,
  input,
  select {
    font: inherit;
    font-feature-settings: inherit;
    color: inherit;
  }
  .only-heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  /* Letters are for keyboards. */
  @media (hover: none) {
    kbd {
      display: none;
    }
  }
  @media (prefers-reduced-motion: reduce) {
    *,
    *::before,
    *::after {
      transition-duration: 0s !important;
      animation: none !important;
    }
  }
`;

/** A button that reads as a link: an underlined word with room enough for a finger. */
export const linkStyles = css`
  button.link {
    display: inline-flex;
    align-items: center;
    min-height: 26px;
    min-width: 24px;
    padding: 0;
    border: 0;
    background: none;
    color: var(--link);
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 3px;
  }
  button.link:hover {
    text-decoration-thickness: 2px;
  }
  button.link:disabled {
    color: var(--soft);
    text-decoration: none;
    cursor: default;
  }
`;

/** A small key of brass, for what is pressed often but need not be large. */
export const slipKeyStyles = css`
  button.slip {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: 6px;
    min-height: 28px;
    padding: 2px 10px;
    border: 0;
    border-radius: var(--radius-button);
    background: linear-gradient(178deg, var(--key-high), var(--key-middle) 55%, var(--key-low));
    box-shadow:
      0 2px 0 var(--key-side),
      0 3px 4px rgb(var(--shadow) / 0.3),
      inset 0 1px 0 rgb(255 255 255 / 0.35);
    color: var(--key-text);
    font-size: var(--type-note);
    font-weight: 620;
    white-space: nowrap;
    cursor: pointer;
  }
  button.slip:active,
  button.slip[aria-pressed='true'] {
    transform: translateY(1.5px);
    box-shadow:
      0 0.5px 0 var(--key-side),
      0 1px 1px rgb(var(--shadow) / 0.3),
      inset 0 1px 3px rgb(var(--shadow) / 0.35);
  }
  button.slip svg {
    flex: none;
  }
  button.slip:disabled {
    opacity: 0.55;
    cursor: default;
  }
`;

/** Choices from a short list, in the looks of a field. */
export const selectStyles = css`
  select {
    min-height: 26px;
    max-width: 100%;
    padding: 1px 4px;
    border: 1px solid var(--edge);
    border-radius: var(--radius-field);
    background: var(--sheet);
    font-weight: 560;
    cursor: pointer;
  }
  option {
    background: var(--sheet);
    color: var(--text);
  }
`;

/** Headings and text of a sheet in the folder. */
export const sheetStyles = css`
  :host {
    font-size: var(--type-body);
    line-height: 1.42;
  }
  h2 {
    margin: 0 0 var(--space-3);
    font: 560 var(--type-title) / 1.14 var(--book);
    font-optical-sizing: auto;
    text-wrap: balance;
  }
  h3 {
    margin: var(--space-5) 0 var(--space-2);
    font: 640 var(--type-head) / 1.2 var(--book);
  }
  p {
    margin: 0 0 var(--space-3);
    font-family: var(--book);
    text-wrap: pretty;
  }
  .eyebrow {
    margin: 0 0 2px;
    font: 460 var(--type-note) / 1.3 var(--plain);
    color: var(--soft);
  }
  .note {
    font: 460 var(--type-note) / 1.4 var(--plain);
    color: var(--soft);
  }
  .check {
    display: flex;
    align-items: center;
    gap: 8px;
    min-height: 26px;
  }
  .check input {
    width: 18px;
    height: 18px;
    margin: 0;
    accent-color: var(--ink);
  }
  .sliders {
    display: grid;
    gap: var(--space-4);
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
