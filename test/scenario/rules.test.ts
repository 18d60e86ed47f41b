import { describe, expect, it } from 'vitest';
import { faultSentence } from '../../src/scenario/fault.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { FILES, fullScenario } from './support/full-scenario.ts';
import { withValue } from './support/json-path.ts';

const told = (data: unknown): string[] =>
  (parseScenario(typeof data === 'string' ? data : JSON.stringify(data), FILES).faults ?? []).map(faultSentence);

const element = { name: 'z', axis: [0, 1, 0], naturalFrequency: 10, dampingRatio: 0.1 };
const still = { from: 0, kind: 'held' };
const run = (more: object) => ({ duration: 1, elements: [element], motions: [still], ...more });
const motions = (...list: object[]) => run({ motions: list });
const push = { kind: 'push', axis: [1, 0, 0], acceleration: 1 };

describe('work is bounded', () => {
  it.each([
    [
      { duration: 20, tick: 1e-7 },
      'tick: found 1e-7: 200000000 ticks in 20 s; allowed: at most 100000000 ticks (duration/tick)',
    ],
    [
      { duration: 20, record: { rate: 1e6 } },
      'record.rate: found 1000000: 20000000 rows in 20 s; allowed: at most 10000000 rows (duration·rate)',
    ],
    [
      { duration: 0.01, tick: 0.1, record: { rate: 1e6 } },
      'record.rate: found 1000000: 100000 rows in a tick; allowed: at most 10000 rows in a tick (tick·rate)',
    ],
    [
      { duration: 20, elements: [{ ...element, readout: { rate: 1e6 } }] },
      'elements[0].readout.rate: found 1000000: 20000000 samples in 20 s; allowed: at most 10000000 samples (duration·rate)',
    ],
  ])('%j', (more, sentence) => {
    expect(told(run(more))).toEqual([sentence]);
  });

  it.each([
    [
      { from: 0, kind: 'free', pad: { stiffness: 1e7, damping: 1e4 } },
      [
        'motions[0].pad.stiffness: found 10000000; allowed: at most 1000000 N/m: √(stiffness/mass)·tick ≤ 100',
        'motions[0].pad.damping: found 10000; allowed: at most 1000 N·s/m: damping/mass·tick ≤ 100',
      ],
    ],
    [
      { from: 0, kind: 'free', airDrag: { area: 10, coefficient: 1, airDensity: 11 } },
      [
        'motions[0].airDrag: found area·coefficient·airDensity of 110 kg/m; allowed: at most 100 kg/m for this mass and tick',
      ],
    ],
    [
      { from: 0, kind: 'free', spin: [0, -201, 200] },
      ['motions[0].spin[1]: found -201; allowed: at most 200 rad/s: 20 rad in a tick'],
    ],
    [
      { from: 0, kind: 'spin', axis: [0, 1, 0], rate: 201 },
      ['motions[0].rate: found 201; allowed: at most 200 rad/s: 20 rad in a tick'],
    ],
  ])('inside a coarse tick of 0.1 s: %j', (motion, sentences) => {
    expect(told(run({ tick: 0.1, housing: { mass: 1 }, record: { rate: 1 }, motions: [motion] }))).toEqual(sentences);
  });

  it('of springs that are searched for stops or stepped, by their phase in a tick', () => {
    const fast = { ...element, naturalFrequency: 1e7 };
    expect(told(run({ elements: [fast] }))).toEqual([]); // exact over any tick
    expect(told(run({ elements: [{ ...fast, gap: 1e-9 }] }))).toEqual([
      expect.stringMatching(
        /^elements\[0\]\.naturalFrequency: found 10000000 Hz as the highest; allowed: at most 4774648\.\d+ Hz with stops or a cubic spring: 3000 rad in a tick$/,
      ),
    ]);
    // The same for what a change makes of it.
    const changes = [
      { at: 0, element: 'z', set: { gap: 1e-9 } },
      { at: 0.1, element: 'z', set: { naturalFrequency: 1e7 } },
      { at: 0.2, element: 'z', set: { gap: null } },
    ];
    expect(told(run({ changes }))).toEqual([
      expect.stringMatching(/^changes\[1\]\.set\.naturalFrequency: found 10000000 Hz/),
    ]);
    // √(3κ)·gap = 3000/1e-4 at κ = 3e10 and a gap of 100 m; without stops …
    expect(told(run({ elements: [{ ...element, gap: 100, cubicStiffness: 2.9e10 }] }))).toEqual([]);
    expect(told(run({ elements: [{ ...element, gap: 100, cubicStiffness: 3.1e10 }] }))).toHaveLength(1);
    // … κ = (3000/0.1)⁶/(27·10⁸) = 2.7e17 in a tick of 0.1 s.
    const coarse = { tick: 0.1, record: { rate: 1 } };
    expect(told(run({ ...coarse, elements: [{ ...element, cubicStiffness: 2.6e17 }] }))).toEqual([]);
    expect(told(run({ ...coarse, elements: [{ ...element, cubicStiffness: 2.8e17 }] }))).toHaveLength(1);
  });

  it('up to the limits', () => {
    expect(told(run({ duration: 10, tick: 1e-7, record: { rate: 1e6 } }))).toEqual([]);
  });
});

