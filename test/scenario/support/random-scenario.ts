import type { Chance } from './chance.ts';

/** Ticks of a random scenario at most: many runs in little time. */
const MOST_TICKS = 200;

type Data = Record<string, unknown>;

/** A valid scenario of up to 200 ticks with uneven figures; every kind of motion and every key turns up. */
export function randomScenario(random: Chance): Data {
  const tick = random.pick([1e-4, 1 / 7300, 5e-4, 1e-3, 3.7e-5]);
  const duration = tick * random.between(1, MOST_TICKS);
  const elements = Array.from({ length: random.whole(1, 3) }, (_, i) => randomElement(random, `e${i}`, tick));
  return maybe(
    random,
    {
      seed: random.whole(0, 4294967295),
      gravity: random.pick([9.80665, 9.80665, 0, 1.62, random.between(0, 30)]),
      tick,
      temperature: random.between(0, 500),
      housing: maybe(random, {
        mass: random.between(0.01, 5),
        size: [random.between(0.01, 0.3), random.between(0.01, 0.3), random.between(0.01, 0.3)],
      }),
      changes: randomChanges(random, elements, duration, tick),
    },
    {
      tick,
      duration,
      record: { rate: random.between(1, 3) / duration + random.between(0, 1.5) / tick },
      elements,
      motions: randomMotions(random, duration),
    },
  );
}

/** Each key of `perhaps` with even chance, all of `always`. */
function maybe(random: Chance, perhaps: Data, always: Data = {}): Data {
  return { ...Object.fromEntries(Object.entries(perhaps).filter(() => random.unit() < 0.5)), ...always };
}

function direction(random: Chance): number[] {
  return random.unit() < 0.3
    ? random.pick([
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, -1],
      ])
    : [random.between(-1, 1), random.between(-1, 1), random.between(0.1, 1)];
}

function attitude(random: Chance): unknown {
  if (random.unit() < 0.5) return { axis: direction(random), angle: random.between(-6.28, 6.28) };
  return [random.between(-1, 1), random.between(-1, 1), random.between(-1, 1), random.between(0.1, 1)];
}

function readout(random: Chance): Data {
  const range = random.between(5, 200);
  const rate = random.between(20, 20000);
  return random.unit() < 0.5 ? { rate } : maybe(random, { bits: random.whole(1, 24) }, { rate, range });
}

function mount(random: Chance): Data {
  return maybe(
    random,
    { massRatio: random.between(0, 2) },
    { naturalFrequency: random.between(2, 100), dampingRatio: random.between(0, 2) },
  );
}

function randomElement(random: Chance, name: string, tick: number): Data {
  const body = random.pick(['single', 'single', 'single', 'cubic', 'modes', 'mounted'] as const);
  // Several coordinates behind stops, and the cubic spring, cost work that grows with ω₀h and ζ: they stay slow here.
  const naturalFrequency =
    body === 'single' ? random.pick([random.between(1, 50), random.between(50, 5000)]) : random.between(1, 0.02 / tick);
  const dampingRatio = random.pick([0, 0.05, 0.7, 1, 1.00000001, 3, body === 'single' ? random.between(0, 100) : 0.3]);
  const omega = 2 * Math.PI * naturalFrequency;
  const sag = 9.80665 / (omega * omega);
  const gap = random.pick([sag * 0.3, sag * 3, sag * 100]);
  const always: Data = { name, axis: direction(random), naturalFrequency, dampingRatio };
  const perhaps: Data = {
    at: direction(random).map((c) => c * 0.05),
    gap,
    restitution: random.between(0, 1),
    readout: readout(random),
  };
  if (body === 'modes') {
    const modes = Array.from({ length: random.whole(1, 3) }, (_, i) => ({
      naturalFrequency: naturalFrequency * (1 + 5 * i),
      dampingRatio,
      participation: random.between(0.5, 1.5),
      shape: i === 0 ? random.between(0.5, 1.5) : random.between(-1.5, 1.5),
      modalMass: random.between(0.001, 0.1),
    }));
    return maybe(random, { ...perhaps, staticRemainder: sag * random.between(-0.001, 0.001) }, { ...always, modes });
  }
  if (body === 'mounted') return maybe(random, perhaps, { ...always, mount: mount(random) });
  const cubicStiffness = (omega * omega * random.between(0, 3)) / (sag * sag);
  return maybe(
    random,
    {
      ...perhaps,
      fieldAtMass: random.unit() < 0.5,
      start: maybe(random, { deflection: gap * random.between(-0.3, 0.3), velocity: gap * random.between(-1, 1) }),
    },
    {
      ...always,
      ...(body === 'cubic' ? { cubicStiffness } : {}),
      ...(random.unit() < 0.3 ? { thermalNoise: true, mass: random.pick([1e-9, 0.02]) } : {}),
    },
  );
}

function pad(random: Chance): Data {
  return maybe(
    random,
    { damping: random.between(0, 100), thickness: random.between(0.01, 0.1), friction: random.between(0, 1) },
    { stiffness: random.pick([500, 20000, 300000]) },
  );
}

