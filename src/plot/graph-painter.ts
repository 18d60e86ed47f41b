/** A graph in the tape's own pen style: ruling, bands, lines, points, markers, names at the lines' ends. */
import { type GraphBox, graphPath } from './graph-path.ts';
import { type AxisScale, type Ruling, shareOf } from './graph-scale.ts';
import type { GraphBand, GraphLine, GraphLook, GraphPoints, GraphView } from './graph-view.ts';
import { haloText } from './halo-text.ts';
import { strokeDashed, strokeInk } from './ink-strokes.ts';
import type { PenStyle } from './pen-style.ts';
import { Polyline } from './polyline.ts';
import { crisp } from './ruled-paper.ts';
import type { TextWidths } from './text-widths.ts';

export interface GraphFrame {
  readonly view: GraphView;
  readonly style: PenStyle;
  readonly x: AxisScale;
  readonly y: AxisScale;
  readonly xRuling: Ruling;
  readonly yRuling: Ruling;
  readonly box: GraphBox;
  readonly pixelRatio: number;
}

/** Lines are told apart by these dashes, in their order; pencil is never solid [px at size 1]. */
const DASHES: readonly (readonly number[])[] = [[], [10, 4], [2, 3], [10, 3, 2, 3], [16, 5]];

export function graphX(frame: GraphFrame, value: number): number {
  return frame.box.leftPx + shareOf(frame.x, value) * frame.box.widthPx;
}

function graphY(frame: GraphFrame, value: number): number {
  return frame.box.topPx + (1 - shareOf(frame.y, value)) * frame.box.heightPx;
}

export function paintGraphPaper(ctx: CanvasRenderingContext2D, frame: GraphFrame): void {
  const { style, box, view } = frame;
  ctx.setLineDash([]);
  ctx.lineWidth = 1;
  for (const [colour, lines] of [
    [style.gridFine, 'fine'],
    [style.gridMain, 'main'],
  ] as const) {
    ctx.strokeStyle = colour;
    ctx.beginPath();
    for (const value of frame.xRuling[lines]) uprightLine(ctx, frame, graphX(frame, value));
    for (const value of frame.yRuling[lines]) levelLine(ctx, frame, graphY(frame, value));
    ctx.stroke();
  }
  for (const band of view.bands) paintBand(ctx, frame, band);
  ctx.lineWidth = 1;
  if (frame.y.law === 'linear' && frame.y.from < 0 && frame.y.to > 0) {
    ctx.strokeStyle = style.zero;
    ctx.beginPath();
    levelLine(ctx, frame, graphY(frame, 0));
    ctx.stroke();
  }
  ctx.strokeStyle = style.soft;
  ctx.beginPath();
  ctx.rect(
    crisp(box.leftPx, frame.pixelRatio),
    crisp(box.topPx, frame.pixelRatio),
    Math.round(box.widthPx),
    Math.round(box.heightPx),
  );
  ctx.stroke();
}

function uprightLine(ctx: CanvasRenderingContext2D, frame: GraphFrame, px: number): void {
  const x = crisp(px, frame.pixelRatio);
  ctx.moveTo(x, frame.box.topPx);
  ctx.lineTo(x, frame.box.topPx + frame.box.heightPx);
}

function levelLine(ctx: CanvasRenderingContext2D, frame: GraphFrame, px: number): void {
  const y = crisp(px, frame.pixelRatio);
  ctx.moveTo(frame.box.leftPx, y);
  ctx.lineTo(frame.box.leftPx + frame.box.widthPx, y);
}

