/**
 * Suspensions against handbooks. Beam roots: R. D. Blevins, Formulas for Natural Frequency and Mode Shape, beam tables
 * (clamped–free, clamped–clamped; from memory). With a mass at the end: "Frequency Equation of Flexural Vibrating Cantilever
 * Beam Considering the Rotary Inertial Moment of an Attached Mass", Mathematical Problems in Engineering 2017, 1568019,
 * table 1; with rotary inertia its equation, solved and confirmed by finite elements. mechanics.json: roots by SciPy
 * (12 digits). Static values: W. C. Young, Roark's Formulas for Stress and Strain (from memory).
 */
import { describe, expect, it } from 'vitest';
import type { MaterialSpec } from '../../src/contract/design.ts';
import { armModes } from '../../src/design/arm.ts';
import { clampedArm, clampedModes } from '../../src/design/clamped-arm.ts';
import { coilModes, coilSpring } from '../../src/design/coil-spring.ts';
import { foldedBeams } from '../../src/design/folded-beams.ts';
import type { Load, SuspendedMode } from '../../src/design/suspended.ts';
import { bendingError } from '../../src/design/warnings.ts';
import { ARM, apart, CLAMPED, COIL, design, FOLDED, G, ON_ARM } from '../design/bench.ts';
import mechanics from './mechanics.json' with { type: 'json' };

/** EI = ρA = L = 1: ω = b². */
const UNIT = { length: 1, ei: 1, massPerLength: 1, stressPerMoment: 1 };
const loaded = (inertia: number, turning = 0): Load => ({ inertia, weight: inertia, turning, spring: 0 });
const roots = (modes: readonly SuspendedMode[]): number[] => modes.map(({ omega }) => Math.sqrt(omega));

function near(found: readonly number[], published: readonly number[], tolerance: number): void {
  published.forEach((value, i) => expect(apart(found[i]!, value)).toBeLessThan(tolerance));
}

