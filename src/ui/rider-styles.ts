import { css } from 'lit';

/** The brass rider and its rule, on top of the browser's own slider: drag, click, keys and touch come with it. */
export const riderStyles = css`
  .rule {
    position: relative;
    height: 26px;
  }
  .marks {
    position: absolute;
    left: 0;
    top: 2px;
    width: 100%;
    height: 9px;
    stroke: var(--soft);
    stroke-width: 1;
  }
  .line {
    position: absolute;
    left: 0;
    right: 0;
    top: 11px;
    height: 3px;
    border-radius: 1.5px;
    background: linear-gradient(
      90deg,
      var(--brass-dark) calc(var(--share) * 100%),
      color-mix(in srgb, var(--edge) 62%, transparent) 0
    );
    box-shadow: 0 1px 1px rgb(var(--shadow) / 0.15);
  }
  input {
    position: absolute;
    inset: 0;
    width: calc(100% + 16px);
    height: 26px;
    margin: 0 -8px;
    background: none;
    appearance: none;
    cursor: grab;
    touch-action: pan-y;
  }
  input:active {
    cursor: grabbing;
  }
  input:focus-visible {
    outline: none;
  }
  input::-webkit-slider-thumb {
    appearance: none;
    width: 16px;
    height: 24px;
    border: 0;
    border-radius: 3px;
    background:
      linear-gradient(90deg, transparent 44%, rgb(var(--shadow) / 0.55) 44% 54%, transparent 54%),
      linear-gradient(
        90deg,
        var(--brass-shade),
        var(--brass-light) 26%,
        var(--brass) 52%,
        var(--brass-light) 76%,
        var(--brass-shade)
      );
    box-shadow:
      0 3px 4px rgb(var(--shadow) / 0.45),
      0 0 0 0.8px color-mix(in srgb, var(--brass-dark) 70%, transparent),
      inset 0 1px 0 rgb(255 255 255 / 0.35);
  }
  input::-moz-range-thumb {
    width: 16px;
    height: 24px;
    border: 0;
    border-radius: 3px;
    background: linear-gradient(90deg, var(--brass-shade), var(--brass-light) 30%, var(--brass) 60%, var(--brass-shade));
    box-shadow: 0 3px 4px rgb(var(--shadow) / 0.45);
  }
  input:focus-visible::-webkit-slider-thumb {
    outline: var(--focus);
    outline-offset: 2px;
  }
  input:focus-visible::-moz-range-thumb {
    outline: var(--focus);
    outline-offset: 2px;
  }
`;
