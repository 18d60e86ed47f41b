/**
 * Where the parts inside the housing stand: pen lever, pivot, mass, arm or coil, damper. Pure numbers.
 * Lengths in the picture's own pixels, y downward; "up" offsets are upward.
 *
 * The lever turns about a pivot at the height of the 0 line; the pins of pen and mass slide straight up
 * and down, b to the left and a to the right of it, so that exactly
 *     pen up = −(b/a) · mass up.
 * With the sign turned round a pair of equal wheels between the two halves of the lever turns the
 * motion over: pen up = +(b/a) · mass up.
 */
import type { ElementLook } from '../contract/view.ts';
import { cantileverShape, shareWithShape, TIP_SLOPE } from './cantilever.ts';

export interface MechanismInput {
  /** The room for the parts: what is seen of the plane of pen and mass between posts, cap and floor. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Size of small parts against the design at 1440 × 900 [–]. */
  readonly k: number;
  /** Room from front to back. */
  readonly depth: number;
  /** Where the pen's pin slides. */
  readonly penPinX: number;
  /** Height of the 0 line, and the ends of the pen's way. */
  readonly zeroY: number;
  readonly penTopY: number;
  readonly penBottomY: number;
  readonly reversed: boolean;
  readonly look: ElementLook;
  /** The mass stands no farther right than here, as far as the lever allows it. */
  readonly massRightMost: number;
}

export interface BeakerLayout {
  readonly x: number;
  readonly radius: number;
  readonly top: number;
  readonly bottom: number;
  readonly oilTop: number;
  /** Height of the paddle at x = 0. */
  readonly paddleY: number;
  /** What the rod hangs from: the arm, at this share of its length, or the lever, at this share of a. */
  readonly from: 'arm' | 'lever';
  readonly share: number;
  /** Paddle offset per mass offset [–]. */
  readonly motion: number;
}

export interface MechanismLayout extends MechanismInput {
  readonly pivotX: number;
  /** Pivot of the pen's half: the same one unless the sign is turned round. */
  readonly penPivotX: number;
  readonly wheelRadius: number;
  readonly massX: number;
  readonly massWidth: number;
  readonly massHeight: number;
  readonly massDepth: number;
  /** Right end of the arm, at its clamp; its length to the mass's pin. */
  readonly armRootX: number;
  readonly armLength: number;
  readonly coilX: number;
  /** a and b. */
  readonly massArm: number;
  readonly penArm: number;
  /** Farthest the pen may go from the 0 line, and the mass with it. */
  readonly penUpMost: number;
  readonly penDownMost: number;
  readonly massUpMost: number;
  readonly massDownMost: number;
  readonly stopAboveX: number;
  readonly stopBelowX: number;
  readonly stopWidth: number;
  readonly beaker: BeakerLayout | undefined;
}

/** Width of a stop's brass plate against that of its rubber [–]. */
export const STOP_PLATE = 1.12;

/** Lever ratios a/b outside this range would hide the mass in the wall or push it through the cap [–]. */
const LEAST_RATIO = 0.14;
const MOST_RATIO = 1.2;

/** Below this lever ratio the mass is drawn smaller [–]. */
const SMALL_RATIO = 0.45;

const within = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

