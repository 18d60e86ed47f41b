/** Dry air as an ideal gas. */
import { pow } from '../numerics/transcendental.ts';

/** Gas constant [J/(mol·K)], exact in the SI, and the molar mass of dry air [kg/mol] (ISO 2533). */
const GAS_CONSTANT = 8.31446261815324;
const AIR_MOLAR_MASS = 0.0289644;

/** Viscosity [Pa·s] by temperature [K]: 1.458e-6·T^1.5/(T + 110.4) (U.S. Standard Atmosphere, 1976; ISO 2533). */
export function airViscosity(temperatureK: number): number {
  return (1.458e-6 * temperatureK * Math.sqrt(temperatureK)) / (temperatureK + 110.4);
}

/** [kg/m³] */
export function airDensity(temperatureK: number, pressurePa: number): number {
  return (pressurePa * AIR_MOLAR_MASS) / (GAS_CONSTANT * temperatureK);
}

/** Mean free path [m], (µ/p)√(πRT/2M): S. G. Jennings, J. Aerosol Sci. 19 (1988) 159 (from memory). */
export function meanFreePath(temperatureK: number, pressurePa: number): number {
  const speed = Math.sqrt((Math.PI * GAS_CONSTANT * temperatureK) / (2 * AIR_MOLAR_MASS));
  return (airViscosity(temperatureK) * speed) / pressurePa;
}

/** Knudsen number up to which the rarefied viscosity stands [–], as its authors state. */
export const MOST_KNUDSEN = 880;

/**
 * Viscosity of a film whose mean free path is Kn of its height: µ/(1 + 9.638Kn^1.159), T. Veijola et al., Sensors and
 * Actuators A 48 (1995) 239–248; within 5 % of the exact flow.
 */
export function rarefiedViscosity(viscosity: number, knudsen: number): number {
  return viscosity / (1 + 9.638 * pow(knudsen, 1.159));
}
