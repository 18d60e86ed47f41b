/** Where a sketch's instants and values stand on its small graph, and which of them are written at its edges. */
import type { SketchAxes, SketchPoint } from '../contract/lesson.ts';
import { findUnit, type QuantityKind } from '../units/unit-table.ts';

/** Free paper about the ruled part [px]: figures at the left, times below. */
const MARGIN = { left: 40, right: 8, top: 8, bottom: 34 } as const;
const MINUS = '\u2212';

export interface SketchFrame {
  readonly axes: SketchAxes;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
}

export interface SketchTick {
  /** SI. */
  readonly value: number;
  /** Without its unit: "−1", "200". */
  readonly text: string;
}

export function sketchFrame(axes: SketchAxes, widthPx: number, heightPx: number): SketchFrame {
  return {
    axes,
    widthPx,
    heightPx,
    leftPx: MARGIN.left,
    rightPx: widthPx - MARGIN.right,
    topPx: MARGIN.top,
    bottomPx: heightPx - MARGIN.bottom,
  };
}

export function xOf({ axes, leftPx, rightPx }: SketchFrame, timeS: number): number {
  return leftPx + ((timeS - axes.fromS) / (axes.toS - axes.fromS)) * (rightPx - leftPx);
}

export function yOf({ axes, topPx, bottomPx }: SketchFrame, value: number): number {
  return bottomPx - ((value - axes.low) / (axes.high - axes.low)) * (bottomPx - topPx);
}

/** The instant and value under a place [px], held within the axes. */
export function pointAt(
  { axes, leftPx, rightPx, topPx, bottomPx }: SketchFrame,
  xPx: number,
  yPx: number,
): SketchPoint {
  const across = Math.min(1, Math.max(0, (xPx - leftPx) / (rightPx - leftPx)));
  const up = Math.min(1, Math.max(0, (bottomPx - yPx) / (bottomPx - topPx)));
  // From both ends, so that neither is passed by a rounding.
  return [axes.fromS * (1 - across) + axes.toS * across, axes.low * (1 - up) + axes.high * up];
}

/** The unit in which a sketch's times are written: milliseconds below a second. */
export function timeUnit({ fromS, toS }: SketchAxes): 'ms' | 's' {
  return toS - fromS < 1 ? 'ms' : 's';
}

/** Round multiples of 1, 2 or 5 between two SI values, at most so many steps apart, as written in a unit. */
export function ticks(low: number, high: number, kind: QuantityKind, unit: string, mostSteps: number): SketchTick[] {
  const size = unitSize(kind, unit);
  const step = roundStep((high - low) / size / mostSteps);
  const first = Math.ceil(low / size / step - 1e-9);
  const last = Math.floor(high / size / step + 1e-9);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: last - first + 1 }, (_, k) => {
    const number = (first + k) * step;
    return {
      value: number * size,
      text: Math.abs(number)
        .toFixed(decimals)
        .replace(/^/u, number < 0 ? MINUS : ''),
    };
  });
}

/** The distance of neighbouring steps of a cursor moved by keys: a round share of the whole [SI]. */
export function keyStep(low: number, high: number, kind: QuantityKind, unit: string): number {
  return roundStep((high - low) / unitSize(kind, unit) / 40) * unitSize(kind, unit);
}

/** SI value of one of a unit. */
function unitSize(kind: QuantityKind, unit: string): number {
  const found = findUnit(kind, unit);
  if (!found) throw new RangeError(`“${unit}” is not a unit of ${kind}`);
  const { times, per } = found.family;
  return (times / per) * Number(`1e${found.unit.exponent}`);
}

/** The smallest of 1, 2, 5 times a power of ten that is not below a size. */
function roundStep(least: number): number {
  const power = Number(`1e${Math.floor(Math.log10(least) + 1e-9)}`);
  return ([1, 2, 5, 10].find((lead) => lead * power >= least * (1 - 1e-9)) ?? 10) * power;
}
