/**
 * Dampers, fluids and noise against published values. mechanics.json: Blech's and Bao's films (double series by NumPy, confirmed by
 * finite differences of Reynolds' equation), Couette flow, eddy currents, thermal noise (8 digits or more).
 */
import { describe, expect, it } from 'vitest';
import type { LiquidSpec } from '../../src/contract/design.ts';
import { eddyCurrents, magnetField, skinDepth } from '../../src/design/eddy-currents.ts';
import { squeezed } from '../../src/design/gas-film.ts';
import { airDensity, airViscosity, meanFreePath, rarefiedViscosity } from '../../src/design/gases.ts';
import { immersed, sliding } from '../../src/design/liquid-damper.ts';
import { fluidOf } from '../../src/design/liquids.ts';
import { MATERIALS, materialOf } from '../../src/design/materials.ts';
import { thermalDeflection, thermalNoiseDensity } from '../../src/design/thermal.ts';
import { apart, G, ROOM_TEMPERATURE } from '../design/bench.ts';
import mechanics from './mechanics.json' with { type: 'json' };

const liquid = (name: LiquidSpec['liquid'], share = 1, nominalViscosity = 3.5e-4): LiquidSpec => ({
  liquid: name,
  share,
  nominalViscosity,
});
const viscosity = (spec: LiquidSpec, celsius: number): number => fluidOf(spec, celsius + 273.15).viscosity;

describe('viscosity and density', () => {
  it('of water are those of IAPWS', () => {
    // IAPWS R12-08 (viscosity) and IAPWS-95 (density) at 101325 Pa by the library chemicals 1.5 [°C, mPa·s, kg/m³]; the law claims 1 %.
    for (const [celsius, mPas, density] of [
      [0.01, 1.791132, 999.8438],
      [20, 1.001596, 998.2072],
      [40, 0.6527287, 992.2164],
      [60, 0.4660351, 983.1958],
      [80, 0.3540507, 971.7904],
    ] as const) {
      expect(apart(viscosity(liquid('water'), celsius), mPas / 1000)).toBeLessThan(0.005);
      expect(apart(fluidOf(liquid('water'), celsius + 273.15).density, density)).toBeLessThan(0.001);
    }
  });

  it('of glycerol with water are those of Segur and Oberstar', () => {
    // J. B. Segur, H. E. Oberstar, Ind. Eng. Chem. 43 (1951) 2117 (from memory) [share, mPa·s at 20 °C, at 40 °C]; the law is within 5 %.
    for (const [share, at20, at40] of [
      [0.5, 6, 3.1],
      [0.6, 10.8, 5.08],
      [0.8, 60.1, 20.8],
      [0.9, 219, 60],
      [1, 1410, 284],
    ] as const) {
      expect(apart(viscosity(liquid('glycerol', share), 20), at20 / 1000)).toBeLessThan(0.06);
      expect(apart(viscosity(liquid('glycerol', share), 40), at40 / 1000)).toBeLessThan(0.06);
    }
    expect(apart(fluidOf(liquid('glycerol'), 293.15).density, 1261)).toBeLessThan(0.003);
  });

  it('of silicone oil fall by 0.60 from 38 to 99 °C', () => {
    // Viscosity-temperature coefficient 1 − ν(210 °F)/ν(100 °F), common data sheets: 0.60 ± 0.02.
    const kinematic = (celsius: number): number => {
      const fluid = fluidOf(liquid('silicone oil'), celsius + 273.15);
      return fluid.viscosity / fluid.density;
    };
    expect(Math.abs(1 - kinematic(98.9) / kinematic(37.8) - 0.6)).toBeLessThan(0.02);
    expect(apart(kinematic(25), 3.5e-4)).toBeLessThan(0.005);
  });

  it('of castor and olive oil pass through their tables and fall all the way', () => {
    expect(apart(viscosity(liquid('castor oil'), 20), 0.986)).toBeLessThan(1e-12);
    expect(apart(viscosity(liquid('olive oil'), 40), 0.0363)).toBeLessThan(1e-12);
    // 25 °C, CRC Handbook: castor oil about 0.65 Pa·s (from memory, 5 %).
    expect(apart(viscosity(liquid('castor oil'), 25), 0.65)).toBeLessThan(0.05);
  });

  it('of air are those of the standard atmosphere', () => {
    expect(apart(airViscosity(288.15), 1.7894e-5)).toBeLessThan(3e-5);
    expect(apart(airViscosity(293.15), 1.8134e-5)).toBeLessThan(3e-5);
    expect(apart(airDensity(288.15, 101325), 1.225)).toBeLessThan(1e-4);
    // 65.43 nm at 20 °C, S. G. Jennings, J. Aerosol Sci. 19 (1988) 159 (from memory); he has 0.4987 in the place of ½.
    expect(apart(meanFreePath(293.15, 101325), 65.43e-9)).toBeLessThan(0.008);
  });
});

