import type { BenchSettings } from '../session/settings.ts';

const NAMES: Readonly<Partial<Record<keyof BenchSettings, string>>> = {
  massKg: 'mass',
  stiffnessNM: 'spring',
  dampingRatio: 'damping',
  gapM: 'gap',
  senses: 'which way it senses',
  restitution: 'bounce off the stops',
  gravityMS2: 'gravity',
  dropHeightM: 'drop height',
  pad: 'felt',
  air: 'air',
  readout: 'read-out',
  bench: 'starting bench',
  seed: 'seed',
};

/** What differs between two settings, for the undo key; '' when there is nothing to go to. */
export function whatChanged(to: BenchSettings | undefined, now: BenchSettings): string {
  if (!to) return '';
  if (to.bench !== now.bench) return 'starting bench';
  const differing = (Object.keys(NAMES) as (keyof BenchSettings)[]).filter((key) => to[key] !== now[key]);
  return NAMES[differing[0] ?? 'seed'] ?? 'setting';
}
