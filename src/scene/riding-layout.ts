/**
 * The riding view's layout and the place of its moving parts, for the drawing in depth and the flat one
 * alike. Pure numbers in CSS pixels of the canvas, y downward.
 */
import type { ElementSpec } from '../contract/run.ts';
import type { ElementSnapshot } from '../contract/snapshot.ts';
import type { ElementLook, PaperScale } from '../contract/view.ts';
import { type MechanismLayout, massTurn, mechanismLayout, stopClearance } from './mechanism-layout.ts';

/** Oblique view: a point in front of the plane of pen and mass by z px shows up to the right by this share of z … */
export const SHEAR_X = 0.11;
/** … and lower by this one. Heights in the plane itself stay exact. */
export const SHEAR_Y = 0.17;

/** Below this width right of the nib the housing runs out of the picture at the right. */
const STRIP_WIDTH_PX = 300;

export interface RidingInput {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly nibXPx: number;
  readonly scale: PaperScale;
  readonly look: ElementLook;
}

/** Outer edges of the housing in the plane z = 0, and its depth; all of cap and plinth lies within. */
export interface HousingBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly depth: number;
  readonly k: number;
}

export interface RidingLayout {
  readonly input: RidingInput;
  readonly k: number;
  /** The housing runs out of the picture at the right. */
  readonly strip: boolean;
  readonly rule: RulePlace;
  readonly box: HousingBox;
  readonly mechanism: MechanismLayout;
}

export interface RulePlace {
  readonly xPx: number;
  readonly widthPx: number;
}

const within = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

function partScale(widthPx: number, heightPx: number, nibXPx: number): number {
  const room = widthPx - nibXPx;
  return room < STRIP_WIDTH_PX
    ? within(heightPx / 430, 0.5, 0.8)
    : within(Math.min(room / 550, heightPx / 460), 0.6, 2.2);
}

/** Where the scale rule lies under the canvas, so that the pen's carriage rides on it. */
export function rulePlace(widthPx: number, heightPx: number, nibXPx: number): RulePlace {
  const k = partScale(widthPx, heightPx, nibXPx);
  return { xPx: nibXPx + 24 * k, widthPx: 31 * k };
}

/** Thickness of cap and plinth with their mouldings, and of a corner post, at k = 1. */
export const CAP = { slab: 10, moulding: 7 } as const;
export const PLINTH = { slab: 15, moulding: 8 } as const;
export const POST = { inset: 5, width: 14 } as const;

/** What is seen of the plane z = 0 between posts, cap and floor. */
export function insideOf(box: HousingBox): { left: number; right: number; top: number; bottom: number } {
  const { k } = box;
  const side = (POST.inset + POST.width + 2) * k;
  return {
    left: box.left + side,
    right: box.right - side,
    // The cap's front edge hangs in front of what is behind it.
    top: box.top + (CAP.slab + CAP.moulding) * k + (SHEAR_Y * box.depth) / 2,
    bottom: box.bottom - (PLINTH.slab + PLINTH.moulding) * k,
  };
}

export function ridingLayout(input: RidingInput): RidingLayout {
  const { widthPx, heightPx, nibXPx, scale } = input;
  const strip = widthPx - nibXPx < STRIP_WIDTH_PX;
  const k = partScale(widthPx, heightPx, nibXPx);
  const rule = rulePlace(widthPx, heightPx, nibXPx);
  const depth = heightPx * (strip ? 0.22 : 0.31);
  const left = rule.xPx + rule.widthPx + (strip ? 4 : 54 * k) + (SHEAR_X * depth) / 2;
  const box: HousingBox = {
    left,
    right: strip ? left + 1.05 * heightPx : widthPx - 16 * k - (SHEAR_X * depth) / 2,
    top: 3 + (SHEAR_Y * depth) / 2,
    bottom: heightPx - 14 * k - (SHEAR_Y * depth) / 2,
    depth,
    k,
  };
  const mechanism = mechanismLayout({
    ...insideOf(box),
    depth: depth - 16 * k,
    k,
    penPinX: rule.xPx + rule.widthPx / 2,
    zeroY: scale.zeroYPx,
    penTopY: scale.topYPx,
    penBottomY: scale.bottomYPx,
    reversed: scale.pxPerMS2 < 0,
    look: input.look,
    massRightMost: strip ? widthPx - 72 * k : Number.POSITIVE_INFINITY,
  });
  return { input, k, strip, rule, box, mechanism };
}

