/** The whole world, with tapes and history as at the bench, against real time at 20 kHz. */
import type { MotionSpec, PadSpec } from '../../src/contract/motion.ts';
import type { RunSpec } from '../../src/contract/run.ts';
import { type StoredChannel, Tape } from '../../src/recording/tape.ts';
import { History } from '../../src/world/history.ts';
import { World } from '../../src/world/world.ts';
import { elementSpec, free, held, runSpec } from '../support/run-spec.ts';
import { inverse, line, ratioOf, type Spread, scaled, spreadOf, timeOf, timesOf } from './pairs.ts';

const TICK_S = 1 / 20_000;
const TICKS = 10_000;
const ROW_RATE = 2000;

const PAD: PadSpec = { stiffness: 20_000, damping: 10, friction: 0.5 };
const SOFT: PadSpec = { stiffness: 2000, damping: 0, friction: 0.5 };

const AXES = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

function elementsOf(count: number, parts: object = {}) {
  return Array.from({ length: count }, (_, i) =>
    elementSpec({ name: `e${i}`, axis: AXES[i % 3]!, at: [0.01 * (i % 5), 0.02, -0.03], gap: 0.02, ...parts }),
  );
}

function runOf(motions: readonly MotionSpec[], changed: Partial<RunSpec> = {}): RunSpec {
  return runSpec({
    tick: TICK_S,
    duration: 1e5,
    record: { rate: ROW_RATE },
    elements: elementsOf(3),
    motions,
    ...changed,
  });
}

/** A world at work at the bench: a tape of three channels an element, a checkpoint now and then. */
class Bench {
  readonly world: World;
  readonly history: History;
  readonly tape: Tape;
  readonly #values: Float64Array;

