import { describe, expect, it } from 'vitest';
import { newKinematics } from '../../src/housing/kinematics.ts';
import { Bench, STANDARD_GRAVITY, TICK_S } from './bench.ts';

const PAD = { stiffness: 2e4, damping: 80, friction: 0.5 };

function standing(): Bench {
  const bench = new Bench([{ kind: 'free', from: 0.0123, pad: PAD }], {
    position: [0, 0.08, 0],
    attitude: [0.05, 0.02, 0.01, 0.9985],
  });
  bench.runTo(3);
  return bench;
}

function felt(bench: Bench): number {
  const k = newKinematics();
  bench.housing.felt(bench.housing.pieceCount - 1, TICK_S, k);
  return Math.hypot(k.specificForce[0]!, k.specificForce[1]!, k.specificForce[2]!);
}

/** Whether the last piece of one more tick is steady. */
function stepsSteadily(bench: Bench): boolean {
  bench.step();
  return bench.housing.isSteady(bench.housing.pieceCount - 1);
}

describe('a housing that has come to rest on the pad', () => {
  it('stands still, feels g, and looks the same at any instant of a tick', () => {
    const bench = standing();
    expect(bench.events.at(-1)!.kind).toBe('at rest');
    expect(stepsSteadily(bench)).toBe(true);
    // Rounding of what the four corners push.
    expect(Math.abs(felt(bench) / STANDARD_GRAVITY - 1)).toBeLessThan(1e-12);
    const looks = [0, 0.3, 0.5, 1].map((share) => {
      const k = newKinematics();
      bench.housing.kinematics(0, share * TICK_S, k);
      return k;
    });
    for (const look of looks) expect(look).toEqual(looks[0]);
  });

  it('stands still the same whether stepped or not: a tick cut in two has to be stepped', () => {
    const bench = standing();
    const cut = standing();
    const a = newKinematics();
    const b = newKinematics();
    for (let tick = 0; tick < 50; tick++) {
      bench.step();
      cut.housing.beginTick(cut.timeS, TICK_S);
      cut.housing.advance(0.37 * TICK_S);
      cut.housing.advance(TICK_S);
      cut.tick += 1;
    }
    bench.housing.present(a);
    cut.housing.present(b);
    // Where it no longer moves is a matter of the last bits, which depend on the step.
    expect(Math.abs(a.position[1]! - b.position[1]!)).toBeLessThan(1e-15);
  });

  it('moves again when gravity changes, and stands again', () => {
    const bench = standing();
    bench.housing.setGravity(9.7);
    expect(stepsSteadily(bench)).toBe(false);
    bench.runTo(bench.timeS + 3);
    expect(stepsSteadily(bench)).toBe(true);
    expect(Math.abs(felt(bench) / 9.7 - 1)).toBeLessThan(1e-12);
  });

  it('falls when the pad is taken away', () => {
    const bench = standing();
    bench.housing.setPad(null);
    bench.step();
    expect(felt(bench)).toBe(0);
    expect(bench.housing.inContact).toBe(false);
  });
});
