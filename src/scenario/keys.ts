/**
 * Every key of a scenario: kind, unit, limits, default and meaning. This one table checks a scenario, words its
 * faults, fills in its defaults and makes the table of ranges. All SI: s, m, kg, N, Hz, rad, K, m/s².
 *
 * The limits are common practice with room to spare: they keep every figure finite and every run of bounded
 * work, and catch slips of unit. They claim nothing about what can be built.
 */
import { attitude, direction } from './attitude.ts';
import { design } from './design-keys.ts';
import type { Kind } from './kind.ts';
import { boolean, choice, number, orNull, orZero, text, triple, wholeNumber } from './plain-kinds.ts';
import { type Loose, list, object, optional, otherwise, required, variant } from './schema.ts';

const instant = number({ unit: 's', min: 0, max: 1e6 });
const span = number({ unit: 's', min: 1e-6, max: 1e5 });
const spanOrNone = orZero(span);
const frequency = number({ unit: 'Hz', min: 0.01, max: 1e7 });
const ratio = number({ min: 0, max: 100 });
const accelerationSize = number({ unit: 'm/s²', min: 0, max: 1e6 });

export const ELEMENT_NAME = /^[A-Za-z][A-Za-z0-9_-]{0,39}$/;
const fileName = text(/^[^\0]{1,1024}$/, 'a path, relative to the scenario');
const column = text(/^[^\0\r\n]{1,200}$/, 'the name of a column, as in the header of the file');

const readout = object({
  rate: required(number({ unit: 'Hz', min: 1e-3, max: 1e6 }), 'samples per second; sample k is taken at k/rate'),
  range: optional(
    number({ unit: 'm/s²', above: 0, max: 1e7 }),
    'full scale: values beyond ±range are clipped',
    'unlimited',
  ),
  bits: optional(wholeNumber({ min: 1, max: 32 }), 'bits of the converter over ±range (needs range)', 'no steps'),
});

const mount = object({
  naturalFrequency: required(frequency, 'undamped natural frequency of the isolation'),
  dampingRatio: required(ratio, 'damping ratio of the isolation'),
  massRatio: otherwise(number({ min: 0, max: 100 }), 0, 'proof mass over mount mass; 0: the element does not act back'),
});

const mode = object({
  naturalFrequency: required(frequency, 'undamped natural frequency of the mode'),
  dampingRatio: required(ratio, 'damping ratio of the mode'),
  participation: required(number({ max: 1e6 }), 'Γ: how strongly a uniform specific force drives the mode'),
  shape: required(number({ max: 1e6 }), 'φ of the mode at the pick-off'),
  modalMass: required(number({ unit: 'kg', above: 0, max: 1e6 }), 'M: modal mass'),
});

const naturalFrequency = frequency;
const gap = number({ unit: 'm', above: 0, max: 1e3 });
const restitution = number({ min: 0, max: 1 });
const cubicStiffness = number({ unit: '1/(m²·s²)', min: 0, max: 1e30 });

/** What an element must have unless it has a design. */
export const FIRST_MODE = { naturalFrequency, dampingRatio: ratio } as const;

export const element = object({
  name: required(
    text(ELEMENT_NAME, 'a letter, then up to 39 letters, digits, _ or -'),
    'name in the header of the CSV; each only once',
  ),
  axis: required(direction, 'input axis, housing frame'),
  at: otherwise(triple({ unit: 'm', max: 1e3 }), [0, 0, 0], 'mounting point, housing frame, from the centre of mass'),
  design: optional(design, 'dimensions and materials in the place of the numbers down to cubicStiffness, and of mass'),
  naturalFrequency: optional(
    FIRST_MODE.naturalFrequency,
    'undamped natural frequency; with modes that of the first mode',
    'a fault without design',
  ),
  dampingRatio: optional(
    FIRST_MODE.dampingRatio,
    'damping ratio; with modes that of the first mode',
    'a fault without design',
  ),
  modes: optional(list(mode, 1, 16, 'modes'), 'bending or other modes instead of the single one'),
  staticRemainder: otherwise(
    number({ unit: 's²', max: 1e6 }),
    0,
    'static deflection per unit specific force of the modes left out; below 0 where their shapes take from the sum',
  ),
  gap: optional(gap, 'distance of the stops from the unloaded position'),
  restitution: otherwise(restitution, 0.5, 'speed kept on touching a stop'),
  cubicStiffness: otherwise(cubicStiffness, 0, 'κ of the restoring term κx³'),
  mount: optional(mount, 'vibration isolation between housing and element'),
  thermalNoise: otherwise(boolean, false, 'thermal noise of the damping (needs mass)'),
  mass: optional(number({ unit: 'kg', min: 1e-21, max: 1e4 }), 'proof mass'),
  fieldAtMass: otherwise(boolean, false, 'specific force taken at the moved mass: spin softens the spring'),
  start: optional(
    object({
      deflection: otherwise(number({ unit: 'm', max: 1e3 }), 0, 'deflection at the start, within the gap'),
      velocity: otherwise(number({ unit: 'm/s', max: 1e4 }), 0, 'its rate of change at the start'),
    }),
    'state at the start',
    'settled under what is felt at the start',
  ),
  readout: optional(readout, 'read-out: sampled, clipped, in steps'),
});

