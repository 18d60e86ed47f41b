import type { LessonStep } from '../lesson/lesson.ts';
import type { LessonSheetView } from '../ui/lesson-sheet.ts';
import type { Act, HandlingName, LessonWish, Setting } from '../ui/ui-events.ts';
import type { LessonDesk } from './lesson-desk.ts';
import type { PageDoor } from './page-door.ts';
import { placeOf } from './places.ts';

/** What a lesson asks of the page beyond what all parts share. */
export interface LessonErrands {
  readonly act: (act: Act) => void;
  readonly set: (setting: Setting) => void;
  readonly pull: (timeS: number) => void;
  /** A run has begun anew. */
  readonly begun: () => void;
  /** Puts the focus where a setting is made. */
  readonly focus: (setting: string) => void;
}

/** The way to the lessons: they and what reads them stay out of the first load. */
export class LessonDoor {
  readonly #page: PageDoor;
  readonly #errands: LessonErrands;
  /** Fetched when the lesson sheet is first opened. */
  #desk: LessonDesk | undefined;
  /** The run stands still until a prediction is stored. */
  #held = false;

  constructor(page: PageDoor, errands: LessonErrands) {
    this.#page = page;
    this.#errands = errands;
  }

  get desk(): LessonDesk | undefined {
    return this.#desk;
  }

  get view(): LessonSheetView | undefined {
    return this.#desk?.view;
  }

  async open(): Promise<void> {
    if (this.#desk) return;
    const page = this.#page;
    const { act, set, pull } = this.#errands;
    try {
      const { LessonDesk: Desk } = await import('./lesson-desk.ts');
      this.#desk ??= new Desk({
        session: () => page.session,
        slowed: () => page.clock.slowed,
        shownS: () => page.session.shownS(page.nowS),
        laid: (step) => this.#laid(step),
        handle: (handling: HandlingName, fields) => {
          page.change({ fields: { ...page.state.fields, ...fields } });
          act({ what: 'handle', handling });
          showBench();
        },
        set,
        pull: (timeS) => {
          pull(timeS);
          showBench();
        },
        lead: (setting) => this.#lead(setting),
        changed: () => page.change({}),
      });
      page.change({});
    } catch (error) {
      page.change({
        notice: `The lessons could not be fetched (${String(error)}). Open their sheet again to try once more.`,
      });
    }
  }

  take(wish: LessonWish): void {
    if (wish.wish === 'look up') {
      void import('./words-sheets.ts');
      this.#page.change({ sheet: 'words', folded: false, sought: wish });
      return;
    }
    this.#desk?.take(wish);
    this.#keepLock();
  }

  /** The bench is locked: says why. */
  refusesHand(): boolean {
    const locked = this.#desk?.locked;
    if (locked !== undefined) this.#page.change({ notice: locked });
    return locked !== undefined;
  }

  /** A lesson has laid the bench out anew. */
  #laid({ slowed, paperS, reachMS2 }: LessonStep): void {
    const page = this.#page;
    const { bench, settings } = page.session;
    if (slowed !== undefined) page.clock.setSlowed(slowed, page.wallMs);
    const place = placeOf(settings.gravityMS2);
    page.change({
      spanS: paperS ?? bench.paperSpanS,
      range: reachMS2 ?? 'automatic',
      place,
      latitude: Number.NaN,
      placeHeightM: Number.NaN,
    });
    this.#errands.begun();
  }

  /** While a prediction is waited for the run stands still; once it is stored it goes on. */
  #keepLock(): void {
    const { clock, wallMs } = this.#page;
    const locked = this.#desk?.locked !== undefined;
    if (locked) clock.stop(wallMs);
    else if (this.#held) {
      clock.start(wallMs);
      this.#page.change({ notice: '' });
    }
    this.#held = locked;
  }

  /** Leads to where a setting is made. */
  #lead(setting: string): void {
    const sheet = setting === 'gap' ? 'element' : /^(gravity|pad\.|air)/u.test(setting) ? 'place' : undefined;
    if (sheet) {
      this.#page.change({ sheet, folded: false });
      return;
    }
    if (setting === 'drop.height') this.#page.change({ handling: 'drop' });
    this.#errands.focus(setting);
  }
}

/** On a phone the sheet lies below the bench: what is done from the sheet is to be seen. */
function showBench(): void {
  const paper = document.querySelector('.paper-host')?.getBoundingClientRect();
  if (paper && (paper.top < 0 || paper.bottom > window.innerHeight))
    document.querySelector('bench-layout')?.scrollIntoView({ block: 'start' });
}
