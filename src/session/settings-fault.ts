import { type LimitedName, limitsOf, settingValue } from './bench-limits.ts';
import { type BenchSettings, SENSING_AXES } from './settings.ts';
import { STARTING_BENCHES } from './starting-benches.ts';

const NAMES: readonly LimitedName[] = [
  'mass',
  'stiffness',
  'damping',
  'restitution',
  'gravity',
  'drop.height',
  'pad.stiffness',
  'pad.damping',
  'pad.friction',
  'readout.rate',
];

/** What is wrong with settings that come from outside, in words; undefined: nothing. */
export function settingsFault(value: unknown): string | undefined {
  if (!isObject(value)) return 'there are none';
  const bench = STARTING_BENCHES[value['bench'] as keyof typeof STARTING_BENCHES];
  if (!bench) return `no starting bench is called “${String(value['bench']).slice(0, 40)}”`;
  const { pad, readout, gapM, senses, seed, air } = value;
  if (!isObject(pad) || !isObject(readout)) return 'pad or read-out is missing';
  const limits = limitsOf(bench);
  const settings = value as unknown as BenchSettings;
  for (const name of NAMES) {
    const found: unknown = settingValue(settings, name);
    const { low, high } = limits[name];
    // A rounding error at an end of the limits is no fault.
    if (!(typeof found === 'number' && found >= low * (1 - 1e-9) && found <= high * (1 + 1e-9)))
      return `${name} is ${String(found).slice(0, 40)}, allowed are ${low} to ${high}`;
  }
  if (!(gapM === null || (typeof gapM === 'number' && gapM > 0 && gapM <= limits.gap.high)))
    return 'the gap is out of range';
  if (
    air !== null &&
    !(isObject(air) && Object.values(air).every((each) => typeof each === 'number' && each >= 0 && each < 1e3))
  )
    return 'the air is out of range';
  if (!(typeof senses === 'string' && Object.hasOwn(SENSING_AXES, senses)))
    return `it senses “${String(senses).slice(0, 40)}”, allowed are ${Object.keys(SENSING_AXES).join(', ')}`;
  if (!(Number.isInteger(seed) && (seed as number) >= 0 && (seed as number) < 0x1_0000_0000))
    return 'the seed is no whole number';
  return undefined;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
