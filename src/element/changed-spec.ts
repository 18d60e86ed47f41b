import type { ElementChange, ElementSpec, ModeSpec } from '../contract/run.ts';

/**
 * The specification after a change. With several modes, frequency and damping are those of the first; the others
 * follow as if the suspension got stiffer (all frequencies in one ratio, the static remainder by its inverse square)
 * and the damper stronger (all damping ratios in one ratio). Damping added where the first mode had none acts at the
 * pick-off: 2ζ_nω_n ∝ φ_n²/M_n.
 */
export function changedSpec(spec: ElementSpec, set: ElementChange): ElementSpec {
  const { gap, ...others } = set;
  const changed: ElementSpec = { ...spec, ...others };
  const withGap = gap === undefined ? changed : { ...changed, gap: gap ?? undefined };
  const { modes } = spec;
  const first = modes?.[0];
  if (!modes || !first || (set.naturalFrequency === undefined && set.dampingRatio === undefined)) return withGap;
  const faster = changed.naturalFrequency / first.naturalFrequency;
  return {
    ...withGap,
    staticRemainder: spec.staticRemainder / (faster * faster),
    modes: modes.map((mode) => ({
      ...mode,
      naturalFrequency: mode === first ? changed.naturalFrequency : mode.naturalFrequency * faster,
      dampingRatio: mode === first ? changed.dampingRatio : damping(mode, first, changed.dampingRatio),
    })),
  };
}

function damping(mode: ModeSpec, first: ModeSpec, ratio: number): number {
  if (first.dampingRatio > 0) return mode.dampingRatio * (ratio / first.dampingRatio);
  if (ratio === 0) return mode.dampingRatio;
  const atPickOff = (of: ModeSpec): number => (of.shape * of.shape) / (of.modalMass * of.naturalFrequency);
  return (ratio * atPickOff(mode)) / atPickOff(first);
}
