import { describe, expect, it } from 'vitest';
import type { DesignSpec } from '../../src/contract/design.ts';
import { designed } from '../../src/design/design.ts';
import { MATERIAL_KEYS, SUSPENSION_KEYS } from '../../src/scenario/design-keys.ts';
import { faultSentence } from '../../src/scenario/fault.ts';
import { scenario } from '../../src/scenario/keys.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { scenarioText } from '../../src/scenario/scenario-text.ts';
import type { KeyTable } from '../../src/scenario/schema.ts';
import { FILES } from './support/full-scenario.ts';
import { withValue } from './support/json-path.ts';

const OWN = {
  youngsModulus: 3e9,
  density: 1200,
  strength: 1e8,
  shearModulus: 1e9,
  lossFactor: 0.05,
  conductivity: 1e6,
  resistanceRise: 0.004,
};
const STRIP = { material: 'spring steel', length: 0.09, width: 0.012, thickness: 4e-4 };
const OF = 'elements[0].design';

/** A scenario whose element has this design; the housing is roomy. */
const of = (design: object, element: object = {}): object => ({
  duration: 0.01,
  housing: { mass: 0.5, size: [0.5, 0.4, 0.3] },
  elements: [{ name: 'z', axis: [0, 1, 0], ...element, design }],
  motions: [{ kind: 'held', from: 0 }],
});
const BRASS = { material: 'brass', size: [0.02, 0.02, 0.01] };
const EDDY = { material: 'copper', thickness: 0.002, area: 2e-4, field: 0.25, gap: 0.006, fittedFactor: 0.4 };

const ARM = of({
  proofMass: BRASS,
  suspension: { kind: 'arm', ...STRIP, beyondEnd: 0.01, posture: 'level' },
  damping: { eddyCurrents: EDDY },
});
const COIL = of({
  proofMass: { material: 'brass', diameter: 0.02 },
  suspension: { kind: 'coil', material: OWN, wire: 0.002, diameter: 0.01, turns: 10, freeLength: 0.1 },
  damping: { liquid: { liquid: 'silicone oil', share: 1, nominalViscosity: 1e-4 } },
});
const CLAMPED = of({
  proofMass: { mass: 0.05 },
  suspension: { kind: 'clamped arm', ...STRIP },
  damping: { liquid: { liquid: 'water', vane: { area: 1e-4, gap: 1e-3, count: 2 } } },
});
const CHIP = of({
  proofMass: { material: 'silicon 110', size: [4e-4, 4e-4, 2.5e-5] },
  suspension: {
    kind: 'folded beams',
    material: 'silicon 110',
    length: 2e-4,
    width: 2.5e-5,
    thickness: 2e-6,
    linkMass: 0,
  },
  damping: { gasFilm: { plate: [1e-4, 2.5e-5], gap: 2e-6, count: 40, pressure: 101325 } },
});
const MAGNETS = withValue(
  withValue(ARM, `${OF}.damping.eddyCurrents.field`, undefined),
  `${OF}.damping.eddyCurrents.magnets`,
  {
    remanence: 1.2,
    diameter: 0.01,
    length: 0.005,
  },
) as object;

