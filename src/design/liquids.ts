/**
 * Viscosity and density of liquids by temperature. Formulas and tables from memory of the sources named; errors are
 * those that the sources state.
 */
import type { LiquidSpec } from '../contract/design.ts';
import { exp, ln, pow } from '../numerics/transcendental.ts';

export interface Fluid {
  /** [Pa·s] */
  readonly viscosity: number;
  /** [kg/m³] */
  readonly density: number;
}

const ZERO_CELSIUS = 273.15;

/** Temperatures at which the formulas and tables stand [K]. */
const RANGES: Readonly<Record<LiquidSpec['liquid'], readonly [number, number]>> = {
  water: [273.15, 353.15],
  glycerol: [273.15, 353.15],
  'silicone oil': [253.15, 393.15],
  'castor oil': [283.15, 373.15],
  'olive oil': [283.15, 343.15],
};

export function liquidRange(liquid: LiquidSpec['liquid']): readonly [number, number] {
  return RANGES[liquid];
}

/** At a temperature [K] within the liquid's range. */
export function fluidOf({ liquid, share, nominalViscosity }: LiquidSpec, temperatureK: number): Fluid {
  const celsius = temperatureK - ZERO_CELSIUS;
  switch (liquid) {
    case 'water':
      return { viscosity: waterViscosity(celsius), density: waterDensity(celsius) };
    case 'glycerol':
      return glycerolWater(share, celsius);
    case 'silicone oil': {
      // Density and expansion of polydimethylsiloxane above 5e-5 m²/s, common data sheets.
      const density = 970 / (1 + 9.6e-4 * (celsius - 25));
      return { viscosity: density * siloxaneViscosity(nominalViscosity, celsius), density };
    }
    case 'castor oil':
      return { viscosity: tabled(CASTOR_OIL, temperatureK), density: 961 - 0.66 * (celsius - 20) };
    case 'olive oil':
      return { viscosity: tabled(OLIVE_OIL, temperatureK), density: 912 - 0.66 * (celsius - 20) };
  }
}

/**
 * Viscosity of water [Pa·s], −8 … 150 °C, 1 %: J. Kestin, M. Sokolov, W. A. Wakeham, J. Phys. Chem. Ref. Data 7 (1978) 941.
 *     log₁₀(µ/µ₂₀) = z/(T + 96)·[1.2378 − 1.303e-3z + 3.06e-6z² + 2.55e-8z³],  z = 20 − T,  µ₂₀ = 1.002 mPa·s
 */
function waterViscosity(celsius: number): number {
  const z = 20 - celsius;
  return 1.002e-3 * pow(10, (z / (celsius + 96)) * (1.2378 + z * (-1.303e-3 + z * (3.06e-6 + z * 2.55e-8))));
}

/** Density of water [kg/m³], 0 … 100 °C: N.-S. Cheng, Ind. Eng. Chem. Res. 47 (2008) 3285, eq. 15; 0.1 %. */
function waterDensity(celsius: number): number {
  return 1000 * (1 - pow(Math.abs(celsius - 4) / 622, 1.7));
}

/**
 * Glycerol with water, share C of glycerol by mass, 0 … 100 °C: N.-S. Cheng, Ind. Eng. Chem. Res. 47 (2008) 3285–3288;
 * a few per cent of viscosity.
 *     µ = µ_w^α·µ_g^(1 − α),  α = 1 − C + abC(1 − C)/(aC + b(1 − C)),  a = 0.705 − 0.0017T,  b = (4.9 + 0.036T)a^2.5
 */
function glycerolWater(share: number, celsius: number): Fluid {
  const water = 1.79e-3 * exp(((-1230 - celsius) * celsius) / (36100 + 360 * celsius));
  const glycerol = 12.1 * exp(((-1233 + celsius) * celsius) / (9900 + 70 * celsius));
  const a = 0.705 - 0.0017 * celsius;
  const b = (4.9 + 0.036 * celsius) * pow(a, 2.5);
  const alpha = 1 - share + (a * b * share * (1 - share)) / (a * share + b * (1 - share));
  return {
    viscosity: exp(alpha * ln(water) + (1 - alpha) * ln(glycerol)),
    density: share * (1277 - 0.654 * celsius) + (1 - share) * waterDensity(celsius),
  };
}

/**
 * Kinematic viscosity of polydimethylsiloxane by that at 25 °C [m²/s]: log₁₀ν = 763.1/(273 + T) − 2.559 + log₁₀ν₂₅, in
 * common data sheets for 5e-5 m²/s and more.
 */
function siloxaneViscosity(nominal: number, celsius: number): number {
  return nominal * pow(10, 763.1 / (273 + celsius) - 2.559);
}

type Table = readonly (readonly [number, number])[];

/** [°C, Pa·s]: CRC Handbook of Chemistry and Physics, viscosity of liquids. */
const CASTOR_OIL: Table = [
  [10, 2.42],
  [20, 0.986],
  [30, 0.451],
  [40, 0.231],
  [100, 0.0169],
];
const OLIVE_OIL: Table = [
  [10, 0.138],
  [20, 0.084],
  [40, 0.0363],
  [70, 0.0124],
];

/** Between the values of a table ln µ runs straight in 1/T (Andrade's law). */
function tabled(table: Table, temperatureK: number): number {
  const last = table.length - 2;
  let i = 0;
  while (i < last && temperatureK > table[i + 1]![0] + ZERO_CELSIUS) i += 1;
  const [low, high] = [table[i]!, table[i + 1]!];
  const inverse = (celsius: number): number => 1 / (celsius + ZERO_CELSIUS);
  const share = (1 / temperatureK - inverse(low[0])) / (inverse(high[0]) - inverse(low[0]));
  return exp(ln(low[1]) + share * (ln(high[1]) - ln(low[1])));
}
