import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { scenarioText } from '../../src/scenario/scenario-text.ts';
import { Session } from '../../src/session/session.ts';
import { ROOM_AIR, stiffnessFor } from '../../src/session/settings.ts';
import { settingsOfRun } from '../../src/session/settings-of-run.ts';
import { STARTING_BENCHES } from '../../src/session/starting-benches.ts';

const FILES = { readFile: () => '' };

/** Saved, and read again. */
function reread(session: Session) {
  const { run, faults } = parseScenario(scenarioText(session.asRun()), FILES);
  if (!run) throw new Error(JSON.stringify(faults));
  return run;
}

describe('the settings of a saved run', () => {
  it.each(Object.values(STARTING_BENCHES))('untouched: those of the $title', ({ settings }) => {
    const session = new Session(settings);
    session.advanceTo(0.1);
    const found = settingsOfRun(reread(session));
    if ('fault' in found) throw new Error(found.fault);
    const { stiffnessNM, ...others } = found.settings;
    const { stiffnessNM: expected, ...rest } = settings;
    expect(others).toEqual(rest);
    expect(stiffnessNM / expected).toBeCloseTo(1, 12);
  });

  it('changed while it ran: as they stood at its end', () => {
    const session = new Session();
    session.set({ dampingRatio: 0.02, gapM: null, gravityMS2: 1.62 });
    session.set({ stiffnessNM: stiffnessFor(session.settings.massKg, 2), restitution: 0.9, air: ROOM_AIR });
    session.set({ pad: { ...session.settings.pad, friction: 0.1 } });
    session.set({ readout: { rate: 50, range: 20 } });
    session.handle({ kind: 'drop' }, 0.05);
    session.advanceTo(0.2);
    const found = settingsOfRun(reread(session));
    if ('fault' in found) throw new Error(found.fault);
    const { stiffnessNM, ...others } = found.settings;
    const { stiffnessNM: expected, ...rest } = session.settings;
    expect(others).toEqual(rest);
    expect(stiffnessNM / expected).toBeCloseTo(1, 12);
  });

  it('taken up by a session, the run comes out with the same bits', () => {
    const session = new Session();
    session.set({ senses: 'sideways' });
    session.handle({ kind: 'drop' }, 0.05);
    session.advanceTo(0.4);
    const run = reread(session);
    const found = settingsOfRun(run);
    if ('fault' in found) throw new Error(found.fault);
    const other = new Session();
    other.take(run, found.settings);
    other.advanceTo(run.duration);
    session.advanceTo(run.duration);
    expect(other.run.world.hash).toBe(session.run.world.hash);
    expect(other.settings.senses).toBe('sideways');
    expect(other.keptRuns.length).toBe(1);
  });

  it.each([
    ['two elements', (run: ReturnType<typeof reread>) => ({ ...run, elements: [...run.elements, ...run.elements] })],
    ['a run too long', (run: ReturnType<typeof reread>) => ({ ...run, duration: 601 })],
    ['another housing', (run: ReturnType<typeof reread>) => ({ ...run, housing: { ...run.housing, mass: 3 } })],
    [
      'a damping beyond the bench’s',
      (run: ReturnType<typeof reread>) => ({ ...run, elements: [{ ...run.elements[0]!, dampingRatio: 5 }] }),
    ],
    [
      'thermal noise',
      (run: ReturnType<typeof reread>) => ({ ...run, elements: [{ ...run.elements[0]!, thermalNoise: true }] }),
    ],
    ['a strange tick', (run: ReturnType<typeof reread>) => ({ ...run, tick: 2e-4 })],
    [
      'an element askew',
      (run: ReturnType<typeof reread>) => ({
        ...run,
        elements: [{ ...run.elements[0]!, axis: [0.6, 0.8, 0] as const }],
      }),
    ],
    [
      'no read-out',
      (run: ReturnType<typeof reread>) => ({ ...run, elements: [{ ...run.elements[0]!, readout: undefined }] }),
    ],
  ])('%s: refused in words', (_, other) => {
    expect(settingsOfRun(other(reread(new Session())))).toEqual({
      fault: expect.stringMatching(/^(its?|of its settings) /),
    });
  });
});

describe('runs kept', () => {
  it('come back with the settings that they had, and the present one takes their place', () => {
    const session = new Session();
    session.advanceTo(0.3);
    session.choose(STARTING_BENCHES.chip.settings);
    session.advanceTo(0.1);
    session.bringBack(0);
    expect(session.settings.bench).toBe('table-top');
    expect(session.run.world.timeS).toBeGreaterThan(0.3);
    session.bringBack(0);
    expect(session.settings.bench).toBe('chip');
  });

  it('an element that senses another way is a run of its own, held and settled: sideways it does not sag', () => {
    const session = new Session();
    session.advanceTo(0.3);
    session.set({ senses: 'sideways' });
    session.advanceTo(0.3);
    expect(session.keptRuns.length).toBe(1);
    expect(session.look(0.3).elements[0]!.deflection).toBe(0);
    session.undo();
    session.advanceTo(0.1);
    expect(session.look(0.1).elements[0]!.deflection).toBeLessThan(-0.001);
  });
});