const LENGTHS = [0, -1, 9e-10, 101, '1 mm'];
const NAMES = ['steel', '', 3, {}, null];
/** [scenario, path below the design, what is refused] by hand. */
const REFUSED: readonly (readonly [object, string, readonly unknown[]])[] = [
  [ARM, 'proofMass', [{}, 3]],
  [CLAMPED, 'proofMass.mass', [0, -1, 1.1e4]],
  [ARM, 'proofMass.material', NAMES],
  [ARM, 'proofMass.size', [[1, 1], 0.1, [0, 1, 1], [1, 1, 101]]],
  [COIL, 'proofMass.diameter', LENGTHS],
  [ARM, 'suspension', [{}, { kind: 'string' }, 'arm']],
  [COIL, 'suspension.material', NAMES],
  [COIL, 'suspension.material.youngsModulus', [0, 1e14]],
  [COIL, 'suspension.material.density', [0, 1e5]],
  [COIL, 'suspension.material.strength', [0, 1e13]],
  [COIL, 'suspension.material.shearModulus', [0, 1e14]],
  [COIL, 'suspension.material.lossFactor', [-0.1, 1.1]],
  [COIL, 'suspension.material.conductivity', [0, 1.1e9]],
  [COIL, 'suspension.material.resistanceRise', [-0.1, 0.2]],
  [COIL, 'suspension.wire', LENGTHS],
  [COIL, 'suspension.diameter', LENGTHS],
  [COIL, 'suspension.turns', [0, 0.9, 10001]],
  [COIL, 'suspension.freeLength', LENGTHS],
  [ARM, 'suspension.material', NAMES],
  [ARM, 'suspension.length', LENGTHS],
  [ARM, 'suspension.width', LENGTHS],
  [ARM, 'suspension.thickness', LENGTHS],
  [ARM, 'suspension.beyondEnd', [-0.01, 101]],
  [ARM, 'suspension.posture', ['lying', 0]],
  [CLAMPED, 'suspension.material', NAMES],
  [CLAMPED, 'suspension.length', LENGTHS],
  [CLAMPED, 'suspension.width', LENGTHS],
  [CLAMPED, 'suspension.thickness', LENGTHS],
  [CHIP, 'suspension.material', NAMES],
  [CHIP, 'suspension.length', LENGTHS],
  [CHIP, 'suspension.width', LENGTHS],
  [CHIP, 'suspension.thickness', LENGTHS],
  [CHIP, 'suspension.linkMass', [-1, 1.1e4]],
  [ARM, 'damping', [0, [], { friction: 1 }]],
  [COIL, 'damping.liquid', [{}, 'oil']],
  [COIL, 'damping.liquid.liquid', ['honey', 1]],
  [COIL, 'damping.liquid.share', [-0.1, 1.1]],
  [COIL, 'damping.liquid.nominalViscosity', [0, 9e-7, 1.1]],
  [CLAMPED, 'damping.liquid.vane', [{}, 1]],
  [CLAMPED, 'damping.liquid.vane.area', [0, 101]],
  [CLAMPED, 'damping.liquid.vane.gap', LENGTHS],
  [CLAMPED, 'damping.liquid.vane.count', [0, 1.5, 1e7]],
  [CHIP, 'damping.gasFilm', [{}, 1]],
  [CHIP, 'damping.gasFilm.plate', [1e-4, [1e-4], [0, 1], [1, 1, 1]]],
  [CHIP, 'damping.gasFilm.gap', LENGTHS],
  [CHIP, 'damping.gasFilm.count', [0, 1.5, 1e7]],
  [CHIP, 'damping.gasFilm.pressure', [-1, 1e-7, 1.1e8]],
  [ARM, 'damping.eddyCurrents', [{}, true]],
  [ARM, 'damping.eddyCurrents.material', [...NAMES, 'acrylic']],
  [ARM, 'damping.eddyCurrents.thickness', [...LENGTHS, 0.006]],
  [ARM, 'damping.eddyCurrents.area', [0, 101]],
  [ARM, 'damping.eddyCurrents.field', [0, -1, 101]],
  [MAGNETS, 'damping.eddyCurrents.magnets', [{}, 1]],
  [MAGNETS, 'damping.eddyCurrents.magnets.remanence', [0, 2.1]],
  [MAGNETS, 'damping.eddyCurrents.magnets.diameter', LENGTHS],
  [MAGNETS, 'damping.eddyCurrents.magnets.length', LENGTHS],
  [ARM, 'damping.eddyCurrents.gap', LENGTHS],
  [ARM, 'damping.eddyCurrents.fittedFactor', [0, 1.1]],
];

const sentences = (data: unknown): string[] =>
  (parseScenario(JSON.stringify(data), FILES).faults ?? []).map(faultSentence);

function run(data: unknown) {
  const parsed = parseScenario(JSON.stringify(data), FILES);
  if (parsed.run === undefined) throw new Error(parsed.faults.map(faultSentence).join('\n'));
  return parsed.run;
}

