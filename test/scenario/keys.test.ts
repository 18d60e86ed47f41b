import { describe, expect, it } from 'vitest';
import { type Fault, faultSentence } from '../../src/scenario/fault.ts';
import { MOTION_KEYS, scenario } from '../../src/scenario/keys.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import type { KeyTable } from '../../src/scenario/schema.ts';
import { FILES, fullScenario } from './support/full-scenario.ts';
import { valueAt, withValue } from './support/json-path.ts';

/** What is allowed and what is not, key by key, written by hand: values just inside and just outside the limits. */
type Expected = readonly [path: string, good: readonly unknown[], bad: readonly unknown[]];

const LENGTHS = { good: [1e-6, 1e5], bad: [0, -1, 9e-7, 100001] };
const ANY_AXIS = {
  good: [
    [0, 0, -3],
    [1e-9, 0, 0],
    [1, 1, 1],
  ],
  bad: [[0, 0, 0], [0, 1], [1, 0, 0, 0], ['x', 0, 0], 'y', [1e7, 0, 0]],
};
const ANY_ATTITUDE = {
  good: [[0, 0, 0, 1], [1, 2, 3, 4], { axis: [0, 0, 5], angle: -1.5 }],
  bad: [
    [0, 0, 0, 0],
    [0, 0, 1],
    { axis: [0, 0, 1], angle: 90 },
    { axis: [0, 0, 0], angle: 1 },
    { axis: [0, 0, 1] },
    { angle: 1 },
    'level',
  ],
};
const RATIOS = { good: [0, 1, 100], bad: [-0.001, 100.1] };
const FREQUENCIES = { good: [0.01, 1e7], bad: [0, -3, 0.009, 1.1e7] };
const SHAKES = { good: [1e-4, 1e6], bad: [0, -3, 9e-5, 1.1e6] };
const AMPLITUDES = { good: [0, 1e6], bad: [-1, 1.1e6] };

