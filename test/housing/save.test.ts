import { describe, expect, it } from 'vitest';
import type { MotionSpec } from '../../src/contract/motion.ts';
import { Housing } from '../../src/housing/housing.ts';
import { type Kinematics, newKinematics } from '../../src/housing/kinematics.ts';
import { Bench, BOX, TICK_S } from './bench.ts';
import { EVERY_MOTION } from './every-motion.ts';

/** Every number, in words of 64 bits. */
function bits(k: Kinematics): string {
  return [k.position, k.velocity, k.acceleration, k.attitude, k.angularVelocity, k.angularAcceleration, k.specificForce]
    .map((values) => new BigUint64Array(values.slice().buffer).join())
    .join(';');
}

/** Goes on by itself, looking at every piece's start, middle and end; what is seen and what happened. */
function goOn(housing: Housing, fromTick: number, ticks: number, looks: boolean): string[] {
  const k = newKinematics();
  const seen: string[] = [];
  for (let tick = fromTick; tick < fromTick + ticks; tick++) {
    housing.beginTick(tick * TICK_S, TICK_S);
    housing.advance(TICK_S);
    for (let piece = 0; looks && piece < housing.pieceCount; piece++) {
      for (const share of [0.7, 0.5, 0, 1, 0.3]) {
        housing.kinematics(piece, housing.pieceStart(piece) + share * housing.pieceDuration(piece), k);
      }
    }
    housing.present(k);
    seen.push(bits(k), JSON.stringify(housing.events));
  }
  return seen;
}

function resumed(bench: Bench): Housing {
  const saved = bench.housing.save();
  // what a file would bring back, the specification apart
  const read = { ...JSON.parse(JSON.stringify({ ...saved, motion: null })), motion: saved.motion };
  const other = new Housing(BOX, { position: [9, 9, 9], attitude: [0, 0, 0, 1] }, 1, 1);
  other.restore(read);
  return other;
}

describe('a housing saved between ticks goes on bit for bit', () => {
  it.for(Object.entries(EVERY_MOTION))('%s', ([, motion]) => {
    for (const untilS of [0.15, 0.23]) {
      const bench = new Bench([{ kind: 'free', from: 0, spin: [2, 3, -4] }, motion(0.1403)]);
      bench.runTo(untilS);
      const other = resumed(bench);
      expect(goOn(other, bench.tick, 300, false)).toEqual(goOn(bench.housing, bench.tick, 300, false));
    }
  });

  it('a landing, in flight, in contact, between bounces and at rest', () => {
    const pad = { stiffness: 2e4, damping: 40, friction: 0.5, thickness: 0.05 };
    const landing: MotionSpec = { kind: 'free', from: 0.01, spin: [1, -2, 3], pad };
    for (const untilS of [0.1, 0.2032, 0.208, 0.25, 1.5]) {
      const bench = new Bench([landing], { position: [0, 0.25, 0] });
      bench.runTo(untilS);
      const other = resumed(bench);
      expect(other.inContact).toBe(bench.housing.inContact);
      expect(goOn(other, bench.tick, 1500, false)).toEqual(goOn(bench.housing, bench.tick, 1500, false));
    }
  });

  it('with a changed pad and gravity', () => {
    const bench = new Bench([{ kind: 'free', from: 0, pad: { stiffness: 1e4, damping: 5, friction: 0 } }], {
      position: [0, 0.08, 0],
    });
    bench.runTo(0.05);
    bench.housing.setGravity(3.7);
    bench.housing.setPad({ stiffness: 4e4, damping: 0, friction: 0 });
    expect(goOn(resumed(bench), bench.tick, 2000, false)).toEqual(goOn(bench.housing, bench.tick, 2000, false));
  });
});

describe('looking changes nothing', () => {
  it.for(Object.entries(EVERY_MOTION))('%s', ([, motion]) => {
    const make = (): Bench => {
      const bench = new Bench([{ kind: 'free', from: 0, spin: [2, 3, -4] }, motion(0.0403)]);
      bench.runTo(0.05);
      return bench;
    };
    const a = make();
    const b = make();
    expect(goOn(a.housing, a.tick, 600, true)).toEqual(goOn(b.housing, b.tick, 600, false));
  });

  it('a landing with friction', () => {
    const pad = { stiffness: 2e4, damping: 40, friction: 0.5 };
    const make = (): Bench => new Bench([{ kind: 'free', from: 0, spin: [1, -2, 3], pad }], { position: [0, 0.15, 0] });
    const a = make();
    const b = make();
    a.step();
    b.step();
    expect(goOn(a.housing, 1, 4000, true)).toEqual(goOn(b.housing, 1, 4000, false));
  });
});

describe('within a piece', () => {
  it('the start is the state reached, the end is where the next piece starts, bit for bit', () => {
    const pad = { stiffness: 2e4, damping: 40, friction: 0.5 };
    const bench = new Bench([{ kind: 'free', from: 0, spin: [1, -2, 3], pad }], { position: [0, 0.15, 0] });
    const end = newKinematics();
    const start = newKinematics();
    let pairs = 0;
    while (bench.timeS < 0.6) {
      bench.step();
      const { housing } = bench;
      for (let piece = 1; piece < housing.pieceCount; piece++) {
        const tau = housing.pieceStart(piece);
        housing.kinematics(piece - 1, tau, end);
        housing.kinematics(piece, tau, start);
        for (const what of ['position', 'velocity', 'attitude', 'angularVelocity'] as const) {
          expect(Array.from(start[what])).toEqual(Array.from(end[what]));
        }
        pairs += 1;
      }
    }
    expect(pairs).toBeGreaterThan(100);
  });

  it('a tick that is one piece is cut exactly at its end', () => {
    const bench = new Bench([{ kind: 'free', from: 0 }]);
    for (let i = 0; i < 50; i++) {
      bench.step();
      expect([bench.housing.pieceCount, bench.housing.pieceDuration(0)]).toEqual([1, TICK_S]);
    }
  });
});
