import { CHANNEL } from '../session/bench-run.ts';
import { Trigger } from '../session/trigger.ts';
import type { PageDoor } from './page-door.ts';

/** Room left beside what the trigger caught, as a share of it. */
const ROOM = 1.25;

/** Waits for a line to cross a level, then stands still and shows the time before and after. */
export class TriggerDesk {
  readonly #page: PageDoor;
  #armed: Trigger | undefined;

  constructor(page: PageDoor) {
    this.#page = page;
  }

  /** What is waited for, by the name of its setting. */
  set(name: string, value: number | string | boolean): void {
    const { trigger } = this.#page.state;
    const next = {
      'trigger.line': { ...trigger, line: value === 'mass' ? ('mass' as const) : ('felt' as const) },
      'trigger.direction': { ...trigger, rising: value === 'rising' },
      'trigger.level': { ...trigger, levelMS2: Number(value) },
      'trigger.before': { ...trigger, beforeS: Number(value) },
      'trigger.after': { ...trigger, afterS: Number(value) },
    }[name];
    if (next) this.#page.change({ trigger: next });
    if (this.#armed) this.arm(true);
  }

  arm(on: boolean): void {
    const { session, state } = this.#page;
    const { trigger } = state;
    this.#armed = on
      ? new Trigger(
          {
            channel: trigger.line === 'felt' ? CHANNEL.specificForce : CHANNEL.reading,
            rising: trigger.rising,
            level: trigger.levelMS2,
            beforeS: trigger.beforeS,
            afterS: trigger.afterS,
          },
          session.run.tape,
        )
      : undefined;
    this.#page.change({ trigger: { ...trigger, armed: on } });
  }

  /** Looks at what the tape has got since the last look. */
  watch(): void {
    const { session, clock, wallMs, state } = this.#page;
    const armed = this.#armed;
    if (!armed?.watch(session.run.tape)) return;
    const { plan, foundS = 0 } = armed;
    const fromS = Math.max(0, foundS - plan.beforeS);
    const toS = foundS + plan.afterS;
    this.#armed = undefined;
    clock.stop(wallMs);
    session.pullTo(toS);
    this.#page.change({
      trigger: { ...state.trigger, armed: false },
      marked: { fromS, toS },
      spanS: (toS - fromS) * ROOM,
    });
  }
}