describe('a design in a scenario', () => {
  it.for([
    ['arm', ARM],
    ['coil', COIL],
    ['clamped arm', CLAMPED],
    ['folded beams', CHIP],
    ['magnets', MAGNETS],
  ] as const)('%s: its numbers are those of the design, and the run written out gives the same run', ([, data]) => {
    const [element] = run(data).elements;
    expect(element).not.toHaveProperty('design');
    expect(element!.modes![0]!.naturalFrequency).toBe(element!.naturalFrequency);
    expect(run(JSON.parse(scenarioText(run(data)))).elements).toEqual(run(data).elements);
  });

  it('is worked out under the gravity, temperature, gap and housing of the scenario', () => {
    const hanging = withValue(withValue(ARM, `${OF}.suspension.posture`, 'hanging'), 'gravity', 1.62);
    const [element] = run({ ...(hanging as object), temperature: 313.15 }).elements;
    const { design } = (hanging as { elements: [{ design: DesignSpec }] }).elements[0];
    const expected = designed(design, { gravity: 1.62, temperature: 313.15 }).design!.element;
    expect(element).toMatchObject(expected);
  });

  it.for(REFUSED)('$1 refuses what is beyond its limits', ([data, path, bad]) => {
    expect(sentences(data)).toEqual([]);
    for (const value of bad) {
      const told = sentences(withValue(data, `${OF}.${path}`, value));
      expect(
        told.some((line) => line.startsWith(`${OF}.${path}`)),
        `${JSON.stringify(value)}: ${told.join('\n')}`,
      ).toBe(true);
    }
  });

  it('every key of a design is in the list above', () => {
    const listed = new Set(REFUSED.map(([, path]) => path));
    const paths = [
      ...keyPaths('', scenario.below?.['elements']?.kind.below?.['design']?.kind.below ?? {}),
      ...Object.values(SUSPENSION_KEYS).flatMap((keys) => keyPaths('suspension.', keys)),
      ...keyPaths('suspension.material.', MATERIAL_KEYS),
    ];
    expect(paths.filter((path) => !listed.has(path))).toEqual([]);
  });

  it('stands in the place of the numbers: neither both nor none', () => {
    for (const [key, value] of Object.entries({
      naturalFrequency: 10,
      dampingRatio: 0.1,
      mass: 1,
      cubicStiffness: 1e3,
    }))
      expect(sentences(withValue(ARM, `elements[0].${key}`, value))).toContain(
        `elements[0].${key}: found a value beside design; allowed: nothing: the design gives it`,
      );
    expect(sentences(withValue(ARM, OF, undefined))).toEqual([
      'elements[0].naturalFrequency: found nothing; allowed: a number from 0.01 to 1e7, in Hz, or a design',
      'elements[0].dampingRatio: found nothing; allowed: a number from 0 to 100, or a design',
    ]);
  });

  it.for([
    [
      'a mass through the wall',
      'elements[0].gap',
      0.2,
      `${OF}.proofMass: found 0.41000000000000003 m with its way to both stops; allowed: at most 0.4 m`,
    ],
    [
      'an arm through the wall',
      `${OF}.suspension.length`,
      0.6,
      `${OF}.suspension: found 0.62 m with its mass; allowed: at most 0.5 m`,
    ],
    [
      'thicker than long',
      `${OF}.suspension.thickness`,
      0.1,
      `${OF}.suspension.thickness: found 0.1 m; allowed: below the length, 0.09 m`,
    ],
  ] as const)('says what cannot be built: %s', ([, path, value, told]) => {
    expect(sentences(withValue(ARM, path, value)).join('\n')).toContain(told);
  });

  it('across the housing has the room that lies that way', () => {
    const wide = of({ proofMass: { mass: 0.05, size: [0.02, 0.02, 0.35] }, suspension: { kind: 'arm', ...STRIP } });
    expect(sentences(wide)).toEqual([]);
    const along = withValue(wide, 'elements[0].axis', [0, 0, 1]);
    expect(sentences(along).join('\n')).toContain('at most 0.3 m, the housing in the sensing direction');
  });

  it('too quick for the tick with stops is refused like any other', () => {
    const quick = withValue(withValue(CHIP, 'elements[0].gap', 1e-6), 'tick', 0.1);
    expect(sentences(quick).join('\n')).toContain('rad in a tick');
  });
});

function keyPaths(prefix: string, keys: KeyTable): string[] {
  return Object.entries(keys).flatMap(([name, { kind }]) => [
    `${prefix}${name}`,
    ...keyPaths(`${prefix}${name}.`, kind.below ?? {}),
  ]);
}
