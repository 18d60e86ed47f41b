/** Designs for checks, each of which can be built. */
import type {
  ArmSpec,
  ClampedArmSpec,
  CoilSpec,
  DesignConditions,
  DesignFault,
  DesignSpec,
  FoldedBeamsSpec,
} from '../../src/contract/design.ts';
import { type Design, designed } from '../../src/design/design.ts';

export const ROOM_TEMPERATURE = 293.15;
export const G = 9.80665;

export const CONDITIONS: DesignConditions = { gravity: G, temperature: ROOM_TEMPERATURE };

export const ARM: ArmSpec = {
  kind: 'arm',
  material: 'spring steel',
  length: 0.2,
  width: 0.02,
  thickness: 0.001,
  beyondEnd: 0,
  posture: 'level',
};

export const CLAMPED: ClampedArmSpec = {
  kind: 'clamped arm',
  material: 'spring steel',
  length: 0.2,
  width: 0.02,
  thickness: 0.0005,
};

export const COIL: CoilSpec = { kind: 'coil', material: 'spring steel', wire: 5e-4, diameter: 0.01, turns: 20 };

export const FOLDED: FoldedBeamsSpec = {
  kind: 'folded beams',
  material: 'silicon 110',
  length: 2e-4,
  width: 2.5e-5,
  thickness: 2e-6,
  linkMass: 0,
};

/** A mass of 50 g of no stated size, on an arm. */
export const ON_ARM: DesignSpec = { proofMass: { mass: 0.05 }, suspension: ARM, damping: {} };

export const CHIP: DesignSpec = {
  proofMass: { material: 'silicon 110', size: [4e-4, 4e-4, 2.5e-5] },
  suspension: FOLDED,
  damping: { gasFilm: { plate: [1e-4, 2.5e-5], gap: 2e-6, count: 40, pressure: 101325 } },
};

export function design(spec: DesignSpec, conditions: DesignConditions = CONDITIONS): Design {
  const { design: built, faults } = designed(spec, conditions);
  if (built === undefined) throw new Error(JSON.stringify(faults));
  return built;
}

export function faultsOf(spec: DesignSpec, conditions: DesignConditions = CONDITIONS): readonly DesignFault[] {
  return designed(spec, conditions).faults ?? [];
}

export function apart(found: number, expected: number): number {
  return Math.abs(found / expected - 1);
}