const EXPECTED: readonly Expected[] = [
  ['seed', [0, 1, 4294967295], [-1, 1.5, 4294967296, true]],
  ['gravity', [0, 1.62, 1000], [-9.8, 1000.1, null, [9.8]]],
  ['duration', [5, 5.5], [0, -1, 1e6 + 1]],
  ['tick', [1e-7, 0.1], [0, -0.001, 9e-9, 0.11]],
  ['temperature', [0, 1e4], [-1, 10001]],
  ['record', [{}, { rate: 1 }], [100, [], { rte: 1 }]],
  ['record.rate', [0.001, 1e6], [0, 9e-4, 1.1e8]],
  ['housing', [{}], [0.5, null]],
  ['housing.mass', [1e-3, 1e6], [9e-7, 0, -0.5, 1.1e6]],
  [
    'housing.size',
    [
      [1e-4, 0.1, 0.01],
      [0.1, 1, 100],
    ],
    [[9e-5, 0.01, 0.01], [0, 1, 1], [1, 1], [1, 1, 1, 1], [1, 1, 101], [1e-3, 1, 1.1], 0.12, [1, 1, null]],
  ],
  ['startHeight', [0, 1e5], [-0.1, 1.1e5, 'high']],
  ['elements', [], [{}, [], [3], null]],
  ['elements[1].name', ['x', 'A-1_b', 'a'.repeat(40)], ['', '1x', 'a b', 'a,b', '=a', 'é', 'a'.repeat(41), 3]],
  ['elements[0].axis', ANY_AXIS.good, ANY_AXIS.bad],
  [
    'elements[0].at',
    [
      [0, 0, 0],
      [-1000, 1000, 0],
    ],
    [[0, 0], [1001, 0, 0], 0, [0, 0, '0']],
  ],
  ['elements[0].design', [], [5, {}, []]],
  ['elements[0].naturalFrequency', FREQUENCIES.good, FREQUENCIES.bad],
  ['elements[0].dampingRatio', RATIOS.good, RATIOS.bad],
  ['elements[1].modes', [], [[], {}, 3]],
  ['elements[1].modes[0].naturalFrequency', [20], [0, 1.1e7, 'low']],
  ['elements[1].modes[0].dampingRatio', [0.05], [-1, 101]],
  ['elements[1].modes[0].participation', [1e-6, 1e6], [-1.1e6, 1.1e6]],
  ['elements[1].modes[0].shape', [1e-6, 1e6], [-1.1e6, 1.1e6]],
  ['elements[1].modes[0].modalMass', [1e-18, 1e6], [0, -1, 1.1e6]],
  ['elements[1].staticRemainder', [0, -1e-9, 1e6], [-1.1e6, 1.1e6]],
  ['elements[0].gap', [0.001, 1000], [0, -0.02, 1001]],
  ['elements[0].restitution', [0, 1], [-0.1, 1.01]],
  ['elements[0].cubicStiffness', [0, 1e16], [-1, 1.1e30]],
  ['elements[0].mount', [], [true, 50, [], {}]],
  ['elements[0].mount.naturalFrequency', FREQUENCIES.good, FREQUENCIES.bad],
  ['elements[0].mount.dampingRatio', RATIOS.good, RATIOS.bad],
  ['elements[0].mount.massRatio', [0, 100], [-0.1, 101]],
  ['elements[0].thermalNoise', [true, false], [1, 'yes', null]],
  ['elements[0].mass', [1e-21, 1e4], [0, -1, 1.1e4]],
  ['elements[0].fieldAtMass', [true, false], [0, {}]],
  ['elements[0].start', [{}, { velocity: 1 }], [0, [0, 0]]],
  ['elements[0].start.deflection', [0.02, -0.02, 0], [0.021, -0.021, 1001]],
  ['elements[0].start.velocity', [-1e4, 1e4], [10001]],
  ['elements[0].readout', [{ rate: 10 }], [100, {}, true]],
  ['elements[0].readout.rate', [0.001, 1e6], [0, -1, 1.1e6]],
  ['elements[0].readout.range', [1e-3, 1e7], [0, -40, 1.1e7]],
  ['elements[0].readout.bits', [1, 32], [0, 33, 8.5, -8]],
  ['motions', [], [{}, [], null]],
  ['motions[0].from', [0], [0.1, -1, '0']],
  ['motions[0].within', [0, 0.2, 1e5], [-0.1, 1e-7, 1e6]],
  ['motions[0].tremor', [{}], [true, 8]],
  ['motions[0].tremor.frequency', SHAKES.good, SHAKES.bad],
  ['motions[0].tremor.amplitude', AMPLITUDES.good, AMPLITUDES.bad],
  ['motions[0].tremor.axis', ANY_AXIS.good, ANY_AXIS.bad],
  ['motions[1].from', [0, 1], [-0.5]],
  ['motions[1].height', [0, 1e5], [-0.1, 1.1e5]],
  ['motions[1].attitude', ANY_ATTITUDE.good, ANY_ATTITUDE.bad],
  [
    'motions[1].spin',
    [
      [0, 0, 0],
      [-1e4, 0, 1e4],
    ],
    [[1e4 + 1, 0, 0], 3, [0, 0]],
  ],
  ['motions[1].pad', [], [20000, {}, null]],
  ['motions[1].pad.stiffness', [1e-3, 1e10], [0, -5, 1.1e10]],
  ['motions[1].pad.damping', [0, 1e8], [-1, 1.1e8]],
  ['motions[1].pad.thickness', [1e-5, 100], [0, -0.1, 101]],
  ['motions[1].pad.friction', [0, 10], [-0.1, 10.1]],
  ['motions[1].airDrag', [], [1, {}]],
  ['motions[1].airDrag.area', [0, 1e4], [-1, 1.1e4]],
  ['motions[1].airDrag.coefficient', [0, 100], [-1, 101]],
  ['motions[1].airDrag.airDensity', [0, 1000], [-1, 1001]],
  ['motions[2].from', [0.5, 1.5], [-1]],
  ['motions[2].axis', ANY_AXIS.good, ANY_AXIS.bad],
  ['motions[2].sine', [], [5, {}, []]],
  ['motions[2].sine.frequency', SHAKES.good, SHAKES.bad],
  ['motions[2].sine.amplitude', AMPLITUDES.good, AMPLITUDES.bad],
  ['motions[2].sine.ease', LENGTHS.good, LENGTHS.bad],
  ['motions[3].sweep', [], [5, {}, []]],
  ['motions[3].sweep.from', SHAKES.good, SHAKES.bad],
  ['motions[3].sweep.to', [...SHAKES.good, 2], SHAKES.bad],
  ['motions[3].sweep.amplitude', AMPLITUDES.good, AMPLITUDES.bad],
  ['motions[3].sweep.over', LENGTHS.good, LENGTHS.bad],
  ['motions[3].sweep.law', ['linear', 'logarithmic'], ['log', '', 1]],
  ['motions[3].sweep.ease', LENGTHS.good, LENGTHS.bad],
  ['motions[4].random', [], [5, {}, []]],
  ['motions[4].random.density', [0, 1e9], [-1, 1.1e9]],
  ['motions[4].random.from', [1e-4, 19.9], [0, -1, 9e-5]],
  ['motions[4].random.to', [2.1, 1e6], [2, 1, 0, 1.1e6]],
  ['motions[4].random.ease', LENGTHS.good, LENGTHS.bad],
  ['motions[5].from', [2.5], [1.9, -1]],
  ['motions[5].axis', ANY_AXIS.good, ANY_AXIS.bad],
  ['motions[5].distance', [-1e4, 0, 1e4], [10001, -10001]],
  ['motions[5].over', LENGTHS.good, LENGTHS.bad],
  ['motions[6].from', [3], [2.4]],
  ['motions[6].axis', ANY_AXIS.good, ANY_AXIS.bad],
  ['motions[6].acceleration', [-1e6, 0, 1e6], [1.1e6]],
  ['motions[6].within', [0, 1e-6, 1e5], [-1, 1e-7, 1.1e5]],
  ['motions[7].from', [3.25], [2.9]],
  ['motions[7].to', ANY_ATTITUDE.good, ANY_ATTITUDE.bad],
  ['motions[7].over', LENGTHS.good, LENGTHS.bad],
  ['motions[8].from', [3.5], [3.2]],
  ['motions[8].axis', ANY_AXIS.good, ANY_AXIS.bad],
  ['motions[8].rate', [-1e4, 0, 1e4], [10001]],
  ['motions[8].within', LENGTHS.good, LENGTHS.bad],
  ['motions[9].from', [4], [3.4]],
  ['motions[9].file', ['record.csv'], ['', 5, 'missing.csv', 'a\0b']],
  ['motions[9].time', ['t_s'], ['', 'time', 1]],
  ['motions[9].columns', [['a_mg'], ['ax']], [[], ['nix'], 'a_mg', ['ax', 'ay', 'az', 'a_mg'], [1]]],
  ['motions[9].unit', ['m/s2', 'g', 'mg'], ['m/s²', 'G', '']],
  ['motions[9].is', ['acceleration', 'specificForce'], ['force', true]],
  ['motions[9].axis', ANY_AXIS.good, ANY_AXIS.bad],
  ['motions[10].from', [4.5, 4.6], [3.9]],
  ['motions[10].targets', [[]], [{}, [1]]],
  ['motions[10].targets[0].at', [4.5, 5], [-1, 1e7]],
  ['motions[10].targets[0].position', [[-1e4, 0, 1e4]], [[0, 0], [10001, 0, 0], {}]],
  ['motions[10].targets[0].attitude', ANY_ATTITUDE.good, ANY_ATTITUDE.bad],
  ['motions[10].targets[0].over', [0, 1], [-1, 1e-7]],
  ['changes', [[]], [{}, [1]]],
  ['changes[0].at', [0, 0.5], [-1]],
  ['changes[0].gravity', [0, 1000], [-1, 1001, '1']],
  ['changes[1].element', ['one'], ['three', 1, '']],
  ['changes[1].set', [{}], [5, []]],
  ['changes[1].set.naturalFrequency', FREQUENCIES.good, FREQUENCIES.bad],
  ['changes[1].set.dampingRatio', RATIOS.good, RATIOS.bad],
  ['changes[1].set.gap', [null, 0.1], [0, -1, 'none']],
  ['changes[1].set.restitution', [0, 1], [-0.1, 1.1]],
  ['changes[1].set.cubicStiffness', [0, 1], [-1]],
  ['changes[1].set.mount', [null], [{}, 3]],
  ['changes[1].set.mount.naturalFrequency', FREQUENCIES.good, FREQUENCIES.bad],
  ['changes[1].set.mount.dampingRatio', RATIOS.good, RATIOS.bad],
  ['changes[1].set.mount.massRatio', [0, 100], [-0.1, 101]],
  ['changes[1].set.readout', [], [null, {}, 3]],
  ['changes[1].set.readout.rate', [0.001, 1e6], [0, 1.1e6]],
  ['changes[1].set.readout.range', [1e-3, 1e7], [0, 1.1e7]],
  ['changes[1].set.readout.bits', [1, 32], [0, 33, 1.5]],
  ['changes[2].pad', [null], [{}, 3, []]],
  ['changes[2].pad.stiffness', [1, 1e10], [0, 1.1e10]],
  ['changes[2].pad.damping', [0, 1e8], [-1]],
  ['changes[2].pad.thickness', [1e-5], [0]],
  ['changes[2].pad.friction', [0, 10], [-1]],
];

