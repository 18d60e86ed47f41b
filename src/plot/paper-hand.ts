/**
 * Hands on the paper: pointer, wheel, two fingers and keys become pulls, zooms, marks and cursor moves.
 * Whatever a pointer can do, keys can do.
 */
import type { RunEvent } from '../contract/event.ts';
import type { PaperView, Span } from './paper-view.ts';
import { type PaperWindow, pulledTo, type WindowLimits, zoomed } from './paper-window.ts';

/** What the hand needs to know of the paper as it was last drawn. */
export interface HeldPaper {
  readonly view: PaperView;
  readonly pxPerS: number;
  readonly fromS: number;
  readonly widthPx: number;
}

export interface HandActions {
  paper(): HeldPaper | undefined;
  /** An instant nearby at which something happened, else the instant itself. */
  snap(timeS: number): number;
  nameAt(xPx: number, yPx: number): RunEvent | undefined;
  nextEvent(timeS: number, direction: 1 | -1): RunEvent | undefined;
  cursorTime(): number | undefined;
  cursor(timeS: number | undefined, follow: 'paper' | 'pointer'): void;
  pull(timeS: number): void;
  zoom(window: PaperWindow): void;
  mark(span: Span | undefined, done: boolean): void;
  pick(event: RunEvent): void;
}

/** Movement that makes a press a drag [px]. */
const DRAG_PX = 4;
/** Arrow keys move the cursor this far, Page keys ten times as far [px]. */
const KEY_PX = 4;
const PAGE = 10;
/** One key press or button press zooms by this factor; a wheel by e^(pixels/this). */
export const ZOOM_STEP = 1.25;
const WHEEL_PX = 420;
/** Pixels to a wheel's line, where a browser counts lines (common practice). */
const WHEEL_LINE_PX = 16;

type Doing =
  | {
      readonly kind: 'press' | 'pull' | 'mark';
      readonly startX: number;
      readonly startS: number;
      readonly endS: number;
      readonly marks: boolean;
    }
  | { readonly kind: 'pinch'; readonly apart: number; readonly view: PaperView; readonly aboutS: number };

export class PaperHand {
  readonly #target: HTMLElement;
  readonly #limits: WindowLimits;
  readonly #act: HandActions;
  readonly #pointers = new Map<number, number>();
  #doing: Doing | undefined;
  /** Where a mark by keys began [s]. */
  #anchorS: number | undefined;
  readonly #abort = new AbortController();

  constructor(target: HTMLElement, limits: WindowLimits, actions: HandActions) {
    this.#target = target;
    this.#limits = limits;
    this.#act = actions;
    const { signal } = this.#abort;
    target.addEventListener('pointerdown', this.#down, { signal });
    target.addEventListener('pointermove', this.#move, { signal });
    target.addEventListener('pointerup', this.#up, { signal });
    target.addEventListener('pointercancel', this.#cancel, { signal });
    target.addEventListener('pointerleave', this.#leave, { signal });
    target.addEventListener('wheel', this.#wheel, { signal, passive: false });
    target.addEventListener('keydown', this.#key, { signal });
  }

  /** A pointer is marking at this moment. */
  get marking(): boolean {
    return this.#doing?.kind === 'mark';
  }

  dispose(): void {
    this.#abort.abort();
  }

  /** Zooms about the middle of what is seen. */
  zoomBy(factor: number): void {
    const paper = this.#act.paper();
    if (paper) this.#act.zoom(zoomed(paper.view, factor, paper.view.endS - paper.view.spanS / 2, this.#limits));
  }

  #x(event: MouseEvent): number {
    return event.clientX - this.#target.getBoundingClientRect().left;
  }

  #time(paper: HeldPaper, x: number): number {
    return paper.fromS + x / paper.pxPerS;
  }

  readonly #down = (event: PointerEvent): void => {
    const paper = this.#act.paper();
    if (!paper || event.button !== 0) return;
    const x = this.#x(event);
    this.#pointers.set(event.pointerId, x);
    this.#target.setPointerCapture(event.pointerId);
    if (this.#pointers.size === 2) {
      const [a = 0, b = 0] = [...this.#pointers.values()];
      this.#doing = {
        kind: 'pinch',
        apart: Math.max(1, Math.abs(a - b)),
        view: paper.view,
        aboutS: this.#time(paper, (a + b) / 2),
      };
      return;
    }
    const marks = event.shiftKey || paper.view.drag === 'mark';
    this.#doing = { kind: 'press', startX: x, startS: this.#time(paper, x), endS: paper.view.endS, marks };
  };

  readonly #move = (event: PointerEvent): void => {
    const paper = this.#act.paper();
    if (!paper) return;
    const x = this.#x(event);
    if (this.#pointers.has(event.pointerId)) this.#pointers.set(event.pointerId, x);
    const doing = this.#doing;
    if (doing === undefined) {
      if (event.pointerType !== 'touch') this.#act.cursor(this.#time(paper, x), 'pointer');
      return;
    }
    if (doing.kind === 'pinch') {
      const [a = 0, b = 0] = [...this.#pointers.values()];
      this.#act.zoom(zoomed(doing.view, doing.apart / Math.max(1, Math.abs(a - b)), doing.aboutS, this.#limits));
      return;
    }
    if (doing.kind === 'press' && Math.abs(x - doing.startX) < DRAG_PX) return;
    const kind = doing.marks ? 'mark' : 'pull';
    this.#doing = { ...doing, kind };
    if (kind === 'pull') this.#act.pull(pulledTo(paper.view, doing.endS - (x - doing.startX) / paper.pxPerS));
    else this.#act.mark(this.#span(doing.startS, this.#time(paper, x)), false);
  };

  readonly #up = (event: PointerEvent): void => {
    const paper = this.#act.paper();
    const doing = this.#doing;
    this.#release(event);
    if (!paper || doing === undefined || doing.kind === 'pinch' || doing.kind === 'pull') return;
    const x = this.#x(event);
    if (doing.kind === 'mark') {
      this.#act.mark(this.#span(doing.startS, this.#time(paper, x)), true);
      return;
    }
    const named = this.#act.nameAt(x, event.clientY - this.#target.getBoundingClientRect().top);
    if (named !== undefined) this.#act.pick(named);
    else if (doing.marks) this.#act.mark(undefined, true);
    this.#act.cursor(
      named?.timeS ?? this.#time(paper, x),
      event.pointerType === 'touch' || named ? 'paper' : 'pointer',
    );
  };

  readonly #cancel = (event: PointerEvent): void => {
    this.#release(event);
  };

  #release(event: PointerEvent): void {
    this.#pointers.delete(event.pointerId);
    this.#doing = undefined;
  }

  readonly #leave = (event: PointerEvent): void => {
    if (event.pointerType !== 'touch' && this.#doing === undefined && document.activeElement !== this.#target)
      this.#act.cursor(undefined, 'paper');
  };

  #span(oneS: number, otherS: number): Span {
    const a = this.#act.snap(oneS);
    const b = this.#act.snap(otherS);
    return { fromS: Math.min(a, b), toS: Math.max(a, b) };
  }