/** True when `next` gives another layout than `input` did. The scale's px per m/s² enters by its sign only. */
export function layoutDiffers(input: RidingInput, next: RidingInput): boolean {
  return (
    input.widthPx !== next.widthPx ||
    input.heightPx !== next.heightPx ||
    input.nibXPx !== next.nibXPx ||
    input.scale.zeroYPx !== next.scale.zeroYPx ||
    input.scale.topYPx !== next.scale.topYPx ||
    input.scale.bottomYPx !== next.scale.bottomYPx ||
    input.scale.pxPerMS2 < 0 !== next.scale.pxPerMS2 < 0 ||
    input.look.form !== next.look.form ||
    input.look.damper !== next.look.damper ||
    input.look.span !== next.look.span
  );
}

/**
 * S: static deflection per unit specific force, without sign [s²].
 *     S = 1/ω₀²,  with modes  S = Σ Γφ/ω² + the remainder of the modes left out
 */
export function staticDeflection(spec: ElementSpec): number {
  const turn = 2 * Math.PI;
  if (spec.modes === undefined)
    return 1 / (turn * spec.naturalFrequency * turn * spec.naturalFrequency) + spec.staticRemainder;
  let sum = spec.staticRemainder;
  for (const mode of spec.modes) {
    sum += (mode.participation * mode.shape) / (turn * mode.naturalFrequency * turn * mode.naturalFrequency);
  }
  return sum;
}

export interface StopPose {
  /** Height of the rubber's face. */
  yPx: number;
  /** Out of the picture: drawn at the edge with a break in its stem. */
  broken: boolean;
  present: boolean;
}

/** Where the moving parts stand; "up" offsets from the 0 line in px. Written into by `ridingPose`. */
export interface RidingPose {
  massUp: number;
  penUp: number;
  /** Counter-clockwise turn of the mass [rad]. */
  massTurn: number;
  offPaper: boolean;
  /** Mass offset per deflection [px/m]. */
  pxPerDeflection: number;
  readonly stopAbove: StopPose;
  readonly stopBelow: StopPose;
}

export function newRidingPose(): RidingPose {
  return {
    massUp: 0,
    penUp: 0,
    massTurn: 0,
    offPaper: false,
    pxPerDeflection: 0,
    stopAbove: { yPx: 0, broken: false, present: false },
    stopBelow: { yPx: 0, broken: false, present: false },
  };
}

/** Mass offset per deflection [px/m] that makes the pen meet the paper: (a/b)·|px per m/s²|/S. */
export function pxPerDeflection(mechanism: MechanismLayout, spec: ElementSpec, scale: PaperScale): number {
  return ((mechanism.massArm / mechanism.penArm) * Math.abs(scale.pxPerMS2)) / staticDeflection(spec);
}

export function ridingPose(
  mechanism: MechanismLayout,
  element: ElementSnapshot,
  scale: PaperScale,
  out: RidingPose,
): void {
  const perDeflection = pxPerDeflection(mechanism, element.spec, scale);
  placeMass(mechanism, element.deflection * perDeflection, out);
  out.pxPerDeflection = perDeflection;
  const gap = element.spec.gap;
  placeStops(mechanism, gap === undefined ? undefined : gap * perDeflection, out);
}

/** Puts the mass at an offset (upward), held within the pen's way on the paper. */
export function placeMass(mechanism: MechanismLayout, massUp: number, out: RidingPose): void {
  const held = within(massUp, -mechanism.massDownMost, mechanism.massUpMost);
  const ratio = mechanism.penArm / mechanism.massArm;
  out.massUp = held;
  out.penUp = mechanism.reversed ? ratio * held : -ratio * held;
  out.offPaper = held !== massUp;
  out.massTurn = massTurn(mechanism, held);
}

/** Least height of a stop: rubber, cup and a piece of stem, at k = 1. */
export const STOP_HEIGHT = 19;

export function placeStops(mechanism: MechanismLayout, gapPx: number | undefined, out: RidingPose): void {
  const { stopAbove, stopBelow } = out;
  stopAbove.present = stopBelow.present = gapPx !== undefined;
  if (gapPx === undefined) return;
  const reach = gapPx + stopClearance(mechanism, gapPx);
  const least = STOP_HEIGHT * mechanism.k;
  const highest = mechanism.top + least;
  const lowest = mechanism.bottom - least;
  stopAbove.broken = mechanism.zeroY - reach < highest;
  stopBelow.broken = mechanism.zeroY + reach > lowest;
  stopAbove.yPx = stopAbove.broken ? highest : mechanism.zeroY - reach;
  stopBelow.yPx = stopBelow.broken ? lowest : mechanism.zeroY + reach;
}
