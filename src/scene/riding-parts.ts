/** What lies under a point of the riding view, and where its labels belong: from the layout, for both drawings. */
import type { RidingPart } from '../contract/view.ts';
import { cantileverShape } from './cantilever.ts';
import type { RidingLayout, RidingPose } from './riding-layout.ts';

/** A finger or pointer may miss a thin part by this much [px]. */
const MISS_PX = 7;

export function ridingPart(layout: RidingLayout, pose: RidingPose, xPx: number, yPx: number): RidingPart | undefined {
  const { mechanism: m, box, k } = layout;
  const up = m.zeroY - yPx;
  if (Math.abs(xPx - m.penPinX) < 20 * k + MISS_PX && Math.abs(up - pose.penUp) < 11 * k + MISS_PX) return 'pen';
  if (inMass(layout, pose, xPx, up)) return 'mass';
  const leverHalf = 7 * k + MISS_PX / 2;
  const onPenHalf = nearLine(xPx, up, m.penPinX, pose.penUp, m.penPivotX, 0, leverHalf);
  if (onPenHalf || nearLine(xPx, up, m.massX, pose.massUp, m.pivotX, 0, leverHalf)) return 'pen';
  if (Math.abs(xPx - m.stopAboveX) < m.stopWidth && pose.stopAbove.present && yPx < pose.stopAbove.yPx && yPx > box.top)
    return 'stop';
  if (
    Math.abs(xPx - m.stopBelowX) < m.stopWidth &&
    pose.stopBelow.present &&
    yPx > pose.stopBelow.yPx &&
    yPx < m.bottom
  )
    return 'stop';
  if (m.look.form === 'arm') {
    const share = (m.armRootX - xPx) / m.armLength;
    if (share >= 0 && share <= 1 && Math.abs(up - pose.massUp * cantileverShape(share)) < 7 * k + MISS_PX) return 'arm';
    if (xPx > m.armRootX && xPx < m.right + 10 * k && Math.abs(up) < 38 * k) return 'clamp';
  } else if (Math.abs(xPx - m.coilX) < 18 * k + MISS_PX && up > pose.massUp && yPx > box.top) return 'arm';
  const b = m.beaker;
  if (b !== undefined && Math.abs(xPx - b.x) < b.radius && yPx > b.top - MISS_PX && yPx < b.bottom + MISS_PX)
    return 'damper';
  if (xPx >= box.left && xPx <= box.right && yPx >= box.top - 12 * k && yPx <= box.bottom + 12 * k) return 'housing';
  return undefined;
}

function inMass(layout: RidingLayout, pose: RidingPose, xPx: number, up: number): boolean {
  const m = layout.mechanism;
  const dx = xPx - m.massX;
  const dy = up - pose.massUp;
  const cos = Math.cos(pose.massTurn);
  const sin = Math.sin(pose.massTurn);
  return Math.abs(dx * cos + dy * sin) < m.massWidth / 2 + 3 && Math.abs(dy * cos - dx * sin) < m.massHeight / 2 + 3;
}

function nearLine(x: number, y: number, x0: number, y0: number, x1: number, y1: number, reach: number): boolean {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const share = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)));
  const ex = x - x0 - share * dx;
  const ey = y - y0 - share * dy;
  return ex * ex + ey * ey < reach * reach;
}
