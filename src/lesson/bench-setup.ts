import { type BenchSettings, ROOM_AIR, stiffnessFor } from '../session/settings.ts';
import { STARTING_BENCHES } from '../session/starting-benches.ts';
import { printed, type Quantity } from './quantity.ts';

/** A setting of the bench as a lesson names it, in SI units. */
export interface LessonSetting {
  readonly quantity: Quantity;
  /** There or not: written true or false, in formulas 1 or 0. */
  readonly isSwitch?: true;
  readonly words: string;
  readonly low: number;
  readonly high: number;
  readonly read: (settings: BenchSettings) => number;
  readonly write: (settings: BenchSettings, value: number) => BenchSettings;
}

/** Every setting that a lesson may name, with the limits within which a lesson may put it. */
export const LESSON_SETTINGS = {
  naturalFrequency: {
    quantity: { kind: 'frequency', unit: 'Hz' },
    words: 'natural frequency',
    low: 0.5,
    high: 20_000,
    read: ({ massKg, stiffnessNM }) => Math.sqrt(stiffnessNM / massKg) / (2 * Math.PI),
    write: (settings, hz) => ({ ...settings, stiffnessNM: stiffnessFor(settings.massKg, hz) }),
  },
  dampingRatio: {
    quantity: { kind: 'dimensionless', unit: '' },
    words: 'damping ratio',
    low: 0,
    high: 10,
    read: ({ dampingRatio }) => dampingRatio,
    write: (settings, dampingRatio) => ({ ...settings, dampingRatio }),
  },
  gap: {
    quantity: { kind: 'length', unit: 'mm' },
    words: 'distance of the stops',
    low: 1e-9,
    high: 1,
    read: ({ gapM }) => gapM ?? Number.POSITIVE_INFINITY,
    write: (settings, gapM) => ({ ...settings, gapM }),
  },
  gravity: {
    quantity: { kind: 'acceleration', unit: 'm/s²' },
    words: 'local gravity',
    low: 0,
    high: 300,
    read: ({ gravityMS2 }) => gravityMS2,
    write: (settings, gravityMS2) => ({ ...settings, gravityMS2 }),
  },
  dropHeight: {
    quantity: { kind: 'length', unit: 'm' },
    words: 'height of letting go',
    low: 0.02,
    high: 5,
    read: ({ dropHeightM }) => dropHeightM,
    write: (settings, dropHeightM) => ({ ...settings, dropHeightM }),
  },
  padStiffness: {
    quantity: { kind: 'stiffness', unit: 'N/m' },
    words: 'stiffness of the pad',
    low: 100,
    high: 1e7,
    read: ({ pad }) => pad.stiffness,
    write: (settings, stiffness) => ({ ...settings, pad: { ...settings.pad, stiffness } }),
  },
  padDamping: {
    quantity: { kind: 'damping', unit: 'N·s/m' },
    words: 'damping of the pad',
    low: 0,
    high: 1e5,
    read: ({ pad }) => pad.damping,
    write: (settings, damping) => ({ ...settings, pad: { ...settings.pad, damping } }),
  },
  air: {
    quantity: { kind: 'dimensionless', unit: '' },
    isSwitch: true,
    words: 'air in the fall',
    low: 0,
    high: 1,
    read: ({ air }) => (air === null ? 0 : 1),
    write: (settings, isThere) => ({ ...settings, air: isThere > 0 ? ROOM_AIR : null }),
  },
} as const satisfies Readonly<Record<string, LessonSetting>>;

export type LessonSettingName = keyof typeof LESSON_SETTINGS;
export type LessonSettings = ReadonlyMap<LessonSettingName, number>;

export function isLessonSetting(name: string): name is LessonSettingName {
  return Object.hasOwn(LESSON_SETTINGS, name);
}

/** A setting's value for people: "8.00 Hz", "yes". */
export function settingText(name: LessonSettingName, value: number): string {
  const setting: LessonSetting = LESSON_SETTINGS[name];
  if (setting.isSwitch) return value > 0 ? 'yes' : 'no';
  return printed(value, setting.quantity);
}

/** The settings that a lesson asks for, put into others. */
export function applySettings(settings: BenchSettings, wanted: LessonSettings): BenchSettings {
  let next = settings;
  for (const [name, value] of wanted) next = LESSON_SETTINGS[name].write(next, value);
  return next;
}

/** The bench on which a step of a lesson begins. */
export interface BenchSetup {
  readonly bench: keyof typeof STARTING_BENCHES;
  readonly settings: LessonSettings;
  readonly seed: number;
}

export function benchSettings({ bench, settings, seed }: BenchSetup): BenchSettings {
  return { ...applySettings(STARTING_BENCHES[bench].settings, settings), seed };
}
