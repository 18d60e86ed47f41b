import type { BenchSettings, StartingBench } from './settings.ts';
import { naturalFrequencyHz, stiffnessFor } from './settings.ts';

/** What may be set, SI; both ends included. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

export type LimitedName =
  | 'mass'
  | 'stiffness'
  | 'frequency'
  | 'damping'
  | 'gap'
  | 'restitution'
  | 'gravity'
  | 'drop.height'
  | 'pad.stiffness'
  | 'pad.damping'
  | 'pad.friction'
  | 'readout.rate'
  | 'readout.range';

/** Factors by which the element of a bench may differ from what the bench starts with. */
const SPREAD = 6;

/** The limits of each setting on a bench: around what it starts with, so that riders stay handy on every scale. */
export function limitsOf(bench: StartingBench): Readonly<Record<LimitedName, Limits>> {
  const { massKg, stiffnessNM, gapM } = bench.settings;
  const frequency = naturalFrequencyHz(massKg, stiffnessNM);
  const around = (value: number): Limits => ({ low: rounded(value / SPREAD), high: rounded(value * SPREAD) });
  return {
    mass: around(massKg),
    frequency: around(frequency),
    stiffness: {
      low: stiffnessFor(massKg / SPREAD, frequency / SPREAD),
      high: stiffnessFor(massKg * SPREAD, frequency * SPREAD),
    },
    damping: { low: 0, high: 2 },
    gap: around(gapM ?? 0.01),
    restitution: { low: 0, high: 1 },
    gravity: { low: 0, high: 30 },
    'drop.height': { low: 0.05, high: 2 },
    'pad.stiffness': { low: 1000, high: 200_000 },
    'pad.damping': { low: 0, high: 300 },
    'pad.friction': { low: 0, high: 1.5 },
    'readout.rate': { low: 1, high: bench.rowRateHz },
    'readout.range': { low: 0.5 * 9.80665, high: 500 * 9.80665 },
  };
}

/** To one significant digit, so that the ends of a rider's rule are round. */
function rounded(value: number): number {
  return Number(value.toPrecision(1));
}

/** The value of a limited setting. */
export function settingValue(settings: BenchSettings, name: LimitedName): number {
  switch (name) {
    case 'mass':
      return settings.massKg;
    case 'stiffness':
      return settings.stiffnessNM;
    case 'frequency':
      return naturalFrequencyHz(settings.massKg, settings.stiffnessNM);
    case 'damping':
      return settings.dampingRatio;
    case 'gap':
      return settings.gapM ?? Number.NaN;
    case 'restitution':
      return settings.restitution;
    case 'gravity':
      return settings.gravityMS2;
    case 'drop.height':
      return settings.dropHeightM;
    case 'pad.stiffness':
      return settings.pad.stiffness;
    case 'pad.damping':
      return settings.pad.damping;
    case 'pad.friction':
      return settings.pad.friction;
    case 'readout.rate':
      return settings.readout.rate;
    case 'readout.range':
      return settings.readout.range ?? Number.NaN;
  }
}

/** The change of settings that a value of a limited setting stands for. The mass keeps its spring, the frequency its mass. */
export function changeOf(settings: BenchSettings, name: LimitedName, value: number): Partial<BenchSettings> {
  switch (name) {
    case 'mass':
      return { massKg: value };
    case 'stiffness':
      return { stiffnessNM: value };
    case 'frequency':
      return { stiffnessNM: stiffnessFor(settings.massKg, value) };
    case 'damping':
      return { dampingRatio: value };
    case 'gap':
      return { gapM: value };
    case 'restitution':
      return { restitution: value };
    case 'gravity':
      return { gravityMS2: value };
    case 'drop.height':
      return { dropHeightM: value };
    case 'pad.stiffness':
      return { pad: { ...settings.pad, stiffness: value } };
    case 'pad.damping':
      return { pad: { ...settings.pad, damping: value } };
    case 'pad.friction':
      return { pad: { ...settings.pad, friction: value } };
    case 'readout.rate':
      return { readout: { ...settings.readout, rate: value } };
    case 'readout.range':
      return { readout: { ...settings.readout, range: value } };
  }
}
