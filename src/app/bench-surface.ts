import { TapePaper } from '../plot/tape-paper.ts';
import type { BenchLayout } from '../ui/bench-layout.ts';
import { BenchPainter } from './bench-painter.ts';
import type { PageDoor } from './page-door.ts';
import { type Drawing, Pictures } from './pictures.ts';
import { PointerHand } from './pointer-hand.ts';

export interface SurfaceErrands {
  readonly wallOf: (event: Event) => number;
  readonly pull: (timeS: number) => void;
  /** The bench may be touched; says why when it may not. */
  readonly mayHold: () => boolean;
  /** The hand takes hold of the housing, or lets go. */
  readonly held: (holds: boolean, wallMs: number) => void;
}

/** What is drawn on and taken hold of: the tape, the two pictures, what paints them, and the pointer's hand. */
export class BenchSurface {
  readonly paper: TapePaper;
  readonly painter: BenchPainter;
  readonly pictures: Pictures;
  readonly #page: PageDoor;
  readonly #errands: SurfaceErrands;
  #hand: PointerHand;

  /** `host`: the rendered page. */
  constructor(host: HTMLElement, page: PageDoor, drawing: Drawing, errands: SurfaceErrands) {
    this.#page = page;
    this.#errands = errands;
    const find = <E extends Element>(selector: string): E => {
      const found = host.querySelector<E>(selector);
      if (!found) throw new Error(`the page lacks ${selector}`);
      return found;
    };
    const layout = find<BenchLayout>('bench-layout');
    this.paper = new TapePaper(find('.paper-host'), {
      onMark: (marked, done) => page.change({ marked, looping: done ? page.state.looping : false }),
      onPull: (timeS) => errands.pull(timeS),
      onZoom: (spanS, endS) => {
        page.change({ spanS });
        errands.pull(endS);
      },
      onEventPick: ({ timeS }) => errands.pull(timeS),
    });
    this.pictures = new Pictures(find('.riding-canvas'), find('.room-canvas'), page.state.theme, drawing, () =>
      this.#drawnFlat(),
    );
    this.painter = new BenchPainter(
      {
        layout,
        paper: this.paper,
        rule: find('pen-rule'),
        figure: find('reading-figure'),
        ridingLabels: find('.riding-labels'),
        roomLabels: find('.room-labels'),
      },
      this.pictures,
    );
    this.#hand = this.#attachHand();
    const observer = new ResizeObserver(() => this.painter.resized());
    for (const area of ['riding', 'room', 'paper', 'rule'] as const) observer.observe(layout.area(area));
    window.addEventListener('scroll', () => this.painter.resized(), { passive: true });
  }

  /** A hand leads the housing. */
  get holds(): boolean {
    return this.#hand.holds;
  }

  #drawnFlat(): void {
    this.#hand.dispose();
    this.#hand = this.#attachHand();
    this.painter.resized();
    this.#page.change({ notice: 'The graphics went away: the bench is drawn flat and goes on.' });
  }

  #attachHand(): PointerHand {
    const page = this.#page;
    const hand = new PointerHand({
      session: () => page.session,
      room: () => this.pictures.room,
      riding: () => this.pictures.riding,
      wallOf: (event) => this.#errands.wallOf(event),
      runTimeOf: (wallMs) => page.clock.runTimeOf(wallMs),
      position: () => page.session.look(page.nowS).housing.position,
      roomPxPerM: () => this.painter.room?.pxPerM ?? 1000,
      mayHold: () => this.#errands.mayHold(),
      onHold: (holds, wallMs) => this.#errands.held(holds, wallMs),
    });
    hand.attach(this.pictures.roomCanvas, 'room');
    hand.attach(this.pictures.ridingCanvas, 'riding');
    return hand;
  }
}
