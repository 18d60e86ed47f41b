/**
 * An arm with a mass at its end as a sum of bending modes, against the beam itself: roots of the frequency equation from "Frequency
 * Equation of Flexural Vibrating Cantilever Beam Considering the Rotary Inertial Moment of an Attached Mass", Mathematical
 * Problems in Engineering 2017, 1568019, table 1; static deflection from W. C. Young, Roark's Formulas for Stress and Strain, beam
 * table (from memory): mL³/3EI for the mass, ρAL⁴/8EI for the beam's own weight.
 */
import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY as G, rowsOf, scenario } from './scenario-run.ts';

/** E I, ρA, length; the mass at the end equals that of the beam. */
const EI = 0.35;
const RHO_A = 0.157;
const L = 0.2;
const M = RHO_A * L;

/** (βL)² of modes 1 to 5 for equal masses. */
const PUBLISHED = [1.557298, 16.25009, 50.89584, 105.1983, 179.232] as const;

/** 1 + cos b cosh b − b(sin b cosh b − cos b sinh b) */
const frequencyEquation = (b: number): number =>
  1 + Math.cos(b) * Math.cosh(b) - b * (Math.sin(b) * Math.cosh(b) - Math.cos(b) * Math.sinh(b));

function rootNear(squared: number): number {
  let low = Math.sqrt(squared) - 1e-3;
  let high = Math.sqrt(squared) + 1e-3;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (frequencyEquation(middle) * frequencyEquation(low) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** A mode as the contract wants it, its shape 1 at the end; integrals by Simpson's rule over the exact shape. */
function mode(b: number) {
  const s = (Math.cos(b) + Math.cosh(b)) / (Math.sin(b) + Math.sinh(b));
  const raw = (u: number): number => Math.cosh(b * u) - Math.cos(b * u) - s * (Math.sinh(b * u) - Math.sin(b * u));
  const shape = (u: number): number => raw(u) / raw(1);
  const n = 2000;
  let area = 0;
  let square = 0;
  for (let i = 0; i <= n; i += 1) {
    const weight = (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) / (3 * n);
    area += weight * shape(i / n);
    square += weight * shape(i / n) ** 2;
  }
  const modalMass = RHO_A * L * square + M;
  return {
    naturalFrequency: (b * b * Math.sqrt(EI / RHO_A)) / (L * L) / (2 * Math.PI),
    dampingRatio: 0,
    participation: (RHO_A * L * area + M) / modalMass,
    shape: 1,
    modalMass,
  };
}

const roots = PUBLISHED.map(rootNear);
const modes = roots.slice(0, 4).map(mode);
/** S: tip deflection per unit specific force [s²]. */
const S = (M * L ** 3) / (3 * EI) + (RHO_A * L ** 4) / (8 * EI);
const compliance = ({ participation, naturalFrequency }: (typeof modes)[number]): number =>
  participation / (2 * Math.PI * naturalFrequency) ** 2;
const arm = {
  name: 'arm',
  axis: [0, 1, 0],
  naturalFrequency: modes[0]!.naturalFrequency,
  dampingRatio: 0,
  modes,
  staticRemainder: S - modes.reduce((sum, one) => sum + compliance(one), 0),
};

/** Amplitude of the tip against the clamp, per unit base acceleration at Ω: the beam's own equation, solved by its ends. */
function beamResponse(drive: number): number {
  // EI w⁗ − ρAΩ²w = −ρA, w = particular + c₁(cosh − cos) + c₂(sinh − sin) + particular's share; w(0) = w′(0) = w″(L) = 0,
  // EI w‴(L) = M(1 − Ω²w(L)) with the base acceleration 1 toward +.
  const k = (drive * drive * RHO_A) / EI;
  const b = Math.sqrt(Math.sqrt(k)) * L;
  const p = 1 / (drive * drive);
  const [ch, c, sh, s] = [Math.cosh(b), Math.cos(b), Math.sinh(b), Math.sin(b)];
  // w = p(1 − (cosh + cos)/2) + c₁(cosh − cos) + c₂(sinh − sin), argument bu
  const bend = (cosh: number, cos: number): number => -(p / 2) * (cosh - cos);
  // w″: −p/2(cosh − cos) + c₁(cosh + cos) + c₂(sinh + sin) = 0
  // w‴: −p/2(sinh + sin) + c₁(sinh − sin) + c₂(cosh + cos) = (M L³/(EI b³))(1 − Ω²w)
  const q = (M * L ** 3) / (EI * b ** 3);
  const tip = (c1: number, c2: number): number => p * (1 - (ch + c) / 2) + c1 * (ch - c) + c2 * (sh - s);
  const shear = (c1: number, c2: number): number =>
    -(p / 2) * (sh + s) + c1 * (sh - s) + c2 * (ch + c) - q * (1 - drive * drive * tip(c1, c2));
  const a11 = ch + c;
  const a12 = sh + s;
  const r1 = -bend(ch, c);
  const a21 = shear(1, 0) - shear(0, 0);
  const a22 = shear(0, 1) - shear(0, 0);
  const r2 = -shear(0, 0);
  const determinant = a11 * a22 - a12 * a21;
  return tip((r1 * a22 - a12 * r2) / determinant, (a11 * r2 - a21 * r1) / determinant);
}

describe('an arm with as heavy a mass at its end', () => {
  it('has the published roots', () => {
    roots.forEach((b, i) => expect(Math.abs((b * b) / PUBLISHED[i]! - 1)).toBeLessThan(5e-7));
  });

  it('sags under its weight by g(mL³/3EI + ρAL⁴/8EI), and reads g', () => {
    const rows = rowsOf(scenario({ duration: 0.1, elements: [arm], motions: [{ kind: 'held', from: 0 }] }));
    rows.column('arm_deflection_m').forEach((x) => expect(Math.abs(x / (-G * S) - 1)).toBeLessThan(1e-12));
  });

  it.for([0.3, 0.7, 1.6, 4, 8])('shaken at %d of its first frequency answers like the beam', (ratio) => {
    const drive = ratio * modes[0]!.naturalFrequency;
    const damped = { ...arm, dampingRatio: 0.02, modes: modes.map((one) => ({ ...one, dampingRatio: 0.02 })) };
    const perPeriod = 64;
    const lead = Math.ceil((Math.log(1e5) / (0.02 * 2 * Math.PI * modes[0]!.naturalFrequency)) * drive) * perPeriod;
    const rows = rowsOf(
      scenario({
        duration: (lead + perPeriod) / (drive * perPeriod),
        tick: 1 / 1777,
        record: { rate: drive * perPeriod },
        elements: [{ ...damped, axis: [1, 0, 0] }],
        motions: [{ kind: 'shake', from: 0, axis: [1, 0, 0], sine: { frequency: drive, amplitude: 1 } }],
      }),
    );
    const x = rows.column('arm_deflection_m').slice(lead, lead + perPeriod);
    let inPhase = 0;
    x.forEach((value, k) => {
      inPhase += (2 / perPeriod) * value * Math.sin((2 * Math.PI * k) / perPeriod);
    });
    const exact = beamResponse(2 * Math.PI * drive);
    // The beam is undamped; ζ = 0.02, without which the free swing would not die, takes (2ζr/(1 − r²))² off the part in phase of a
    // mode: 3.0e-3 at 0.7, found 3.0e-3. What modes 5 and on lack is 1e-6.
    expect(Math.abs(inPhase / exact - 1)).toBeLessThan(3.5e-3);
  });
});