  readonly #wheel = (event: WheelEvent): void => {
    const paper = this.#act.paper();
    if (!paper) return;
    event.preventDefault();
    const scale = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? WHEEL_LINE_PX : 1;
    const across = (event.shiftKey ? event.deltaY : event.deltaX) * scale;
    if (Math.abs(across) > Math.abs(event.shiftKey ? 0 : event.deltaY * scale)) {
      this.#act.pull(pulledTo(paper.view, paper.view.endS + across / paper.pxPerS));
      return;
    }
    const factor = Math.exp((event.deltaY * scale) / WHEEL_PX);
    this.#act.zoom(zoomed(paper.view, factor, this.#time(paper, this.#x(event)), this.#limits));
  };

  readonly #key = (event: KeyboardEvent): void => {
    const paper = this.#act.paper();
    if (!paper || event.altKey || event.ctrlKey || event.metaKey) return;
    const at = this.#act.cursorTime() ?? paper.view.endS;
    switch (event.key) {
      case 'ArrowLeft':
      case 'ArrowRight':
        this.#step(paper, at, event.key === 'ArrowLeft' ? -KEY_PX : KEY_PX, event.shiftKey);
        break;
      case 'PageDown':
      case 'PageUp':
        this.#step(paper, at, event.key === 'PageDown' ? -KEY_PX * PAGE : KEY_PX * PAGE, event.shiftKey);
        break;
      case 'Home':
        this.#moveTo(
          paper,
          at,
          Math.max(paper.fromS, paper.view.tape.firstRow / paper.view.tape.rateHz),
          event.shiftKey,
        );
        break;
      case 'End':
        this.#moveTo(paper, at, paper.view.endS, event.shiftKey);
        break;
      case 'ArrowUp':
      case 'ArrowDown': {
        const next = this.#act.nextEvent(at, event.key === 'ArrowUp' ? 1 : -1);
        if (next === undefined) break;
        this.#moveTo(paper, at, next.timeS, event.shiftKey);
        this.#act.pick(next);
        break;
      }
      case 'Enter':
        this.#act.pull(pulledTo(paper.view, at));
        break;
      case '+':
      case '=':
        this.#act.zoom(zoomed(paper.view, 1 / ZOOM_STEP, at, this.#limits));
        break;
      case '-':
      case '−':
        this.#act.zoom(zoomed(paper.view, ZOOM_STEP, at, this.#limits));
        break;
      case 'Escape':
        if (paper.view.marked === undefined && this.#act.cursorTime() === undefined) return; // not ours: leave it to the page
        if (paper.view.marked === undefined) this.#act.cursor(undefined, 'paper');
        else this.#act.mark(undefined, true);
        this.#anchorS = undefined;
        break;
      default:
        return;
    }
    event.preventDefault();
    event.stopPropagation();
  };

  #step(paper: HeldPaper, atS: number, px: number, marks: boolean): void {
    this.#moveTo(paper, atS, atS + px / paper.pxPerS, marks);
  }

  /** Moves the cursor, with the mark's end when marking; past the edge it takes the paper along. */
  #moveTo(paper: HeldPaper, fromS: number, wantedS: number, marks: boolean): void {
    const { view } = paper;
    const toS = pulledTo(view, wantedS);
    if (marks) {
      this.#anchorS ??= fromS;
      this.#act.mark({ fromS: Math.min(this.#anchorS, toS), toS: Math.max(this.#anchorS, toS) }, true);
    } else {
      this.#anchorS = undefined;
    }
    if (toS > view.endS) this.#act.pull(toS);
    else if (toS < paper.fromS) this.#act.pull(pulledTo(view, toS + view.spanS * 0.98)); // just inside the left edge
    this.#act.cursor(toS, 'paper');
  }
}
