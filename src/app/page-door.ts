import type { Session } from '../session/session.ts';
import type { Clock } from './clock.ts';
import type { PageState } from './page-state.ts';

/** What the parts of the page share: how it stands, the sitting and its time. */
export interface PageDoor {
  readonly session: Session;
  readonly state: PageState;
  readonly clock: Clock;
  /** Wall time reached [ms]. */
  readonly wallMs: number;
  /** Run time reached [s]. */
  readonly nowS: number;
  /** Run time of the event that is being dealt with [s]. */
  readonly eventRunS: number;
  change(changed: Partial<PageState>): void;
}
