/**
 * An arm clamped at one end with a mass at the other, its centre e beyond the end; Euler and Bernoulli's beam.
 *     EI w⁗ = ω²ρA w;  w(0) = w′(0) = 0;  at the end, w_c = w + e w′ the mass's centre:
 *     EI w‴ = (k_s − mω²) w_c,   EI w″ = ω²J w′ − e (k_s − mω²) w_c
 * With e = k_s = 0 the roots are those of 1 + cC + nb(cS − sC) − jb³(sC + cS) + njb⁴(1 − cC) = 0, n = m/ρAL, j = J/ρAL³
 * ("Frequency Equation of Flexural Vibrating Cantilever Beam Considering the Rotary Inertial Moment of an Attached
 * Mass", Mathematical Problems in Engineering 2017, 1568019). The pick-off is at the mass's centre:
 *     Γ = (∫ρAw + m_w w_c)/M,   M = ∫ρAw² + m w_c² + J w′²
 * Static lines by the handbook: W. C. Young, Roark's Formulas for Stress and Strain, beam table (from memory).
 *
 * Gravity g along the arm, pulling away from the clamp, adds to ω² (Rayleigh's quotient with the level mode: the mass
 * rises by ½∫w′² + ½e w′²; exact to first order in g, and for a standing arm on the stiff side, 1.3 % at Euler's load):
 *     g·[m_w(∫w′² + e w′(L)²) + ∫ρA(L − x)w′²]/M
 */
import type { ArmSpec } from '../contract/design.ts';
import { beamFunctions, clampedLine, integralsOf } from './beam-functions.ts';
import { firstRoots } from './first-roots.ts';
import { materialOf } from './materials.ts';
import { drawn, KEPT_MODES, type Load, type Strip, type Suspended, type SuspendedMode, stripOf } from './suspended.ts';

export function arm(spec: ArmSpec, load: Load, count = KEPT_MODES): Suspended {
  const material = materialOf(spec.material);
  const strip = stripOf(spec, material);
  const { length: l, ei, massPerLength, stressPerMoment } = strip;
  const e = spec.beyondEnd;
  const m = load.weight;
  // Under its own weight the arm sags by q(x⁴/24 − Lx³/6 + L²x²/4)/EI, under that of the mass by m(Lx²/2 − x³/6 + ex²/2)/EI.
  const line = (x: number): number =>
    (m * x * x * (l / 2 - x / 6 + e / 2) + massPerLength * x * x * ((x * x) / 24 - (l * x) / 6 + (l * l) / 4)) / ei;
  const turn = (m * l * (l / 2 + e) + (massPerLength * l * l * l) / 6) / ei;
  const compliance = line(l) + e * turn;
  return {
    modes: armModes(strip, e, load, count),
    compliance,
    pointCompliance: (l * l * l * (1 / 3) + e * l * (l + e)) / ei,
    cubic: 0,
    stress: stressPerMoment * (m * (l + e) + (massPerLength * l * l) / 2),
    stretchStress: 0,
    strength: material.strength,
    turn,
    ownMass: massPerLength * l,
    sag: drawn((u) => line(u * l) / compliance),
  };
}

/** First modes; in b = L·(ρAω²/EI)^¼ and u = x/L. */
export function armModes(strip: Strip, beyondEnd: number, load: Load, count = KEPT_MODES): SuspendedMode[] {
  const { length, ei, massPerLength } = strip;
  const own = massPerLength * length;
  const n = load.inertia / own;
  const j = load.turning / (own * length * length);
  const e = beyondEnd / length;
  const spring = (load.spring * length * length * length) / ei;

  /** What is missing in the shear and the moment at the end, for w = u(bx) and for w = v(bx). */
  const ends = (b: number) => {
    const { s, t, u, v } = beamFunctions(b);
    const pull = n * b - spring / (b * b * b);
    const turning = j * b * b * b;
    const atU = u + e * b * t;
    const atV = v + e * b * u;
    return {
      shearU: v + pull * atU,
      shearV: s + pull * atV,
      momentU: s - turning * t - pull * e * b * atU,
      momentV: t - turning * u - pull * e * b * atV,
    };
  };
  const roots = firstRoots((b) => {
    const { shearU, shearV, momentU, momentV } = ends(b);
    return shearU * momentV - shearV * momentU;
  }, count);

  return roots.map((b) => {
    const { shearU, shearV, momentU, momentV } = ends(b);
    const byShear = Math.abs(shearU) + Math.abs(shearV) > Math.abs(momentU) + Math.abs(momentV);
    const line = byShear ? clampedLine(b, shearV, -shearU) : clampedLine(b, momentV, -momentU);
    const { area, square, bending, bendingAbove } = integralsOf(line);
    const { value, slope } = line(1);
    const centre = value + e * slope;
    const size = square + n * centre * centre + j * slope * slope;
    // Scaled so that the modal mass is the load's inertia.
    const scale = (centre < 0 ? -1 : 1) * Math.sqrt(n / size);
    const weightShare = load.weight / own;
    return {
      omega: b * b * Math.sqrt(ei / (own * length * length * length)),
      shape: scale * centre,
      participation: (area + weightShare * centre) / (size * scale),
      stretch: (weightShare * (bending + e * slope * slope) + bendingAbove) / (size * length),
      drawn: drawn((u) => scale * line(u).value),
    };
  });
}
