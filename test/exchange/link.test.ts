import { expect, it } from 'vitest';
import { type Linked, readLink, writeLink } from '../../src/exchange/link.ts';
import { Session } from '../../src/session/session.ts';
import { STARTING_BENCHES } from '../../src/session/starting-benches.ts';
import { World } from '../../src/world/world.ts';

const PAGE = {
  theme: 'day',
  slowed: 10,
  spanS: 2.4,
  unit: 'g_n',
  signTurned: false,
  lines: ['mass'],
  shownS: null,
} as const;

function dropped(): Session {
  const session = new Session();
  session.handle({ kind: 'drop' }, 0.1);
  session.advanceTo(0.4);
  session.set({ dampingRatio: 0.3 });
  session.advanceTo(0.8);
  return session;
}

async function textOf(linked: Linked): Promise<string> {
  const written = await writeLink(linked);
  if ('refused' in written) throw new Error(written.refused);
  return written.text;
}

const linkedOf = (session: Session): Linked => ({
  run: session.asRun(),
  settings: session.settings,
  reachedS: 0.8,
  page: PAGE,
});

it('a link brings back run, settings and page; the run gives the same bits', async () => {
  const session = dropped();
  const opened = await readLink(await textOf(linkedOf(session)));
  if ('refused' in opened) throw new Error(opened.refused);
  expect(opened.linked.settings).toEqual(session.settings);
  expect(opened.linked.page).toEqual(PAGE);
  const world = new World(opened.linked.run);
  world.runTo(opened.linked.run.duration);
  expect(world.hash).toBe(session.run.world.hash);
});

it('a sitting opened from a link goes on like the one that was sent', async () => {
  const session = dropped();
  const opened = await readLink(await textOf(linkedOf(session)));
  if ('refused' in opened) throw new Error(opened.refused);
  const again = Session.replay(opened.linked.run, opened.linked.settings);
  again.advanceTo(opened.linked.reachedS);
  for (const each of [session, again]) {
    each.handle({ kind: 'hold', by: 'clamp', within: 0.1 }, 0.9);
    each.advanceTo(2.5);
  }
  expect(again.run.world.hash).toBe(session.run.world.hash);
});

it('settings of every starting bench pass', async () => {
  for (const { settings } of Object.values(STARTING_BENCHES)) {
    const opened = await readLink(await textOf(linkedOf(new Session(settings))));
    expect(opened).toHaveProperty('linked');
  }
});

it('what is damaged, foreign or out of range is refused with a sentence', async () => {
  const good = await textOf(linkedOf(dropped()));
  expect(await readLink(good.slice(0, 40))).toEqual({ refused: expect.stringContaining('damaged') });
  expect(await readLink('!!!')).toEqual({ refused: expect.stringContaining('damaged') });
  const session = dropped();
  const heavy = await textOf({ ...linkedOf(session), settings: { ...session.settings, massKg: 1e9 } });
  expect(await readLink(heavy)).toEqual({ refused: expect.stringMatching(/mass is 1000000000, allowed are/) });
  const foreign = await textOf({ ...linkedOf(session), run: { ...session.asRun(), gravity: -1 } });
  expect(await readLink(foreign)).toEqual({ refused: expect.stringMatching(/gravity/) });
});

it('a played record does not fit into a link and is said to be too large', async () => {
  const session = dropped();
  const data = { timeS: Float64Array.of(0, 1), valuesMS2: [Float64Array.of(0, 1)] };
  const run = {
    ...session.asRun(),
    motions: [
      {
        kind: 'recorded',
        from: 0,
        file: 'x.csv',
        time: 't',
        columns: ['a'],
        unit: 'g',
        is: 'acceleration',
        axis: [1, 0, 0],
        data,
      },
    ],
  } as const;
  expect(await writeLink({ ...linkedOf(session), run })).toEqual({ refused: expect.stringContaining('Save the run') });
});
