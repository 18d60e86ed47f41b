/** Boxes about the parts of the riding view, for labels to keep clear of. */
import type { Box } from '../contract/view.ts';
import { cantileverShape } from './cantilever.ts';
import { type MechanismLayout, STOP_PLATE } from './mechanism-layout.ts';
import type { RidingLayout, RidingPose } from './riding-layout.ts';

/** Half the width of a stop's brass plate, its widest part. */
export const stopHalfPx = (m: MechanismLayout): number => (STOP_PLATE * m.stopWidth) / 2;

/** Boxes a leaning lever or a bent arm is covered with. */
const BOXES_A_PART = 6;

export function solidsOf({ mechanism: m, k }: RidingLayout, pose: RidingPose, massXPx: number, massYPx: number): Box[] {
  const about = (x: number, y: number, width: number, height: number): Box => ({
    xPx: x - width / 2,
    yPx: y - height / 2,
    widthPx: width,
    heightPx: height,
  });
  const cos = Math.abs(Math.cos(pose.massTurn));
  const sin = Math.abs(Math.sin(pose.massTurn));
  const massWidth = m.massWidth * cos + m.massHeight * sin;
  const massHeight = m.massHeight * cos + m.massWidth * sin;
  const solids = [about(massXPx, massYPx, massWidth, massHeight)];
  const { stopAbove, stopBelow } = pose;
  const plate = 2 * stopHalfPx(m);
  if (stopAbove.present)
    solids.push(about(m.stopAboveX, (m.top + stopAbove.yPx) / 2, plate, Math.abs(stopAbove.yPx - m.top)));
  if (stopBelow.present)
    solids.push(about(m.stopBelowX, (m.bottom + stopBelow.yPx) / 2, plate, Math.abs(m.bottom - stopBelow.yPx)));
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
