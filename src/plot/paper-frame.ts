import type { PaperView } from './paper-view.ts';
import type { PenStyle } from './pen-style.ts';
import { unitSize } from './reading-format.ts';

/** One drawing of the paper: where times and readings stand [CSS px, from the paper's upper left corner]. */
export interface PaperFrame {
  readonly view: PaperView;
  readonly style: PenStyle;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Upper and lower end of the ruled part: ± the range. */
  readonly topPx: number;
  readonly bottomPx: number;
  readonly zeroYPx: number;
  readonly nibXPx: number;
  /** Time at the left edge and at the right edge [s]. */
  readonly fromS: number;
  readonly toS: number;
  readonly pxPerS: number;
  /** ± range, in the unit shown. */
  readonly range: number;
  /** Upward per m/s², negative when the sign is turned round. */
  readonly pxPerMS2: number;
  readonly pixelRatio: number;
}

/** Bands of the paper above and below the ruled part: names of events, times [px at size 1]. */
export const HEAD_PX = 34;
export const FOOT_PX = 31;
/** How far lines may run beyond the ruled part before they leave the paper [px]. */
export const BEYOND_PX = 7;

export interface PaperSize {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly nibInsetPx: number | undefined;
  readonly pixelRatio: number;
}

/** Where the nib stands: close to the edge where the paper comes in. */
export function nibX(size: PaperSize, style: PenStyle): number {
  const inset = size.nibInsetPx ?? Math.min(26, Math.max(15, 0.045 * size.widthPx)) * style.size;
  return Math.round(size.widthPx - inset);
}

export function timeWindow(
  view: PaperView,
  size: PaperSize,
  style: PenStyle,
): { fromS: number; toS: number; pxPerS: number } {
  const nib = nibX(size, style);
  const pxPerS = nib / view.spanS;
  return { fromS: view.endS - view.spanS, toS: view.endS + (size.widthPx - nib) / pxPerS, pxPerS };
}

export function paperFrame(view: PaperView, size: PaperSize, style: PenStyle, range: number): PaperFrame {
  const topPx = Math.round(HEAD_PX * style.size);
  const bottomPx = Math.max(topPx + 2, Math.round(size.heightPx - FOOT_PX * style.size));
  const half = (bottomPx - topPx) / 2;
  return {
    view,
    style,
    widthPx: size.widthPx,
    heightPx: size.heightPx,
    topPx,
    bottomPx,
    zeroYPx: topPx + half,
    nibXPx: nibX(size, style),
    ...timeWindow(view, size, style),
    range,
    pxPerMS2: (view.sign * half) / (range * unitSize(view.unit)),
    pixelRatio: size.pixelRatio,
  };
}

export function xOf(frame: PaperFrame, timeS: number): number {
  return (timeS - frame.fromS) * frame.pxPerS;
}

export function yOf(frame: PaperFrame, valueMS2: number): number {
  return frame.zeroYPx - valueMS2 * frame.pxPerMS2;
}
