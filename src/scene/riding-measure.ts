/** What both riding views report: from places on the picture to the geometry that labels and tests read. */
import type { Anchor, Box, RidingFrame, RidingGeometry } from '../contract/view.ts';
import { cantileverShape } from './cantilever.ts';
import type { RidingLayout, RidingPose } from './riding-layout.ts';

/** The arrows start on the mass, one beside the other: shares of its width from the pin. */
export const WEIGHT_LEFT = 0.18;
export const PULL_RIGHT = 0.34;

/** Offset of the mass's arrows from its pin, to the left or right [px]. */
export function arrowStarts(layout: RidingLayout): { readonly pull: number; readonly weight: number } {
  const { massWidth, look } = layout.mechanism;
  return { pull: look.form === 'arm' ? PULL_RIGHT * massWidth : 0, weight: -WEIGHT_LEFT * massWidth };
}

/** Length of the spring's pull per mass, upward [px]: the reading at the paper's scale, held at the paper's edge with the pen. */
export const pullUpPx = (pose: RidingPose): number => (pose.massUp > 0 ? -1 : 1) * Math.abs(pose.penUp);

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
  anchor('stop above', ...places.stopAbove, pose.stopAbove.present);
  anchor('stop below', ...places.stopBelow, pose.stopBelow.present);
  anchor('oil', ...places.oil, m.beaker !== undefined);
  anchor('unbent', m.massX - m.massWidth / 2 - 14 * k, unbentYPx);
  anchor('pivot', m.pivotX, unbentYPx);
  const starts = arrowStarts(layout);
  anchor('arm pulls', massXPx + starts.pull, massYPx - pullUpPx(pose), frame.arrows.has('arm pulls'));
  const perMS2 = Math.abs(frame.scale.pxPerMS2);
  anchor(
    'gravity on the mass',
    massXPx + starts.weight + gravity[0]! * perMS2,
    massYPx - gravity[1]! * perMS2,
    frame.arrows.has('gravity on the mass'),
  );
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
    solids: solidsOf(layout, pose, massXPx, massYPx),
  };
}

/** Boxes a leaning lever or a bent arm is covered with. */
const BOXES_A_PART = 6;

function solidsOf({ mechanism: m, k }: RidingLayout, pose: RidingPose, massXPx: number, massYPx: number): Box[] {
  const about = (x: number, y: number, width: number, height: number): Box => ({
    xPx: x - width / 2,
    yPx: y - height / 2,
    widthPx: width,
    heightPx: height,
  });
  const solids = [about(massXPx, massYPx, m.massWidth, m.massHeight)];
  /** Along x from a to b, at a height above the 0 line for each share of the way. */
  const along = (a: number, b: number, half: number, up: (share: number) => number): void => {
    for (let n = 0; n < BOXES_A_PART; n += 1) {
      const ends = [up(n / BOXES_A_PART), up((n + 1) / BOXES_A_PART)] as const;
      const x = a + ((n + 0.5) / BOXES_A_PART) * (b - a);
      const y = m.zeroY - (ends[0] + ends[1]) / 2;
      solids.push(about(x, y, Math.abs(b - a) / BOXES_A_PART, Math.abs(ends[1] - ends[0]) + 2 * half));
    }
  };
  const lever = 7 * k;
  along(m.penPinX, m.penPivotX, lever, (share) => pose.penUp * (1 - share));
  along(m.pivotX, m.massX, lever, (share) => pose.massUp * share);
  if (m.look.form === 'arm')
    along(m.armRootX, m.armRootX - m.armLength, 5 * k, (share) => pose.massUp * cantileverShape(share));
  return solids;
}
