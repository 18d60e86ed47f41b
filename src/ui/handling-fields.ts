import { G_N } from '../units/standard-gravity.ts';
import type { QuantityKind } from '../units/unit-table.ts';
import type { HandlingName } from './ui-events.ts';

/** One piece of the sentence that says how the housing is handled. A field's setting is named `handling.name`. */
export type HandlingPiece =
  | { readonly piece: 'words'; readonly words: string }
  | {
      readonly piece: 'quantity';
      readonly name: string;
      readonly label: string;
      readonly kind: QuantityKind;
      readonly unit?: string;
      /** SI, as the value. */
      readonly low: number;
      readonly high: number;
      readonly start: number;
    }
  | {
      readonly piece: 'choice';
      readonly name: string;
      readonly label: string;
      readonly choices: readonly { readonly value: string; readonly words: string }[];
      readonly start: string;
    }
  /** Opens the sheet where a record is chosen; shows the record's name. */
  | { readonly piece: 'record' };

export interface Handling {
  readonly name: HandlingName;
  /** On the key. */
  readonly key: string;
  /** Read out for the key, where its word alone says too little. */
  readonly spoken: string;
  /** Letter that presses it; the further ways have none. */
  readonly letter?: string;
  /** The sentence for the present choices. */
  readonly sentence: (values: HandlingValues) => readonly HandlingPiece[];
}

/** Values of the pieces by setting name (`drop.height`); what is missing stands at its start. */
export type HandlingValues = Readonly<Record<string, number | string>>;

const words = (text: string): HandlingPiece => ({ piece: 'words', words: text });

const direction = (handling: string, start: string): HandlingPiece => ({
  piece: 'choice',
  name: `${handling}.direction`,
  label: 'direction',
  start,
  choices: [
    { value: 'up', words: 'up' },
    { value: 'down', words: 'down' },
    { value: 'right', words: 'to the right' },
    { value: 'left', words: 'to the left' },
    { value: 'toward', words: 'toward you' },
    { value: 'away', words: 'away from you' },
  ],
});

const time = (name: string, label: string, low: number, high: number, start: number): HandlingPiece => ({
  piece: 'quantity',
  name,
  label,
  kind: 'time',
  low,
  high,
  start,
});

const frequency = (name: string, label: string, start: number): HandlingPiece => ({
  piece: 'quantity',
  name,
  label,
  kind: 'frequency',
  low: 0.05,
  high: 20_000,
  start,
});

const strength = (name: string, label: string, high: number, start: number): HandlingPiece => ({
  piece: 'quantity',
  name,
  label,
  kind: 'acceleration',
  unit: 'g',
  low: 0,
  high: high * G_N,
  start: start * G_N,
});

const shakeLaw: HandlingPiece = {
  piece: 'choice',
  name: 'shake.law',
  label: 'kind of shaking',
  start: 'sine',
  choices: [
    { value: 'sine', words: 'steadily' },
    { value: 'sweep', words: 'sweeping' },
    { value: 'random', words: 'at random' },
  ],
};

const shakeDirection: HandlingPiece = {
  piece: 'choice',
  name: 'shake.direction',
  label: 'direction of shaking',
  start: 'up and down',
  choices: [
    { value: 'up and down', words: 'up and down' },
    { value: 'sideways', words: 'sideways' },
    { value: 'to and fro', words: 'to and fro' },
  ],
};

