import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { scenarioText } from '../../src/scenario/scenario-text.ts';
import { CHANNEL } from '../../src/session/bench-run.ts';
import { Session } from '../../src/session/session.ts';
import { ROOM_AIR } from '../../src/session/settings.ts';
import { STARTING_BENCHES } from '../../src/session/starting-benches.ts';
import { World } from '../../src/world/world.ts';

const G = 9.80665;

/** Lets a sitting run on to an instant [s]. */
function runTo(session: Session, timeS: number): void {
  session.advanceTo(timeS);
}

const kinds = (session: Session): string[] => session.run.world.events.all.map(({ kind }) => kind);

/** The reading of an ideal sensor at an instant of the tape [m/s²]. */
const reading = (session: Session, timeS: number): number =>
  session.run.tape.value(CHANNEL.reading, Math.round(timeS * session.run.tape.rateHz));

describe('handling', () => {
  it('begins held at the drop height, reading 1 g', () => {
    const session = new Session();
    runTo(session, 0.2);
    expect(session.look(0.2).housing.lowestM).toBeCloseTo(0.4, 12);
    expect(reading(session, 0.1)).toBeCloseTo(G, 5);
  });

  it('dropped from 0.4 m it falls √(2h/g) and the felt is zero on the way', () => {
    const session = new Session();
    runTo(session, 0.1);
    session.handle({ kind: 'drop' });
    runTo(session, 1);
    const [letGo, touch] = ['let go', 'touch'].map(
      (kind) => session.run.world.events.all.find((e) => e.kind === kind)!,
    );
    expect(touch!.timeS - letGo!.timeS).toBeCloseTo(Math.sqrt((2 * 0.4) / G), 10);
    expect(session.run.tape.value(CHANNEL.specificForce, 500)).toBe(0);
  });

  it('dropped again from where it lies, a hand carries it home first', () => {
    const session = new Session();
    session.handle({ kind: 'drop' });
    runTo(session, 2);
    session.handle({ kind: 'drop' });
    runTo(session, 5);
    expect(kinds(session).filter((kind) => kind === 'let go').length).toBe(2);
    const heights = session.run.world.events.all.flatMap((event) => (event.kind === 'let go' ? [event.heightM] : []));
    expect(heights[1]).toBeCloseTo(0.4, 5);
  });

  it('thrown, the felt is zero from the hand on, at the top too, and it rises v²/2g above the let-go', () => {
    const session = new Session();
    session.handle({ kind: 'throw', speed: 2 });
    runTo(session, 1.5);
    const letGo = session.run.world.events.all.find((event) => event.kind === 'let go');
    if (letGo?.kind !== 'let go') throw new Error('it was not let go');
    expect(letGo.verticalSpeedMS).toBeCloseTo(2, 3);
    const { tape } = session.run;
    const top = Math.round((letGo.timeS + 2 / G) * tape.rateHz);
    expect(tape.value(CHANNEL.specificForce, top)).toBe(0);
    expect(tape.value(CHANNEL.height, top) - letGo.heightM).toBeCloseTo(4 / (2 * G), 3);
  });

  it('a hand that holds trembles, the clamp does not', () => {
    const spread = (by: 'hand' | 'clamp'): number => {
      const session = new Session();
      session.handle({ kind: 'hold', by, within: 0.2 });
      runTo(session, 3);
      const out = new Float64Array(2);
      session.run.tape.envelope(CHANNEL.specificForce, 2000, 5000, 1, out);
      return out[1]! - out[0]!;
    };
    // 1 g in single precision, rounded outward both ways.
    expect(spread('clamp')).toBeLessThan(2e-6);
    // Twice the 0.1 m/s² of the tremor, to single precision outward.
    expect(spread('hand')).toBeCloseTo(0.2, 4);
  });
});

describe('settings', () => {
  it('changed while it runs take effect at once and undo sets the old value again, both in the log', () => {
    const session = new Session();
    runTo(session, 0.1);
    session.set({ gravityMS2: 1.62 });
    runTo(session, 3);
    expect(reading(session, 2.9)).toBeCloseTo(1.62, 3);
    session.undo();
    runTo(session, 6);
    expect(reading(session, 5.9)).toBeCloseTo(G, 3);
    expect(session.asRun().changes.length).toBe(2);
    session.redo();
    runTo(session, 9);
    expect(reading(session, 8.9)).toBeCloseTo(1.62, 3);
  });

  it('while a rider slides, all its values are one step of undo', () => {
    const session = new Session();
    session.set({ dampingRatio: 0.2 });
    session.set({ dampingRatio: 0.3 }, true);
    session.set({ dampingRatio: 0.4 }, true);
    session.undo();
    expect(session.settings.dampingRatio).toBe(STARTING_BENCHES['table-top'].settings.dampingRatio);
    expect(session.undoTo).toBeUndefined();
  });

  it('choosing another bench begins anew and keeps the old run; undo leads back', () => {
    const session = new Session();
    runTo(session, 0.5);
    session.choose(STARTING_BENCHES.chip.settings);
    expect(session.bench.name).toBe('chip');
    expect(session.keptRuns.length).toBe(1);
    session.undo();
    expect(session.bench.name).toBe('table-top');
  });
});

