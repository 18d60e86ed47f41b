import type { RunEvent } from '../contract/event.ts';

/** Events kept at most; a mass that chatters on its stop for minutes would fill the memory [events]. */
const MOST_EVENTS = 100_000;

/** What happened, oldest first. Past the limit the oldest half goes; `dropped` tells how many went. */
export class EventLog {
  #events: RunEvent[] = [];
  #dropped = 0;

  get all(): readonly RunEvent[] {
    return this.#events;
  }

  get dropped(): number {
    return this.#dropped;
  }

  /** Appends the events of one tick, sorted by their instants. */
  append(events: readonly RunEvent[]): void {
    for (const event of events) this.#events.push(event);
    if (this.#events.length > MOST_EVENTS) {
      const gone = MOST_EVENTS / 2;
      this.#events = this.#events.slice(gone);
      this.#dropped += gone;
    }
  }

  /** Forgets what happened at or after an instant [s]. */
  forgetFrom(timeS: number): void {
    while (this.#events.length > 0 && this.#events[this.#events.length - 1]!.timeS >= timeS) this.#events.pop();
  }

  /** Takes over another log's events before an instant [s]. */
  copyBefore(other: EventLog, timeS: number): void {
    this.#events = other.#events.filter((event) => event.timeS < timeS);
    this.#dropped = other.#dropped;
  }
}