function randomMotions(random: Chance, duration: number): Data[] {
  const count = random.whole(1, 4);
  const starts = Array.from({ length: count - 1 }, () => random.between(0, duration * 1.1)).sort((a, b) => a - b);
  let freeSeen = false;
  return [0, ...starts].map((from, i) => {
    const motion = randomMotion(random, { from, next: starts[i] ?? duration, duration, freeSeen });
    freeSeen ||= motion.kind === 'free';
    return motion;
  });
}

interface Place {
  readonly from: number;
  readonly next: number;
  readonly duration: number;
  /** A free motion came before: this one has no start of its own. */
  readonly freeSeen: boolean;
}

function randomMotion(random: Chance, { from, next, duration, freeSeen }: Place): Data {
  const over = random.between(0.1, 1.5) * duration;
  const axis = direction(random);
  const frequency = random.between(0.5, 5) / duration;
  switch (
    random.pick([
      'held',
      'free',
      'free',
      'sine',
      'sweep',
      'random',
      'move',
      'push',
      'tilt',
      'spin',
      'recorded',
      'hand',
    ] as const)
  ) {
    case 'held':
      return maybe(
        random,
        { within: over, tremor: maybe(random, { frequency, amplitude: 0.2, axis }) },
        { from, kind: 'held' },
      );
    case 'free': {
      const start = freeSeen ? {} : { height: random.between(0, 1e-3), attitude: attitude(random) };
      return maybe(
        random,
        {
          ...start,
          spin: direction(random).map((c) => c * 10),
          pad: pad(random),
          airDrag: maybe(random, { airDensity: 1 }, { area: 0.01, coefficient: 1 }),
        },
        { from, kind: 'free' },
      );
    }
    case 'sine':
      return {
        from,
        kind: 'shake',
        axis,
        sine: maybe(random, { ease: over }, { frequency, amplitude: random.between(0, 20) }),
      };
    case 'sweep':
      return {
        from,
        kind: 'shake',
        axis,
        sweep: maybe(
          random,
          { ease: over, law: random.pick(['linear', 'logarithmic']) },
          { from: frequency, to: random.pick([frequency, frequency * 3, frequency / 3]), amplitude: 2, over },
        ),
      };
    case 'random':
      return {
        from,
        kind: 'shake',
        axis,
        random: maybe(
          random,
          { ease: over },
          {
            density: random.between(0, 1),
            from: Math.min(frequency, 9e4),
            to: Math.min(frequency * random.between(1.1, 100), 1e5),
          },
        ),
      };
    case 'move':
      return { from, kind: 'move', axis, distance: random.between(-0.1, 0.1), over };
    case 'push':
      return maybe(
        random,
        { within: random.pick([0, over]) },
        { from, kind: 'push', axis, acceleration: random.between(-50, 50) },
      );
    case 'tilt':
      return { from, kind: 'tilt', to: attitude(random), over };
    case 'spin':
      return maybe(random, { within: over }, { from, kind: 'spin', axis, rate: random.between(-20, 20) });
    case 'recorded': {
      const columns = random.pick([['a_mg'], ['ax', 'ay', 'az']]);
      return {
        from,
        kind: 'recorded',
        file: 'record.csv',
        time: 't_s',
        columns,
        unit: random.pick(['m/s2', 'g', 'mg']),
        is: random.pick(['acceleration', 'specificForce']),
        ...(columns.length === 1 ? { axis } : {}),
      };
    }
    case 'hand': {
      const ats = Array.from({ length: random.whole(0, 3) }, () => random.between(from, Math.max(from, next))).sort(
        (a, b) => a - b,
      );
      return {
        from,
        kind: 'hand',
        targets: ats.map((at) =>
          maybe(
            random,
            { attitude: attitude(random) },
            { at, position: direction(random).map((c) => c * 0.1 + 1), over: random.pick([0, over]) },
          ),
        ),
      };
    }
  }
}

function randomChanges(random: Chance, elements: readonly Data[], duration: number, tick: number): Data[] {
  const ats = Array.from({ length: random.whole(0, 3) }, () => random.between(0, duration)).sort((a, b) => a - b);
  return ats.map((at) => randomChange(random, at, random.pick(elements), tick));
}

function randomChange(random: Chance, at: number, element: Data, tick: number): Data {
  const slow = Number(element.naturalFrequency) * tick <= 0.02;
  switch (random.pick(['gravity', 'pad', 'set'] as const)) {
    case 'gravity':
      return { at, gravity: random.between(0, 20) };
    case 'pad':
      return { at, pad: random.unit() < 0.3 ? null : pad(random) };
    case 'set':
      return {
        at,
        element: element.name,
        set: maybe(random, {
          ...(element.modes ? {} : { naturalFrequency: random.between(1, 100), dampingRatio: random.between(0, 2) }),
          gap: random.pick([null, 0.001]),
          restitution: random.between(0, 1),
          ...(slow
            ? { cubicStiffness: random.pick([0, 1000]), mount: random.unit() < 0.3 ? null : mount(random) }
            : {}),
          ...(element.readout ? { readout: readout(random) } : {}),
        }),
      };
  }
}
