import { css } from 'lit';

/** The stage: room, tape and riding view side by side, one line of text and the keys below. */
export const stageLayoutStyles = css`
:host([stage]) {
  --margin: 22px;
  --rule: calc(28px * var(--scale));
  --overlap: calc(44px * var(--scale));
  --bed-height: calc(82px * var(--scale));
  grid-template-columns: minmax(0, 23fr) minmax(0, 37fr) var(--rule) minmax(0, 36fr) var(--margin);
  grid-template-rows: 46px calc(30px * var(--scale)) minmax(0, 1fr) calc(40px * var(--scale)) auto auto auto;
}
:host([stage]) .folder,
:host([stage]) .run,
:host([stage]) .speed,
:host([stage]) .settings,
:host([stage]) .how,
:host([stage]) .sign,
:host([stage]) .caution {
  display: none;
}
:host([stage]) .controls {
  display: contents;
}
:host([stage]) .room-part {
  grid-row: 2 / 5;
  grid-column: 1;
  margin: 0;
  padding: 0;
}
:host([stage]) .room {
  margin: 0;
}
:host([stage]) .legend {
  grid-row: 4;
  grid-column: 2 / 4;
}
:host([stage]) .reading {
  grid-row: 1 / 3;
  margin: 0 0 0.45em;
}
:host([stage]) .riding {
  grid-row: 2 / 5;
}
:host([stage]) .stage-text,
:host([stage]) .words {
  grid-column: 1 / 3;
  padding-left: calc(1.8 * var(--margin));
  z-index: 3;
}
:host([stage]) .stage-text {
  display: block;
  grid-row: 5;
  align-self: end;
  font: 560 calc(27px * var(--scale)) / 1.22 var(--book);
  text-wrap: balance;
}
:host([stage]) .stage-text ::slotted(*) {
  margin: 0;
}
:host([stage]) .words {
  grid-row: 6 / 8;
  padding-top: 0.8em;
  padding-bottom: var(--margin);
  border: 0;
}
:host([stage]) .handling,
:host([stage]) .sentence,
:host([stage]) .pace {
  grid-column: 3 / 5;
  margin: 0;
  padding: 10px 0 0 calc(var(--overlap) / 2);
  z-index: 3;
}
:host([stage]) .handling {
  grid-row: 5;
}
:host([stage]) .sentence {
  grid-row: 6;
}
:host([stage]) .pace {
  grid-row: 7;
  justify-self: start;
  padding-bottom: var(--margin);
}
`;