describe('elements', () => {
  it('a name given twice', () => {
    expect(told(run({ elements: [element, { ...element, name: 'y' }, element] }))).toEqual([
      'elements[2].name: found "z" again; allowed: a name other than that of elements[0]',
    ]);
  });

  it('bits need a range, noise a mass; beside a faulty one they are not asked for again', () => {
    const path = 'elements[0]';
    expect(told(run({ elements: [{ ...element, readout: { rate: 9, bits: 8 } }] }))).toEqual([
      `${path}.readout.range: found nothing; allowed: the full scale in m/s², which bits needs`,
    ]);
    expect(told(run({ elements: [{ ...element, readout: { rate: 9, bits: 8, range: -1 } }] }))).toHaveLength(1);
    expect(told(run({ elements: [{ ...element, thermalNoise: true }] }))).toEqual([
      `${path}.mass: found nothing; allowed: the proof mass in kg, which thermalNoise needs`,
    ]);
    expect(told(run({ elements: [{ ...element, thermalNoise: true, mass: 'light' }] }))).toHaveLength(1);
  });

  it('a start lies between the stops', () => {
    expect(told(run({ elements: [{ ...element, gap: 0.01, start: { deflection: -0.02 } }] }))).toEqual([
      'elements[0].start.deflection: found -0.02; allowed: from -0.01 to 0.01 m, between the stops',
    ]);
  });

  it('frequency and damping beside modes are those of the first', () => {
    expect(told(withValue(fullScenario(), 'elements[1].dampingRatio', 0.06))).toEqual([
      'elements[1].dampingRatio: found 0.06; allowed: 0.05, that of modes[0]',
    ]);
  });

  it('modes let the mass sag against the force and move at the pick-off', () => {
    const full = fullScenario();
    expect(
      told(withValue(withValue(full, 'elements[1].modes[0].shape', -0.9), 'elements[1].staticRemainder', 0)),
    ).toEqual([
      expect.stringMatching(
        /^elements\[1\]\.modes: found a static deflection of -0\.0000626\d+ m per m\/s²; allowed: above 0: the sum/,
      ),
    ]);
    expect(told(withValue(full, 'elements[1].modes[0].shape', 0))).toEqual([
      'elements[1].modes: found only shapes of 0; allowed: a mode whose shape at the pick-off is not 0',
    ]);
  });

  it('none at all', () => {
    expect(told(run({ elements: [] }))).toEqual([
      'elements: found an empty list; allowed: a list of 1 to 100 elements',
    ]);
  });
});

