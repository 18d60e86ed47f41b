/**
 * Handling turned into commands: what a key press or a drag at the bench asks of the housing. A plan is a
 * list of commands with the run time, counted from now, at which each takes effect.
 */
import type { Vector } from '../contract/geometry.ts';
import type {
  AirDrag,
  MotionSpec,
  PadSpec,
  RandomShake,
  RecordedMotion,
  SineShake,
  SweepShake,
} from '../contract/motion.ts';
import type { Command } from '../contract/run.ts';

export interface PlannedCommand {
  /** Counted from now [s]. */
  readonly afterS: number;
  readonly command: Command;
}

type Unstamped<M> = M extends MotionSpec ? Omit<M, 'from' | 'kind'> : never;

export type Handling =
  /** `within` [s] it is at rest; a hand trembles, the clamp does not. */
  | { readonly kind: 'hold'; readonly by: 'clamp' | 'hand'; readonly within: number }
  | { readonly kind: 'drop' }
  /** Let go while moving up at this speed [m/s]. */
  | { readonly kind: 'throw'; readonly speed: number }
  | { readonly kind: 'shake'; readonly shake: Unstamped<SineShake> | Unstamped<SweepShake> | Unstamped<RandomShake> }
  /** Angle [rad] about an axis of the room. */
  | { readonly kind: 'tilt'; readonly axis: Vector; readonly angle: number; readonly over: number }
  | { readonly kind: 'move'; readonly axis: Vector; readonly distance: number; readonly over: number }
  | { readonly kind: 'push'; readonly axis: Vector; readonly acceleration: number }
  | { readonly kind: 'spin'; readonly axis: Vector; readonly rate: number }
  | { readonly kind: 'recorded'; readonly record: Unstamped<RecordedMotion> };

/** A hand's tremor while it holds: within the 6 to 12 Hz and near the 0.01 g that are seen in healthy hands
 *  (Archives of Neurology 39 (1982) 358–362; J. Physiology 593 (2015) 4411–4422). */
const TREMOR = { frequency: 8, amplitude: 0.1, axis: [0, 1, 0] } as const;

/** What a plan must know of the present. */
export interface Situation {
  readonly position: readonly number[];
  readonly attitude: readonly number[];
  readonly motion: MotionSpec['kind'];
  /** [m/s] */
  readonly speed: number;
  readonly gravityMS2: number;
  readonly pad: PadSpec | undefined;
  readonly airDrag: AirDrag | undefined;
  /** Where it is held before a drop: centre of the level housing [m]. */
  readonly home: Vector;
}

/** A hand carries no faster than this [m/s], and needs this time at least [s]. */
const CARRY_SPEED = 0.8;
const CARRY_AT_LEAST_S = 0.35;
/** The critically damped pull is within a hair of its target after this time [s]: e^(−25·0.6)·(1 + 15) = 5e-6. */
const SETTLE_S = 0.6;
/** The clamp takes over what little the hand still moves within this time [s]. */
const CLAMP_S = 0.1;
/** Upward acceleration of a throw, felt on top of gravity [m/s²], and the time in which it is reached [s]. */
const THROW_ACCELERATION = 12;
const THROW_WITHIN_S = 0.05;
/** Nearer than this to its place and level, and slower, the housing counts as held there [m], [–], [m/s]. */
const AT_HOME_M = 1e-3;
const AT_REST_MS = 0.02;

