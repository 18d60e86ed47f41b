import type { TapeView } from '../contract/tape.ts';
import { AutoRange } from './auto-range.ts';
import { DashedLine } from './dashed-line.ts';
import { type FastRun, fastRuns } from './fast-swings.ts';
import { fillSwept, strokeDashed, strokeInk } from './ink-strokes.ts';
import { NibTrail } from './nib-trail.ts';
import { findOvershoots, type Overshoot } from './overshoot.ts';
import { BEYOND_PX, type PaperFrame } from './paper-frame.ts';
import type { PaperLine, PaperView } from './paper-view.ts';
import { FURTHER } from './pen-style.ts';
import { Polyline, type Projection, project } from './polyline.ts';
import { endTraceAt, fillTrace, Trace, type TraceWindow, traceExtent } from './trace.ts';

/** Values written beside the paper's edge at most, for each line. */
const MOST_OVERSHOOTS = 24;
/** Excursions nearer than this are one [px at size 1]. */
const APART_PX = 30;
/** Swept areas let what lies below shine through [–]. */
const SWEPT_OPACITY = { mass: 0.66, other: 0.36 } as const;
/** Rows further apart than this have the nib's own path between them [device px]. */
const TRAIL_PX = 3;
/** Ink that was written later than the instant under the nib, while the paper is pulled back [–]. */
const AHEAD_OPACITY = 0.3;

const extent = new Float64Array(2);

/** One line of the paper, with the buffers that it keeps from frame to frame. */
export class LineLayer {
  trace = new Trace();
  readonly overshoots: Overshoot[] = [];
  overshootCount = 0;
  /** y of the line at the nib [px]; NaN: it is not there. */
  endYPx = NaN;
  /** ± range of a line with a scale of its own. */
  ownRange = 0;
  line: PaperLine;
  readonly #ahead = new Trace();
  readonly #trail = new NibTrail();
  #spare = new Trace();
  #tape: TapeView | undefined;
  readonly #stroke = new DashedLine();
  readonly #aheadStroke = new Polyline();
  readonly #runs: FastRun[] = [];
  readonly #range = new AutoRange();
  #pxPerUnit = Infinity;

  constructor(line: PaperLine) {
    this.line = line;
  }

  /** Of the pen's scale, or one of its own. */
  get onPenScale(): boolean {
    return this.line.kind !== 'velocity' && this.line.kind !== 'height';
  }

