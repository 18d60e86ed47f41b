/**
 * Materials at room temperature. All values from memory of the source named; parts differ by 5 % in stiffness, by
 * more in strength and by a multiple in loss, so who builds measures.
 */
import type { Material, MaterialName, MaterialSpec } from '../contract/design.ts';

export interface SourcedMaterial extends MaterialSpec {
  readonly source: string;
}

/** International Annealed Copper Standard at 20 °C [S/m]: IEC 60028. */
const COPPER_STANDARD = 58.0e6;

export const MATERIALS: Readonly<Record<MaterialName, SourcedMaterial>> = {
  'spring steel': {
    youngsModulus: 206e9,
    density: 7850,
    strength: 1200e6,
    shearModulus: 81.5e9,
    lossFactor: 4e-4,
    conductivity: 5.5e6,
    resistanceRise: 0.0045,
    source: 'EN 13906-1 (moduli of EN 10270-1 wire), EN 10132-4 (hardened and tempered strip, lower end)',
  },
  brass: {
    youngsModulus: 110e9,
    density: 8440,
    strength: 430e6,
    shearModulus: 39e9,
    lossFactor: 1e-3,
    conductivity: 0.27 * COPPER_STANDARD,
    resistanceRise: 0.0015,
    source: 'EN 13906-1 (CuZn36, moduli), EN 1652 (CuZn37 R480, proof stress); conductivity 27 % IACS',
  },
  aluminium: {
    youngsModulus: 68.9e9,
    density: 2700,
    strength: 276e6,
    shearModulus: 26e9,
    lossFactor: 2e-4,
    conductivity: 0.43 * COPPER_STANDARD,
    resistanceRise: 0.0036,
    source: 'ASM Metals Handbook, vol. 2: alloy 6061-T6, proof stress; conductivity 43 % IACS',
  },
  copper: {
    youngsModulus: 117e9,
    density: 8890,
    strength: 200e6,
    shearModulus: 44e9,
    lossFactor: 2e-3,
    conductivity: COPPER_STANDARD,
    resistanceRise: 0.00393,
    source: 'IEC 60028 (density, conductivity and its rise); half-hard sheet, EN 1652 R240',
  },
  acrylic: {
    youngsModulus: 3.2e9,
    density: 1190,
    strength: 100e6,
    shearModulus: 1.2e9,
    lossFactor: 0.06,
    source: 'cast sheet, ISO 7823-1 and common data sheets: short-term modulus, bending strength; it creeps under load',
  },
  birch: {
    youngsModulus: 13.9e9,
    density: 690,
    strength: 114e6,
    shearModulus: 1.03e9,
    lossFactor: 0.016,
    source:
      'Wood Handbook (US Forest Products Laboratory), tables 5-1 and 5-3: yellow birch, 12 % moisture, along the grain',
  },
  'silicon 110': {
    youngsModulus: 169e9,
    density: 2329,
    strength: 1e9,
    shearModulus: 50.9e9,
    lossFactor: 1e-5,
    source:
      'M. A. Hopcroft, W. D. Nix, T. W. Kenny, J. Microelectromech. Syst. 19 (2010) 229: along <110> in a (100) wafer; strength of etched beams, common practice',
  },
  'silicon 100': {
    youngsModulus: 130e9,
    density: 2329,
    strength: 1e9,
    shearModulus: 79.6e9,
    lossFactor: 1e-5,
    source:
      'M. A. Hopcroft, W. D. Nix, T. W. Kenny, J. Microelectromech. Syst. 19 (2010) 229: along <100>; strength of etched beams, common practice',
  },
};

export function materialOf(material: Material): MaterialSpec {
  return typeof material === 'string' ? MATERIALS[material] : material;
}

/** Conductivity [S/m] at a temperature [K]: the resistance rises in a straight line from that at 20 °C. 0: no conductor. */
export function conductivityAt({ conductivity = 0, resistanceRise = 0 }: MaterialSpec, temperatureK: number): number {
  // Not below a tenth of the resistance at 20 °C: there the straight line has long ended.
  return conductivity / Math.max(1 + resistanceRise * (temperatureK - 293.15), 0.1);
}