/** A tint between two brass lines, with its name inside its beginning. */
function paintBand(ctx: CanvasRenderingContext2D, frame: GraphFrame, band: GraphBand): void {
  const { box, style } = frame;
  const across = band.axis === 'x';
  const a = inside(across ? graphX(frame, band.from) : graphY(frame, band.to), across, box);
  const b = inside(across ? graphX(frame, band.to) : graphY(frame, band.from), across, box);
  ctx.fillStyle = style.brass;
  ctx.globalAlpha = 0.1;
  if (across) ctx.fillRect(a, box.topPx, b - a, box.heightPx);
  else ctx.fillRect(box.leftPx, a, box.widthPx, b - a);
  ctx.globalAlpha = 1;
  ctx.strokeStyle = style.brass;
  ctx.lineWidth = 1.1 * style.size;
  ctx.beginPath();
  for (const px of [a, b])
    if (across) uprightLine(ctx, frame, px);
    else levelLine(ctx, frame, px);
  ctx.stroke();
  ctx.font = style.label;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'top';
  haloText(
    ctx,
    style,
    band.name,
    (across ? a : box.leftPx) + 5 * style.size,
    (across ? box.topPx : a) + 4 * style.size,
    style.brass,
  );
}

function inside(px: number, across: boolean, box: GraphBox): number {
  const from = across ? box.leftPx : box.topPx;
  return Math.min(Math.max(px, from), from + (across ? box.widthPx : box.heightPx));
}

interface EndName {
  readonly text: string;
  readonly colour: string;
  readonly rightPx: number;
  readonly y: number;
}

/** Lines, points, markers, names. `paths` are kept by the caller from drawing to drawing. */
export function paintGraphInk(
  ctx: CanvasRenderingContext2D,
  frame: GraphFrame,
  paths: Polyline[],
  widths: TextWidths,
): void {
  const { view, box, style } = frame;
  ctx.save();
  ctx.beginPath();
  ctx.rect(box.leftPx, box.topPx, box.widthPx, box.heightPx);
  ctx.clip();
  const names: EndName[] = [];
  view.lines.forEach((line, i) => {
    const path = paths[i] ?? new Polyline();
    paths[i] = path;
    graphPath(line, frame.x, frame.y, box, path);
    const dash = DASHES[(i === 0 && line.look === 'pencil' ? 1 : i) % DASHES.length]!.map((each) => each * style.size);
    strokeLook(ctx, style, path, line.look, dash);
    const end = endOf(path, box);
    if (end) names.push({ text: line.name, colour: lookColour(style, line.look), ...end });
  });
  for (const points of view.points) paintPoints(ctx, frame, points);
  ctx.restore();
  paintMarkers(ctx, frame);
  writeEndNames(ctx, frame, names, widths);
}

function strokeLook(
  ctx: CanvasRenderingContext2D,
  style: PenStyle,
  path: Polyline,
  look: GraphLook,
  dash: readonly number[],
): void {
  if (look === 'ink' && dash.length === 0) strokeInk(ctx, path, style.inkWidths, style.ink);
  else
    strokeDashed(ctx, path, look === 'ink' ? style.inkWidths[1]! : style.pencilWidth, lookColour(style, look), dash, 0);
}

function lookColour(style: PenStyle, look: GraphLook): string {
  return look === 'plain' ? style.text : style[look];
}

/** The last point of a path within the box. */
function endOf(path: Polyline, box: GraphBox): { rightPx: number; y: number } | undefined {
  for (let i = path.count - 1; i >= 0; i--) {
    const x = path.x[i]!;
    const y = path.y[i]!;
    if (x > box.leftPx && x <= box.leftPx + box.widthPx + 1 && y >= box.topPx && y <= box.topPx + box.heightPx)
      return { rightPx: x, y };
  }
  return undefined;
}

