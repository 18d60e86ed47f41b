import { expect, it } from 'vitest';
import { runSentence } from '../../src/session/sentence.ts';
import { Session } from '../../src/session/session.ts';

function after(session: Session, seconds: number): string {
  session.advanceTo(session.run.world.timeS + seconds);
  return runSentence(session.run.world.events.all, (timeS) => session.run.readingAt(timeS));
}

it('says what happened last: a fall from 0.4 m takes √(2h/g) = 0.2856 s', () => {
  const session = new Session();
  expect(after(session, 0.1)).toBe('');
  session.handle({ kind: 'drop' });
  expect(after(session, 0.1)).toMatch(/^Let go 0.400.m up\.$/);
  expect(after(session, 1)).toMatch(/^Fell 0.286.s, reading at the end of the fall .*, landed with up to/);
});

it('a throw is no fall, and a shake since then is told instead', () => {
  const session = new Session();
  session.handle({ kind: 'throw', speed: 2 });
  expect(after(session, 1.5)).toMatch(/^Thrown up at 2\.0\d.m\/s, in flight/);
  session.handle({
    kind: 'shake',
    shake: { law: 'sine', axis: [0, 1, 0], frequency: 4, amplitude: 5, ease: 0.5 },
  });
  expect(after(session, 3)).toBe('On the shaker.');
  session.handle({ kind: 'hold', by: 'clamp', within: 0.2 });
  expect(after(session, 3)).toBe('');
});