/** Every way of handling, in the order of the keys. */
export const HANDLINGS: readonly Handling[] = [
  {
    name: 'hold',
    key: 'Hold',
    spoken: 'Hold still',
    letter: 'h',
    sentence: () => [
      words('Hold it in'),
      {
        piece: 'choice',
        name: 'hold.by',
        label: 'what holds it',
        start: 'clamp',
        choices: [
          { value: 'clamp', words: 'the clamp' },
          { value: 'hand', words: 'a hand' },
        ],
      },
      words('and bring it to rest within'),
      time('hold.within', 'time to come to rest', 0.01, 10, 0.2),
    ],
  },
  {
    name: 'drop',
    key: 'Drop',
    spoken: 'Drop',
    letter: 'd',
    sentence: () => [
      words('Drop it from'),
      { piece: 'quantity', name: 'drop.height', label: 'drop height', kind: 'length', low: 0.05, high: 2, start: 0.4 },
      words('above the felt'),
    ],
  },
  {
    name: 'shake',
    key: 'Shake',
    spoken: 'Shake',
    letter: 's',
    sentence: (values) => [words('Shake it'), shakeLaw, shakeDirection, ...shakePieces(values['shake.law'])],
  },
  {
    name: 'tilt',
    key: 'Tilt',
    spoken: 'Tilt',
    letter: 't',
    sentence: () => [
      words('Tilt it to'),
      {
        piece: 'quantity',
        name: 'tilt.angle',
        label: 'angle of tilt',
        kind: 'angle',
        low: 0,
        high: Math.PI,
        start: Math.PI / 6,
      },
      {
        piece: 'choice',
        name: 'tilt.direction',
        label: 'direction of tilt',
        start: 'right',
        choices: [
          { value: 'right', words: 'to the right' },
          { value: 'left', words: 'to the left' },
          { value: 'toward', words: 'toward you' },
          { value: 'away', words: 'away from you' },
        ],
      },
      words('within'),
      time('tilt.over', 'time to tilt', 0.05, 60, 0.6),
    ],
  },
  {
    name: 'throw',
    key: 'Throw',
    spoken: 'Throw upward',
    sentence: () => [
      words('Throw it upward at'),
      {
        piece: 'quantity',
        name: 'throw.speed',
        label: 'speed of the throw',
        kind: 'speed',
        low: 0.1,
        high: 6,
        start: 2,
      },
    ],
  },
  {
    name: 'move',
    key: 'Lift',
    spoken: 'Lift or move',
    sentence: () => [
      words('Move it'),
      direction('move', 'up'),
      words('by'),
      {
        piece: 'quantity',
        name: 'move.distance',
        label: 'distance',
        kind: 'length',
        low: 0.001,
        high: 1000,
        start: 0.3,
      },
      words('within'),
      time('move.over', 'time for the move', 0.02, 600, 0.8),
    ],
  },
  {
    name: 'push',
    key: 'Push',
    spoken: 'Push steadily',
    sentence: () => [
      words('Push it'),
      direction('push', 'up'),
      words('with'),
      strength('push.acceleration', 'strength of the push', 100, 1),
      {
        piece: 'choice',
        name: 'push.where',
        label: 'where it is pushed',
        start: 'space',
        choices: [
          { value: 'space', words: 'far out, without gravity' },
          { value: 'here', words: 'here, with gravity' },
        ],
      },
    ],
  },
  {
    name: 'spin',
    key: 'Spin',
    spoken: 'Spin',
    sentence: () => [
      words('Spin it about'),
      {
        piece: 'choice',
        name: 'spin.axis',
        label: 'axis of spin',
        start: 'upright',
        choices: [
          { value: 'upright', words: 'the upright axis' },
          { value: 'toward', words: 'the axis toward you' },
          { value: 'right', words: 'the axis to the right' },
        ],
      },
      words('at'),
      {
        piece: 'quantity',
        name: 'spin.rate',
        label: 'rate of spin',
        kind: 'angular rate',
        unit: 'r/min',
        low: 0,
        high: 1200 * (Math.PI / 30),
        start: 60 * (Math.PI / 30),
      },
    ],
  },
  {
    name: 'recorded',
    key: 'File',
    spoken: 'Play a recorded file',
    sentence: () => [words('Play'), { piece: 'record' }, words('on the shaker')],
  },
];

function shakePieces(law: number | string | undefined): readonly HandlingPiece[] {
  const band = (name: string, from: number, to: number): readonly HandlingPiece[] => [
    words('from'),
    frequency(`shake.${name}From`, 'lowest frequency', from),
    words('to'),
    frequency(`shake.${name}To`, 'highest frequency', to),
  ];
  switch (law) {
    case 'sweep':
      return [
        ...band('sweep', 1, 30),
        words('within'),
        time('shake.over', 'time of the sweep', 0.1, 600, 12),
        words('at'),
        strength('shake.strength', 'strength of shaking', 100, 0.5),
      ];
    case 'random':
      return [
        ...band('random', 1, 50),
        words('with'),
        strength('shake.rms', 'rms strength of shaking', 100, 0.5),
        words('rms'),
      ];
    default:
      return [
        words('at'),
        frequency('shake.frequency', 'frequency of shaking', 4),
        words('with'),
        strength('shake.strength', 'strength of shaking', 100, 0.5),
      ];
  }
}

export function handlingNamed(name: HandlingName): Handling {
  const found = HANDLINGS.find((handling) => handling.name === name);
  if (found === undefined) throw new RangeError(`no way of handling is called “${name}”`);
  return found;
}

/** Where every piece of every sentence stands at first. */
export function startingHandlingValues(): HandlingValues {
  const values: Record<string, number | string> = {};
  for (const handling of HANDLINGS) {
    for (const law of ['sine', 'sweep', 'random']) {
      for (const piece of handling.sentence({ 'shake.law': law })) {
        if (piece.piece === 'quantity' || piece.piece === 'choice') values[piece.name] = piece.start;
      }
    }
  }
  return values;
}
