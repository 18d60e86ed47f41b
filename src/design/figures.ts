/** What people ask of a design, from its modes and its answers to steady forces. */
import type { DesignFigures } from '../contract/design.ts';
import { risingCubicRoot } from '../numerics/root.ts';
import { G_N } from '../units/standard-gravity.ts';
import type { Damper } from './damper.ts';
import type { Worked } from './design.ts';
import { materialOf } from './materials.ts';
import { thermalDeflection, thermalNoiseDensity } from './thermal.ts';

export interface Statics {
  /** Deflection of the mass per unit specific force and per unit force, gravity along the arm included [s², m/N]. */
  readonly compliance: number;
  readonly pointCompliance: number;
  /** S as a run has it: with the film's spring, which the engine cannot let go of under steady forces [s²]. */
  readonly runCompliance: number;
}

export function statics({ steady, load, pull }: Worked): Statics {
  let { compliance, pointCompliance } = steady;
  for (const { omega, shape, participation, stretch } of steady.modes) {
    const change = 1 / (omega * omega + pull * stretch) - 1 / (omega * omega);
    compliance += shape * participation * change;
    pointCompliance += ((shape * shape) / load.inertia) * change;
  }
  return { compliance, pointCompliance, runCompliance: compliance / (1 + load.spring * pointCompliance) };
}

export function figuresOf(worked: Worked, { compliance, pointCompliance, runCompliance }: Statics): DesignFigures {
  const { spec, conditions, body, dampers, load, swinging, steady, modes } = worked;
  const { gravity, gap, temperature } = conditions;
  const [first] = modes;
  const omega = 2 * Math.PI * first!.naturalFrequency;
  const share = (damper: Damper): number =>
    (damper.damping(omega) * first!.shape * first!.shape) / (2 * load.inertia * omega);
  const sagPerG = risingCubicRoot(1 / pointCompliance, steady.cubic, (G_N * compliance) / pointCompliance);
  const stressAt = (x: number): number => (steady.stress / steady.compliance) * x + steady.stretchStress * x * x;
  // The film belongs to the mass, not to the shortcut about the arm.
  const massless = Math.sqrt((1 / steady.pointCompliance + load.spring) / load.inertia) / (2 * Math.PI);
  const level = swinging.modes[0]!;
  const pulled = (along: number): number =>
    Math.sqrt(Math.max(level.omega * level.omega + along * level.stretch, 0)) / (2 * Math.PI);
  const held = gap === undefined ? undefined : gap + steady.cubic * pointCompliance * gap * gap * gap;
  return {
    naturalFrequency: first!.naturalFrequency,
    dampingRatio: first!.dampingRatio,
    qualityFactor: 1 / (2 * first!.dampingRatio),
    proofMass: body.mass,
    suspensionMass: steady.ownMass,
    stiffness: 1 / pointCompliance,
    sagPerG,
    turnPerG: (steady.turn / steady.compliance) * sagPerG,
    stressPerG: stressAt(sagPerG),
    stressAtStops: gap === undefined ? undefined : stressAt(gap),
    strength: steady.strength,
    range: held === undefined ? undefined : held / (compliance * G_N),
    masslessFrequency: massless,
    masslessError: massless / (level.omega / (2 * Math.PI)) - 1,
    hangingFrequency: pulled(gravity),
    standingFrequency: pulled(-gravity),
    dampingShares: {
      material: materialOf(spec.suspension.material).lossFactor / 2,
      liquid: share(dampers.liquid),
      gasFilm: share(dampers.gasFilm),
      eddyCurrents: share(dampers.eddyCurrents),
    },
    addedMass: load.inertia - body.mass,
    displacedMass: dampers.displaced,
    gasStiffness: load.spring,
    noiseDensity: thermalNoiseDensity(modes, runCompliance, temperature) / G_N,
    thermalDeflection: thermalDeflection(modes, temperature),
  };
}
