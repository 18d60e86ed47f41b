import { NAMED_SCENARIOS } from '../../../src/scenario/named.ts';
import { parseScenario } from '../../../src/scenario/parse-scenario.ts';
import { World } from '../../../src/world/world.ts';

/** What no ready-made scenario has: a record, several modes on a mount, drag, a cushion that stiffens. */
const REST = {
  seed: 21,
  duration: 1.1,
  tick: 1 / 7300,
  record: { rate: 997 },
  elements: [
    {
      name: 'arm',
      axis: [0.6, 0.8, 0],
      at: [0.01, 0.02, 0.03],
      naturalFrequency: 9,
      dampingRatio: 0.03,
      modes: [
        { naturalFrequency: 9, dampingRatio: 0.03, participation: 1.5, shape: 1, modalMass: 0.02 },
        { naturalFrequency: 60, dampingRatio: 0.01, participation: -0.6, shape: 0.9, modalMass: 0.03 },
      ],
      staticRemainder: 1e-6,
      gap: 0.01,
      mount: { naturalFrequency: 30, dampingRatio: 0.1, massRatio: 0.2 },
      thermalNoise: true,
      mass: 1e-9,
    },
  ],
  motions: [
    {
      kind: 'recorded',
      from: 0,
      file: 'record.csv',
      time: 't',
      columns: ['a'],
      unit: 'mg',
      is: 'acceleration',
      axis: [1, 2, 3],
    },
    {
      kind: 'free',
      from: 0.4003,
      height: 0.2,
      attitude: { axis: [1, 1, 0], angle: 0.3 },
      spin: [1, 2, 3],
      pad: { stiffness: 9000, damping: 15, thickness: 0.05, friction: 0.3 },
      airDrag: { area: 0.02, coefficient: 1 },
    },
  ],
};
const RECORD = 't,a\n0,0\n0.013,120\n0.05,-340.5\n0.11,77\n0.3,0\n';

/** The fingerprint of every ready-made run and of one more, by name. */
export function runHashes(): Record<string, string> {
  const scenarios = [...NAMED_SCENARIOS, { id: 'the rest', scenario: REST }];
  return Object.fromEntries(scenarios.map(({ id, scenario }) => [id, hashOf(scenario)]));
}

function hashOf(scenario: object): string {
  const { run, faults } = parseScenario(JSON.stringify(scenario), { readFile: () => RECORD });
  if (run === undefined) throw new Error(JSON.stringify(faults));
  const world = new World(run);
  world.runTo(run.duration);
  return world.hash;
}