/** Above the lines' ends, pushed apart where they would overlap: downward, and up again from the bottom edge. */
function writeEndNames(ctx: CanvasRenderingContext2D, frame: GraphFrame, names: EndName[], widths: TextWidths): void {
  const { style, box } = frame;
  const apart = 16 * style.size;
  names.sort((a, b) => a.y - b.y);
  const placed = names.map(({ text, rightPx, y }) => {
    const width = widths.of(ctx, style.label, text);
    const right = Math.min(Math.max(rightPx - 4 * style.size, box.leftPx + width + 4), box.leftPx + box.widthPx - 4);
    return { left: right - width, right, y: Math.max(y - 11 * style.size, box.topPx + 9 * style.size) };
  });
  const meet = (a: number, b: number): boolean =>
    placed[a]!.left < placed[b]!.right && placed[b]!.left < placed[a]!.right;
  for (let i = 1; i < placed.length; i++)
    if (meet(i, i - 1)) placed[i]!.y = Math.max(placed[i]!.y, placed[i - 1]!.y + apart);
  for (let i = placed.length - 1; i >= 0; i--) {
    const below = i + 1 < placed.length && meet(i, i + 1) ? placed[i + 1]!.y - apart : Infinity;
    placed[i]!.y = Math.min(placed[i]!.y, below, box.topPx + box.heightPx - 9 * style.size);
  }
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'left';
  ctx.font = style.label;
  names.forEach(({ text, colour }, i) => haloText(ctx, style, text, placed[i]!.left, placed[i]!.y, colour));
}

function paintPoints(ctx: CanvasRenderingContext2D, frame: GraphFrame, points: GraphPoints): void {
  const { style } = frame;
  const radius = (points.form === 'dot' ? 2.6 : 3.2) * style.size;
  ctx.setLineDash([]);
  ctx.lineCap = 'butt';
  ctx.strokeStyle = lookColour(style, points.look);
  ctx.fillStyle = ctx.strokeStyle;
  ctx.lineWidth = 1.5 * style.size;
  ctx.beginPath();
  for (let i = 0; i < points.x.length; i++) {
    const x = graphX(frame, points.x[i]!);
    const y = graphY(frame, points.y[i]!);
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    if (points.low && points.high) {
      ctx.moveTo(x, graphY(frame, points.low[i]!));
      ctx.lineTo(x, graphY(frame, points.high[i]!));
    }
    if (points.form === 'cross') {
      ctx.moveTo(x - radius, y - radius);
      ctx.lineTo(x + radius, y + radius);
      ctx.moveTo(x - radius, y + radius);
      ctx.lineTo(x + radius, y - radius);
    } else {
      ctx.moveTo(x + radius, y);
      ctx.arc(x, y, radius, 0, 2 * Math.PI);
    }
  }
  if (points.form === 'dot') ctx.fill();
  ctx.stroke();
}

function paintMarkers(ctx: CanvasRenderingContext2D, frame: GraphFrame): void {
  const { style, box } = frame;
  ctx.strokeStyle = style.soft;
  ctx.lineWidth = 1.1 * style.size;
  ctx.font = style.label;
  for (const { axis, at, name } of frame.view.markers) {
    const share = shareOf(axis === 'x' ? frame.x : frame.y, at);
    if (!(share >= 0 && share <= 1)) continue;
    ctx.setLineDash([2 * style.size, 3 * style.size]);
    ctx.beginPath();
    if (axis === 'x') uprightLine(ctx, frame, graphX(frame, at));
    else levelLine(ctx, frame, graphY(frame, at));
    ctx.stroke();
    ctx.setLineDash([]);
    const x = axis === 'x' ? graphX(frame, at) : box.leftPx + 6 * style.size;
    const left = share < 0.7 || axis === 'y';
    ctx.textAlign = left ? 'left' : 'right';
    ctx.textBaseline = 'bottom';
    const y = axis === 'x' ? box.topPx + box.heightPx - 5 * style.size : graphY(frame, at) - 3 * style.size;
    haloText(ctx, style, name, axis === 'x' ? x + (left ? 5 : -5) * style.size : x, y, style.text);
    ctx.strokeStyle = style.soft;
    ctx.lineWidth = 1.1 * style.size;
  }
}

/** Lines and points with a value near the cursor, for its readout. */
export function linesAndPoints(view: GraphView): readonly (GraphLine | GraphPoints)[] {
  return [...view.lines, ...view.points];
}
