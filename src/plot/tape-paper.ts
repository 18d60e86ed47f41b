import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import './tape-paper.css';
import type { PaperScale, Theme } from '../contract/view.ts';
import { AutoRange } from './auto-range.ts';
import { isPenKind, readCursor, spokenReading } from './cursor-reading.ts';
import { describePaper } from './describe-paper.ts';
import { eventNear, nextEvent } from './event-marks.ts';
import { LineLayer } from './line-layer.ts';
import { drawMarks, type NameBox } from './mark-painter.ts';
import { neededMagnitude } from './needed-magnitude.ts';
import { BEYOND_PX, type PaperFrame, type PaperSize, paperFrame, timeWindow, xOf } from './paper-frame.ts';
import { PaperHand, ZOOM_STEP } from './paper-hand.ts';
import { makePaperPlot } from './paper-plot.ts';
import { PaperReadout } from './paper-readout.ts';
import type { CursorReading, PaperOptions, PaperView, ValueMark } from './paper-view.ts';
import { drawSketch, drawWetDot, writeEndNames, writeNotes, writeOvershoots, writeOwnScales } from './paper-writing.ts';
import { type PenStyle, penStyle } from './pen-style.ts';
import { unitSize } from './reading-format.ts';
import { drawGrain, drawRuling, makeGrain, valueMarks } from './ruled-paper.ts';
import { drawSamples } from './sample-dots.ts';
import { TextWidths } from './text-widths.ts';

/** Times across the paper that a zoom may ask for unless the options say otherwise [s]. */
const SHORTEST_SPAN_S = 1e-4;
const LONGEST_SPAN_S = 1200;
/** Marks snap to events this near [px]. */
const SNAP_PX = 5;

/**
 * The paper tape: draws what it is given, keeps no run. uPlot holds scales, time axis, cursor line and marked
 * span; lines are drawn on its canvas by column extremes, never smoothed.
 *
 * The newest ink stands at `nibXPx`; `scale()` tells where readings stand, as drawn by the last `draw`.
 */
export class TapePaper {
  readonly #host: HTMLElement;
  readonly #options: PaperOptions;
  readonly #root: HTMLElement;
  readonly #handle: HTMLElement;
  readonly #hand: PaperHand;
  readonly #readout: PaperReadout;
  readonly #observer: ResizeObserver;
  readonly #widths = new TextWidths();
  readonly #range = new AutoRange();
  readonly #abort = new AbortController();
  #plot: uPlot | undefined;
  #style: PenStyle | undefined;
  #styleKey = '';
  #grain: CanvasPattern | undefined;
  #layers: LineLayer[] = [];
  #frame: PaperFrame | undefined;
  #rangeReason = '';
  #names: readonly NameBox[] = [];
  #widthPx = 0;
  #heightPx = 0;
  #cursor: { readonly timeS: number; readonly xPx: number | undefined } | undefined;

