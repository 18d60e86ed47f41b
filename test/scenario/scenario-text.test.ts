import { describe, expect, it } from 'vitest';
import { faultSentence } from '../../src/scenario/fault.ts';
import { NAMED_SCENARIOS } from '../../src/scenario/named.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { scenarioText } from '../../src/scenario/scenario-text.ts';
import { chance } from './support/chance.ts';
import { FILES, fullScenario } from './support/full-scenario.ts';
import { randomScenario } from './support/random-scenario.ts';

function parsed(text: string) {
  const { run, faults } = parseScenario(text, FILES);
  if (run === undefined) throw new Error(`${faults.map(faultSentence).join('\n')}\n${text}`);
  return run;
}

describe('a run written out and read again is the same run, bit for bit', () => {
  it.each([
    ['every key', fullScenario()] as const,
    ...NAMED_SCENARIOS.map(({ id, scenario }) => [id, scenario] as const),
  ])('%s', (_name, data) => {
    const run = parsed(JSON.stringify(data));
    const again = parsed(scenarioText(run));
    expect(again).toEqual(run); // toEqual tells −0 from 0
    expect(scenarioText(again)).toBe(scenarioText(run));
  });

  it('1000 random runs (seed 1)', () => {
    const random = chance(1);
    for (let n = 0; n < 1000; n++) {
      const run = parsed(JSON.stringify(randomScenario(random)));
      expect(parsed(scenarioText(run))).toEqual(run);
    }
  });
});

it('a change that takes the mount away still says so', () => {
  const changes = [{ at: 1, element: 'one', set: { mount: null } }];
  const run = parsed(JSON.stringify({ ...fullScenario(), changes }));
  const [change] = run.changes;
  expect(change && 'set' in change && Object.entries(change.set)).toEqual([['mount', undefined]]);
  expect(JSON.parse(scenarioText(run)).changes).toEqual(changes);
});

describe('what a scenario leaves out is filled in', () => {
  it('as the format says', () => {
    const run = parsed(
      '{"duration": 1, "elements": [{"name": "z", "axis": [0, 2, 0], "naturalFrequency": 10, "dampingRatio": 0.05}], "motions": [{"from": 0, "kind": "held", "tremor": {}}, {"from": 0.5, "kind": "free", "pad": {"stiffness": 20000}, "airDrag": {"area": 0.01, "coefficient": 1}}]}',
    );
    expect(run).toEqual({
      seed: 1,
      gravity: 9.80665,
      duration: 1,
      tick: 0.0001,
      temperature: 293.15,
      record: { rate: 1000 },
      housing: { mass: 0.5, size: [0.12, 0.12, 0.12] },
      elements: [
        {
          name: 'z',
          axis: [0, 1, 0],
          at: [0, 0, 0],
          naturalFrequency: 10,
          dampingRatio: 0.05,
          restitution: 0.5,
          cubicStiffness: 0,
          thermalNoise: false,
          fieldAtMass: false,
          staticRemainder: 0,
        },
      ],
      motions: [
        { kind: 'held', from: 0, within: 0.2, tremor: { frequency: 8, amplitude: 0.1, axis: [0, 1, 0] } },
        {
          kind: 'free',
          from: 0.5,
          pad: { stiffness: 20000, damping: 0, friction: 0 },
          airDrag: { area: 0.01, coefficient: 1, airDensity: 1.204 },
        },
      ],
      changes: [],
    });
  });

  it('a shake is eased in over four periods of its first frequency', () => {
    const shake = (law: object) =>
      parsed(JSON.stringify({ ...fullScenario(), motions: [{ from: 0, kind: 'shake', axis: [1, 0, 0], ...law }] }))
        .motions[0];
    expect(shake({ sine: { frequency: 8, amplitude: 1 } })).toEqual({
      kind: 'shake',
      from: 0,
      axis: [1, 0, 0],
      law: 'sine',
      frequency: 8,
      amplitude: 1,
      ease: 0.5,
    });
    expect(shake({ sweep: { from: 2, to: 9, amplitude: 1, over: 3 } })).toEqual({
      kind: 'shake',
      from: 0,
      axis: [1, 0, 0],
      law: 'sweep',
      fromFrequency: 2,
      toFrequency: 9,
      amplitude: 1,
      over: 3,
      progression: 'linear',
      ease: 2,
    });
    expect(shake({ random: { density: 3, from: 4, to: 9 } })).toEqual({
      kind: 'shake',
      from: 0,
      axis: [1, 0, 0],
      law: 'random',
      density: 3,
      fromFrequency: 4,
      toFrequency: 9,
      ease: 1,
    });
  });

  it('a push or a spin takes its time', () => {
    const [push, spin] = parsed(
      JSON.stringify({
        ...fullScenario(),
        motions: [
          { from: 0, kind: 'push', axis: [1, 0, 0], acceleration: 1 },
          { from: 1, kind: 'spin', axis: [1, 0, 0], rate: 1 },
        ],
      }),
    ).motions;
    expect(push).toMatchObject({ within: 0.05 });
    expect(spin).toMatchObject({ within: 0.5 });
  });
});

describe('directions and attitudes', () => {
  const motion = (data: object) =>
    parsed(JSON.stringify({ ...fullScenario(), motions: [{ from: 0, ...data }] })).motions[0];

  it('are brought to unit length, however long or short', () => {
    expect(motion({ kind: 'push', axis: [0, -4e5, 3e5], acceleration: 1 })).toMatchObject({ axis: [0, -0.8, 0.6] });
    expect(motion({ kind: 'push', axis: [3e-200, 0, 4e-200], acceleration: 1 })).toMatchObject({ axis: [0.6, 0, 0.8] });
    expect(motion({ kind: 'tilt', to: [0, 0, 3, 4], over: 1 })).toMatchObject({ to: [0, 0, 0.6, 0.8] });
    expect(motion({ kind: 'tilt', to: { axis: [0, 5, 0], angle: 1 }, over: 1 })).toMatchObject({
      to: { axis: [0, 1, 0], angle: 1 },
    });
  });

  // A quarter turn about z takes x to y: quaternion [0, 0, √½, √½] by the half-angle formula.
  it('an axis and an angle become a quaternion', () => {
    expect(motion({ kind: 'free', attitude: { axis: [0, 0, 2], angle: Math.PI / 2 } })).toMatchObject({
      attitude: [0, 0, expect.closeTo(Math.SQRT1_2, 15), expect.closeTo(Math.SQRT1_2, 15)],
    });
  });
});

it('a scenario without a record needs no files, one with a lost record is a fault', () => {
  const lost = {
    readFile: (): string => {
      throw new Error('it is\nlost');
    },
  };
  const { faults = [] } = parseScenario(JSON.stringify(fullScenario()), lost);
  expect(faults.map(faultSentence)).toEqual([
    'motions[9].file: found "record.csv", which cannot be read (it is lost); allowed: a CSV file, relative to the scenario',
  ]);
});