export function mechanismLayout(input: MechanismInput): MechanismLayout {
  const { k, zeroY, look, left, right } = input;
  const coil = look.form === 'coil';
  const penUpMost = Math.max(1, zeroY - input.penTopY);
  const penDownMost = Math.max(1, input.penBottomY - zeroY);
  // Where the 0 line stands near an end of the paper little way is left for the mass: a smaller one leaves more.
  let massScale = 1;
  let fitting = fittingRatio(input, massReach(coil, k), penUpMost, penDownMost);
  if (fitting < SMALL_RATIO) {
    massScale = within(fitting / SMALL_RATIO, 0.55, 1);
    fitting = fittingRatio(input, massReach(coil, k * massScale), penUpMost, penDownMost);
  }
  const mostRatio = within(fitting, LEAST_RATIO, MOST_RATIO);
  const [massWidth, massHeight] = massSize(coil, k * massScale);
  const reach = massReach(coil, k * massScale);

  const armRootX = right - 26 * k;
  const width = armRootX - left;
  const spanned = coil ? left + 0.5 * (right - left) : armRootX - within(look.span, 0.3, 0.85) * width;
  const wished = Math.min(spanned, input.massRightMost);
  const wheelRadius = 15 * k;
  const shift = input.reversed ? 2 * wheelRadius : 0;
  const from = input.penPinX + shift;
  const leastArm = massWidth / 2 + 16 * k;
  const atWall = left + 20 * k + shift;
  let pivotX = atWall;
  let ratio = (wished - atWall) / (atWall - from);
  if (ratio > mostRatio || wished - atWall < leastArm) {
    const penArm = Math.max((wished - from) / (1 + mostRatio), atWall - from, leastArm / mostRatio);
    pivotX = from + penArm;
    ratio = mostRatio;
  }
  const penArm = pivotX - from;
  const massArm = ratio * penArm;
  const massX = pivotX + massArm;
  const massUpMost = ratio * (input.reversed ? penUpMost : penDownMost);
  const massDownMost = ratio * (input.reversed ? penDownMost : penUpMost);
  const stopWidth = 24 * k;
  const base = {
    ...input,
    pivotX,
    penPivotX: pivotX - shift,
    wheelRadius,
    massX,
    massWidth,
    massHeight,
    massDepth: Math.min(44 * k, input.depth * 0.36),
    armRootX,
    armLength: armRootX - massX,
    coilX: massX,
    massArm,
    penArm,
    penUpMost,
    penDownMost,
    massUpMost,
    massDownMost,
    stopAboveX: coil ? massX + massWidth * 0.42 : massX,
    stopBelowX: massX,
    stopWidth,
  };
  return { ...base, beaker: look.damper === 'oil' ? beakerLayout(base, reach) : undefined };
}

const massSize = (coil: boolean, k: number): readonly [number, number] => (coil ? [66 * k, 42 * k] : [60 * k, 40 * k]);

/** How far the mass reaches from its pin, up or down, however it is turned. */
function massReach(coil: boolean, k: number): number {
  const [width, height] = massSize(coil, k);
  return coil ? height / 2 + 3 * k : Math.hypot(width, height) / 2 + 2 * k;
}

/** Lever ratio a/b that keeps the mass between ceiling and floor while the pen goes all over the paper. */
function fittingRatio(input: MechanismInput, reach: number, penUpMost: number, penDownMost: number): number {
  // A pressed coil needs room for its turns under the ceiling.
  const roomUp = input.zeroY - input.top - reach - (input.look.form === 'coil' ? 34 : 6) * input.k;
  const roomDown = input.bottom - input.zeroY - reach - 2 * input.k;
  return input.reversed
    ? Math.min(roomUp / penUpMost, roomDown / penDownMost)
    : Math.min(roomDown / penUpMost, roomUp / penDownMost);
}

function beakerLayout(layout: Omit<MechanismLayout, 'beaker'>, reach: number): BeakerLayout {
  const { k, zeroY, look } = layout;
  const bottom = layout.bottom;
  const height = within(0.6 * (bottom - zeroY), 24 * k, 112 * k);
  const oilDepth = 0.74 * height;
  const most = Math.max(layout.massUpMost, layout.massDownMost);
  // The paddle stays in the oil: its stroke to either side is under half the depth.
  const motion = Math.min(0.4, (oilDepth - 14 * k) / 2 / most);
  const common = {
    bottom,
    top: bottom - height,
    oilTop: bottom - 4 * k - oilDepth,
    paddleY: bottom - 4 * k - oilDepth / 2,
  };
  if (look.form === 'coil') {
    const x = layout.pivotX + motion * layout.massArm;
    const radius = within(layout.massX - reach - 8 * k - x, 16 * k, 42 * k);
    return { ...common, x, radius, from: 'lever', share: motion, motion };
  }
  const share = shareWithShape(motion);
  const x = layout.armRootX - share * layout.armLength;
  const radius = within(Math.min(x - layout.massX - reach, layout.right - x) - 4 * k, 16 * k, 44 * k);
  return { ...common, x, radius, from: 'arm', share, motion: cantileverShape(share) };
}

/** How far the mass's face stands from its pin where it meets a stop, with the tip turned by the arm's slope. */
export function stopClearance(layout: MechanismLayout, massUp: number): number {
  if (layout.look.form === 'coil') return layout.massHeight / 2;
  const slope = (TIP_SLOPE * Math.abs(massUp)) / layout.armLength;
  return (layout.massHeight / 2) * Math.sqrt(1 + slope * slope) + (layout.stopWidth / 2) * slope;
}

/** Turn of the mass, counter-clockwise [rad], that the arm's tip slope gives it. The arm runs to the left from its clamp. */
export function massTurn(layout: MechanismLayout, massUp: number): number {
  return layout.look.form === 'coil' ? 0 : Math.atan((-TIP_SLOPE * massUp) / layout.armLength);
}