  constructor(host: HTMLElement, options: PaperOptions = {}) {
    this.#host = host;
    this.#options = options;
    this.#root = document.createElement('div');
    this.#root.className = 'tape-paper';
    this.#root.setAttribute('role', 'figure');
    this.#root.setAttribute('aria-label', 'Tape');
    this.#handle = document.createElement('div');
    this.#handle.className = 'tape-paper-hand';
    this.#handle.tabIndex = 0;
    this.#handle.setAttribute('role', 'slider');
    this.#handle.setAttribute('aria-label', 'Cursor on the tape');
    this.#handle.setAttribute('aria-valuenow', '0');
    this.#readout = new PaperReadout();
    this.#root.append(this.#readout.element, this.#handle);
    host.append(this.#root);

    const limits = {
      shortestSpanS: options.shortestSpanS ?? SHORTEST_SPAN_S,
      longestSpanS: options.longestSpanS ?? LONGEST_SPAN_S,
    };
    this.#hand = new PaperHand(this.#handle, limits, {
      paper: () => this.#frame,
      snap: (timeS) => this.#snap(timeS),
      nameAt: (x, y) => this.#nameAt(x, y),
      nextEvent: (timeS, direction) => (this.#frame ? nextEvent(this.#frame.view.events, timeS, direction) : undefined),
      cursorTime: () => this.#cursor?.timeS,
      cursor: (timeS, follow) => this.#putCursor(timeS, follow),
      pull: (timeS) => options.onPull?.(timeS),
      zoom: (window) => options.onZoom?.(window.spanS, window.endS),
      mark: (span, done) => options.onMark?.(span, done),
      pick: (event) => options.onEventPick?.(event),
    });

    this.#measure();
    this.#observer = new ResizeObserver(() => {
      this.#measure();
      if (this.#frame) this.draw(this.#frame.view);
    });
    this.#observer.observe(this.#root);
    document.fonts.addEventListener(
      'loadingdone',
      () => {
        this.#widths.forget();
        if (this.#frame) this.draw(this.#frame.view);
      },
      { signal: this.#abort.signal },
    );
  }

  /** Draws a view; the scale that it chose is then that of `scale()`. */
  draw(view: PaperView): void {
    if (this.#widthPx < 8 || this.#heightPx < 8) return;
    const style = this.#styleFor(view);
    if (this.#root.dataset.drag !== view.drag) this.#root.dataset.drag = view.drag;
    const size: PaperSize = {
      widthPx: this.#widthPx,
      heightPx: this.#heightPx,
      nibInsetPx: this.#options.nibInsetPx,
      pixelRatio: uPlot.pxRatio,
    };
    const { fromS, toS, pxPerS } = timeWindow(view, size, style);
    const columnsPerS = pxPerS * size.pixelRatio;
    this.#matchLayers(view);
    for (const layer of this.#layers) layer.fetch(view, { fromS, toS, columnsPerS });

    const frame = paperFrame(view, size, style, this.#chooseRange(view, this.#widthPx * size.pixelRatio));
    this.#frame = frame;
    this.#plot ??= this.#makePlot(style, view.theme);
    const plot = this.#plot;
    plot.batch(() => {
      plot.setScale('x', { min: fromS, max: toS });
      plot.setScale('y', { min: -frame.range, max: frame.range });
    });
    this.#showMarked(plot, frame);
    this.#showCursor(plot, frame);
  }

  /** Where readings stand on the paper as last drawn [px of the host's box]. */
  scale(): PaperScale {
    const frame = this.#frame;
    if (!frame) return { zeroYPx: this.#heightPx / 2, pxPerMS2: 1, topYPx: 0, bottomYPx: this.#heightPx };
    return {
      zeroYPx: frame.zeroYPx,
      pxPerMS2: frame.pxPerMS2,
      topYPx: frame.topPx - BEYOND_PX,
      bottomYPx: frame.bottomPx + BEYOND_PX,
    };
  }

  /** x of the newest ink [px of the host's box]. */
  get nibXPx(): number {
    return this.#frame?.nibXPx ?? this.#widthPx;
  }

  /** ± range of the pen's scale as last drawn [m/s²]. */
  get rangeMS2(): number {
    return this.#frame ? this.#frame.range * unitSize(this.#frame.view.unit) : 0;
  }

  /** Figures and heights for a rule beside the paper, at the paper's own main lines; the highest first. */
  valueMarks(): readonly ValueMark[] {
    return this.#frame ? valueMarks(this.#frame) : [];
  }

  /** The paper in words. */
  describe(): string {
    return this.#frame ? describePaper(this.#frame, this.#layers) : '';
  }

  /** What stands under the cursor; undefined: no cursor. */
  cursorReading(): CursorReading | undefined {
    if (!this.#frame || !this.#cursor) return undefined;
    return readCursor(this.#frame.view, this.#cursor.timeS, this.#frame.pxPerS);
  }

  /** For buttons: asks `onZoom` for one step closer or wider. */
  zoomIn(): void {
    this.#hand.zoomBy(1 / ZOOM_STEP);
  }

  zoomOut(): void {
    this.#hand.zoomBy(ZOOM_STEP);
  }

  dispose(): void {
    this.#abort.abort();
    this.#observer.disconnect();
    this.#hand.dispose();
    this.#plot?.destroy();
    this.#root.remove();
  }

  #measure(): void {
    this.#widthPx = this.#root.clientWidth;
    this.#heightPx = this.#root.clientHeight;
    if (this.#plot && this.#widthPx > 0 && this.#heightPx > 0)
      this.#plot.setSize({ width: this.#widthPx, height: this.#heightPx });
  }

  #styleFor(view: PaperView): PenStyle {
    const key = `${view.theme} ${view.stage}`;
    if (this.#style && key === this.#styleKey) return this.#style;
    const computed = getComputedStyle(this.#host);
    const family = (name: string, otherwise: string): string => computed.getPropertyValue(name).trim() || otherwise;
    this.#style = penStyle(view.theme, view.stage, {
      label: family('--font-label', 'sans-serif'),
      book: family('--font-book', 'serif'),
    });
    this.#styleKey = key;
    this.#root.dataset.theme = view.theme;
    this.#root.classList.toggle('is-stage', view.stage);
    this.#plot?.destroy(); // its axis takes type and sizes once
    this.#plot = undefined;
    return this.#style;
  }

  #makePlot(style: PenStyle, theme: Theme): uPlot {
    const plot = makePaperPlot(this.#root, this.#widthPx, this.#heightPx, style, {
      frame: () => this.#frame,
      paintPaper: (ctx, frame) => this.#paintPaper(ctx, frame),
      paintInk: (ctx, frame) => this.#paintInk(ctx, frame),
    });
    this.#grain = plot.ctx.createPattern(makeGrain(style.grain, theme === 'evening'), 'repeat') ?? undefined;
    return plot;
  }

  #paintPaper(ctx: CanvasRenderingContext2D, frame: PaperFrame): void {
    if (this.#grain) drawGrain(ctx, frame, this.#grain);
    drawRuling(ctx, frame);
  }

  #paintInk(ctx: CanvasRenderingContext2D, frame: PaperFrame): void {
    const { view } = frame;
    if (view.sketch) drawSketch(ctx, frame, view.sketch);
    this.#names = drawMarks(ctx, frame, this.#widths);
    for (const layer of this.#layers) layer.paint(ctx, frame); // the mass's ink is the last of them
    if (view.samples && view.reported !== 'none') drawSamples(ctx, frame, view.samples, view.reported);
    for (const layer of this.#layers) if (layer.line.kind === 'mass') drawWetDot(ctx, frame, layer.endYPx);
    writeOwnScales(ctx, frame, this.#layers);
    writeOvershoots(ctx, frame, this.#layers, this.#widths);
    writeEndNames(ctx, frame, this.#layers);
    writeNotes(ctx, frame);
  }

  /** One layer for each line, the mass's ink on top; a layer keeps its buffers as long as its line stays. */
  #matchLayers(view: PaperView): void {
    const before = this.#layers;
    const order = [...view.lines].sort((a, b) => Number(a.kind === 'mass') - Number(b.kind === 'mass'));
    this.#layers = order.map((line) => {
      const same = before.find((each) => each.line.kind === line.kind && each.line.channel === line.channel);
      const layer = same ?? new LineLayer(line);
      layer.line = line;
      return layer;
    });
  }

  #chooseRange(view: PaperView, columns: number): number {
    const unit = unitSize(view.unit);
    if (view.range !== 'automatic') return view.range / unit;
    // A mark, other stops, another unit: a new reason for the scale, which then is what it would be from the start.
    const reason = `${view.unit} ${view.stopMS2} ${view.marked?.fromS} ${view.marked?.toS}`;
    if (reason !== this.#rangeReason) {
      if (this.#hand.marking) return this.#range.current; // the paper does not move under the pointer
      this.#range.reset();
    }
    this.#rangeReason = reason;
    const { magnitudeMS2, mayGrowToMS2 } = neededMagnitude(view, this.#layers, columns);
    return this.#range.update(magnitudeMS2 / unit, mayGrowToMS2 / unit);
  }

  #showMarked(plot: uPlot, frame: PaperFrame): void {
    const { marked } = frame.view;
    const left = marked ? xOf(frame, marked.fromS) : 0;
    const width = marked ? Math.max(1, xOf(frame, marked.toS) - left) : 0;
    const shown = plot.select;
    if (shown.left === left && shown.width === width) return;
    plot.setSelect({ left, width, top: 0, height: frame.bottomPx - frame.topPx }, false);
  }

  #putCursor(timeS: number | undefined, follow: 'paper' | 'pointer'): void {
    const frame = this.#frame;
    if (!frame || !this.#plot) return;
    this.#cursor =
      timeS === undefined ? undefined : { timeS, xPx: follow === 'pointer' ? xOf(frame, timeS) : undefined };
    this.#showCursor(this.#plot, frame);
    const reading = this.cursorReading();
    if (follow === 'paper') this.#speak(reading, frame);
    this.#options.onCursor?.(reading);
  }

  /** The cursor keeps to its instant when keys put it there, to the pointer when a pointer did. */
  #showCursor(plot: uPlot, frame: PaperFrame): void {
    let cursor = this.#cursor;
    if (cursor?.xPx !== undefined) {
      cursor = { timeS: frame.fromS + cursor.xPx / frame.pxPerS, xPx: cursor.xPx };
      this.#cursor = cursor;
    }
    const x = cursor ? xOf(frame, cursor.timeS) : -10;
    const reading = x < 0 || x > frame.widthPx ? undefined : this.cursorReading();
    const left = reading ? xOf(frame, reading.timeS) : -10;
    if (plot.cursor.left !== left) plot.setCursor({ left, top: 0 }, false);
    this.#readout.show(reading, frame, (kind) => this.#scaleOf(kind));
  }

  /** ± range of the scale that a line stands on [SI]. */
  #scaleOf(kind: Parameters<typeof isPenKind>[0]): number {
    if (isPenKind(kind)) return this.rangeMS2;
    return this.#layers.find((layer) => layer.line.kind === kind)?.ownRange ?? 1;
  }

  #speak(reading: CursorReading | undefined, frame: PaperFrame): void {
    const handle = this.#handle;
    const { view } = frame;
    handle.setAttribute('aria-valuemin', (view.tape.firstRow / view.tape.rateHz).toFixed(4));
    handle.setAttribute('aria-valuemax', view.nowS.toFixed(4));
    handle.setAttribute('aria-valuenow', (reading?.timeS ?? view.endS).toFixed(4));
    handle.setAttribute(
      'aria-valuetext',
      reading ? spokenReading(reading, view, (kind) => this.#scaleOf(kind)) : 'no cursor',
    );
  }

  #snap(timeS: number): number {
    const frame = this.#frame;
    if (!frame) return timeS;
    return eventNear(frame.view.events, timeS, SNAP_PX / frame.pxPerS)?.timeS ?? timeS;
  }

  #nameAt(xPx: number, yPx: number): NameBox['event'] | undefined {
    if (!this.#frame || yPx > this.#frame.topPx) return undefined;
    return this.#names.find((box) => xPx >= box.leftPx - 4 && xPx <= box.rightPx + 4)?.event;
  }
}
