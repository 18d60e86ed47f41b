/**
 * Thermal noise of a damped element. Each mode is pushed by white force of one-sided density 4kT·2ζωM; as specific force
 * well below the first frequency, for the single mode, a_n = √(4kTc)/m = √(4kTω₀/mQ): T. B. Gabrielson, IEEE Trans.
 * Electron Devices 40 (1993) 903–909 (from memory). The mean square of each coordinate is kT/Mω² (equipartition).
 */
import type { ModeSpec } from '../contract/run.ts';
import { BOLTZMANN } from '../numerics/boltzmann.ts';

/** [m/s²/√Hz], one-sided; `compliance` is S [s²], temperature in K. */
export function thermalNoiseDensity(modes: readonly ModeSpec[], compliance: number, temperatureK: number): number {
  let square = 0;
  for (const { naturalFrequency, dampingRatio, shape, modalMass } of modes) {
    const omega = 2 * Math.PI * naturalFrequency;
    square += (shape * shape * 8 * BOLTZMANN * temperatureK * dampingRatio) / (modalMass * omega * omega * omega);
  }
  return Math.sqrt(square) / compliance;
}

/** Root of the mean square of the deflection [m]. */
export function thermalDeflection(modes: readonly ModeSpec[], temperatureK: number): number {
  let square = 0;
  for (const { naturalFrequency, shape, modalMass } of modes) {
    const omega = 2 * Math.PI * naturalFrequency;
    square += (shape * shape * BOLTZMANN * temperatureK) / (modalMass * omega * omega);
  }
  return Math.sqrt(square);
}
