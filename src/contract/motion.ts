/**
 * The motions of a housing, as a scenario and the command log state them. SI units: s, m, kg, Hz, rad,
 * m/s². `axis` is in the room frame. Every default is filled in before a motion reaches `housing`.
 * `from` [s] is the instant of run time at which the motion takes over; it need not fall on a tick.
 * The laws are those of DEVELOPERS.md, "Motions"; S(τ) = 10τ³ − 15τ⁴ + 6τ⁵ clipped to 0…1.
 */
import type { AxisAngle, Quaternion, Vector } from './geometry.ts';

export interface Tremor {
  /** [Hz] */
  readonly frequency: number;
  /** Acceleration amplitude [m/s²]. */
  readonly amplitude: number;
  /** Direction in the room; a hand's tremor is taken as vertical unless stated. */
  readonly axis: Vector;
}

/** Comes to rest along its path within `within` [s] (v = v₀(1 − S(t/within))), then stays. */
export interface HeldMotion {
  readonly kind: 'held';
  readonly from: number;
  readonly within: number;
  readonly tremor?: Tremor | undefined;
}

/** What lies on the ground, y ≤ 0. Stiffness [N/m] and damping [N·s/m] of the whole pad under a flat landing. */
export interface PadSpec {
  readonly stiffness: number;
  readonly damping: number;
  /** Thickness [m] of a cushion that stiffens toward it (tangent cushion); undefined: linear. */
  readonly thickness?: number | undefined;
  /** Coulomb friction coefficient [–]. */
  readonly friction: number;
}

export interface AirDrag {
  /** [m²] */
  readonly area: number;
  /** Drag coefficient [–]. */
  readonly coefficient: number;
  /** [kg/m³] */
  readonly airDensity: number;
}

export interface FreeMotion {
  readonly kind: 'free';
  readonly from: number;
  /** Height of the lowest point above the pad at the start of the run [m]; first free motion only. */
  readonly height?: number | undefined;
  /** Attitude at the start of the run; first free motion only. */
  readonly attitude?: Quaternion | undefined;
  /** Angular velocity taken at the release, room frame [rad/s]; no kick to the elements: they already turn along. */
  readonly spin?: Vector | undefined;
  readonly pad?: PadSpec | undefined;
  readonly airDrag?: AirDrag | undefined;
}

interface ShakeBase {
  readonly kind: 'shake';
  readonly from: number;
  readonly axis: Vector;
}

export interface SineShake extends ShakeBase {
  readonly law: 'sine';
  readonly frequency: number;
  /** Acceleration amplitude A [m/s²]. */
  readonly amplitude: number;
  /** Time over which the amplitude is eased in [s]. */
  readonly ease: number;
}

export interface SweepShake extends ShakeBase {
  readonly law: 'sweep';
  readonly fromFrequency: number;
  readonly toFrequency: number;
  readonly amplitude: number;
  /** Duration of the sweep [s]. */
  readonly over: number;
  readonly progression: 'linear' | 'logarithmic';
  readonly ease: number;
}

export interface RandomShake extends ShakeBase {
  readonly law: 'random';
  /** One-sided acceleration density [(m/s²)²/Hz]. */
  readonly density: number;
  readonly fromFrequency: number;
  readonly toFrequency: number;
  readonly ease: number;
}

export type ShakeMotion = SineShake | SweepShake | RandomShake;

/** Displaces by distance·S(t/over) along the axis. */
export interface MoveMotion {
  readonly kind: 'move';
  readonly from: number;
  readonly axis: Vector;
  readonly distance: number;
  readonly over: number;
}

/** Acceleration along the axis reached by S within `within`, then kept; the velocity taken over is kept. */
export interface PushMotion {
  readonly kind: 'push';
  readonly from: number;
  readonly axis: Vector;
  readonly acceleration: number;
  readonly within: number;
}

/** Shortest arc from the present attitude to `to`, angle·S(t/over), about the housing's origin. */
export interface TiltMotion {
  readonly kind: 'tilt';
  readonly from: number;
  readonly to: Quaternion | AxisAngle;
  readonly over: number;
}

/** Rate [rad/s] about the axis, reached by S within `within`, about the housing's origin. */
export interface SpinMotion {
  readonly kind: 'spin';
  readonly from: number;
  readonly axis: Vector;
  readonly rate: number;
  readonly within: number;
}

/** A record, straight lines between its samples; `timeS` starts at 0 and rises strictly. */
export interface RecordedData {
  readonly timeS: Float64Array;
  /** One column (along `axis`) or three (x, y, z), each as long as `timeS` [m/s²]. */
  readonly valuesMS2: readonly Float64Array[];
}

export interface RecordedMotion {
  readonly kind: 'recorded';
  readonly from: number;
  /** Where the record came from, as the scenario names it. */
  readonly file: string;
  readonly time: string;
  readonly columns: readonly string[];
  readonly unit: 'm/s2' | 'g' | 'mg';
  readonly is: 'acceleration' | 'specificForce';
  readonly axis?: Vector | undefined;
  readonly data: RecordedData;
}

/**
 * A hand on the housing: a critically damped pull toward a target, limited in speed and acceleration.
 * Each target is run to in a straight line (shortest arc) within its `over` [s] from its own instant.
 */
export interface HandMotion {
  readonly kind: 'hand';
  readonly from: number;
  readonly targets: readonly HandTarget[];
}

export interface HandTarget {
  /** Run time at which the pointer said so [s]; never before `from`, never falling. */
  readonly at: number;
  /** Where the housing's origin should go [m], room frame. */
  readonly position: Vector;
  /** Attitude to turn to; undefined: as it was when taken in hand, brought to rest. */
  readonly attitude?: Quaternion | undefined;
  /** The target runs from where it was to here within this time [s]; 0: at once. */
  readonly over: number;
}

export type MotionSpec =
  | HeldMotion
  | FreeMotion
  | ShakeMotion
  | MoveMotion
  | PushMotion
  | TiltMotion
  | SpinMotion
  | RecordedMotion
  | HandMotion;
