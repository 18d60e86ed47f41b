/** What both riding views report: from places on the picture to the geometry that labels and tests read. */
import type { Anchor, RidingFrame, RidingGeometry } from '../contract/view.ts';
import { arrowBox, arrowsOf } from './riding-arrows.ts';
import type { RidingLayout, RidingPose } from './riding-layout.ts';
import { solidsOf, stopHalfPx } from './riding-solids.ts';

/** Places that a drawing has found for its parts [px]. */
export interface RidingPlaces {
  readonly penXPx: number;
  readonly penYPx: number;
  readonly massXPx: number;
  readonly massYPx: number;
  readonly unbentYPx: number;
  readonly stopAbove: readonly [number, number];
  readonly stopBelow: readonly [number, number];
  readonly spring: readonly [number, number];
  readonly oil: readonly [number, number];
}

export function ridingGeometry(
  layout: RidingLayout,
  pose: RidingPose,
  frame: RidingFrame,
  gravity: ArrayLike<number>,
  places: RidingPlaces,
): RidingGeometry {
  const { mechanism: m, box, k, input } = layout;
  const { penXPx, penYPx, massXPx, massYPx, unbentYPx } = places;
  const anchors: Anchor[] = [];
  const anchor = (name: string, xPx: number, yPx: number, shown = true): void => {
    const visible = shown && xPx >= 0 && xPx <= input.widthPx && yPx >= 0 && yPx <= input.heightPx;
    anchors.push({ name, xPx, yPx, visible });
  };
  anchor('pen', penXPx, penYPx);
  anchor('mass', massXPx, massYPx);
  anchor('arm', ...places.spring);
  const [aboveXPx, aboveYPx] = places.stopAbove;
  const [belowXPx, belowYPx] = places.stopBelow;
  anchor('stop above', aboveXPx + stopHalfPx(m), aboveYPx, pose.stopAbove.present);
  anchor('stop below', belowXPx - stopHalfPx(m), belowYPx, pose.stopBelow.present);
  anchor('oil', ...places.oil, m.beaker !== undefined);
  anchor('unbent', m.massX - m.massWidth / 2 - 14 * k, unbentYPx);
  anchor('pivot', m.pivotX, unbentYPx);
  const arrows = arrowsOf(layout, pose, frame, gravity, massXPx, massYPx);
  for (const { name, tipXPx, tipYPx, shown } of arrows) anchor(name, tipXPx, tipYPx, shown);
  anchor('housing', (box.left + box.right) / 2, box.top);
  const housingPxPerM = (box.bottom - box.top) / frame.housingSizeM[1];
  return {
    penXPx,
    penYPx,
    massXPx,
    massYPx,
    unbentYPx,
    enlargement: pose.pxPerDeflection / housingPxPerM,
    housingPxPerM,
    leverRatio: (m.reversed ? -1 : 1) * (m.penArm / m.massArm),
    offPaper: pose.offPaper,
    anchors,
    solids: [...solidsOf(layout, pose, massXPx, massYPx), ...arrows.filter(({ shown }) => shown).map(arrowBox(k))],
  };
}