export function planFor(handling: Handling, now: Situation): readonly PlannedCommand[] {
  switch (handling.kind) {
    case 'hold':
      return hold(handling, now);
    case 'drop':
      return afterHome(now, [{ kind: 'free', from: 0, pad: now.pad, airDrag: now.airDrag }]);
    case 'throw': {
      // With S's mean of ½ over the ease the push must last v/a + within/2.
      const push: MotionSpec = {
        kind: 'push',
        from: 0,
        axis: [0, 1, 0],
        acceleration: THROW_ACCELERATION,
        within: THROW_WITHIN_S,
      };
      const carried = afterHome(now, [push]);
      const pushedAt = carried[carried.length - 1]!.afterS;
      return [
        ...carried,
        start(pushedAt + handling.speed / THROW_ACCELERATION + THROW_WITHIN_S / 2, {
          kind: 'free',
          from: 0,
          pad: now.pad,
          airDrag: now.airDrag,
        }),
      ];
    }
    case 'shake':
      return afterHome(now, [{ ...handling.shake, kind: 'shake', from: 0 } as MotionSpec]);
    case 'tilt':
      return afterLift(now, {
        kind: 'tilt',
        from: 0,
        to: { axis: handling.axis, angle: handling.angle },
        over: handling.over,
      });
    case 'move': {
      const { axis, distance, over } = handling;
      return afterHome(now, [{ kind: 'move', from: 0, axis, distance, over }]);
    }
    case 'push': {
      const { axis, acceleration } = handling;
      return afterHome(now, [{ kind: 'push', from: 0, axis, acceleration, within: THROW_WITHIN_S }]);
    }
    case 'spin':
      return afterHome(now, [{ kind: 'spin', from: 0, axis: handling.axis, rate: handling.rate, within: 0.5 }]);
    case 'recorded':
      return afterHome(now, [{ ...handling.record, kind: 'recorded', from: 0 }]);
  }
}

/** How long a plan only carries the housing to its place [s]: until what was asked begins, or the clamp takes it. */
export function carriedFor(plan: readonly PlannedCommand[]): number {
  const motions = plan.flatMap(({ afterS, command }) =>
    command.kind === 'motion' ? [{ afterS, ...command.motion }] : [],
  );
  if (motions[0]?.kind !== 'hand') return 0;
  const asked = motions.find(({ kind }) => kind !== 'hand' && kind !== 'held');
  return (asked ?? motions[motions.length - 1]!).afterS;
}

/** Carries the housing home and holds it there; where it is home already, the holder changes hands. */
function hold({ by, within }: { by: 'clamp' | 'hand'; within: number }, now: Situation): PlannedCommand[] {
  const carried = carryHome(now);
  const last = carried[carried.length - 1];
  const held: MotionSpec = { kind: 'held', from: 0, within, ...(by === 'hand' ? { tremor: TREMOR } : {}) };
  return [...carried.slice(0, -1), start(last ? last.afterS : 0, held)];
}

/** Brings the housing home, level, and clamps it; nothing when it is there already, at rest. */
function carryHome(now: Situation): PlannedCommand[] {
  if (isHome(now)) return now.motion === 'held' ? [] : [start(0, { kind: 'held', from: 0, within: CLAMP_S })];
  const over = carryTime(now);
  return [
    start(0, { kind: 'hand', from: 0, targets: [] }),
    {
      afterS: 0,
      command: { kind: 'target', target: { at: 0, position: now.home, attitude: [0, 0, 0, 1], over } },
    },
    start(over + SETTLE_S, { kind: 'held', from: 0, within: CLAMP_S }),
  ];
}

/** A motion that begins at home, once the housing is there and still. */
function afterHome(now: Situation, motions: readonly MotionSpec[]): PlannedCommand[] {
  const carried = carryHome(now);
  const last = carried[carried.length - 1];
  const readyS = last ? last.afterS + CLAMP_S : 0;
  return [...carried, ...motions.map((motion) => start(readyS, motion))];
}

/** A motion that begins where the housing is when something holds it there, else at home. */
function afterLift(now: Situation, motion: MotionSpec): PlannedCommand[] {
  return now.motion === 'free' || now.motion === 'push' ? afterHome(now, [motion]) : [start(0, motion)];
}

function start(afterS: number, motion: MotionSpec): PlannedCommand {
  return { afterS, command: { kind: 'motion', motion } };
}

function isHome({ position, attitude, home, motion, speed }: Situation): boolean {
  if (motion === 'free' || speed > AT_REST_MS) return false;
  const away = Math.max(...home.map((place, axis) => Math.abs(place - position[axis]!)));
  return away < AT_HOME_M && Math.abs(attitude[3]!) > 1 - AT_HOME_M * AT_HOME_M;
}

function carryTime({ position, home }: Situation): number {
  const [x, y, z] = home.map((place, axis) => place - position[axis]!) as [number, number, number];
  return Math.max(CARRY_AT_LEAST_S, Math.sqrt(x * x + y * y + z * z) / CARRY_SPEED);
}
