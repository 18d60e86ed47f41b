/** The force arrows on the mass in the riding view, for both drawings: where they stand and what they cover. */
import type { Box, ForceArrow, RidingFrame } from '../contract/view.ts';
import { HEAD_HALF } from './arrow-corners.ts';
import type { RidingLayout, RidingPose } from './riding-layout.ts';

/** The arrows start on the mass, one beside the other: shares of its width from the pin. */
const WEIGHT_LEFT = 0.18;
const PULL_RIGHT = 0.34;

/** Width of an arrow's shaft against the design at 1440 × 900 [px]; its head is wider. */
export const ARROW_WIDTH = 9.5;

/** Offset of the mass's arrows from its pin, to the left or right [px]. */
export function arrowStarts(layout: RidingLayout): { readonly pull: number; readonly weight: number } {
  const { massWidth, look } = layout.mechanism;
  return { pull: look.form === 'arm' ? PULL_RIGHT * massWidth : 0, weight: -WEIGHT_LEFT * massWidth };
}

/** Length of the spring's pull per mass, upward [px]: the reading at the paper's scale, held at the paper's edge with the pen. */
export const pullUpPx = (pose: RidingPose): number => (pose.massUp > 0 ? -1 : 1) * Math.abs(pose.penUp);

export interface ArrowPlace {
  readonly name: ForceArrow;
  readonly footXPx: number;
  readonly footYPx: number;
  readonly tipXPx: number;
  readonly tipYPx: number;
  readonly shown: boolean;
}

/** From foot to tip [px], whether asked for or not. */
export function arrowsOf(
  layout: RidingLayout,
  pose: RidingPose,
  { arrows, scale }: RidingFrame,
  gravity: ArrayLike<number>,
  massXPx: number,
  massYPx: number,
): readonly ArrowPlace[] {
  const starts = arrowStarts(layout);
  const perMS2 = Math.abs(scale.pxPerMS2);
  const arrow = (name: ForceArrow, footXPx: number, dx: number, dy: number): ArrowPlace => ({
    name,
    footXPx,
    footYPx: massYPx,
    tipXPx: footXPx + dx,
    tipYPx: massYPx + dy,
    shown: arrows.has(name),
  });
  return [
    arrow('arm pulls', massXPx + starts.pull, 0, -pullUpPx(pose)),
    arrow('gravity on the mass', massXPx + starts.weight, gravity[0]! * perMS2, -gravity[1]! * perMS2),
  ];
}

export const arrowBox =
  (k: number) =>
  ({ footXPx, footYPx, tipXPx, tipYPx }: ArrowPlace): Box => {
    const half = HEAD_HALF * ARROW_WIDTH * k;
    return {
      xPx: Math.min(footXPx, tipXPx) - half,
      yPx: Math.min(footYPx, tipYPx),
      widthPx: Math.abs(tipXPx - footXPx) + 2 * half,
      heightPx: Math.abs(tipYPx - footYPx),
    };
  };