describe('an arm', () => {
  it('with next to no mass has Blevins’s roots 1.87510, 4.69409, 7.85476', () => {
    // A mass of 1e-9 of the arm lowers them by as much; the table has six digits.
    near(roots(armModes(UNIT, 0, loaded(1e-9))), [1.8751, 4.69409, 7.85476], 3e-6);
  });

  it('with as heavy a mass has the published (βL)² of five modes', () => {
    const squares = armModes(UNIT, 0, loaded(1), 5).map(({ omega }) => omega);
    near(squares, [1.557298, 16.25009, 50.89584, 105.1983, 179.232], 5e-7);
  });

  it.for(mechanics.cantilever_tip_mass.cases.filter((one) => one.tip_mass_over_beam_mass > 0))(
    'with a mass of $tip_mass_over_beam_mass of its own has the roots of mechanics.json',
    ({ tip_mass_over_beam_mass: n, betaL }) => near(roots(armModes(UNIT, 0, loaded(n), 4)), betaL, 2e-11),
  );

  it.for([
    [1, 0.05, [1.221088, 2.858029, 5.059219]],
    [2, 0.1, [1.050346, 2.483495, 4.909565]],
  ] as const)(
    'with mass %d and rotary inertia %d of its own has the published equation’s roots',
    ([n, j, published]) => {
      near(roots(armModes(UNIT, 0, loaded(n, j))), published, 5e-7);
    },
  );

  it('whose mass sits 0.1 L beyond its end swings 11 % slower', () => {
    // Heavy mass: √((1/3 + ε + ε²)·3), 0.869 for ε = 0.1 by the static stiffness; with mass n = 2 found 0.886.
    const [[at], [beyond]] = [roots(armModes(UNIT, 0, loaded(2))), roots(armModes(UNIT, 0.1, loaded(2)))] as [
      number[],
      number[],
    ];
    expect(Math.abs(1 - (beyond! / at!) ** 2 - 0.11)).toBeLessThan(0.02);
  });

  it.for(mechanics.beams)(
    'of $L_m m with $m_tip_kg kg has the frequency of mechanics.json and the stated error of the shortcut',
    (beam) => {
      if (beam.m_tip_kg === 0) return;
      const material: MaterialSpec = {
        youngsModulus: beam.E_Pa,
        density: beam.rho_kg_m3,
        strength: 1e9,
        shearModulus: 8e10,
        lossFactor: 0.02,
      };
      const suspension = { ...ARM, material, length: beam.L_m, width: beam.b_m, thickness: beam.h_m };
      const { naturalFrequency, masslessFrequency, masslessError, suspensionMass } = design({
        proofMass: { mass: beam.m_tip_kg },
        suspension,
        damping: {},
      }).figures;
      expect(apart(naturalFrequency, beam.f1_hz_exact_euler_bernoulli)).toBeLessThan(1e-11);
      expect(apart(masslessFrequency, beam.f1_hz_massless_beam!)).toBeLessThan(1e-11);
      expect(apart(suspensionMass, beam.beam_mass_kg)).toBeLessThan(1e-11);
      expect(apart(1 + masslessError, beam.f1_hz_massless_beam! / beam.f1_hz_exact_euler_bernoulli)).toBeLessThan(
        1e-10,
      );
    },
  );

  it('sags and is stressed as Roark says: 3EI/L³, wL⁴/8EI, FL + wL²/2 over wt²/6', () => {
    const [e, rho, l, w, t, m] = [206e9, 7850, 0.2, 0.02, 0.001, 0.05];
    const ei = (e * w * t ** 3) / 12;
    const q = rho * w * t;
    const figures = design(ON_ARM).figures;
    expect(apart(figures.stiffness, (3 * ei) / l ** 3)).toBeLessThan(1e-12);
    expect(apart(figures.sagPerG, G * ((m * l ** 3) / (3 * ei) + (q * l ** 4) / (8 * ei)))).toBeLessThan(1e-12);
    expect(apart(figures.turnPerG, G * ((m * l ** 2) / (2 * ei) + (q * l ** 3) / (6 * ei)))).toBeLessThan(1e-12);
    expect(apart(figures.stressPerG, (G * (m * l + (q * l * l) / 2) * 6) / (w * t * t))).toBeLessThan(1e-12);
  });

  it.for([
    [0.2, 0.06636],
    [0.4, 0.13098],
    [0.6, 0.19235],
    [0.8, 0.24945],
    [1, 0.30172],
  ] as const)(
    'under FL²/EI = %d bends by Mattiasson’s %d of its length, less than reckoned by what is stated',
    ([load, exact]) => {
      // K. Mattiasson, Int. J. Numer. Meth. Eng. 17 (1981) 145, table of the cantilever with an end load (from memory).
      const reckoned = load / 3;
      expect(Math.abs(reckoned / exact - 1 - bendingError(reckoned))).toBeLessThan(0.007);
    },
  );

  it('stands up to Euler’s load π²EI/4L², 1.3 % beyond by Rayleigh’s quotient', () => {
    const [mode] = armModes(UNIT, 0, loaded(1e6));
    const load = ((mode!.omega * mode!.omega) / mode!.stretch) * 1e6;
    expect(load / (Math.PI ** 2 / 4)).toBeGreaterThan(1);
    expect(apart(load, Math.PI ** 2 / 4)).toBeLessThan(0.0135);
  });
});

describe('an arm clamped at both ends', () => {
  it('with next to no mass has Blevins’s even roots 4.73004, 10.99561, 17.27876', () => {
    const found = roots(clampedModes(UNIT, loaded(1e-9)));
    near(found, [4.73004, 10.99561, 17.27876], 1e-6);
  });

  it('has the stiffness 192EI/L³, the sag wL⁴/384EI and the moments FL/8 + wL²/12', () => {
    const [e, rho, l, w, t, m] = [206e9, 7850, 0.2, 0.02, 0.0005, 0.05];
    const ei = (e * w * t ** 3) / 12;
    const q = rho * w * t;
    const { pointCompliance, compliance, stress } = clampedArm(CLAMPED, loaded(m));
    expect(apart(1 / pointCompliance, (192 * ei) / l ** 3)).toBeLessThan(1e-12);
    expect(apart(compliance, (m * l ** 3) / (192 * ei) + (q * l ** 4) / (384 * ei))).toBeLessThan(1e-12);
    expect(apart(stress, ((6 / (w * t * t)) * m * l) / 8 + ((6 / (w * t * t)) * q * l * l) / 12)).toBeLessThan(1e-12);
  });

  it('stiffens like Roark’s held beam, y + (A/16I)y³ = WL³/2π⁴EI', () => {
    // Roark's line is a cosine, ours that of the force in the middle: 0.0600 against 0.0625, and 192 against 2π⁴ = 194.8.
    const { cubic, pointCompliance } = clampedArm(CLAMPED, loaded(1));
    const areaOverInertia = 12 / CLAMPED.thickness ** 2;
    expect(apart(cubic * pointCompliance, areaOverInertia / 16)).toBeLessThan(0.045);
    const ei = (206e9 * 0.02 * 0.0005 ** 3) / 12;
    expect(apart(1 / pointCompliance, (2 * Math.PI ** 4 * ei) / 0.2 ** 3)).toBeLessThan(0.015);
  });
});

