/**
 * What bending beams are made of: solutions of w⁗ = b⁴w that are 1, x, x²/2 and x³/6 near 0 (Krylov's or Duncan's
 * functions; e.g. I. A. Karnovsky, O. Lebed, Formulas for Structural Dynamics, from memory).
 *     s = (cosh x + cos x)/2,  t = (sinh x + sin x)/2,  u = (cosh x − cos x)/2,  v = (sinh x − sin x)/2
 * Each is the derivative of the next, round about: s′ = v, t′ = s, u′ = t, v′ = u.
 */
import { cos, cosh, sin, sinh } from '../numerics/transcendental.ts';

export interface BeamFunctions {
  readonly s: number;
  readonly t: number;
  readonly u: number;
  readonly v: number;
}

export function beamFunctions(x: number): BeamFunctions {
  if (x >= 1) {
    const [ch, c, sh, s] = [cosh(x), cos(x), sinh(x), sin(x)];
    return { s: (ch + c) / 2, t: (sh + s) / 2, u: (ch - c) / 2, v: (sh - s) / 2 };
  }
  // Below 1 the differences would lose digits. The next terms of the series are below 1/17! = 3e-15.
  const x2 = x * x;
  const x4 = x2 * x2;
  return {
    s: 1 + (x4 / 24) * (1 + (x4 / 1680) * (1 + (x4 / 11880) * (1 + x4 / 43680))),
    t: x * (1 + (x4 / 120) * (1 + (x4 / 3024) * (1 + (x4 / 17160) * (1 + x4 / 57120)))),
    u: (x2 / 2) * (1 + (x4 / 360) * (1 + (x4 / 5040) * (1 + x4 / 24024))),
    v: ((x2 * x) / 6) * (1 + (x4 / 840) * (1 + (x4 / 7920) * (1 + x4 / 32760))),
  };
}

/** Deflection along a strip from its clamp, u = 0 … 1, and its slope in u. */
export type Line = (u: number) => { readonly value: number; readonly slope: number };

/** p·u(bx) + q·v(bx): what is clamped at 0. */
export function clampedLine(b: number, p: number, q: number): Line {
  return (x) => {
    const { t, u, v } = beamFunctions(b * x);
    return { value: p * u + q * v, slope: b * (p * t + q * u) };
  };
}

export interface LineIntegrals {
  /** ∫w du */
  readonly area: number;
  /** ∫w² du */
  readonly square: number;
  /** ∫w′² du */
  readonly bending: number;
  /** ∫(1 − u)w′² du */
  readonly bendingAbove: number;
}

/** Gauss's five points and weights on −1 … 1 (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 25.4). */
const POINTS = [0, 0.538469310105683, -0.538469310105683, 0.906179845938664, -0.906179845938664] as const;
const WEIGHTS = [
  0.568888888888889, 0.478628670499366, 0.478628670499366, 0.236926885056189, 0.236926885056189,
] as const;
/** Pieces of 0 … 1: the third line of a beam turns by about 1 rad in one, where the five points err by 1e-12. */
const PIECES = 12;

export function integralsOf(line: Line): LineIntegrals {
  let area = 0;
  let square = 0;
  let bending = 0;
  let bendingAbove = 0;
  for (let piece = 0; piece < PIECES; piece += 1) {
    for (let i = 0; i < POINTS.length; i += 1) {
      const u = (piece + 0.5 + POINTS[i]! / 2) / PIECES;
      const weight = WEIGHTS[i]! / (2 * PIECES);
      const { value, slope } = line(u);
      area += weight * value;
      square += weight * value * value;
      bending += weight * slope * slope;
      bendingAbove += weight * (1 - u) * slope * slope;
    }
  }
  return { area, square, bending, bendingAbove };
}