describe('motions', () => {
  it('begin at 0 and never before the one before', () => {
    expect(told(motions({ ...still, from: 0.1 }))).toEqual([
      'motions[0].from: found 0.1; allowed: 0 for the first motion',
    ]);
    expect(told(motions(still, { ...push, from: 0.5 }, { ...push, from: 0.4 }))).toEqual([
      'motions[2].from: found 0.4; allowed: not before motions[1].from (0.5 s)',
    ]);
    expect(told(motions(still, { ...push, from: 0 }))).toEqual([]); // a command at the first instant of a live run
    expect(told(motions())).toEqual(['motions: found an empty list; allowed: a list of 1 to 100000 motions']);
  });

  it('height and attitude belong to the first free motion, wherever that stands', () => {
    const later = { from: 0.8, kind: 'free', height: 1, attitude: [0, 0, 0, 1] };
    expect(told(motions(still, { from: 0.2, kind: 'free', height: 2 }, { ...still, from: 0.5 }, later))).toEqual([
      'motions[3].height: found 1; allowed: only in the first free motion, motions[1]: a later one goes on from where the housing is',
      'motions[3].attitude: found an attitude; allowed: only in the first free motion, motions[1]: a later one goes on from where the housing is',
    ]);
    expect(told(motions(still, later))).toEqual([]);
  });

  const atOnce = { kind: 'held', within: 0 };
  it.each([
    ['first', [{ ...atOnce, from: 0 }]],
    ['after a held one that has come to rest', [still, { ...atOnce, from: 0.2 }]],
    [
      'after a move that is over',
      [
        { from: 0, kind: 'move', axis: [1, 0, 0], distance: 1, over: 0.5 },
        { ...atOnce, from: 0.5 },
      ],
    ],
    [
      'after a tilt that is over',
      [
        { ...atOnce, from: 0 },
        { from: 0.1, kind: 'tilt', to: [1, 0, 0, 1], over: 0.5 },
        { ...atOnce, from: 0.7 },
      ],
    ],
    ['held all along', [still, { ...atOnce, from: 0.1 }]],
    [
      'after a move that set out from a held one',
      [still, { from: 0.1, kind: 'move', axis: [1, 0, 0], distance: 1, over: 0.1 }, { ...atOnce, from: 0.25 }],
    ],
  ])('a housing at rest may be held within 0 s: %s', (_when, list) => {
    expect(told(motions(...list))).toEqual([]);
  });

  it.each([
    ['while pushed', [still, { ...push, from: 0.3 }, { ...atOnce, from: 0.5 }]],
    [
      'before a held one has come to rest',
      [
        { ...push, from: 0 },
        { ...still, from: 0.3 },
        { ...atOnce, from: 0.4 },
      ],
    ],
    [
      'with a tremor',
      [
        { ...still, tremor: {} },
        { ...atOnce, from: 0.9 },
      ],
    ],
    [
      'in the middle of a move',
      [
        { from: 0, kind: 'move', axis: [1, 0, 0], distance: 1, over: 0.5 },
        { ...atOnce, from: 0.4 },
      ],
    ],
    [
      'before what a move took over is braked',
      [
        { ...push, from: 0 },
        { from: 0.3, kind: 'move', axis: [1, 0, 0], distance: 1, over: 0.1 },
        { ...atOnce, from: 0.45 },
      ],
    ],
    [
      'after a fall',
      [
        { from: 0, kind: 'free' },
        { ...atOnce, from: 0.9 },
      ],
    ],
  ])('a housing that may be moving may not: %s', (_when, list) => {
    expect(told(motions(...list))).toEqual([
      `motions[${list.length - 1}].within: found 0; allowed: above 0 s, for the housing is not certain to be at rest here`,
    ]);
  });

  it('a shake has exactly one law', () => {
    const shake = { from: 0, kind: 'shake', axis: [0, 1, 0] };
    const sine = { frequency: 5, amplitude: 1 };
    expect(told(motions(shake))).toEqual([
      'motions[0]: found none of sine, sweep, random; allowed: exactly one of sine, sweep, random',
    ]);
    expect(told(motions({ ...shake, sine, random: { density: 1, from: 1, to: 9 } }))).toEqual([
      'motions[0]: found sine and random; allowed: exactly one of sine, sweep, random',
    ]);
    expect(told(motions({ ...shake, sine: { frequency: 0, amplitude: 1 } }))).toHaveLength(1);
    expect(told(motions({ ...shake, random: { density: 1, from: 9, to: 9 } }))).toEqual([
      'motions[0].random.to: found 9; allowed: above from (9 Hz)',
    ]);
  });

  it('an unknown kind', () => {
    expect(told(motions({ from: 0, kind: 'hold' }))[0]).toMatch(
      /^motions\[0\]\.kind: found "hold"; allowed: perhaps "held"; "held" or "free" or /,
    );
    expect(told(motions({ from: 0 }))[0]).toMatch(/^motions\[0\]\.kind: found nothing; allowed: "held" or /);
    expect(told(motions({ from: 0, kind: '__proto__' }))[0]).toMatch(/^motions\[0\]\.kind: found "__proto__"/);
  });

  it('a record has one column with an axis, or three without', () => {
    const record = { from: 0, kind: 'recorded', file: 'record.csv', time: 't_s', unit: 'g', is: 'acceleration' };
    expect(told(motions({ ...record, columns: ['ax'] }))).toEqual([
      'motions[0].axis: found nothing; allowed: the direction of the single column',
    ]);
    expect(told(motions({ ...record, columns: ['ax', 'ay'] }))).toEqual([
      'motions[0].columns: found a list of 2; allowed: one column, with axis, or three: x, y, z',
    ]);
    expect(told(motions({ ...record, columns: ['ax', 'ay', 'az'], axis: [1, 0, 0] }))).toEqual([
      'motions[0].axis: found an axis; allowed: none beside three columns, which are x, y, z',
    ]);
    expect(told(motions({ ...record, columns: ['ax', 'ay', 'az'] }))).toEqual([]);
  });

  it('a hand has its targets in order', () => {
    const target = { position: [0, 1, 0], over: 0.1 };
    expect(
      told(
        motions(still, {
          from: 0.5,
          kind: 'hand',
          targets: [
            { ...target, at: 0.4 },
            { ...target, at: 0.7 },
            { ...target, at: 0.6 },
          ],
        }),
      ),
    ).toEqual([
      "motions[1].targets[0]: found at 0.4; allowed: not before 0.5 s: the motion's from, or the target before",
      "motions[1].targets[2]: found at 0.6; allowed: not before 0.7 s: the motion's from, or the target before",
    ]);
  });
});

