import { handlingFrom } from '../session/handling-values.ts';
import type { FirstStep } from '../ui/short-way-in.ts';
import type { HandlingName } from '../ui/ui-events.ts';
import type { BenchTime } from './bench-time.ts';
import type { PageDoor } from './page-door.ts';

export interface HandlingErrands {
  /** Out in weightless space, or back to where it was. */
  readonly inSpace: (wanted: boolean) => void;
  /** One of the things to try at first has been done. */
  readonly done: (step: FirstStep) => void;
}

/** The key that stays pressed while a motion lasts that no key asked for. */
const BY_MOTION: Readonly<Record<string, HandlingName | undefined>> = { held: 'hold', free: 'drop' };

/** What keys and hand ask of the housing, which key is lit, and how fast time runs meanwhile. */
export class HandlingDesk {
  readonly #page: PageDoor;
  readonly #time: BenchTime;
  readonly #errands: HandlingErrands;
  #active: HandlingName | undefined = 'hold';
  /** What a key asked for last; it leads until a hand takes over. */
  #asked: HandlingName | undefined;
  /** How much slower than life it ran before a hand took the housing. */
  #slowedBefore: number | undefined;
  #eventCount = 0;

  constructor(page: PageDoor, time: BenchTime, errands: HandlingErrands) {
    this.#page = page;
    this.#time = time;
    this.#errands = errands;
  }

  /** The key that is lit. */
  get active(): HandlingName | undefined {
    return this.#active;
  }

  handle(kind: HandlingName): void {
    const page = this.#page;
    const { fields, record } = page.state;
    page.change({ handling: kind, notice: '' });
    const handling = handlingFrom(kind, fields, record?.motion);
    if (!handling) {
      page.change({ sheet: 'records', folded: false, notice: 'Choose a recorded file first.' });
      return;
    }
    this.goOn();
    this.#errands.inSpace(kind === 'push' && fields['push.where'] === 'space');
    const carriedToS = page.session.handle(handling, page.eventRunS);
    // Nobody wants to watch ten times slowed how it is carried back to its place.
    this.#time.hurryTo(carriedToS);
    this.#active = kind;
    this.#asked = kind;
    if (kind === 'drop') this.#errands.done('drop');
  }

  /** A field of a handling was changed: what shakes or spins by it goes over to the new value. */
  field(name: string): void {
    const [handling] = name.split('.');
    if (handling === this.#asked && (handling === 'shake' || handling === 'spin')) this.handle(handling);
  }

  /** Goes on: from where the paper was pulled back to, as a new run, or simply on. */
  goOn(): void {
    if (this.#page.state.looping) this.#page.change({ looping: false });
    if (this.#time.goOn()) this.#caughtUp();
    this.#page.change({});
  }

  /** Another run stands on the bench, at its beginning or, brought back, at its end. */
  begun(atItsEnd: boolean): void {
    this.#active = 'hold';
    this.#asked = undefined;
    this.#eventCount = 0;
    if (atItsEnd) this.#caughtUp();
  }

  #caughtUp(): void {
    this.#eventCount = this.#page.session.run.world.events.all.length;
  }

  /** Things that happen light a key, tick a step off and change what the page says. */
  followEvents(): void {
    const { all } = this.#page.session.run.world.events;
    if (all.length === this.#eventCount) return;
    const fresh = all.slice(this.#eventCount);
    this.#caughtUp();
    if (fresh.some(({ kind }) => kind === 'touch')) this.#errands.done('look');
    if (fresh.every(({ kind }) => kind === 'stop hit')) return;
    for (const event of fresh) if (event.kind === 'motion') this.#active = this.#asked ?? BY_MOTION[event.motion];
    this.#page.change({});
  }

  /** The lever was moved; while a hand leads, what it says holds from the letting go on. */
  slowed(slowdown: number): void {
    if (this.#slowedBefore === undefined) this.#time.setSlowed(slowdown);
    else this.#slowedBefore = slowdown;
  }

  /** While a hand leads it, time runs as in life: slowed, the housing would lag behind the hand. */
  held(holds: boolean, wallMs: number): void {
    const time = this.#time;
    time.comeTo(wallMs);
    if (holds) {
      this.goOn();
      this.#slowedBefore ??= time.clock.slowed;
      // What a key had still to carry is in the hand now: let go, it is slowed at once.
      time.hurryTo(Number.NEGATIVE_INFINITY);
      time.setSlowed(1);
      this.#active = undefined;
      this.#asked = undefined;
      this.#errands.done('grab');
    } else if (this.#slowedBefore !== undefined) {
      time.setSlowed(this.#slowedBefore);
      this.#slowedBefore = undefined;
    }
    this.#page.change({});
  }
}
