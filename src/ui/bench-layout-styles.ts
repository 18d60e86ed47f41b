import { css } from 'lit';

/** Where the areas lie from 900 px of width on: folder | tape over room | riding view over controls. */
export const wideLayoutStyles = css`
  :host {
    --margin: 18px;
    --folder: clamp(262px, 22.4vw, 340px);
    --right: clamp(395px, 39.9vw, 620px);
    --rule: 30px;
    /* The riding view reaches over the paper so far that the nib finds its ink. */
    --overlap: 46px;
    display: grid;
    position: relative;
    width: 100%;
    height: 100vh;
    height: 100dvh;
    min-height: 700px;
    overflow: hidden;
    grid-template-columns: calc(var(--margin) + var(--folder)) minmax(0, 1fr) var(--rule) calc(
        var(--right) - var(--rule) - var(--margin)
      ) var(--margin);
    grid-template-rows: 52px 38px minmax(0, 1fr) 34px auto;
  }
  :host([folded]) {
    --folder: 44px;
    --right: clamp(440px, 42.5vw, 700px);
  }

  nav {
    position: absolute;
    z-index: 9;
    left: 50%;
    top: 0;
    transform: translate(-50%, -120%);
    opacity: 0;
    display: flex;
    gap: 18px;
    padding: 6px 16px;
    background: var(--sheet);
    box-shadow: var(--shadow-sheet);
    border-radius: 0 0 var(--radius-tab) var(--radius-tab);
  }
  nav:focus-within {
    transform: translateX(-50%);
    opacity: 1;
  }

  .head {
    grid-row: 1;
    grid-column: 1 / -1;
    padding: 0 var(--margin) 0 22px;
    align-self: center;
    z-index: 3;
  }
  .run {
    grid-row: 1;
    grid-column: 2;
    align-self: center;
    justify-self: end;
    padding-right: 8px;
    z-index: 4;
  }
  .folder {
    grid-row: 2 / -1;
    grid-column: 1;
    margin: 2px 0 var(--margin) var(--margin);
    min-height: 0;
    z-index: 4;
  }
  .legend {
    grid-row: 2;
    grid-column: 2;
    align-self: center;
    padding: 0 4px 0 12px;
    min-width: 0;
    z-index: 3;
  }
  .paper-part {
    grid-row: 3;
    grid-column: 2;
    position: relative;
    min-width: 0;
    background: var(--paper);
    box-shadow: var(--shadow-paper);
  }
  .paper {
    position: absolute;
    inset: 0;
  }
  /* Where the paper dips under the rule. */
  .curl {
    position: absolute;
    inset: 0 0 0 auto;
    width: 84px;
    pointer-events: none;
    background: linear-gradient(90deg, transparent, rgb(var(--shadow) / 0.05) 45%, rgb(var(--shadow) / 0.24));
  }
  .rule {
    grid-row: 3;
    grid-column: 3;
    position: relative;
    margin: -9px 0 -6px;
    z-index: 1;
  }
  .riding {
    grid-row: 2 / 5;
    grid-column: 3 / -1;
    position: relative;
    margin-left: calc(-1 * var(--overlap));
    z-index: 2;
  }
  .reading {
    grid-row: 2;
    grid-column: 3 / -1;
    position: relative;
    align-self: end;
    z-index: 3;
    margin-bottom: 8px;
    pointer-events: none;
  }
  .sign {
    grid-row: 4;
    grid-column: 2;
    align-self: center;
    padding-left: 14px;
    z-index: 3;
    min-width: 0;
  }
  .room-part {
    grid-row: 5;
    grid-column: 2;
    position: relative;
    display: flex;
    flex-direction: column;
    min-height: 0;
    margin-top: -34px;
    padding-top: 34px;
  }
  .room {
    position: relative;
    flex: 1;
    min-height: 0;
    margin-top: -34px;
  }
  .slip {
    position: relative;
    z-index: 3;
    padding: 0 14px;
  }
  .second {
    display: none;
  }
  /* Unrolled, it takes the place of the room, which stays as large as it is. */
  :host([second]) .second {
    position: relative;
    display: block;
    flex: 1;
    min-height: 0;
    z-index: 4;
  }
  :host([second]) .room {
    position: absolute;
    inset: 0;
    visibility: hidden;
  }
  .caution {
    z-index: 3;
    padding: 4px 10px 10px 14px;
  }
  .paper ::slotted(*),
  .rule ::slotted(*),
  .riding ::slotted(*),
  .room ::slotted(*) {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
  }

  .controls {
    grid-row: 5;
    grid-column: 3 / 5;
    position: relative;
    z-index: 3;
    display: grid;
    grid-template-columns: 156px minmax(0, 1fr);
    grid-template-areas:
      'speed handling'
      'speed how'
      'pace how'
      'sentence sentence'
      'settings settings'
      'words words';
    grid-template-rows: auto auto 1fr;
    column-gap: 18px;
    margin-left: 5px;
    padding-bottom: calc(var(--margin) - 6px);
  }
  .handling {
    grid-area: handling;
  }
  .speed {
    grid-area: speed;
    padding-top: 4px;
  }
  .sentence {
    grid-area: sentence;
    /* Two lines, as below. */
    min-height: calc(2.6 * max(14px, 15.5px * var(--scale)));
    margin-top: 5px;
  }
  .pace {
    grid-area: pace;
    margin-top: 6px;
  }
  .settings {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: calc(26px * var(--scale));
    grid-area: settings;
    margin-top: var(--space-4);
    padding-bottom: var(--space-3);
  }
  .words {
    grid-area: words;
    border-top: 1px solid var(--hairline);
    padding-top: var(--space-3);
  }
  /* Two lines, whatever the sentence: a longer one must not push the riding view. */
  .how {
    grid-area: how;
    min-height: 58px;
    margin-top: 5px;
  }
  button.unfold-settings,
  .stage-text {
    display: none;
  }

  @media (max-height: 830px) {
    :host {
      grid-template-rows: 46px 34px minmax(0, 1fr) 30px auto;
    }
    .room-part {
      margin-top: -30px;
      padding-top: 30px;
    }
    .room {
      margin-top: -30px;
    }
    .controls {
      padding-bottom: 6px;
    }
    .settings {
      margin-top: 7px;
      padding-bottom: 5px;
    }
    .words {
      padding-top: 5px;
    }
  }
  @media (max-width: 1150px) {
    :host {
      --margin: 10px;
      --overlap: 40px;
      --rule: 28px;
    }
    :host(:not([folded])) {
      --right: 405px;
    }
    .controls {
      grid-template-columns: 140px minmax(0, 1fr);
      column-gap: 10px;
    }
    .settings {
      gap: 16px;
    }
    .how {
      min-height: 74px;
      margin-top: 4px;
    }
    .sentence {
      margin-top: 2px;
    }
    .caution {
      padding-bottom: 6px;
    }
  }
`;
