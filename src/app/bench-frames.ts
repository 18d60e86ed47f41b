import { render } from 'lit';
import { spanFigures } from '../plot/span-figures.ts';
import { CHANNEL } from '../session/bench-run.ts';
import { runSentence } from '../session/sentence.ts';
import type { SpanFigures as SlipFigures } from '../ui/span-figures.ts';
import type { BenchSurface } from './bench-surface.ts';
import { benchView } from './bench-view.ts';
import type { HandlingDesk } from './handling-desk.ts';
import type { LessonDoor } from './lesson-door.ts';
import type { PageDoor } from './page-door.ts';
import { SecondPaperDesk } from './second-paper-desk.ts';
import { slipFigures } from './slip-figures.ts';
import { whatChanged } from './what-changed.ts';

/** Draws the page: the template when something was decided, pictures and paper in every frame that shows something new. */
export class BenchFrames {
  readonly #host: HTMLElement;
  readonly #page: PageDoor;
  readonly #handling: HandlingDesk;
  readonly #lessons: LessonDoor;
  readonly #second: SecondPaperDesk;
  #shownBeforeS = 0;
  /** The last frame showed a stretch of time: standing still, an instant is drawn once more. */
  #blurred = false;

  constructor(host: HTMLElement, page: PageDoor, handling: HandlingDesk, lessons: LessonDoor) {
    this.#host = host;
    this.#page = page;
    this.#handling = handling;
    this.#lessons = lessons;
    this.#second = new SecondPaperDesk(page, host);
  }

  render(): void {
    const { session, state, clock } = this.#page;
    const { run } = session;
    const sentence = runSentence(run.world.events.all, (timeS) => run.readingAt(timeS));
    render(
      benchView(state, {
        session,
        slowed: clock.slowed,
        paused: !clock.running,
        active: this.#handling.active,
        span: this.#markedFigures(),
        undoWhat: whatChanged(session.undoTo, session.settings),
        redoWhat: whatChanged(session.redoTo, session.settings),
        sentence,
        lessons: this.#lessons.view,
        covered: this.#lessons.desk?.covered ?? false,
      }),
      this.#host,
    );
    void this.#second.draw();
  }

  /** Paints a frame at a wall time [ms]; `changed`: the template was rendered for it. */
  paint(surface: BenchSurface, wallMs: number, changed: boolean): void {
    const { session, state, nowS } = this.#page;
    const { painter, pictures } = surface;
    const snapshot = session.look(nowS);
    // Nothing new to see: a bench that stands still costs nothing.
    const still = snapshot.timeS === this.#shownBeforeS && !this.#blurred;
    if (!changed && still && pictures.settled && painter.measured) return;
    const sinceS = Math.max(0, snapshot.timeS - this.#shownBeforeS);
    painter.paint(session, state, {
      wallMs,
      nowS,
      sinceS,
      snapshot,
      roomArrows: new Set(),
      sketch: this.#lessons.desk?.sketch,
      notes: this.#lessons.desk?.notes ?? [],
    });
    this.#blurred = sinceS > 0;
    this.#shownBeforeS = snapshot.timeS;
  }

  #markedFigures(): SlipFigures | undefined {
    const { session, state } = this.#page;
    const { marked, lines, unit } = state;
    if (!marked) return undefined;
    const line = lines.find(({ id, shown }) => shown && id === 'mass') ? 'mass' : 'felt';
    const channel = line === 'mass' ? CHANNEL.reading : CHANNEL.specificForce;
    const figures = spanFigures(session.run.tape, channel, marked.fromS, marked.toS);
    return figures && slipFigures(figures, line === 'mass' ? 'what the mass did' : 'what happened', unit);
  }
}
