/**
 * Stops, and friction on the pad: Newton's law of impact and Coulomb's of friction, any text on mechanics, e.g. J. L. Meriam,
 * L. G. Kraige, Engineering Mechanics: Dynamics, chapter on impact (from memory).
 */
import { describe, expect, it } from 'vitest';
import type { StopEvent } from '../../src/contract/event.ts';
import { BOX, STANDARD_GRAVITY as G, lookAt, rowsOf, scenario } from './scenario-run.ts';

const X = [1, 0, 0] as const;

/** A mass on so soft a spring that it is as good as free in its gap. */
const loose = { name: 'loose', axis: X, naturalFrequency: 0.01, dampingRatio: 0, gap: 0.01 };

describe('a loose mass between its stops', () => {
  it.for([0.3, 0.5, 0.9])(
    'bounces in a push with e = %d: speeds eⁿv₀, flights 2eⁿv₀/a, at rest after v₀/a·(1 + e)/(1 − e)',
    (e) => {
      const a = 7;
      const from = 0.0123;
      const run = scenario({
        duration: 5,
        elements: [{ ...loose, restitution: e }],
        motions: [
          { kind: 'held', from: 0 },
          { kind: 'push', from, axis: X, acceleration: a, within: 0 },
        ],
      });
      // From the middle it falls to the stop at −gap, for the housing runs away under it.
      const v0 = Math.sqrt(2 * a * loose.gap);
      const first = from + v0 / a;
      const rest = first + (((2 * v0) / a) * e) / (1 - e);
      const world = lookAt(run, [rest + 0.01], (snapshot) => {
        expect(snapshot.elements[0]!.deflection).toBe(-loose.gap);
        expect(snapshot.elements[0]!.velocity).toBe(0);
        expect(snapshot.elements[0]!.onStop).toBe(-1);
      });
      const hits = world.events.all.filter((event): event is StopEvent => event.kind === 'stop hit');
      let at = first;
      expect(hits.length).toBeGreaterThan(9);
      // The spring of 0.01 Hz adds ω₀²·gap/a = 6e-6 of the push.
      for (let n = 0; n < hits.length; n += 1) {
        const speed = v0 * e ** n;
        expect(Math.abs(hits[n]!.speedMS - speed)).toBeLessThan(1e-5 * v0);
        expect(hits[n]!.side).toBe(-1);
        expect(Math.abs(hits[n]!.timeS - at)).toBeLessThan(1e-5 * (rest - from));
        at += (2 * speed * e) / a;
      }
      expect(hits.at(-1)!.rests).toBe(true);
      expect(Math.abs(hits.at(-1)!.timeS - rest)).toBeLessThan(1e-5 * (rest - from));
    },
  );
});

describe('a box that slides on the pad', () => {
  const mu = 0.35;
  const rows = () =>
    rowsOf(
      scenario({
        duration: 1.2,
        record: { rate: 997 },
        elements: [
          { name: 'ahead', axis: X, naturalFrequency: 200, dampingRatio: 0.7 },
          { name: 'up', axis: [0, 1, 0], naturalFrequency: 200, dampingRatio: 0.7 },
        ],
        motions: [
          // Brought to 3 m/s without turning, let go a hair above the pad.
          { kind: 'push', from: 0, axis: X, acceleration: 30, within: 0 },
          { kind: 'push', from: 0.1, axis: X, acceleration: 0, within: 0 },
          { kind: 'free', from: 0.10203, height: 0, pad: { stiffness: 20_000, damping: 80, friction: mu } },
        ],
        housing: { mass: BOX.mass, size: [0.3, 0.02, 0.2] },
      }),
    );

  it('feels µ times the pad’s push against its way as long as it slides, and stops after v₀/µg', () => {
    const { column } = rows();
    const time = column('time_s');
    const ahead = column('ahead_specific_force_m_s2');
    const up = column('up_specific_force_m_s2');
    const x = column('px_m');
    const stopS = 0.10203 + 3 / (mu * G);
    let slides = 0;
    time.forEach((t, k) => {
      if (t < 0.12 || t > stopS - 0.02 || !(up[k]! > 0)) return;
      // It pitches a little under the friction at its sole: f is in its own frame, (f_y + …)·pitch of some 1e-4 rad.
      expect(Math.abs(ahead[k]! / up[k]! + mu)).toBeLessThan(2e-3);
      slides += 1;
    });
    expect(slides).toBeGreaterThan(500);
    // Slid v₀²/2µg; sinking in takes µ·sag = 1e-4 m of it, the pitch and the bristles' give as little.
    const start = x[103]! - 3 * (time[103]! - 0.10203);
    expect(Math.abs((x.at(-1)! - start) / (9 / (2 * mu * G)) - 1)).toBeLessThan(5e-4);
    const moving = [...x.keys()].filter((k) => k > 0 && (x[k]! - x[k - 1]!) * 997 > 5e-3);
    expect(Math.abs(time[moving.at(-1)!]! - stopS)).toBeLessThan(5e-3);
  });
});