const pad = object({
  stiffness: required(number({ unit: 'N/m', above: 0, max: 1e10 }), 'of the whole pad under a flat landing'),
  damping: otherwise(number({ unit: 'N·s/m', min: 0, max: 1e8 }), 0, 'of the whole pad under a flat landing'),
  thickness: optional(
    number({ unit: 'm', min: 1e-5, max: 100 }),
    'of a cushion that stiffens toward it (tangent cushion)',
    'linear pad',
  ),
  friction: otherwise(number({ min: 0, max: 10 }), 0, 'Coulomb friction coefficient'),
});

const airDrag = object({
  area: required(number({ unit: 'm²', min: 0, max: 1e4 }), 'reference area'),
  coefficient: required(number({ min: 0, max: 100 }), 'drag coefficient'),
  airDensity: otherwise(number({ unit: 'kg/m³', min: 0, max: 1e3 }), 1.204, 'density of the air (dry, 20 °C)'),
});

const from = required(instant, 'when the motion takes over; need not fall on a tick');
const axis = required(direction, 'direction, room frame');
const over = required(span, 'time it takes');
const ease = (words: string) => optional(span, 'time in which it is eased in', words);

const sine = object({
  frequency: required(number({ unit: 'Hz', min: 1e-4, max: 1e6 }), 'frequency'),
  amplitude: required(accelerationSize, 'acceleration amplitude'),
  ease: ease('4/frequency'),
});

const sweep = object({
  from: required(number({ unit: 'Hz', min: 1e-4, max: 1e6 }), 'first frequency'),
  to: required(number({ unit: 'Hz', min: 1e-4, max: 1e6 }), 'last frequency, then held'),
  amplitude: required(accelerationSize, 'acceleration amplitude'),
  over: required(span, 'time of the sweep'),
  law: otherwise(choice(['linear', 'logarithmic']), 'linear', 'frequency against time'),
  ease: ease('4/from'),
});

const random = object({
  density: required(number({ unit: '(m/s²)²/Hz', min: 0, max: 1e9 }), 'one-sided acceleration density'),
  from: required(number({ unit: 'Hz', min: 1e-4, max: 1e6 }), 'lowest frequency'),
  to: required(number({ unit: 'Hz', min: 1e-4, max: 1e6 }), 'highest frequency, above from'),
  ease: ease('4/from'),
});

const tremor = object({
  frequency: otherwise(number({ unit: 'Hz', min: 1e-4, max: 1e6 }), 8, 'frequency of the holding hand'),
  amplitude: otherwise(accelerationSize, 0.1, 'its acceleration amplitude'),
  axis: otherwise(direction, [0, 1, 0], 'its direction, room frame'),
});

const handTarget = object({
  at: required(instant, 'when the hand sets out for it; not before the motion, never falling'),
  position: required(triple({ unit: 'm', max: 1e4 }), 'where the origin of the housing should go, room frame'),
  attitude: optional(attitude, 'attitude to turn to', 'as when taken in hand'),
  over: required(spanOrNone, 'time in which the target runs there; 0: at once'),
});

/** The keys of each kind of motion. */
export const MOTION_KEYS = {
  held: {
    from,
    within: otherwise(spanOrNone, 0.2, 'time to come to rest; 0 only where it is at rest already'),
    tremor: optional(tremor, 'the tremor of a hand'),
  },
  free: {
    from,
    height: optional(
      number({ unit: 'm', min: 0, max: 1e5 }),
      'height of the lowest point at the start of the run; only in the first free motion',
      '1',
    ),
    attitude: optional(attitude, 'attitude at the start of the run; only in the first free motion', 'level'),
    spin: optional(
      triple({ unit: 'rad/s', max: 1e4 }),
      'angular velocity from the release on, room frame',
      'as it turned before',
    ),
    pad: optional(pad, 'what lies on the ground, y ≤ 0', 'no ground'),
    airDrag: optional(airDrag, 'drag of the air'),
  },
  shake: {
    from,
    axis,
    sine: optional(sine, 'a sine; exactly one of sine, sweep and random'),
    sweep: optional(sweep, 'a sine of changing frequency'),
    random: optional(random, 'random vibration: 1024 sines'),
  },
  move: { from, axis, distance: required(number({ unit: 'm', max: 1e4 }), 'distance along the axis'), over },
  push: {
    from,
    axis,
    acceleration: required(number({ unit: 'm/s²', max: 1e6 }), 'acceleration along the axis, then kept'),
    within: otherwise(spanOrNone, 0.05, 'time to reach it; 0: at once'),
  },
  tilt: { from, to: required(attitude, 'attitude to reach, absolute, by the shortest arc'), over },
  spin: {
    from,
    axis,
    rate: required(number({ unit: 'rad/s', max: 1e4 }), 'angular velocity about the axis, then kept'),
    within: otherwise(span, 0.5, 'time to reach it'),
  },
  recorded: {
    from,
    file: required(fileName, 'CSV with a header; lines starting with # are skipped'),
    time: required(column, 'column of the times in s, strictly rising; the first falls on from'),
    columns: required(list(column, 1, 3, 'names: one (with axis) or three (x, y, z)'), 'columns of the record'),
    unit: required(choice(['m/s2', 'g', 'mg']), 'unit of the columns'),
    is: required(choice(['acceleration', 'specificForce']), 'of the housing in the room, or as felt'),
    axis: optional(direction, 'direction of a single column, room frame'),
  },
  hand: {
    from,
    targets: required(list(handTarget, 0, 1e5, 'targets'), 'where the hand is led'),
  },
} as const;

