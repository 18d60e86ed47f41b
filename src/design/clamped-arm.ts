/**
 * An arm clamped at both ends with the mass in the middle. Driven along the input axis it swings evenly to both sides,
 * so half of it with half the mass tells all: w′ = 0 and EI w‴ = (k_s − mω²)w/2 in the middle. The uneven modes are
 * neither driven nor seen there, and the mass's moment of inertia enters only them.
 *
 * Static: mL³/192EI + ρAL⁴/384EI; moment at the clamps mL/8 + ρAL²/12 (W. C. Young, Roark's Formulas for Stress and
 * Strain, beam table, from memory).
 *
 * Deflected, the arm gets longer by ½∫w′²; clamps that do not give stretch it, and it stiffens: energy (EA/8L)(∫w′²)².
 * With the line of a force in the middle ∫w′² = 4.8x²/L, so the force is 192EI x/L³ + 11.52EA x³/L³, and the strip
 * is stretched by 2.4(x/L)². Exact to the third order; Roark's own approximation, with a cosine, has 12.18.
 */
import type { ClampedArmSpec } from '../contract/design.ts';
import { beamFunctions, clampedLine, integralsOf } from './beam-functions.ts';
import { firstRoots } from './first-roots.ts';
import { materialOf } from './materials.ts';
import { drawn, KEPT_MODES, type Load, type Strip, type Suspended, type SuspendedMode, stripOf } from './suspended.ts';

export function clampedArm(spec: ClampedArmSpec, load: Load, count = KEPT_MODES): Suspended {
  const material = materialOf(spec.material);
  const strip = stripOf(spec, material);
  const { length: l, ei, massPerLength, stressPerMoment } = strip;
  const cube = l * l * l;
  const compliance = (load.weight * cube) / (192 * ei) + (massPerLength * cube * l) / (384 * ei);
  const line = (x: number): number =>
    ((load.weight * x * x * (3 * l - 4 * x)) / 48 + (massPerLength * x * x * (l - x) * (l - x)) / 24) / ei;
  return {
    modes: clampedModes(strip, load, count),
    compliance,
    pointCompliance: cube / (192 * ei),
    cubic: (11.52 * material.youngsModulus * spec.width * spec.thickness) / cube,
    stress: stressPerMoment * ((load.weight * l) / 8 + (massPerLength * l * l) / 12),
    stretchStress: (2.4 * material.youngsModulus) / (l * l),
    strength: material.strength,
    turn: 0,
    ownMass: massPerLength * l,
    sag: drawn((u) => line(l * Math.min(u, 1 - u)) / compliance),
  };
}

/** First even modes; b = (L/2)(ρAω²/EI)^¼. */
export function clampedModes(strip: Strip, load: Load, count = KEPT_MODES): SuspendedMode[] {
  const { length, ei, massPerLength } = strip;
  const half = length / 2;
  const own = massPerLength * length;
  const n = load.inertia / own;
  const spring = (load.spring * half * half * half) / (2 * ei);
  const shear = (b: number) => {
    const { s, t, u, v } = beamFunctions(b);
    const pull = n * b - spring / (b * b * b);
    return { slopeU: t, slopeV: u, shearU: v + pull * u, shearV: s + pull * v };
  };
  const roots = firstRoots((b) => {
    const { slopeU, slopeV, shearU, shearV } = shear(b);
    return slopeU * shearV - slopeV * shearU;
  }, count);
  return roots.map((b) => {
    const { slopeU, slopeV } = shear(b);
    const line = clampedLine(b, slopeV, -slopeU);
    const { area, square } = integralsOf(line);
    const middle = line(1).value;
    const size = square + n * middle * middle;
    const scale = (middle < 0 ? -1 : 1) * Math.sqrt(n / size);
    return {
      omega: b * b * Math.sqrt(ei / (massPerLength * half * half * half * half)),
      shape: scale * middle,
      participation: (area + (load.weight / own) * middle) / (size * scale),
      // Gravity along the arm stretches one half and presses the other.
      stretch: 0,
      drawn: drawn((u) => scale * line(2 * Math.min(u, 1 - u)).value),
    };
  });
}
