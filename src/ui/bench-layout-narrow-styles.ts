import { css } from 'lit';

/** Under 900 px: one column that scrolls; the riding view keeps a strip at the right of the tape. */
export const narrowLayoutStyles = css`
@media (max-width: 899px) {
  :host(:not([stage])) {
    --margin: 14px;
    --rule: 26px;
    --overlap: 34px;
    display: grid;
    height: auto;
    min-height: 100vh;
    overflow: visible;
    grid-template-columns: minmax(0, 1fr) var(--rule) max(104px, 27vw);
    grid-template-rows: 44px minmax(190px, auto) 40px 262px auto auto auto auto;
  }
  :host(:not([stage])) .head {
    grid-row: 1;
    padding: 0 var(--margin);
  }
  :host(:not([stage])) .room-part {
    grid-row: 2;
    grid-column: 1 / -1;
    margin: 0;
    padding: 0;
  }
  :host(:not([stage])) .room {
    margin: 0;
  }
  :host(:not([stage])) .slip {
    order: 2;
  }
  :host(:not([stage])) .caution {
    padding: 2px var(--margin);
    order: 3;
  }
  :host(:not([stage])) .legend {
    grid-row: 3;
    grid-column: 1 / -1;
    padding-left: var(--margin);
    padding-right: 104px;
  }
  :host(:not([stage])) .reading {
    grid-row: 3;
    grid-column: 2 / -1;
    justify-self: end;
    align-self: center;
    margin: 0 var(--margin) 0 0;
  }
  :host(:not([stage])) .paper-part {
    grid-row: 4;
    grid-column: 1;
  }
  :host(:not([stage])) .rule {
    grid-row: 4;
    grid-column: 2;
    margin: -5px 0 -5px;
  }
  :host(:not([stage])) .riding {
    grid-row: 4;
    grid-column: 2 / -1;
    margin-bottom: -8px;
    overflow: hidden;
  }
  :host(:not([stage])) .sign {
    grid-row: 5;
    grid-column: 1 / -1;
    padding: 6px var(--margin) 2px;
  }
  :host(:not([stage])) .controls {
    grid-row: 6;
    grid-column: 1 / -1;
    margin: 0;
    padding: 4px 12px 14px;
    grid-template-columns: 150px minmax(0, 1fr);
    grid-template-areas:
      'handling handling'
      'how how'
      'sentence sentence'
      'words words'
      'speed pace'
      'speed unfold'
      'settings settings';
    grid-template-rows: none;
    column-gap: 26px;
  }
  :host(:not([stage])) .words {
    border: 0;
  }
  :host(:not([stage])) button.unfold-settings {
    display: inline-flex;
    grid-area: unfold;
    justify-self: start;
  }
  :host(:not([stage])) .pace {
    padding-top: 22px;
  }
  :host(:not([stage])) .how,
  :host(:not([stage])) .sentence {
    min-height: 30px;
    margin-top: 8px;
  }
  :host(:not([stage])) .settings {
    grid-template-columns: minmax(0, 1fr);
    gap: 12px;
  }
  :host(:not([stage], [settings-open])) .settings {
    display: none;
  }
  :host(:not([stage])) .run {
    grid-row: 7;
    grid-column: 1 / -1;
    justify-self: start;
    padding: 0 12px;
  }
  :host(:not([stage])) .folder {
    grid-row: 8;
    grid-column: 1 / -1;
    margin: 10px 0 0;
  }
}
`;