const parse = (data: unknown): readonly Fault[] => parseScenario(JSON.stringify(data), FILES).faults ?? [];
const sentences = (faults: readonly Fault[]): string => faults.map(faultSentence).join('\n');
const base = fullScenario();

/** Where a value of another key is bound to this one, other faults may come with it. */
const within = (path: string, fault: Fault): boolean =>
  fault.path === path || fault.path.startsWith(`${path}.`) || fault.path.startsWith(`${path}[`);

it('the scenario with every key has no fault', () => {
  expect(sentences(parse(base))).toBe('');
});

describe('a value is allowed up to its limits and refused beyond, saying where and what is allowed', () => {
  it.each(EXPECTED)('%s', (path, good, bad) => {
    for (const value of good) {
      const data = withValue(base, path, value);
      // A short run with coarse ticks, so that no limit of work speaks.
      const short = withValue(
        withValue(data, 'duration', path === 'duration' ? value : 1e-5),
        'tick',
        path === 'tick' ? value : 1e-7,
      );
      expect(sentences(parse(short)), JSON.stringify(value)).toBe('');
    }
    for (const value of bad) {
      const faults = parse(withValue(base, path, value));
      expect(
        faults.some((fault) => within(path, fault)),
        `${JSON.stringify(value)}: ${sentences(faults)}`,
      ).toBe(true);
      for (const fault of faults) {
        expect(fault.found).not.toBe('');
        expect(fault.allowed).not.toBe('');
        expect(faultSentence(fault)).not.toMatch(/[\n\r]|undefined|NaN|\[object/);
      }
    }
  });
});

/** Keys that may be left out; the rest is needed. Written by hand from the format's description. */
const MAY_BE_MISSING = new RegExp(
  `^(?:seed|gravity|startHeight|tick|temperature|record|record\\.rate|housing|housing\\.(?:mass|size)|changes|${[
    'elements\\[\\d\\]\\.(?:at|design|modes|staticRemainder|gap|restitution|cubicStiffness|mount|mount\\.massRatio|thermalNoise|fieldAtMass|start|start\\..*|readout|readout\\.bits)',
    'motions\\[0\\]\\.(?:within|tremor|tremor\\..*)',
    'motions\\[1\\]\\.(?:height|attitude|spin|pad|pad\\.(?:damping|thickness|friction)|airDrag|airDrag\\.airDensity)',
    'motions\\[[234]\\]\\.\\w+\\.(?:ease|law)',
    'motions\\[[68]\\]\\.within',
    'motions\\[10\\]\\.targets\\[0\\]\\.attitude',
    'changes\\[1\\]\\.set\\.\\w+|changes\\[1\\]\\.set\\.mount\\.massRatio|changes\\[1\\]\\.set\\.readout\\.bits',
    'changes\\[2\\]\\.pad\\.(?:damping|thickness|friction)',
  ].join('|')})$`,
);

/** Where leaving a key out is no missing key but one rule that joins keys speaks; its own sentence. */
const SPECIAL: Readonly<Record<string, string>> = {
  'elements[0].readout': 'changes[1].set.readout: found settings; allowed: none: element "one" has no readout',
  'motions[2].sine': 'motions[2]: found none of sine, sweep, random; allowed: exactly one of sine, sweep, random',
  'motions[3].sweep': 'motions[3]: found none of sine, sweep, random; allowed: exactly one of sine, sweep, random',
  'motions[4].random': 'motions[4]: found none of sine, sweep, random; allowed: exactly one of sine, sweep, random',
  'changes[0].gravity':
    'changes[0]: found none of gravity, set, pad; allowed: exactly one of gravity, set (with element), pad',
  'changes[1].set':
    'changes[1]: found none of gravity, set, pad; allowed: exactly one of gravity, set (with element), pad',
  'changes[2].pad':
    'changes[2]: found none of gravity, set, pad; allowed: exactly one of gravity, set (with element), pad',
};

describe('a missing key has its default, or is a fault where it is needed', () => {
  it.each(EXPECTED.map(([path]) => path))('%s', (path) => {
    const told = sentences(parse(withValue(base, path, undefined)));
    const special = SPECIAL[path];
    if (special !== undefined) expect(told).toContain(special);
    else if (MAY_BE_MISSING.test(path)) expect(told).toBe('');
    else expect(told).toContain(`${path}: found nothing; allowed: `);
  });
});

it('an unknown key is refused in every object, and the nearest known one is named', () => {
  const objects = new Set(
    EXPECTED.flatMap(([path]) => [path.slice(0, path.lastIndexOf('.')), path]).filter(
      (path) => path !== '' && !path.endsWith(']'),
    ),
  );
  for (const path of objects) {
    const value = valueAt(base, path);
    if (value === null || typeof value !== 'object' || Array.isArray(value)) continue;
    const first = Object.keys(value)[0] ?? '';
    const slip = `${first}x`;
    const faults = parse(withValue(base, `${path}.${slip}`, 1));
    expect(sentences(faults)).toContain(
      `${path}.${slip}: found the unknown key "${slip}"; allowed: perhaps "${first}"`,
    );
  }
  expect(sentences(parse({ ...base, extra: 1 }))).toMatch(
    /^extra: found the unknown key "extra"; allowed: the keys seed, gravity/,
  );
});

it('the list above knows every key of the table', () => {
  const listed = new Set(EXPECTED.map(([path]) => path.replaceAll(/\[\d+\]/g, '')));
  const missing = [
    ...keyPaths('', scenario.below ?? {}),
    ...Object.values(MOTION_KEYS).flatMap((keys) => keyPaths('motions.', keys)),
  ].filter((path) => !listed.has(path) && !path.startsWith('elements.design.'));
  // Those of a design stand in design-keys.test.ts.
  expect(missing).toEqual([]);
});

function keyPaths(prefix: string, keys: KeyTable): string[] {
  return Object.entries(keys).flatMap(([name, { kind }]) => [
    `${prefix}${name}`,
    ...keyPaths(`${prefix}${name}.`, kind.below ?? {}),
  ]);
}
