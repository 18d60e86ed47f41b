/**
 * Keys of a design: an element from dimensions. Kinds, limits and words as in keys.ts; what joins several of them (a mass
 * through the wall, an arm that breaks) the room `design` finds.
 */
import type { Kind } from './kind.ts';
import { found } from './kind.ts';
import { choice, components, number, orZero, triple, wholeNumber } from './plain-kinds.ts';
import { object, optional, otherwise, required, variant } from './schema.ts';

const size = { unit: 'm', min: 1e-9, max: 100 } as const;
const length = number(size);
const sizes = triple(size);
const kilograms = number({ unit: 'kg', min: 1e-21, max: 1e4 });
const area = number({ unit: 'm²', min: 1e-18, max: 100 });
const modulus = number({ unit: 'Pa', min: 1e4, max: 1e13 });
const count = (words: string) => otherwise(wholeNumber({ min: 1, max: 1e6 }), 1, words);

/** A material of one's own. */
export const MATERIAL_KEYS = {
  youngsModulus: required(modulus, 'along the arm'),
  density: required(number({ unit: 'kg/m³', min: 1, max: 3e4 }), 'density'),
  strength: required(number({ unit: 'Pa', min: 1e3, max: 1e12 }), 'stress in bending at which it yields or breaks'),
  shearModulus: required(modulus, 'shear modulus'),
  lossFactor: required(number({ min: 0, max: 1 }), 'twice the damping ratio that it gives by itself'),
  conductivity: optional(number({ unit: 'S/m', above: 0, max: 1e9 }), 'at 20 °C', 'does not conduct'),
  resistanceRise: otherwise(number({ unit: '1/K', min: 0, max: 0.1 }), 0, 'rise of its resistance, as a share'),
} as const;

const named = choice([
  'spring steel',
  'brass',
  'aluminium',
  'copper',
  'acrylic',
  'birch',
  'silicon 110',
  'silicon 100',
]);
const own = object(MATERIAL_KEYS);

type Named = typeof named extends Kind<infer T> ? T : never;
type Own = typeof own extends Kind<infer T> ? T : never;

/** A name or values of one's own. */
const material: Kind<Named | Own> = {
  allowed: `${named.allowed}, or own values ${own.allowed}`,
  read(node, path, report) {
    if (node.type === 'object') return own.read(node, path, report);
    if (node.type === 'string') return named.read(node, path, report);
    report(path, found(node), this.allowed);
    return undefined;
  },
};

const plate: Kind<readonly [number, number]> = {
  allowed: `[a, b], each ${length.allowed}`,
  read(node, path, report) {
    const [a, b] = components(node, 2, length, path, this.allowed, report);
    return a === undefined || b === undefined ? undefined : [a, b];
  },
};

const proofMass = object({
  mass: optional(kilograms, 'its mass; or a material with a size or a diameter'),
  material: optional(material, 'what it is made of'),
  size: optional(sizes, 'edges of a block: along the arm, across it, in the sensing direction'),
  diameter: optional(length, 'of a ball'),
});

const strip = {
  material: required(material, 'what it is made of'),
  length: required(length, 'free length: of the arm, of both halves between two clamps, of one folded beam'),
  width: required(length, 'across the bending'),
  thickness: required(length, 'in the direction of bending'),
};

/** The keys of each kind of suspension. */
export const SUSPENSION_KEYS = {
  coil: {
    material: required(material, 'what it is wound of'),
    wire: required(length, 'diameter of the wire'),
    diameter: required(length, 'mean diameter of the coil'),
    turns: required(number({ min: 1, max: 1e4 }), 'turns that move'),
    freeLength: optional(length, 'length without load', 'not looked at'),
  },
  arm: {
    ...strip,
    beyondEnd: otherwise(orZero(length), 0, 'from the end of the arm to the centre of the mass'),
    posture: otherwise(
      choice(['level', 'hanging', 'standing']),
      'level',
      'how it lies to gravity, which stretches or presses it; kept while the housing turns',
    ),
  },
  'clamped arm': strip,
  'folded beams': { ...strip, linkMass: otherwise(orZero(kilograms), 0, 'mass of all the links between the beams') },
} as const;

const liquid = object({
  liquid: required(choice(['water', 'glycerol', 'silicone oil', 'castor oil', 'olive oil']), 'kind of liquid'),
  share: otherwise(number({ min: 0, max: 1 }), 1, 'glycerol: its share of the mass, the rest is water'),
  nominalViscosity: otherwise(
    number({ unit: 'm²/s', min: 1e-6, max: 1 }),
    3.5e-4,
    'silicone oil: kinematic viscosity at 25 °C',
  ),
  vane: optional(
    object({
      area: required(area, 'of one face'),
      gap: required(length, 'to the wall'),
      count: count('equal gaps side by side: two for a vane between two walls'),
    }),
    'a vane that slides in a slot of the liquid',
    'the whole mass is immersed',
  ),
});

const gasFilm = object({
  plate: required(plate, 'edges of the plate that squeezes it'),
  gap: required(length, 'to the wall, unloaded; not below the gap of the stops'),
  count: count('equal films side by side: two for a plate between two walls, the fingers of a comb'),
  pressure: otherwise(orZero(number({ unit: 'Pa', min: 1e-6, max: 1e8 })), 101325, 'of the air; 0: vacuum'),
});

const eddyCurrents = object({
  material: required(material, 'of the plate, a conductor'),
  thickness: required(length, 'of the plate'),
  area: required(area, 'of the plate within the field'),
  field: optional(number({ unit: 'T', min: 1e-6, max: 100 }), 'flux density at the plate; or magnets'),
  magnets: optional(
    object({
      remanence: required(number({ unit: 'T', min: 0.01, max: 2 }), 'of the magnets'),
      diameter: required(length, 'of each'),
      length: required(length, 'of each'),
    }),
    'two equal round magnets that face each other across the plate',
  ),
  gap: required(length, 'between the poles'),
  fittedFactor: required(
    number({ above: 0, max: 1 }),
    'fitted factor for the way back of the currents: measure it; 0.3 to 0.5 are common',
  ),
});

export const design = object({
  proofMass: required(proofMass, 'the mass: two of mass, material, and size or diameter; or mass alone, a point'),
  suspension: required(variant(SUSPENSION_KEYS), 'what it hangs on'),
  damping: otherwise(
    object({
      liquid: optional(liquid, 'liquid about the mass or a vane'),
      gasFilm: optional(gasFilm, 'film of air that is squeezed'),
      eddyCurrents: optional(eddyCurrents, 'conducting plate in a field'),
    }),
    { liquid: undefined, gasFilm: undefined, eddyCurrents: undefined },
    'what damps it beside its material; they add up',
    'the material alone',
  ),
});