describe('changes', () => {
  it.each([
    [
      [
        { at: 0.5, gravity: 1 },
        { at: 0.4, gravity: 2 },
      ],
      'changes[1].at: found 0.4; allowed: not before 0.5 s, the change before',
    ],
    [
      [{ at: 0.5, gravity: 1, pad: null }],
      'changes[0]: found gravity and pad; allowed: exactly one of gravity, set (with element), pad',
    ],
    [[{ at: 0.5, set: { gap: null } }], 'changes[0].element: found nothing; allowed: the name of the element to set'],
    [[{ at: 0.5, element: 'z', gravity: 1 }], 'changes[0].element: found "z"; allowed: only beside set'],
    [[{ at: 0.5, element: 'q', set: {} }], 'changes[0].element: found "q"; allowed: the name of an element: "z"'],
    [
      [{ at: 0.5, element: 'z', set: { readout: { rate: 5 } } }],
      'changes[0].set.readout: found settings; allowed: none: element "z" has no readout',
    ],
  ])('%j', (changes, sentence) => {
    expect(told(run({ changes }))).toEqual([sentence]);
  });
});

it('all faults of a scenario come at once, one line each', () => {
  const text =
    '{"seed": 1.5, "duration": 1e999, "tick": "fast", "seed": -1, "elements": [], "motions": [{"from": 0, "kind": "free", "pad": {"stiffness": -5, "bounce": 1}}], "exotic": {}}';
  expect(told(text)).toEqual([
    'seed: found the key "seed" again in line 1, column 50; allowed: every key once',
    'seed: found -1; allowed: a whole number from 0 to 4294967295',
    'duration: found 1e999; allowed: a number above 0, at most 1e6, in s',
    'tick: found "fast"; allowed: a number from 1e-8 to 0.1, in s',
    'elements: found an empty list; allowed: a list of 1 to 100 elements',
    'motions[0].pad.stiffness: found -5; allowed: a number above 0, at most 1e10, in N/m',
    'motions[0].pad.bounce: found the unknown key "bounce"; allowed: the keys stiffness, damping, thickness, friction',
    'exotic: found the unknown key "exotic"; allowed: the keys seed, gravity, duration, tick, temperature, record, housing, startHeight, elements, motions, changes',
  ]);
});

it('what a scenario says cannot break a line or steer a terminal', () => {
  const nasty = 'x\n\u001b[2J\u009b1m\u202e\u2028"';
  const sentences = told(run({ elements: [{ ...element, name: nasty, [nasty]: nasty }], [nasty]: 1 }));
  expect(sentences).toHaveLength(3);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the very characters that must not come through
  for (const sentence of sentences) expect(sentence).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e]/);
});
