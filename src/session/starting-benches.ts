import { type StartingBench, type StartingBenchName, stiffnessFor } from './settings.ts';

const HOUSING = { mass: 0.5, size: [0.12, 0.12, 0.1] } as const;

/**
 * Felt on foam: 0.5 kg sink 0.6 mm into it at rest and land with some 50 g from 0.3 m; most of the bounce is
 * taken out. Invented for the demonstration.
 */
const PAD = { stiffness: 8000, damping: 40, thickness: 0.05, friction: 0.5 } as const;

export const STARTING_BENCHES: Readonly<Record<StartingBenchName, StartingBench>> = {
  'table-top': {
    name: 'table-top',
    title: 'table-top model',
    line: 'A brass mass on a soft arm: everything can be seen, and it rings for a while.',
    springWords: 'arm of blued steel',
    look: { form: 'arm', damper: 'oil', span: 0.62 },
    tickS: 1e-4,
    rowRateHz: 2000,
    housing: HOUSING,
    paperSpanS: 2.4,
    slowed: 10,
    settings: {
      seed: 1,
      massKg: 0.025,
      stiffnessNM: stiffnessFor(0.025, 8),
      dampingRatio: 0.12,
      gapM: 0.0233,
      senses: 'up and down',
      restitution: 0.4,
      gravityMS2: 9.80665,
      dropHeightM: 0.4,
      pad: PAD,
      air: null,
      readout: { rate: 100, range: 8 * 9.80665, bits: 12 },
      bench: 'table-top',
    },
  },
  stiff: {
    name: 'stiff',
    title: 'stiff, well damped model',
    line: 'Thirty times stiffer and damped: it hardly moves, follows quickly and does not ring.',
    springWords: 'coil of blued steel',
    look: { form: 'coil', damper: 'oil', span: 0.62 },
    tickS: 1e-4,
    rowRateHz: 2000,
    housing: HOUSING,
    paperSpanS: 1.2,
    slowed: 10,
    settings: {
      seed: 1,
      massKg: 0.025,
      stiffnessNM: stiffnessFor(0.025, 45),
      dampingRatio: 0.65,
      gapM: 0.006,
      senses: 'up and down',
      restitution: 0.4,
      gravityMS2: 9.80665,
      dropHeightM: 0.4,
      pad: PAD,
      air: null,
      readout: { rate: 400, range: 50 * 9.80665, bits: 14 },
      bench: 'stiff',
    },
  },
  chip: {
    name: 'chip',
    title: 'chip',
    line: 'A microgram on silicon beams, three thousand swings a second: sags 28 nanometres. Drawn a million times larger.',
    springWords: 'silicon beams, drawn as one arm',
    look: { form: 'arm', damper: 'none', span: 0.62 },
    tickS: 2e-5,
    rowRateHz: 5000,
    housing: HOUSING,
    paperSpanS: 1.2,
    slowed: 10,
    settings: {
      seed: 1,
      massKg: 1e-9,
      stiffnessNM: stiffnessFor(1e-9, 3000),
      dampingRatio: 0.7,
      gapM: 2e-6,
      senses: 'up and down',
      restitution: 0.2,
      gravityMS2: 9.80665,
      dropHeightM: 0.4,
      pad: PAD,
      air: null,
      readout: { rate: 1000, range: 16 * 9.80665, bits: 14 },
      bench: 'chip',
    },
  },
};
