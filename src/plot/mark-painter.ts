import type { RunEvent } from '../contract/event.ts';
import { awaitsFirstTouch, BOUNCE_RANK, firstEventAtOrAfter, type MarkLook, markLook } from './event-marks.ts';
import { placeLabels, type RowLabel } from './label-row.ts';
import { type PaperFrame, xOf } from './paper-frame.ts';
import type { TextWidths } from './text-widths.ts';

/** A name on the paper, for the pointer. */
export interface NameBox {
  readonly event: RunEvent;
  readonly markPx: number;
  readonly leftPx: number;
  readonly rightPx: number;
}

interface NamedMark extends RowLabel {
  readonly event: RunEvent;
  readonly strong: boolean;
}

/** Marks of one form closer than this [px at size 1] are drawn as one. */
const TOGETHER_PX = 2.5;
/** Names that are given a place at most: more would not fit any paper. */
const MOST_NAMES = 80;
/** Marks begin this far above the ruling, names stand this far above it [px at size 1]. */
const ABOVE_PX = 9;
const NAME_PX = 19;
/** Long names of changed settings are cut [characters]. */
const LONGEST_NAME = 22;

interface Paths {
  readonly line: Path2D;
  readonly dotted: Path2D;
  readonly foot: Path2D;
  readonly stop: Path2D;
}

/** Events on the paper: full-height marks with their names on top. Tells where the names stand. */
export function drawMarks(ctx: CanvasRenderingContext2D, frame: PaperFrame, widths: TextWidths): NameBox[] {
  const { events } = frame.view;
  const { size } = frame.style;
  const named: NamedMark[] = [];
  const paths: Paths = { line: new Path2D(), dotted: new Path2D(), foot: new Path2D(), stop: new Path2D() };
  const lastPx = { line: -Infinity, dotted: -Infinity, foot: -Infinity, up: -Infinity, down: -Infinity };
  const until = Math.min(frame.toS, frame.view.endS);
  const start = firstEventAtOrAfter(events, frame.fromS);
  let first = awaitsFirstTouch(events, start);
  for (let i = start; i < events.length; i++) {
    const event = events[i]!;
    if (event.timeS > until) break;
    const look = markLook(event);
    if (look === undefined) continue;
    const rank = event.kind === 'touch' && !first ? BOUNCE_RANK : look.rank;
    if (event.kind === 'let go') first = true;
    if (event.kind === 'touch') first = false;
    const x = xOf(frame, event.timeS);
    // The stop at x = +gap is met by a mass that lags behind an upward push: the reading is negative there.
    const up = event.kind === 'stop hit' && -event.side * frame.pxPerMS2 > 0;
    const track = look.form === 'stop' ? (up ? 'up' : 'down') : look.form;
    if (x - lastPx[track] < TOGETHER_PX * size) continue;
    lastPx[track] = x;
    addMark(paths, frame, x, look, up);
    if (look.form !== 'stop' && named.length < MOST_NAMES)
      named.push(name(ctx, frame, widths, event, look.name, rank, x));
  }
  strokeMarks(ctx, frame, paths);
  return writeNames(ctx, frame, named);
}

function writeNames(ctx: CanvasRenderingContext2D, frame: PaperFrame, named: readonly NamedMark[]): NameBox[] {
  const { size } = frame.style;
  placeLabels(named, 5 * size, frame.widthPx - 4 * size, 7 * size);
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  const boxes: NameBox[] = [];
  for (const mark of named) {
    if (Number.isNaN(mark.leftPx)) continue;
    ctx.font = mark.strong ? frame.style.strong : frame.style.label;
    ctx.fillStyle = mark.strong ? frame.style.text : frame.style.soft;
    ctx.fillText(mark.text, mark.leftPx, frame.topPx - NAME_PX * size);
    boxes.push({ event: mark.event, markPx: mark.markPx, leftPx: mark.leftPx, rightPx: mark.leftPx + mark.widthPx });
  }
  return boxes;
}

function name(
  ctx: CanvasRenderingContext2D,
  frame: PaperFrame,
  widths: TextWidths,
  event: RunEvent,
  called: string,
  rank: number,
  markPx: number,
): NamedMark {
  const strong = rank === 0;
  const font = strong ? frame.style.strong : frame.style.label;
  const text = called.length > LONGEST_NAME ? `${called.slice(0, LONGEST_NAME - 1)}…` : called;
  return { event, strong, text, markPx, widthPx: widths.of(ctx, font, text), rank, leftPx: NaN };
}

function addMark(paths: Paths, frame: PaperFrame, x: number, look: MarkLook, up: boolean): void {
  const { size } = frame.style;
  const path = paths[look.form];
  if (look.form === 'stop') {
    // Across the stop line, or at the edge when the stop lies beyond the paper.
    const away = (frame.view.stopMS2 ?? Infinity) * Math.abs(frame.pxPerMS2);
    const y = Math.min(Math.max(frame.zeroYPx + (up ? -away : away), frame.topPx), frame.bottomPx);
    path.moveTo(x, y - 5 * size);
    path.lineTo(x, y + 5 * size);
    return;
  }
  path.moveTo(x, look.form === 'foot' ? frame.bottomPx - 9 * size : frame.topPx - ABOVE_PX * size);
  path.lineTo(x, frame.bottomPx);
}

function strokeMarks(ctx: CanvasRenderingContext2D, frame: PaperFrame, paths: Paths): void {
  const { size, soft, brass } = frame.style;
  ctx.lineCap = 'butt';
  ctx.setLineDash([]);
  ctx.strokeStyle = soft;
  ctx.lineWidth = 1.1 * size;
  ctx.stroke(paths.line);
  ctx.stroke(paths.foot);
  ctx.strokeStyle = brass;
  ctx.lineWidth = 1.6 * size;
  ctx.stroke(paths.stop);
  ctx.strokeStyle = soft;
  ctx.lineWidth = 0.9 * size;
  ctx.setLineDash([2 * size, 3 * size]);
  ctx.stroke(paths.dotted);
  ctx.setLineDash([]);
}
