/**
 * Ready-made scenarios, as they would stand in a file. Their figures are chosen to show one thing each; several
 * have ticks, rows and instants that do not divide one another, for no law may depend on it.
 */
export interface NamedScenario {
  /** For links and the command line: lower case with hyphens. */
  readonly id: string;
  readonly title: string;
  /** What there is to see, in a sentence. */
  readonly words: string;
  /** What `parseScenario` reads, once written as JSON. */
  readonly scenario: object;
}

/** A box with three unequal sides: nothing is hidden by symmetry. */
const BOX = { mass: 0.5, size: [0.12, 0.06, 0.2] };
const UP = [0, 1, 0];
/** A table-top element: 10 Hz, centimetres of travel. */
const UPRIGHT = { name: 'z', axis: UP, at: [0, 0, 0], naturalFrequency: 10, dampingRatio: 0.05, gap: 0.02 };
const FOAM = { stiffness: 20000, damping: 10, friction: 0.5 };
const UNEVEN_TICK = 1 / 7300;

export const NAMED_SCENARIOS: readonly NamedScenario[] = [
  {
    id: 'hold-drop-land',
    title: 'Hold, drop, land',
    words:
      'One g while held, nothing while it falls, a high short peak on the pad, and a mass that rings through all of it.',
    scenario: {
      seed: 1,
      gravity: 9.80665,
      duration: 1.5,
      tick: 0.0001,
      record: { rate: 1000 },
      housing: BOX,
      elements: [UPRIGHT],
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.5, kind: 'free', height: 0.3, pad: FOAM },
      ],
    },
  },
  {
    id: 'damped-drop',
    title: 'The same drop, well damped',
    words: 'With a damping ratio of 0.6 the mass follows the fall instead of ringing; beside it the lively one.',
    scenario: {
      seed: 1,
      duration: 1.5,
      tick: UNEVEN_TICK,
      record: { rate: 997 },
      housing: BOX,
      elements: [
        { ...UPRIGHT, name: 'calm', dampingRatio: 0.6 },
        { ...UPRIGHT, name: 'lively' },
      ],
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.50003, kind: 'free', height: 0.3, pad: { ...FOAM, damping: 60 } },
      ],
    },
  },
  {
    id: 'throw',
    title: 'Thrown upward',
    words: 'From the moment it leaves the hand it reads zero, on the way up as on the way down.',
    scenario: {
      seed: 2,
      duration: 2.2,
      tick: 0.0001,
      record: { rate: 997 },
      housing: BOX,
      elements: [{ ...UPRIGHT, naturalFrequency: 25, dampingRatio: 0.7, gap: 0.01 }],
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.30007, kind: 'push', axis: UP, acceleration: 20, within: 0.05 },
        { from: 0.55, kind: 'free', height: 0.5, pad: FOAM },
      ],
    },
  },
  {
    id: 'shake-at-resonance',
    title: 'Shaken at its own frequency',
    words:
      'A shake of a twentieth of g at 10 Hz: the mass swings further with every period, up to ten times its static share.',
    scenario: {
      seed: 3,
      duration: 4,
      tick: 0.0002,
      record: { rate: 997 },
      housing: BOX,
      elements: [UPRIGHT],
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.25, kind: 'shake', axis: UP, sine: { frequency: 10, amplitude: 0.5 } },
        { from: 3.00001, kind: 'held', within: 0.1 },
      ],
    },
  },
  {
    id: 'sweep',
    title: 'A sweep from 2 to 40 Hz',
    words: 'The same acceleration at every frequency in turn: follow, overshoot at 10 Hz, then stay behind.',
    scenario: {
      seed: 4,
      duration: 21,
      tick: 0.0005,
      record: { rate: 500 },
      housing: BOX,
      elements: [UPRIGHT, { ...UPRIGHT, name: 'calm', dampingRatio: 0.6 }],
      motions: [
        { from: 0, kind: 'held' },
        {
          from: 0.50013,
          kind: 'shake',
          axis: UP,
          sweep: { from: 2, to: 40, amplitude: 1, over: 20, law: 'logarithmic' },
        },
      ],
    },
  },
  {
    id: 'random-vibration',
    title: 'Random vibration',
    words: 'Equal density from 1 to 60 Hz: each element keeps of it what its own resonance lets through.',
    scenario: {
      seed: 5,
      duration: 10,
      tick: 0.0005,
      record: { rate: 500 },
      housing: BOX,
      elements: [
        { ...UPRIGHT, readout: { rate: 333, range: 39.2266, bits: 12 } },
        { ...UPRIGHT, name: 'calm', dampingRatio: 0.6 },
      ],
      motions: [{ from: 0, kind: 'shake', axis: UP, random: { density: 0.05, from: 1, to: 60 } }],
    },
  },
  {
    id: 'tilt',
    title: 'Tilted by a quarter turn',
    words: 'Gravity wanders from one axis to the other; together they keep one g once the turning is over.',
    scenario: {
      seed: 6,
      duration: 4,
      tick: UNEVEN_TICK,
      record: { rate: 200 },
      housing: BOX,
      elements: [
        {
          name: 'x',
          axis: [1, 0, 0],
          naturalFrequency: 30,
          dampingRatio: 0.65,
          readout: { rate: 100, range: 19.6133, bits: 12 },
        },
        {
          name: 'y',
          axis: UP,
          naturalFrequency: 30,
          dampingRatio: 0.65,
          readout: { rate: 100, range: 19.6133, bits: 12 },
        },
        {
          name: 'z',
          axis: [0, 0, 1],
          naturalFrequency: 30,
          dampingRatio: 0.65,
          readout: { rate: 100, range: 19.6133, bits: 12 },
        },
      ],
      motions: [
        { from: 0, kind: 'held' },
        { from: 1.00001, kind: 'tilt', to: { axis: [0, 0, 1], angle: 1.5707963267948966 }, over: 2 },
      ],
    },
  },
  {
    id: 'spin-off-centre',
    title: 'Spun, off the centre',
    words: 'One turn a second: the element at the centre feels no outward pull, the one 5 cm out does.',
    scenario: {
      seed: 7,
      duration: 3,
      tick: 0.0002,
      record: { rate: 997 },
      housing: BOX,
      elements: [
        { name: 'centre', axis: [1, 0, 0], at: [0, 0, 0], naturalFrequency: 8, dampingRatio: 0.4, fieldAtMass: true },
        {
          name: 'outside',
          axis: [1, 0, 0],
          at: [0.05, 0, 0],
          naturalFrequency: 8,
          dampingRatio: 0.4,
          fieldAtMass: true,
        },
      ],
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.40001, kind: 'spin', axis: UP, rate: 6.283185307179586, within: 0.5 },
        { from: 2.3, kind: 'held', within: 0.4 },
      ],
    },
  },
  {
    id: 'corner-landing',
    title: 'Landing on a corner',
    words:
      'Let go askew and slowly turning, it strikes with one corner first and tumbles to rest: many peaks instead of one.',
    scenario: {
      seed: 8,
      duration: 2.5,
      tick: 0.0001,
      record: { rate: 997 },
      housing: BOX,
      elements: [
        { name: 'x', axis: [1, 0, 0], naturalFrequency: 60, dampingRatio: 0.6 },
        { name: 'y', axis: UP, naturalFrequency: 60, dampingRatio: 0.6 },
        { name: 'z', axis: [0, 0, 1], naturalFrequency: 60, dampingRatio: 0.6 },
      ],
      motions: [
        { from: 0, kind: 'held' },
        {
          from: 0.20003,
          kind: 'free',
          height: 0.25,
          attitude: { axis: [1, 0, 1], angle: 0.6 },
          spin: [0.5, 1, 0],
          pad: { stiffness: 20000, damping: 40, friction: 0.5 },
        },
      ],
    },
  },
  {
    id: 'chip-noise',
    title: 'A chip, at rest',
    words:
      'Two micrograms on a 3 kHz spring: the same equation, a sag of 28 nm, and the trembling that warmth alone brings.',
    scenario: {
      seed: 9,
      duration: 0.5,
      tick: 0.00001,
      temperature: 293.15,
      record: { rate: 20000 },
      housing: { mass: 0.002, size: [0.004, 0.001, 0.005] },
      elements: [
        {
          name: 'chip',
          axis: UP,
          naturalFrequency: 3000,
          dampingRatio: 0.7,
          gap: 0.000001,
          mass: 2e-9,
          thermalNoise: true,
          readout: { rate: 3200, range: 39.2266, bits: 16 },
        },
      ],
      motions: [{ from: 0, kind: 'held' }],
    },
  },
  {
    id: 'isolated',
    title: 'On a soft mount',
    words: 'Shaken at 15 Hz: the element on a 4 Hz mount feels little of it, and rocks slowly when the shaking begins.',
    scenario: {
      seed: 10,
      duration: 4,
      tick: UNEVEN_TICK,
      record: { rate: 997 },
      housing: BOX,
      elements: [
        { name: 'direct', axis: UP, naturalFrequency: 40, dampingRatio: 0.6 },
        {
          name: 'mounted',
          axis: UP,
          naturalFrequency: 40,
          dampingRatio: 0.6,
          mount: { naturalFrequency: 4, dampingRatio: 0.15 },
        },
      ],
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.5, kind: 'shake', axis: UP, sine: { frequency: 15, amplitude: 3 } },
      ],
    },
  },
  {
    id: 'hardening-spring',
    title: 'A spring that hardens',
    words: 'Swept up through its resonance, the peak leans toward higher frequencies and drops off suddenly.',
    scenario: {
      seed: 11,
      duration: 16,
      tick: 0.0005,
      record: { rate: 500 },
      housing: BOX,
      elements: [
        { name: 'plain', axis: [1, 0, 0], naturalFrequency: 8, dampingRatio: 0.03 },
        { name: 'hardening', axis: [1, 0, 0], naturalFrequency: 8, dampingRatio: 0.03, cubicStiffness: 200000000 },
      ],
      motions: [
        {
          from: 0,
          kind: 'shake',
          axis: [1, 0, 0],
          sweep: { from: 5, to: 14, amplitude: 0.8, over: 15, law: 'linear' },
        },
      ],
    },
  },
  {
    id: 'lift',
    title: 'In a lift',
    words:
      'Heavier while it speeds up, one g while it rises evenly, lighter while it slows down: speed itself cannot be felt.',
    scenario: {
      seed: 12,
      duration: 7,
      tick: 0.0005,
      record: { rate: 200 },
      housing: BOX,
      elements: [{ ...UPRIGHT, dampingRatio: 0.6 }],
      motions: [
        { from: 0, kind: 'held', tremor: {} },
        { from: 1, kind: 'push', axis: UP, acceleration: 1.2, within: 0.4 },
        { from: 2.70002, kind: 'push', axis: UP, acceleration: 0, within: 0.4 },
        { from: 4.5, kind: 'held', within: 1.6 },
      ],
    },
  },
  {
    id: 'led-by-hand',
    title: 'Led by hand',
    words: 'Lifted, turned and set down again by a hand: little pushes, and gravity all the while.',
    scenario: {
      seed: 13,
      duration: 3,
      tick: 0.0005,
      record: { rate: 200 },
      housing: BOX,
      elements: [{ ...UPRIGHT, dampingRatio: 0.6, readout: { rate: 100 } }],
      motions: [
        {
          from: 0,
          kind: 'hand',
          targets: [
            { at: 0.2, position: [0, 1.3, 0], over: 0.6 },
            { at: 1.1, position: [0.2, 1.3, 0], attitude: { axis: [0, 0, 1], angle: -0.7 }, over: 0.5 },
            { at: 2, position: [0, 1.03, 0], attitude: [0, 0, 0, 1], over: 0.6 },
          ],
        },
      ],
    },
  },
  {
    id: 'changed-on-the-way',
    title: 'Settings changed on the way',
    words:
      'Gravity falls to that of the Moon, then the damper is let out: the mass rises, and begins to ring when shaken.',
    scenario: {
      seed: 14,
      duration: 4,
      tick: 0.0005,
      record: { rate: 200 },
      housing: BOX,
      elements: [{ ...UPRIGHT, dampingRatio: 0.6 }],
      motions: [
        { from: 0, kind: 'held' },
        { from: 2.5, kind: 'move', axis: UP, distance: 0.1, over: 0.3 },
      ],
      changes: [
        { at: 1.00007, gravity: 1.62 },
        { at: 2, element: 'z', set: { dampingRatio: 0.02 } },
      ],
    },
  },
];
