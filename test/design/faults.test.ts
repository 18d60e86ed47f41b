import { describe, expect, it } from 'vitest';
import type { DesignConditions, DesignSpec } from '../../src/contract/design.ts';
import { ARM, CHIP, CLAMPED, COIL, CONDITIONS, design, FOLDED, faultsOf, ON_ARM } from './bench.ts';

const OIL = { liquid: 'castor oil', share: 1, nominalViscosity: 1e-4 } as const;
const PLATE = { material: 'copper', thickness: 0.002, area: 4e-4, field: 0.3, gap: 0.006, fittedFactor: 0.4 } as const;
const BALL = { material: 'brass', diameter: 0.02 } as const;

/** A change to the plain arm, conditions, where the fault lies and words of it. */
type Case = readonly [string, Partial<DesignSpec>, Partial<DesignConditions>, string, string];

describe('what cannot be built says where, what was found and what would do', () => {
  it.for<Case>([
    ['no mass', { proofMass: {} }, {}, 'proofMass', 'a mass in kg'],
    ['a size alone', { proofMass: { size: [0.01, 0.01, 0.01] } }, {}, 'proofMass', 'a mass or a material'],
    ['a diameter alone', { proofMass: { diameter: 0.01 } }, {}, 'proofMass', 'a mass or a material'],
    ['said twice', { proofMass: { ...BALL, mass: 1 } }, {}, 'proofMass', 'they give the third'],
    ['block and ball', { proofMass: { ...BALL, size: [1, 1, 1] } }, {}, 'proofMass', 'a size (block) or a diameter'],
    [
      'thicker than long',
      { suspension: { ...ARM, thickness: 0.2 } },
      {},
      'suspension.thickness',
      'below the length, 0.2 m',
    ],
    [
      'a mass over the clamp',
      { proofMass: { mass: 1, size: [0.5, 0.01, 0.01] } },
      {},
      'suspension.beyondEnd',
      'at most its length',
    ],
    ['a coil without a hole', { suspension: { ...COIL, wire: 0.006 } }, {}, 'suspension.diameter', 'twice the wire'],
    [
      'turns that touch',
      { suspension: { ...COIL, freeLength: 0.02 } },
      { gap: 0.02 },
      'suspension.freeLength',
      'above 0.031 m',
    ],
    [
      'a mass through the wall',
      { proofMass: BALL },
      { gap: 0.06, room: { longest: 1, sensing: 0.12 } },
      'proofMass',
      '0.12 m, the housing',
    ],
    ['an arm through the wall', {}, { room: { longest: 0.12, sensing: 0.12 } }, 'suspension', 'longest edge'],
    [
      'a clamped arm through the wall',
      { suspension: CLAMPED },
      { room: { longest: 0.12, sensing: 1 } },
      'suspension',
      'longest edge',
    ],
    [
      'liquid and film',
      { proofMass: BALL, damping: { liquid: OIL, gasFilm: CHIP.damping.gasFilm } },
      {},
      'damping',
      'one of them',
    ],
    [
      'oil too cold',
      { proofMass: BALL, damping: { liquid: OIL } },
      { temperature: 270 },
      'damping.liquid.liquid',
      '283.15 to 373.15 K',
    ],
    ['a point in oil', { damping: { liquid: OIL } }, {}, 'proofMass', 'a size, a diameter or a material'],
    [
      'a float',
      { proofMass: { material: 'birch', diameter: 0.02 }, damping: { liquid: OIL } },
      {},
      'proofMass',
      'denser than the liquid',
    ],
    [
      'stops beyond the film',
      { damping: { gasFilm: { plate: [0.01, 0.01], gap: 0.001, count: 1, pressure: 1e5 } } },
      { gap: 0.002 },
      'damping.gasFilm.gap',
      'would hit its wall',
    ],
    [
      'a film like a wall',
      { ...CHIP, damping: { gasFilm: { plate: [4e-4, 4e-4], gap: 2e-6, count: 1, pressure: 1e5 } } },
      {},
      'damping.gasFilm',
      'a wider gap',
    ],
    [
      'a plate of acrylic',
      { damping: { eddyCurrents: { ...PLATE, material: 'acrylic' } } },
      {},
      'damping.eddyCurrents.material',
      'a conductor',
    ],
    [
      'a plate too thick',
      { damping: { eddyCurrents: { ...PLATE, thickness: 0.006 } } },
      {},
      'damping.eddyCurrents.thickness',
      'the gap between the poles',
    ],
    [
      'no field',
      { damping: { eddyCurrents: { ...PLATE, field: undefined } } },
      {},
      'damping.eddyCurrents',
      'exactly one',
    ],
    [
      'an arm that breaks',
      { suspension: { ...ARM, material: 'acrylic', thickness: 0.002, width: 0.005 }, proofMass: { mass: 0.5 } },
      {},
      'suspension.thickness',
      'the strength of the material',
    ],
    [
      'an arm that breaks at its stop',
      { suspension: { ...ARM, length: 0.05 } },
      { gap: 0.02 },
      'suspension.thickness',
      'nearer stops',
    ],
    [
      'an arm that hangs down',
      { suspension: { ...ARM, thickness: 1.5e-4, length: 0.1, width: 0.05 }, proofMass: { mass: 0.06 } },
      {},
      'suspension.thickness',
      'half the length',
    ],
    [
      'an arm that falls over',
      { suspension: { ...ARM, thickness: 2e-4, posture: 'standing' } },
      {},
      'suspension.posture',
      'stiffer or shorter',
    ],
    [
      'too slow a mode',
      { suspension: { ...COIL, wire: 1e-5, diameter: 0.02, turns: 100 }, proofMass: { mass: 1e-4 } },
      { gap: 1e-4 },
      '',
      '0.01',
    ],
  ])('%s', ([, change, conditions, path, words]) => {
    const faults = faultsOf({ ...ON_ARM, ...change }, { ...CONDITIONS, ...conditions });
    expect(faults.map((fault) => fault.path)).toContain(path);
    expect(faults.map(({ found, allowed }) => `${found} | ${allowed}`).join('\n')).toContain(words);
  });
});

