/**
 * From dimensions to motion: the numbers of an element from what a person could build.
 *
 * The liquid that moves along and the spring of the gas film depend on the frequency, which depends on them: the first
 * frequency is where both agree, and the higher modes keep that added mass and that spring. Each mode is damped by
 * 2ζ_nω_n = c(ω_n)φ_n²/M_n + ηω_n, η the loss factor of the suspension's material. In a liquid the specific force pulls
 * on the mass less what it displaces: (1 + C_aρ_l/ρ_m)ẍ + (c/m)ẋ + (k/m)x = −(1 − ρ_l/ρ_m)f.
 */
import type {
  DesignConditions,
  DesignFault,
  DesignFigures,
  DesignShapes,
  DesignSpec,
  DesignWarning,
} from '../contract/design.ts';
import type { ElementSpec, ModeSpec } from '../contract/run.ts';
import { bracketedRoot } from '../numerics/root.ts';
import { type Dampers, dampersOf, together } from './dampers.ts';
import { buildFaults, strengthFaults } from './faults.ts';
import { figuresOf, statics } from './figures.ts';
import { materialOf } from './materials.ts';
import { type Body, bodyOf } from './proof-mass.ts';
import { suspend } from './suspend.ts';
import type { Load, Suspended } from './suspended.ts';
import { warningsOf } from './warnings.ts';

/** What takes the place of an element's own numbers. */
export type DesignedElement = Pick<
  ElementSpec,
  'naturalFrequency' | 'dampingRatio' | 'staticRemainder' | 'cubicStiffness'
> & { readonly modes: readonly ModeSpec[]; readonly mass: number };

export interface Design {
  readonly element: DesignedElement;
  readonly figures: DesignFigures;
  readonly shapes: DesignShapes;
  readonly warnings: readonly DesignWarning[];
}

export type Designed =
  | { readonly design: Design; readonly faults?: undefined }
  | { readonly design?: undefined; readonly faults: readonly DesignFault[] };

/** A design on the way to its numbers. */
export interface Worked {
  readonly spec: DesignSpec;
  readonly conditions: DesignConditions;
  readonly body: Body;
  readonly dampers: Dampers;
  readonly load: Load;
  /** With the film's spring; and without, as under steady forces. */
  readonly swinging: Suspended;
  readonly steady: Suspended;
  /** Pull of gravity along the arm, away from the clamp [m/s²]. */
  readonly pull: number;
  readonly modes: readonly ModeSpec[];
}

/** Every number positive and finite, as the keys of a scenario demand. Faults: what cannot be built. */
export function designed(spec: DesignSpec, conditions: DesignConditions): Designed {
  const body = bodyOf(spec.proofMass);
  if ('path' in body) return { faults: [body] };
  const faults = buildFaults(spec, body, conditions);
  if (faults.length > 0) return { faults };
  const worked = work(spec, body, conditions);
  if ('path' in worked) return { faults: [worked] };
  const still = statics(worked);
  const figures = figuresOf(worked, still);
  const overstressed = strengthFaults(worked, figures);
  if (overstressed.length > 0) return { faults: overstressed };
  const { modes, load, swinging } = worked;
  const sum = (term: (mode: ModeSpec, omega: number) => number): number =>
    modes.reduce((total, mode) => total + term(mode, 2 * Math.PI * mode.naturalFrequency), 0);
  const element: DesignedElement = {
    naturalFrequency: modes[0]!.naturalFrequency,
    dampingRatio: modes[0]!.dampingRatio,
    modes,
    staticRemainder: still.runCompliance - sum(({ shape, participation }, w) => (shape * participation) / (w * w)),
    mass: body.mass,
    // The engine's κ is a force over the mass that the pick-off moves, 1/Σφ²/M.
    cubicStiffness: swinging.cubic * sum(({ shape }) => (shape * shape) / load.inertia),
  };
  const beyond = engineFaults(element);
  if (beyond.length > 0) return { faults: beyond };
  const shapes = { sag: worked.steady.sag, modes: swinging.modes.map((mode) => mode.drawn) };
  return { design: { element, figures, shapes, warnings: warningsOf(worked, figures) } };
}

/** Beyond, the first root is too small for the search (first-roots.ts) [–]. */
const LARGEST_MASS_RATIO = 1e11;