  constructor(run: RunSpec, keepsTape = true) {
    const names = run.elements.flatMap(({ name }): StoredChannel[] => [
      { name: `${name}.specificForce`, unit: 'm/s2', keep: 'f64' },
      { name: `${name}.deflection`, unit: 'm', keep: 'f64' },
      { name: `${name}.reading`, unit: 'm/s2', keep: 'f32' },
    ]);
    this.#values = new Float64Array(names.length);
    this.tape = new Tape({ rateHz: run.record.rate, channels: names, capacityRows: 1_200_000 });
    const sinks = {
      row: (_: number, values: Float64Array, { elements }: { elements: readonly { reading: number }[] }) => {
        for (let i = 0; i < elements.length; i += 1) {
          this.#values[3 * i] = values[4 + 3 * i]!;
          this.#values[3 * i + 1] = values[5 + 3 * i]!;
          this.#values[3 * i + 2] = elements[i]!.reading;
        }
        this.tape.row(this.#values);
      },
      tickEnd: (values: Float64Array) => this.tape.tick(values),
    };
    this.world = new World(run, keepsTape ? sinks : {});
    this.history = new History(this.world);
  }

  step(): void {
    this.world.step();
    this.history.note();
  }

  runTo(timeS: number): this {
    while (this.world.timeS < timeS) this.step();
    return this;
  }
}

/** Times of a tick [ns], stretch after stretch of a run from an instant on. */
function tickTimes(run: RunSpec, fromS: number, stretches = 9, ticks = TICKS, keepsTape = true): Spread {
  const bench = new Bench(run, keepsTape).runTo(fromS);
  const work = (): number => {
    for (let tick = 0; tick < ticks; tick += 1) bench.step();
    return bench.world.timeS;
  };
  return scaled(timesOf(work, stretches), 1e6 / ticks);
}

const shake: MotionSpec = {
  kind: 'shake',
  law: 'sine',
  from: 0,
  axis: [0, 1, 0],
  frequency: 10,
  amplitude: 2,
  ease: 0.4,
};
const sliding: PadSpec = { ...PAD, damping: 60 };

const STATES: readonly (readonly [string, RunSpec, number, number, number])[] = [
  ['held', runOf([held(0)]), 0.3, 9, TICKS],
  ['shaken by a sine', runOf([shake]), 0.5, 9, TICKS],
  ['falling', runOf([free(0, 1000)]), 0.1, 9, TICKS],
  ['tumbling', runOf([{ ...free(0, 1000), kind: 'free', spin: [5, -9, 6] } as MotionSpec]), 0.1, 9, TICKS],
  // In contact all the time: an undamped pad so soft that the box hangs on it, swinging about its rest.
  ['in contact, on four corners', runOf([free(0, 0, SOFT)]), 0.002, 9, 1000],
  ['at rest on the pad, damped', runOf([free(0, 0.001, sliding)]), 1.5, 9, TICKS],
];

/** A second at the bench: held, let fall 0.3 m, landed, bouncing on. */
const SECOND = runOf([held(0), free(0.3, 0.3, PAD)]);

export function wholeWorld(): string[] {
  const lines = ['The whole world: 3 elements with stops, housing, pad, tape, history; 20 kHz ticks, 2 kHz rows'];
  const second = (): number => new Bench(SECOND).runTo(1.3).world.timeS;
  lines.push(line('1.3 s of hold, fall, landing against itself (noise)', ratioOf(second, second, 9), '×'));
  const took = scaled(timesOf(second, 9), 1 / 1300);
  lines.push(line('1.3 s of hold, fall, landing, bounces: faster than real time', inverse(took, 1), '×'));
  for (const [words, run, fromS, stretches, ticks] of STATES) {
    const time = tickTimes(run, fromS, stretches, ticks);
    lines.push(line(`${words}: a tick`, time, 'ns'));
    lines.push(line(`${words}: faster than real time`, inverse(time, TICK_S * 1e9), '×'));
  }
  lines.push(line('held, without tape: a tick', tickTimes(runOf([held(0)]), 0.3, 9, TICKS, false), 'ns'));
  return lines;
}

export function growth(): string[] {
  const lines = ['How a tick grows: falling, then with what'];
  for (const count of [1, 3, 10, 30])
    lines.push(
      line(
        `${count} elements`,
        tickTimes(runOf([free(0, 1000)], { elements: elementsOf(count) }), 0.05, 7, 5000),
        'ns',
      ),
    );
  for (const modes of [2, 4, 8]) {
    const mode = { dampingRatio: 0.02, participation: 1, shape: 1, modalMass: 1 };
    const parts = { modes: Array.from({ length: modes }, (_, n) => ({ ...mode, naturalFrequency: 10 * (1 + n) })) };
    const run = runOf([free(0, 1000)], { elements: elementsOf(3, parts) });
    lines.push(line(`3 elements of ${modes} modes`, tickTimes(run, 0.05, 7, 5000), 'ns'));
  }
  for (const [words, parts] of [
    ['cubic springs', { cubicStiffness: 1e7 }],
    ['thermal noise', { thermalNoise: true, mass: 1e-9 }],
    ['mounts', { mount: { naturalFrequency: 4, dampingRatio: 0.1, massRatio: 0 } }],
  ] as const) {
    const run = runOf([free(0, 1000)], { elements: elementsOf(3, parts) });
    lines.push(line(`3 elements with ${words}`, tickTimes(run, 0.05, 7, 5000), 'ns'));
  }
  for (const rate of [1000, 5000, 20_000, 100_000]) {
    const run = { ...runOf([free(0, 1000)]), tick: 1 / rate };
    const perSecond = scaled(tickTimes(run, 20 / rate, 7, 5000), rate / 1e6);
    lines.push(line(`a second of ${rate} ticks`, perSecond, 'ms'));
  }
  return lines;
}

/** Ten minutes of drops, 2 kHz: how long an instant takes to be back, and what it all weighs. */
export function tenMinutes(): string[] {
  const drops = Array.from({ length: 300 }, (_, k): MotionSpec[] => [
    { kind: 'hand', from: 2 * k, targets: [{ at: 2 * k, position: [0, 0.35, 0], attitude: [0, 0, 0, 1], over: 0.5 }] },
    { ...free(2 * k + 1.2), height: undefined } as MotionSpec,
  ]).flat();
  const bench = new Bench(runOf(drops, { tick: 1 / ROW_RATE, startHeight: 0.32 }));
  bench.runTo(600);
  // Spread over the run and over the stretches between two checkpoints.
  const times = Array.from({ length: 60 }, (_, k) =>
    timeOf(() => bench.history.at(600 * ((k * 0.6180339887) % 1)).timeS),
  );
  const worst = Math.max(...times);
  const checkpoint = JSON.stringify(bench.world.save()).length;
  return [
    'Ten minutes of a drop every two seconds, 1.2 million ticks and rows',
    line('any instant is back within', spreadOf(times), 'ms'),
    line('at worst', { median: worst, low: worst, high: worst }, 'ms'),
    `  tape: ${(bench.tape.byteLength / 1e6).toFixed(0)} MB for ${bench.tape.endRow - bench.tape.firstRow} rows of 9 channels`,
    `  a checkpoint, written out: ${checkpoint} bytes; ${bench.world.events.all.length} events`,
  ];
}