  /** Fetches the line from the tape: up to the nib, and what lies ahead of it when the paper is pulled back. */
  fetch(view: PaperView, window: TraceWindow): void {
    const channel = channelOf(view.tape, this.line.channel);
    this.trace.reset();
    this.#ahead.reset();
    if (channel < 0) return;
    const slow = window.columnsPerS / view.tape.rateHz > TRAIL_PX;
    this.#follow(view, slow);
    const onTrail = slow && !this.#trail.empty;
    const tolerance = onTrail ? Infinity : 0.5 / this.#pxPerUnit;
    fillTrace(this.trace, view.tape, channel, { ...window, toS: view.endS }, tolerance);
    const { endValue } = this.line;
    if (endValue !== undefined) endTraceAt(this.trace, view.endS, endValue);
    if (onTrail) {
      this.#trail.merge(this.trace, this.#spare);
      [this.trace, this.#spare] = [this.#spare, this.trace];
    }
    if (view.endS < view.nowS) fillTrace(this.#ahead, view.tape, channel, { ...window, fromS: view.endS }, tolerance);
    if (!this.onPenScale) this.#ownScale(view);
  }

  /** Notes where the nib is, while rows are so far apart that it matters. */
  #follow(view: PaperView, slow: boolean): void {
    if (view.tape !== this.#tape) this.#trail.clear(); // another run
    this.#tape = view.tape;
    const { endValue } = this.line;
    if (slow && endValue !== undefined && view.endS >= view.nowS) this.#trail.add(view.endS, endValue);
  }

  #ownScale(view: PaperView): void {
    const any = traceExtent(this.trace, -Infinity, view.endS, extent);
    this.ownRange = this.#range.update(any ? Math.max(Math.abs(extent[0]!), Math.abs(extent[1]!), 1e-3) : 1e-3);
  }

  paint(ctx: CanvasRenderingContext2D, frame: PaperFrame): void {
    const { trace } = this;
    const on = this.projection(frame);
    this.#pxPerUnit = Math.abs(on.pxPerUnit);
    this.#markOvershoots(on);
    const last = trace.count - 1;
    this.endYPx = last >= 0 ? on.zeroYPx - trace.value[last]! * on.pxPerUnit : NaN;

    const { style } = frame;
    const { kind } = this.line;
    const line = this.#stroke.begin(trace.count);
    const runs = fastRuns(trace, on.pxPerS, on.pxPerUnit, this.#runs);
    let at = 0;
    for (let i = 0; i < runs; i++) {
      const run = this.#runs[i]!;
      project(trace, at, run.from + 1, on, line);
      const dash = this.#dash(frame) ?? [];
      if (kind === 'mass') fillSwept(ctx, trace, run, on, style.ink, SWEPT_OPACITY.mass, dash);
      else fillSwept(ctx, trace, run, on, style.pencil, SWEPT_OPACITY.other, dash);
      at = run.to - 1;
    }
    project(trace, at, trace.count, on, line);
    this.#strokeOn(ctx, frame, line, on);

    if (this.#ahead.count === 0) return;
    this.#aheadStroke.reset(this.#ahead.count);
    project(this.#ahead, 0, this.#ahead.count, on, this.#aheadStroke);
    ctx.globalAlpha = AHEAD_OPACITY;
    this.#strokeLine(ctx, frame, this.#aheadStroke, 0);
    ctx.globalAlpha = 1;
  }

  projection(frame: PaperFrame): Projection {
    return {
      fromS: frame.fromS,
      pxPerS: frame.pxPerS,
      zeroYPx: frame.zeroYPx,
      pxPerUnit: this.onPenScale ? frame.pxPerMS2 : (frame.bottomPx - frame.topPx) / 2 / this.ownRange,
      topPx: frame.topPx - BEYOND_PX,
      bottomPx: frame.bottomPx + BEYOND_PX,
    };
  }

  #markOvershoots(on: Projection): void {
    const limit = (on.bottomPx - on.topPx) / 2 / this.#pxPerUnit;
    const apartS = APART_PX / on.pxPerS;
    this.overshootCount = findOvershoots(
      this.trace,
      limit,
      on.pxPerUnit > 0 ? 1 : -1,
      apartS,
      this.overshoots,
      MOST_OVERSHOOTS,
    );
  }

  #strokeOn(ctx: CanvasRenderingContext2D, frame: PaperFrame, line: Polyline, on: Projection): void {
    const dash = this.#dash(frame);
    const phase =
      dash === undefined
        ? 0
        : this.#stroke.phase(
            on,
            dash.reduce((sum, each) => sum + each, 0),
          );
    this.#strokeLine(ctx, frame, line, phase);
  }

  #strokeLine(ctx: CanvasRenderingContext2D, frame: PaperFrame, line: Polyline, phase: number): void {
    const { style } = frame;
    const dash = this.#dash(frame);
    if (dash === undefined) strokeInk(ctx, line, style.inkWidths, style.ink);
    else if (this.line.kind === 'felt') strokeDashed(ctx, line, style.pencilWidth, style.pencil, dash, phase);
    else
      strokeDashed(
        ctx,
        line,
        FURTHER[this.line.kind as keyof typeof FURTHER].widthPx * style.size,
        style.text,
        dash,
        phase,
      );
  }

  #dash(frame: PaperFrame): readonly number[] | undefined {
    if (this.line.kind === 'mass') return undefined;
    if (this.line.kind === 'felt') return frame.style.pencilDash;
    return FURTHER[this.line.kind].dash;
  }
}

/** Index of a tape's channel; −1: not on this tape. */
export function channelOf(tape: TapeView, name: string): number {
  const { channels } = tape;
  for (let i = 0; i < channels.length; i++) if (channels[i]!.name === name) return i;
  return -1;
}