describe('a gas film', () => {
  it.for(mechanics.squeeze_film.cases)('of $W_m × $L_m m at $gap_m m has Blech’s damping and spring', (film) => {
    const damper = squeezed(
      { plate: [film.L_m, film.W_m], gap: film.gap_m, count: 1, pressure: film.p_Pa },
      film.mu_Pa_s,
    );
    const { columns, rows } = film.frequency_rows;
    const at = (name: string): number => columns.indexOf(name);
    for (const row of rows) {
      const omega = 2 * Math.PI * row[at('f_hz')]!;
      // Their sums end: found 3e-6 at σ = 337.
      expect(apart(damper.damping(omega), row[at('c_N_s_per_m')]!)).toBeLessThan(5e-6);
      expect(apart(damper.spring(omega), row[at('k_gas_N_per_m')]!)).toBeLessThan(5e-6);
    }
    expect(apart(damper.damping(1e-3), film.c_incompressible_N_s_per_m)).toBeLessThan(2e-6);
    expect(apart(rarefiedViscosity(film.mu_Pa_s, film.knudsen_mfp_over_gap), film.mu_effective_Pa_s)).toBeLessThan(
      1e-10,
    );
  });

  it.each([
    [0.01, 100],
    [0.02, 300],
    [0.1, 1e3],
    [1, 1e4],
  ])('slender or quick (W/L %d, σ %d): Blech’s double series, summed out', (ratio, sigma) => {
    // σ = ω with W = ratio, L = 1, p = 1, h = 1e-3 and this viscosity.
    const viscosity = 1e-6 / (12 * ratio * ratio);
    const damper = squeezed({ plate: [ratio, 1], gap: 1e-3, count: 1, pressure: 1 }, viscosity);
    let c = 0;
    let k = 0;
    const bend = (sigma / Math.PI ** 2) ** 2;
    const LAST = 999;
    for (let m = 1; m <= LAST; m += 2)
      for (let n = 1; n * ratio <= LAST; n += 2) {
        const a = m * m + (ratio * n) ** 2;
        const term = 1 / ((m * n) ** 2 * (a * a + bend));
        c += a * term;
        k += term;
      }
    const force = (64 * ratio) / (Math.PI ** 6 * 1e-3);
    // Left out by the double series: (π²/48)/LAST³ each of c, found 1.1e-5 of it at σ = 1e4.
    expect(apart(damper.damping(sigma), force * c)).toBeLessThan(2e-5);
    expect(apart(damper.spring(sigma), (force * sigma * sigma * k) / Math.PI ** 2)).toBeLessThan(1e-6);
  });

  it('square and slow has Bao’s 0.42µL⁴/h³; quick it is a closed cushion, pA/h', () => {
    const damper = squeezed({ plate: [1e-3, 1e-3], gap: 2e-6, count: 1, pressure: 1e5 }, 1.8e-5);
    expect(apart(damper.damping(1), (0.42 * 1.8e-5 * 1e-12) / 8e-18)).toBeLessThan(0.005);
    // At σ = 1e5 a border of width W/√σ still gives way: some per cent.
    const quick = (1e5 * 1e5 * 4e-12) / (12 * 1.8e-5 * 1e-6);
    expect(apart(damper.spring(quick), (1e5 * 1e-6) / 2e-6)).toBeLessThan(0.02);
  });
});

describe('a plate that slides', () => {
  it.for(mechanics.couette)('of $area_m2 m² at $gap_m m is Couette’s', (plate) => {
    const damper = sliding(
      { viscosity: plate.mu_Pa_s, density: 1 },
      { area: plate.area_m2, gap: plate.gap_m, count: 1 },
    );
    expect(apart(damper.damping(1e-3), plate.c_N_s_per_m_mu_A_over_gap)).toBeLessThan(1e-9);
    // A third of the liquid in the gap moves along.
    expect(apart(damper.addedMass(1e-3), (plate.area_m2 * plate.gap_m) / 3)).toBeLessThan(1e-9);
  });

  it('far from its wall drags Stokes’s layer along, √(ρµω/2) per area', () => {
    const damper = sliding({ viscosity: 1e-3, density: 1000 }, { area: 1, gap: 0.1, count: 1 });
    expect(apart(damper.damping(100), Math.sqrt((1000 * 1e-3 * 100) / 2))).toBeLessThan(1e-12);
  });
});

describe('a ball in a liquid', () => {
  const radius = 0.01;
  const volume = (4 / 3) * Math.PI * radius ** 3;
  it('slow has Stokes’s 6πµR, quick half the displaced mass along', () => {
    const thick = immersed({ viscosity: 10, density: 1000 }, volume);
    expect(apart(thick.damping(1e-6), 6 * Math.PI * 10 * radius)).toBeLessThan(1e-4);
    const thin = immersed({ viscosity: 1e-9, density: 1000 }, volume);
    expect(apart(thin.addedMass(1e3), (1000 * volume) / 2)).toBeLessThan(1e-4);
  });

  it('feels the two as parts of one law: c + iωm_a = 6πµR(1 + (1 + i)R/δ + 2i(R/δ)²/9)', () => {
    // Stokes (1851), as complex impedance 6πµR(1 + √(iωR²/ν) + iωR²/9ν).
    const [mu, rho, omega] = [1e-3, 998, 20];
    const damper = immersed({ viscosity: mu, density: rho }, volume);
    const s = (omega * radius ** 2 * rho) / mu;
    const scale = 6 * Math.PI * mu * radius;
    expect(apart(damper.damping(omega), scale * (1 + Math.sqrt(s / 2)))).toBeLessThan(1e-12);
    expect(apart(omega * damper.addedMass(omega), scale * (Math.sqrt(s / 2) + s / 9))).toBeLessThan(1e-12);
  });
});