function work(spec: DesignSpec, body: Body, conditions: DesignConditions): Worked | DesignFault {
  const dampers = dampersOf(spec, body, conditions.temperature);
  const damper = together(dampers);
  const weight = body.mass - dampers.displaced;
  const pull = pullAlong(spec, conditions.gravity);
  const loadAt = (omega: number): Load => ({
    inertia: body.mass + damper.addedMass(omega),
    weight,
    turning: body.turning,
    spring: damper.spring(omega),
  });
  const still: Load = { inertia: body.mass, weight, turning: body.turning, spring: 0 };
  const { modes: dryModes, ownMass } = suspend(spec.suspension, still, 1);
  if (!(body.mass < LARGEST_MASS_RATIO * ownMass)) {
    const found = `${body.mass} kg on a suspension of ${ownMass} kg`;
    return { path: 'proofMass', found, allowed: `below ${LARGEST_MASS_RATIO} times the mass of the suspension` };
  }
  const [dry] = dryModes;
  if (!(dry!.omega * dry!.omega + pull * dry!.stretch > 0)) {
    const found = 'an arm that falls over under its load';
    return {
      path: 'suspension.posture',
      found,
      allowed: 'a stiffer or shorter arm, a lighter mass, or level or hanging',
    };
  }
  const omega = firstFrequency(spec, pull, loadAt);
  const load = loadAt(omega);
  const swinging = suspend(spec.suspension, load);
  const { lossFactor } = materialOf(spec.suspension.material);
  const modes = swinging.modes.map((mode): ModeSpec => {
    const w = Math.sqrt(mode.omega * mode.omega + pull * mode.stretch);
    return {
      naturalFrequency: w / (2 * Math.PI),
      dampingRatio: (damper.damping(w) * mode.shape * mode.shape) / (2 * load.inertia * w) + lossFactor / 2,
      participation: mode.participation,
      shape: mode.shape,
      modalMass: load.inertia,
    };
  });
  const steady = load.spring === 0 ? swinging : suspend(spec.suspension, { ...load, spring: 0 });
  return { spec, conditions, body, dampers, load, swinging, steady, pull, modes };
}

/** [m/s²] */
function pullAlong({ suspension }: DesignSpec, gravity: number): number {
  if (suspension.kind !== 'arm' || suspension.posture === 'level') return 0;
  return suspension.posture === 'hanging' ? gravity : -gravity;
}

/** ω at which the first mode, with what then moves along and springs, swings [rad/s]. */
function firstFrequency(spec: DesignSpec, pull: number, loadAt: (omega: number) => Load): number {
  const own = (omega: number): number => {
    const [first] = suspend(spec.suspension, loadAt(omega), 1).modes;
    return Math.sqrt(Math.max(first!.omega * first!.omega + pull * first!.stretch, 0));
  };
  let low = own(1);
  if (low === own(2)) return low;
  // Slower, more liquid moves along, but by less than the square; quicker, the film is at most a closed cushion.
  while (own(low) < low) low /= 2;
  let high = low * 2;
  while (own(high) > high) high *= 2;
  return bracketedRoot((omega) => own(omega) - omega, low, high);
}

/** Ranges in which the engine's numbers keep their digits; those of a scenario's keys. */
function engineFaults({ modes, cubicStiffness }: DesignedElement): DesignFault[] {
  const faults: DesignFault[] = [];
  const demand = (fits: boolean, found: string, allowed: string): void => {
    if (!fits) faults.push({ path: '', found, allowed });
  };
  for (const { naturalFrequency, dampingRatio, participation, shape } of modes) {
    const frequency = `a mode of ${naturalFrequency} Hz`;
    demand(naturalFrequency >= 0.01 && naturalFrequency <= 1e7, frequency, 'modes from 0.01 to 1e7 Hz');
    demand(dampingRatio <= 100, `a mode with a damping ratio of ${dampingRatio}`, 'damping ratios up to 100');
    const size = Math.max(Math.abs(participation), Math.abs(shape));
    demand(size <= 1e6, `a mode whose shape or participation is ${size}`, 'up to 1e6: masses more alike');
  }
  demand(cubicStiffness <= 1e30, `a cubic stiffness of ${cubicStiffness} 1/(m²·s²)`, 'up to 1e30');
  return faults;
}