describe('a coil spring', () => {
  it('has the rate of Shigley’s worked example: 0.037 in wire, 0.400 in coil, 10.5 turns, 11.85 Mpsi: 4.13 lbf/in', () => {
    // J. E. Shigley, C. R. Mischke, R. G. Budynas, Mechanical Engineering Design, example 10-1 (from memory).
    const [inch, psi, pound] = [0.0254, 6894.757, 4.4482216];
    const material: MaterialSpec = {
      youngsModulus: 2e11,
      density: 7850,
      strength: 1e9,
      shearModulus: 11.85e6 * psi,
      lossFactor: 0,
    };
    const spec = { ...COIL, material, wire: 0.037 * inch, diameter: 0.4 * inch, turns: 10.5 };
    expect(apart(inch / (coilSpring(spec, loaded(1)).pointCompliance * pound), 4.13)).toBeLessThan(0.002);
  });

  it('is a rod with a mass at its end: β tan β = 1 has the roots 0.8603, 3.4256, 6.4373', () => {
    // M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 4.20 (x tan x = λ).
    const betas = coilModes(1, 1, loaded(1)).map(({ omega }) => omega);
    betas.forEach((beta, i) => expect(Math.abs(beta - [0.8603, 3.4256, 6.4373][i]!)).toBeLessThan(6e-5));
  });

  it('with a heavy mass swings as if a third of it moved along', () => {
    const [mode] = coilModes(1, 0.05, loaded(1));
    // Rayleigh's third is short by µ²/45 of ω², µ = 0.05 the share of the spring's mass.
    expect(apart(mode!.omega, Math.sqrt(1 / (1 + 0.05 / 3)))).toBeLessThan(0.05 ** 2 / 45);
  });

  it('its modes together give k = mg + half its own weight', () => {
    const modes = coilModes(30, 0.02, loaded(0.03), 200);
    const sum = modes.reduce((all, { shape, participation, omega }) => all + (shape * participation) / omega ** 2, 0);
    expect(apart(sum, 0.04 / 30)).toBeLessThan(1e-7);
  });
});

describe('a mass on four folds', () => {
  it('has the stiffness 2Etw³/L³ of a folded comb drive', () => {
    // R. Legtenberg, A. W. Groeneveld, M. Elwenspoek, J. Micromech. Microeng. 6 (1996) 320 (from memory): k = 2Ehb³/L³.
    const { pointCompliance } = foldedBeams(FOLDED, loaded(1e-9));
    expect(apart(1 / pointCompliance, 2 * 169e9 * 2.5e-5 * (2e-6 / 2e-4) ** 3)).toBeLessThan(1e-12);
  });

  it('moves along a quarter of the links and 12/35 of the beams, and sags by S = Γ/ω²', () => {
    const { modes, compliance, ownMass, pointCompliance } = foldedBeams({ ...FOLDED, linkMass: 2e-10 }, loaded(1e-9));
    const moving = 1e-9 + 0.25 * 2e-10 + 0.3429 * ownMass;
    expect(apart(modes[0]!.omega ** 2, 1 / (pointCompliance * moving))).toBeLessThan(1e-5);
    expect(apart((modes[0]!.shape * modes[0]!.participation) / modes[0]!.omega ** 2, compliance)).toBeLessThan(1e-12);
  });
});
