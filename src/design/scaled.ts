/**
 * Similarity: a design with every length times λ, of the same materials, in the same fluid and field. What follows for
 * small changes of ρAL and the like, exactly: frequency λ⁻¹, sag per g λ², sag over gap λ, stress under 1 g λ, thermal
 * noise at the same Q λ⁻², thermal deflection λ^−½; ζ of a squeeze film (thick gas, slow) λ⁻¹, of eddy currents λ.
 */
import type { DesignConditions, DesignSpec, Material, SuspensionSpec } from '../contract/design.ts';

/** Keys that are lengths wherever they stand in a design; `size` and `plate` are lists of them. */
const LENGTHS = new Set([
  'size',
  'diameter',
  'wire',
  'freeLength',
  'length',
  'width',
  'thickness',
  'beyondEnd',
  'gap',
  'plate',
]);
const AREAS = new Set(['area']);
const MASSES = new Set(['mass', 'linkMass']);

/** Every length times `factor`; areas and masses follow. */
export function scaledDesign(spec: DesignSpec, factor: number): DesignSpec {
  return scaledValue(spec, factor) as DesignSpec;
}

export function scaledConditions(conditions: DesignConditions, factor: number): DesignConditions {
  const { gap, room } = conditions;
  return {
    ...conditions,
    gap: gap === undefined ? undefined : gap * factor,
    room: room && { longest: room.longest * factor, sensing: room.sensing * factor },
  };
}

function scaledValue(value: unknown, factor: number): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inside]) => {
      if (key === 'material') return [key, inside];
      const power = LENGTHS.has(key) ? factor : AREAS.has(key) ? factor * factor : factor * factor * factor;
      if (typeof inside === 'number' && (LENGTHS.has(key) || AREAS.has(key) || MASSES.has(key)))
        return [key, inside * power];
      if (Array.isArray(inside)) return [key, inside.map((item: number) => item * factor)];
      return [key, scaledValue(inside, factor)];
    }),
  );
}

/** The same design of other materials: a step of its own beside the scaling. */
export function ofMaterial(spec: DesignSpec, material: Material): DesignSpec {
  const { proofMass } = spec;
  const suspension: SuspensionSpec = { ...spec.suspension, material };
  return { ...spec, suspension, proofMass: proofMass.material === undefined ? proofMass : { ...proofMass, material } };
}
