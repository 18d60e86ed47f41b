import type { Linked, LinkedPage } from '../exchange/link.ts';
import type { PageDoor } from './page-door.ts';
import type { PageState } from './page-state.ts';

/** What goes into a link: the run, the settings, and how the page stands. */
export function linkedOf({ session, state, clock, nowS }: PageDoor): Linked {
  const { theme, spanS, unit, signTurned, lines } = state;
  return {
    run: session.asRun(true),
    settings: session.settings,
    reachedS: nowS,
    page: {
      theme,
      spanS,
      unit,
      signTurned,
      lines: lines.filter(({ shown }) => shown).map(({ id }) => id),
      slowed: clock.slowed,
      shownS: session.pulledBack ? session.shownS(nowS) : null,
    },
  };
}

/** How the page stands that a link brings back. */
export function linkedState({ theme, spanS, unit, signTurned, lines }: LinkedPage, state: PageState): PageState {
  const shown = new Set(lines);
  return {
    ...state,
    theme,
    spanS,
    unit,
    signTurned,
    lines: state.lines.map((line) => ({ ...line, shown: shown.has(line.id) })),
    notice: 'Replaying the run of the link.',
  };
}
