/**
 * A run = this specification + the stamped commands. Nothing else enters: no clock, no chance.
 * SI units throughout (s, m, kg, N, Hz, rad, K, m/s²); all defaults filled in.
 */
import type { Vector } from './geometry.ts';
import type { HandTarget, MotionSpec, PadSpec } from './motion.ts';

export interface HousingSpec {
  /** [kg] */
  readonly mass: number;
  /** Edge lengths of the uniform solid box, housing frame [m]. */
  readonly size: Vector;
}

/** Vibration isolation between housing and element. */
export interface MountSpec {
  readonly naturalFrequency: number;
  readonly dampingRatio: number;
  /** Proof mass over mount mass [–]; 0: the element does not act back on its mount. */
  readonly massRatio: number;
}

/** One bending (or other) mode of a suspension; PHYSICS: q̈ + 2ζωq̇ + ω²q = −Γf, x = Σ φ q. */
export interface ModeSpec {
  readonly naturalFrequency: number;
  readonly dampingRatio: number;
  /** Γ: how strongly a uniform specific force drives it [–]. */
  readonly participation: number;
  /** φ at the pick-off [–]. */
  readonly shape: number;
  /** M: modal mass [kg]; only its ratios matter to an impact, its size to thermal noise. */
  readonly modalMass: number;
}

export interface ReadoutSpec {
  /** Samples per second [Hz]; sample k is taken at exactly k/rate. */
  readonly rate: number;
  /** Full scale: values beyond ±range are clipped [m/s²]; undefined: unlimited. */
  readonly range?: number | undefined;
  /** Bits of the converter over ±range; undefined: no steps. */
  readonly bits?: number | undefined;
}

export interface ElementSpec {
  readonly name: string;
  /** Input axis, housing frame, unit length. */
  readonly axis: Vector;
  /** Mounting point, housing frame [m]. */
  readonly at: Vector;
  /** Undamped natural frequency of the single mode [Hz]; with `modes` that of the first. */
  readonly naturalFrequency: number;
  readonly dampingRatio: number;
  /** Several modes instead of the single one. */
  readonly modes?: readonly ModeSpec[] | undefined;
  /** Static deflection per unit specific force of the modes left out, s² [m per m/s²]. */
  readonly staticRemainder: number;
  /** Distance of the stops from the unloaded position [m]; undefined: none. */
  readonly gap?: number | undefined;
  /** Speed kept on touching a stop [–]. */
  readonly restitution: number;
  /** κ of the restoring term κx³ [1/(m²·s²)]. */
  readonly cubicStiffness: number;
  readonly mount?: MountSpec | undefined;
  readonly thermalNoise: boolean;
  /** Proof mass [kg]; needed for thermal noise. */
  readonly mass?: number | undefined;
  /** Take the specific force at the moved mass instead of the mounting point (spin softens the spring). */
  readonly fieldAtMass: boolean;
  /** Given start, else settled under what is felt at the start. */
  readonly start?: { readonly deflection: number; readonly velocity: number } | undefined;
  readonly readout?: ReadoutSpec | undefined;
}

export interface RunSpec {
  /** Whole number 0 … 2³² − 1. */
  readonly seed: number;
  /** Local gravity [m/s²], downward. */
  readonly gravity: number;
  /** [s] */
  readonly duration: number;
  /** [s] */
  readonly tick: number;
  /** [K] */
  readonly temperature: number;
  readonly record: { readonly rate: number };
  readonly housing: HousingSpec;
  readonly elements: readonly ElementSpec[];
  /** Height of the lowest point above the pad at the start when no free motion states one [m]; undefined: 1 m. */
  readonly startHeight?: number | undefined;
  /** Sorted by `from`; the first at 0. */
  readonly motions: readonly MotionSpec[];
  /** Settings changed while it runs, sorted by `at`. */
  readonly changes: readonly Change[];
}

/** What can be changed in an element while it runs; its state is kept. */
export type ElementChange = Partial<
  Pick<ElementSpec, 'naturalFrequency' | 'dampingRatio' | 'restitution' | 'cubicStiffness' | 'mount' | 'readout'>
> & {
  /** [m]; null takes the stops away. */
  readonly gap?: number | null;
};

/** A setting changed at an instant of run time `at` [s]. */
export type Change =
  | { readonly at: number; readonly gravity: number }
  | { readonly at: number; readonly element: string; readonly set: ElementChange }
  | { readonly at: number; readonly pad: PadSpec | null };

/** The only inputs of a running world. `send` stamps them with the tick at which they take effect. */
export type Command =
  | { readonly kind: 'motion'; readonly motion: MotionSpec }
  | { readonly kind: 'target'; readonly target: HandTarget }
  | { readonly kind: 'change'; readonly change: Change };
