import { type LimitedName, limitsOf, settingValue } from '../session/bench-limits.ts';
import type { BenchSettings, StartingBench } from '../session/settings.ts';
import type { SliderSpec } from '../ui/slider-list.ts';

type Shape = Pick<SliderSpec, 'label' | 'kind' | 'unit' | 'spacing'>;

const SHAPES: Readonly<Record<LimitedName, Shape>> = {
  mass: { label: 'mass', kind: 'mass', spacing: 'logarithmic' },
  frequency: { label: 'natural frequency', kind: 'frequency', spacing: 'logarithmic' },
  stiffness: { label: 'stiffness', kind: 'stiffness', spacing: 'logarithmic' },
  damping: { label: 'damping ratio', kind: 'dimensionless', spacing: 'linear' },
  gap: { label: 'gap to the stops', kind: 'length', spacing: 'logarithmic' },
  restitution: { label: 'bounce off the stops', kind: 'dimensionless', spacing: 'linear' },
  gravity: { label: 'gravity', kind: 'acceleration', unit: 'm/s²', spacing: 'linear' },
  'drop.height': { label: 'drop height', kind: 'length', spacing: 'logarithmic' },
  'pad.stiffness': { label: 'stiffness', kind: 'stiffness', spacing: 'logarithmic' },
  'pad.damping': { label: 'damping', kind: 'damping', spacing: 'linear' },
  'pad.friction': { label: 'friction', kind: 'dimensionless', spacing: 'linear' },
  'readout.rate': { label: 'samples a second', kind: 'frequency', spacing: 'logarithmic' },
  'readout.range': { label: 'range, plus and minus', kind: 'acceleration', unit: 'g', spacing: 'logarithmic' },
};

/** Sliders for some settings of the bench, with its limits. */
export function sliders(
  bench: StartingBench,
  settings: BenchSettings,
  names: readonly LimitedName[],
): readonly SliderSpec[] {
  const limits = limitsOf(bench);
  return names.map((name) => ({ ...SHAPES[name], ...limits[name], name, value: settingValue(settings, name) }));
}

export function isLimited(name: string): name is LimitedName {
  return name in SHAPES;
}