describe('eddy currents', () => {
  it.for(mechanics.eddy_current.cases)('at $B_T T are those of mechanics.json', (plate) => {
    const material = { ...MATERIALS.copper, conductivity: plate.sigma_S_per_m };
    const damper = eddyCurrents(
      {
        material,
        thickness: plate.thickness_m,
        area: plate.area_m2,
        field: plate.B_T,
        gap: 1,
        fittedFactor: plate.alpha,
      },
      ROOM_TEMPERATURE,
    );
    expect(apart(damper.damping(1), plate.c_N_s_per_m)).toBeLessThan(1e-12);
  });

  it('of a magnet: half its remanence at the face of a long one, a dipole far off', () => {
    expect(apart(magnetField(1.2, 0.005, 10, 0), 0.6)).toBeLessThan(1e-6);
    // B = µ₀·2M/4πz³ with the moment M = B_rV/µ₀; from the middle of the magnet, the next term is a share 2·(R/z)² or so.
    const [radius, length, z] = [0.005, 0.01, 1];
    const dipole = (1.2 * Math.PI * radius ** 2 * length) / (2 * Math.PI * z ** 3);
    expect(apart(magnetField(1.2, radius, length, z - length / 2), dipole)).toBeLessThan(1e-4);
  });

  it('fill copper to 9.3 mm at 50 Hz, and fall by 7.3 % from 20 to 40 °C', () => {
    // Skin depth of copper at mains frequency, handbooks of electrical engineering: 9.3 mm; rise 0.393 %/K, IEC 60028.
    const plate = {
      material: 'copper',
      thickness: 0.002,
      area: 1e-4,
      field: 0.3,
      gap: 0.005,
      fittedFactor: 0.5,
    } as const;
    expect(apart(skinDepth(plate, 293.15, 2 * Math.PI * 50), 9.3e-3)).toBeLessThan(0.01);
    const warm = eddyCurrents(plate, 313.15).damping(1) / eddyCurrents(plate, 293.15).damping(1);
    expect(apart(warm, 1 / 1.0786)).toBeLessThan(1e-9);
  });
});

describe('thermal noise', () => {
  it.for(mechanics.brownian.cases)('of $m_kg kg at $f0_hz Hz, Q $Q, is that of mechanics.json', (one) => {
    const mode = {
      naturalFrequency: one.f0_hz,
      dampingRatio: 0.5 / one.Q,
      participation: 1,
      shape: 1,
      modalMass: one.m_kg,
    };
    const omega = 2 * Math.PI * one.f0_hz;
    const density = thermalNoiseDensity([mode], 1 / (omega * omega), one.T_K);
    expect(apart(density, one.a_n_m_per_s2_per_rtHz)).toBeLessThan(1e-11);
    expect(apart((density / G) * 1e6, one.a_n_ug_per_rtHz)).toBeLessThan(1e-10);
    expect(apart(thermalDeflection([mode], one.T_K), one.x_rms_m_sqrt_kT_over_k)).toBeLessThan(1e-11);
  });
});

describe('the table of materials', () => {
  it.for(['spring steel', 'brass', 'aluminium', 'copper', 'acrylic'] as const)(
    '%s has the shear modulus of an isotropic body',
    (name) => {
      const { youngsModulus, shearModulus } = materialOf(name);
      const poisson = youngsModulus / (2 * shearModulus) - 1;
      expect(poisson).toBeGreaterThan(0.26);
      expect(poisson).toBeLessThan(0.42);
    },
  );

  it('silicon has the moduli of its crystal in either direction', () => {
    // Elastic constants of silicon, J. J. Wortman, R. A. Evans, J. Appl. Phys. 36 (1965) 153: 165.7, 63.9, 79.6 GPa (from memory).
    const [c11, c12, c44] = [165.7e9, 63.9e9, 79.6e9];
    const s11 = (c11 + c12) / ((c11 - c12) * (c11 + 2 * c12));
    const s12 = -c12 / ((c11 - c12) * (c11 + 2 * c12));
    expect(apart(MATERIALS['silicon 100'].youngsModulus, 1 / s11)).toBeLessThan(0.005);
    expect(apart(MATERIALS['silicon 110'].youngsModulus, 1 / (s11 - (s11 - s12 - 1 / (2 * c44)) / 2))).toBeLessThan(
      0.005,
    );
    expect(apart(MATERIALS['silicon 110'].shearModulus, (c11 - c12) / 2)).toBeLessThan(0.005);
    expect(apart(MATERIALS['silicon 100'].shearModulus, c44)).toBeLessThan(0.005);
  });
});