const motion = variant(MOTION_KEYS);

const change = object({
  at: required(instant, 'when it takes effect; never falling'),
  gravity: optional(number({ unit: 'm/s²', min: 0, max: 1e3 }), 'new gravity; exactly one of gravity, set and pad'),
  element: optional(text(ELEMENT_NAME, 'the name of an element'), 'element to set (with set)'),
  set: optional(
    object({
      naturalFrequency: optional(naturalFrequency, 'as in the element', 'kept'),
      dampingRatio: optional(ratio, 'as in the element', 'kept'),
      gap: optional(orNull(gap), 'as in the element; null takes the stops away', 'kept'),
      restitution: optional(restitution, 'as in the element', 'kept'),
      cubicStiffness: optional(cubicStiffness, 'as in the element', 'kept'),
      mount: optional(orNull(mount), 'as in the element; null takes it away', 'kept'),
      readout: optional(readout, 'as in the element, for one that has a read-out', 'kept'),
    }),
    'new settings of the element; its state is kept',
  ),
  pad: optional(orNull(pad), 'new pad; null takes it away'),
});

/** Keys of the whole scenario. */
export const scenario = object({
  seed: otherwise(wholeNumber({ min: 0, max: 4294967295 }), 1, 'start of every random sequence'),
  gravity: otherwise(number({ unit: 'm/s²', min: 0, max: 1e3 }), 9.80665, 'local gravity, downward'),
  duration: required(number({ unit: 's', above: 0, max: 1e6 }), 'length of the run'),
  tick: otherwise(number({ unit: 's', min: 1e-8, max: 0.1 }), 0.0001, 'step of the engine; at most 1e8 in a run'),
  temperature: otherwise(number({ unit: 'K', min: 0, max: 1e4 }), 293.15, 'temperature, for thermal noise'),
  record: otherwise(
    object({
      rate: otherwise(number({ unit: 'Hz', min: 1e-3, max: 1e8 }), 1000, 'rows per second; at most 1e7 in a run'),
    }),
    { rate: 1000 },
    'what is written',
    '{ rate: 1000 }',
  ),
  housing: otherwise(
    object({
      mass: otherwise(number({ unit: 'kg', min: 1e-6, max: 1e6 }), 0.5, 'mass of the housing, a uniform solid box'),
      size: otherwise(
        triple({ unit: 'm', min: 1e-4, max: 100 }),
        [0.12, 0.12, 0.12],
        'its edge lengths, housing frame; none over 1000 times another',
      ),
    }),
    { mass: 0.5, size: [0.12, 0.12, 0.12] },
    'the housing',
    '0.5 kg, a cube of 0.12 m',
  ),
  startHeight: optional(
    number({ unit: 'm', min: 0, max: 1e5 }),
    'height of the lowest point at the start when no free motion states one',
    '1',
  ),
  elements: required(list(element, 1, 100, 'elements'), 'the accelerometer elements'),
  motions: required(list(motion, 1, 1e5, 'motions'), 'what happens to the housing; sorted by from, the first at 0'),
  changes: otherwise(list(change, 0, 1e5, 'changes'), [], 'settings changed on the way; sorted by at'),
});

type ValueOf<K> = K extends Kind<infer T> ? T : never;
/** A scenario as written, checked and with its defaults; `build.ts` makes a run of it. */
export type ScenarioValue = ValueOf<typeof scenario>;
export type ElementValue = ScenarioValue['elements'][number];
export type MotionValue = ScenarioValue['motions'][number];
export type ChangeValue = ScenarioValue['changes'][number];
export type LooseScenario = Loose<ScenarioValue>;
