import { describe, expect, it } from 'vitest';
import { Readout, type ReadoutSave } from '../../src/readout/readout.ts';

/** Takes all samples due before an instant [s] of a reading that is its own time; gives back their instants. */
function runTo(readout: Readout, beforeS: number): number[] {
  const times: number[] = [];
  for (let dueS = readout.nextDueS(); dueS < beforeS; dueS = readout.nextDueS()) {
    readout.take(dueS, dueS);
    times.push(dueS);
  }
  return times;
}

/** k/rate for k from the first at or after `fromS` to the last before `beforeS`, found by counting from 0. */
function instants(rate: number, fromS: number, beforeS: number): number[] {
  const times: number[] = [];
  for (let k = 0; k / rate < beforeS; k += 1) if (k / rate >= fromS) times.push(k / rate);
  return times;
}

describe('read-out', () => {
  it.each([0.5, 3, 100, 1344, 1e4 / 3])('at %d Hz samples at exactly k/rate, also a long run later', (rate) => {
    const readout = new Readout({ rate });
    expect(runTo(readout, 3)).toEqual(instants(rate, 0, 3));
    const late = new Readout({ rate });
    late.restore({ ...late.save(), nextIndex: 1e9 });
    expect(late.nextDueS()).toBe(1e9 / rate);
  });

  it('holds nothing before its first sample, then the latest in units of g_n', () => {
    const readout = new Readout({ rate: 10 });
    expect([readout.latestG, readout.latestTimeS]).toEqual([Number.NaN, Number.NaN]);
    readout.take(readout.nextDueS(), 9.80665); // 1 g_n: 3rd CGPM 1901, ISO 80000-3
    expect([readout.latestG, readout.latestTimeS, readout.nextDueS()]).toEqual([1, 0, 0.1]);
    readout.take(0.1, -19.6133);
    expect([readout.latestG, readout.latestTimeS]).toEqual([-2, 0.1]);
  });

  it('reports what the converter makes of a reading', () => {
    const readout = new Readout({ rate: 10, range: 4 * 9.80665, bits: 4 }); // steps of half a g_n
    readout.take(0, 0.7 * 9.80665);
    expect(readout.latestG).toBe(0.5);
    expect(readout.convert(0.8 * 9.80665)).toBe(9.80665);
    readout.take(0.1, 50);
    expect(readout.latestG).toBe(3.5);
    expect([readout.clipped(50), readout.clipped(9.80665)]).toEqual([true, false]);
  });

  it('changed while it runs goes on with the first k/rate of the new rate at or after that instant', () => {
    for (const [from, to] of [
      [100, 30],
      [30, 100],
      [7, 1000 / 3],
      [100, 100],
    ] as const)
      for (const atS of [0, 1 / 3, 0.5, 0.7000000000000001, 1, 1.0001]) {
        const readout = new Readout({ rate: from });
        const before = runTo(readout, atS);
        readout.change({ rate: to }, atS);
        const times = [...before, ...runTo(readout, 3)];
        expect(times).toEqual([...instants(from, 0, atS), ...instants(to, atS, 3)]);
      }
  });

  it('takes the samples due before a change as they were, even if told of it early', () => {
    const readout = new Readout({ rate: 10 });
    readout.change({ rate: 4, range: 0.25 }, 0.35);
    readout.change({ rate: 2 }, 0.8);
    const seen: [number, number, boolean][] = [];
    for (let dueS = readout.nextDueS(); dueS < 2; dueS = readout.nextDueS()) {
      readout.take(dueS, dueS);
      seen.push([dueS, readout.spec.rate, readout.clipped(dueS)]);
    }
    expect(seen).toEqual([
      [0, 10, false],
      [0.1, 10, false],
      [0.2, 10, false],
      [3 / 10, 10, false],
      [0.5, 4, true],
      [0.75, 4, true],
      [1, 2, false],
      [1.5, 2, false],
    ]);
  });

  it('takes no instant twice when a change falls on a sample already taken', () => {
    const readout = new Readout({ rate: 10 });
    expect(runTo(readout, 0.55).at(-1)).toBe(0.5);
    readout.change({ rate: 20 }, 0.5);
    expect(readout.nextDueS()).toBe(0.55);
  });

  it('finds the first sample of the new rate wherever the product of time and rate rounds to', () => {
    // 0.07·100 rounds above 7, 0.29·100 below 29.
    for (let k = 1; k < 300; k += 1) {
      const readout = new Readout({ rate: 1e-3 });
      runTo(readout, 0.001);
      readout.change({ rate: 100 }, k / 100);
      expect(readout.nextDueS()).toBe(k / 100);
    }
  });

  it('restored goes on bit for bit, with its specification and what was planned', () => {
    const newReadout = (): Readout => {
      const readout = new Readout({ rate: 10 });
      readout.change({ rate: 30, range: 20, bits: 8 }, 0.4);
      readout.change({ rate: 5 }, 1.2);
      return readout;
    };
    const straight = runTo(newReadout(), 2);
    for (const pauseS of [0, 0.2, 0.9, 1.5]) {
      const readout = newReadout();
      const before = runTo(readout, pauseS);
      const other = new Readout({ rate: 1 });
      other.restore(JSON.parse(JSON.stringify(readout.save())) as ReadoutSave);
      expect([other.latestG, other.latestTimeS, other.spec]).toEqual([
        readout.latestG,
        readout.latestTimeS,
        readout.spec,
      ]);
      expect(other.convert(1)).toBe(readout.convert(1));
      expect([...before, ...runTo(other, 2)]).toEqual(straight);
      runTo(readout, 2);
      expect(other.latestG).toBe(readout.latestG);
    }
  });
});