it.each([{ kind: 'drop' }, { kind: 'throw', speed: 1 }] as const)(
  'with air, what is let go by $kind meets it',
  (handling) => {
    const session = new Session();
    session.set({ air: ROOM_AIR });
    session.handle(handling);
    runTo(session, 0.3);
    const free = session.asRun().motions.find(({ kind }) => kind === 'free');
    expect(free).toMatchObject({ airDrag: ROOM_AIR });
  },
);

it('going on from an instant brings back the settings of that instant', () => {
  const session = new Session();
  runTo(session, 0.5);
  session.set({ dampingRatio: 0.6 });
  runTo(session, 1);
  session.pullTo(0.2);
  session.goOn();
  expect(session.settings.dampingRatio).toBe(0.12);
  expect(session.run.world.elements[0]!.spec.dampingRatio).toBe(0.12);
  session.bringBack(0);
  expect(session.settings.dampingRatio).toBe(0.6);
  session.pullTo(0.8);
  session.goOn();
  expect(session.settings.dampingRatio).toBe(0.6);
  expect(session.run.world.elements[0]!.spec.dampingRatio).toBe(0.6);
});

it('a setting changed and a key pressed in the same tick both take effect', () => {
  const session = new Session();
  session.set({ dampingRatio: 0.5 });
  session.handle({ kind: 'drop' });
  runTo(session, 0.01);
  expect(session.run.world.elements[0]!.spec.dampingRatio).toBe(0.5);
  expect(kinds(session)).toContain('let go');
});

describe('time', () => {
  it('how run time is cut into frames leaves no trace', () => {
    const hash = (frames: number): string => {
      const session = new Session();
      session.handle({ kind: 'drop' }, 0.05);
      for (let frame = 1; frame <= frames; frame += 1) session.advanceTo(frame / frames);
      return session.run.world.hash;
    };
    expect(hash(10)).toBe(hash(144));
  });

  it('pulled back, the views show that instant; going on from there is a new run and the old is kept', () => {
    const session = new Session();
    session.handle({ kind: 'drop' }, 0.2);
    runTo(session, 1);
    session.pullTo(0.3);
    const { housing } = session.look(1);
    // 0.1 s after the let-go.
    expect(housing.lowestM).toBeCloseTo(0.4 - (G / 2) * 0.1 ** 2, 4);
    session.handle({ kind: 'hold', by: 'clamp', within: 0.2 });
    runTo(session, 2);
    expect(session.pulledBack).toBe(false);
    expect(session.keptRuns.length).toBe(1);
    expect(kinds(session).includes('touch')).toBe(false);
    expect(session.run.tape.value(CHANNEL.specificForce, 100)).toBeCloseTo(G, 12);
  });

  it('stepping a pulled-back view on shows the same as looking there at once', () => {
    const session = new Session();
    session.handle({ kind: 'drop' }, 0.2);
    runTo(session, 1);
    const deflectionAt = (timeS: number): number => {
      session.pullTo(timeS);
      return session.look(1).elements[0]!.deflection;
    };
    const stepped = [0.3, 0.31, 0.333, 0.34].map(deflectionAt);
    const fresh = [0.3, 0.31, 0.333, 0.34].map((timeS) => {
      session.toNewest();
      return deflectionAt(timeS);
    });
    // An instant on a tick's end may be looked at from either side: equal but for rounding.
    stepped.forEach((value, k) => expect(Math.abs(value - fresh[k]!)).toBeLessThan(1e-15));
  });

  it('the log of a sitting, exported as a scenario and run headless, gives the same hash', () => {
    const session = new Session();
    runTo(session, 0.1);
    session.grab();
    for (let k = 0; k < 20; k += 1) {
      session.lead({ position: [0.01 * k, 0.46 + 0.004 * k * k, 0], attitude: [0, 0, 0, 1], over: 1 / 60 });
      runTo(session, 0.1 + k / 60);
    }
    session.letGo();
    runTo(session, 0.9);
    session.set({ dampingRatio: 0.5, gravityMS2: 9.7 });
    session.handle({ kind: 'hold', by: 'clamp', within: 0.1 });
    runTo(session, 2.5);
    const parsed = parseScenario(scenarioText(session.asRun()), {
      readFile: () => {
        throw new Error('no file is asked for');
      },
    });
    expect(parsed.faults).toBeUndefined();
    const world = new World(parsed.run!);
    world.runTo(parsed.run!.duration);
    expect(world.hash).toBe(session.run.world.hash);
  });
});