describe('what comes near a limit is told', () => {
  const words = (change: Partial<DesignSpec>, conditions: Partial<DesignConditions> = {}): string =>
    design({ ...ON_ARM, ...change }, { ...CONDITIONS, ...conditions })
      .warnings.map(({ path, words: text }) => `${path}: ${text}`)
      .join('\n');
  it.for<readonly [string, Partial<DesignSpec>, Partial<DesignConditions>, string]>([
    ['a wide coil', { suspension: { ...COIL, wire: 1e-3, diameter: 0.003 } }, {}, 'from 4 to 20'],
    ['a short arm', { suspension: { ...ARM, length: 0.02, thickness: 0.003 } }, {}, 'ten thicknesses'],
    ['a plate', { suspension: { ...ARM, length: 0.05, width: 0.06 } }, {}, 'Wider than long'],
    ['a rib', { suspension: { ...ARM, width: 0.0005 }, proofMass: { mass: 1e-3 } }, {}, 'Thicker than wide'],
    ['gravity along the arm', {}, {}, 'Hz standing, 7.64 Hz hanging'],
    ['much gravity along it', { suspension: { ...ARM, thickness: 4e-4, posture: 'hanging' } }, {}, 'first order only'],
    ['half the strength', { suspension: { ...ARM, length: 0.05 } }, { gap: 0.006 }, "% of the material's strength"],
    ['a sag beyond the stop', {}, { gap: 0.004 }, 'rests on its stop'],
    ['a large sag', { suspension: { ...ARM, thickness: 5e-4 } }, {}, 'small deflections'],
    ['a turn of the mass', { suspension: { ...ARM, thickness: 5e-4 } }, {}, 'the mass turns by'],
    [
      'no ball',
      { proofMass: { material: 'brass', mass: 0.05 }, damping: { liquid: OIL } },
      {},
      'ball of the same volume',
    ],
    [
      'a quick ball',
      { proofMass: BALL, damping: { liquid: { ...OIL, liquid: 'water' } }, suspension: COIL },
      {},
      'Reynolds number',
    ],
    [
      'thin silicone oil',
      { proofMass: BALL, damping: { liquid: { ...OIL, liquid: 'silicone oil', nominalViscosity: 1e-5 } } },
      {},
      '5e-5 m²/s and more',
    ],
    ['thin gas', { ...CHIP, damping: { gasFilm: { ...CHIP.damping.gasFilm!, pressure: 1 } } }, {}, 'Knudsen'],
    [
      'a film that closes',
      { damping: { gasFilm: { plate: [0.01, 0.01], gap: 0.01, count: 1, pressure: 1e5 } } },
      {},
      'small swings about',
    ],
    [
      'a gas spring',
      { ...CHIP, damping: { gasFilm: { ...CHIP.damping.gasFilm!, plate: [1e-4, 1e-4], count: 20 } } },
      {},
      'The gas is a spring',
    ],
    [
      'a thick plate',
      { damping: { eddyCurrents: { ...PLATE, thickness: 0.03, gap: 0.04 } } },
      {},
      'Thicker than the field gets',
    ],
    [
      'magnets',
      {
        damping: {
          eddyCurrents: { ...PLATE, field: undefined, magnets: { remanence: 1.2, diameter: 0.02, length: 0.005 } },
        },
      },
      {},
      'pacemakers',
    ],
    ['hardly any damping', {}, {}, 'rings for hundreds of swings'],
    [
      'no damping at all',
      {
        suspension: {
          ...ARM,
          material: { youngsModulus: 2e11, density: 7850, strength: 1e9, shearModulus: 8e10, lossFactor: 0 },
        },
      },
      {},
      'rings for ever',
    ],
  ])('%s', ([, change, conditions, text]) => expect(words(change, conditions)).toContain(text));

  it('nothing else', () => {
    const quiet = { ...CHIP, suspension: { ...FOLDED, length: 1.8e-4 } };
    expect(design(quiet, { ...CONDITIONS, gap: 1e-6 }).warnings).toEqual([]);
  });
});
