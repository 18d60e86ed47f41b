import { describe, expect, it } from 'vitest';
import { Samples } from '../../src/recording/samples.ts';
import { seeded, whole } from './seeded.ts';

const CHUNK = 4096;
const newSamples = (capacity = 1e6): Samples => new Samples({ element: 'z', capacity });

interface Sample {
  readonly timeS: number;
  readonly valueG: number;
  readonly clipped: boolean;
}

/** Samples at a rate that changes now and then. */
function* feed(seed: number, count: number): Generator<Sample> {
  const random = seeded(seed);
  let rate = 100;
  let timeS = 0;
  for (let n = 0; n < count; n += 1) {
    if (random() < 0.01) rate = whole(random, 1, 1600);
    timeS += 1 / rate;
    yield { timeS, valueG: 4 * random() - 2, clipped: random() < 0.2 };
  }
}

const put = (samples: Samples, { timeS, valueG, clipped }: Sample): void => samples.append(timeS, valueG, clipped);

describe('samples against a plain list', () => {
  it.each([1, 2])('gives back each sample, finds each instant and every extreme, seed %i', (seed) => {
    const list = [...feed(seed, 2 * CHUNK + 99)];
    const samples = newSamples();
    for (const each of list) put(samples, each);
    expect([samples.element, samples.first, samples.end]).toEqual(['z', 0, list.length]);
    expect(
      list.map((_, n) => ({ timeS: samples.timeS(n), valueG: samples.valueG(n), clipped: samples.clipped(n) })),
    ).toEqual(list);

    const random = seeded(50 + seed);
    const out = new Float64Array(2);
    for (let n = 0; n < 200; n += 1) {
      const from = whole(random, 0, list.length);
      const to = whole(random, from, list.length);
      samples.envelope(from, to, 1, out);
      const values = list.slice(from, to).map(({ valueG }) => valueG);
      if (values.length === 0) expect(out[0]).toBeNaN();
      else {
        // Rounded outward by at most one step of 32 bits, 2⁻²³ of values up to 2.
        const [low, high] = [Math.min(...values), Math.max(...values)];
        expect(out[0]! <= low && low - out[0]! <= 2 ** -22 && out[1]! >= high && out[1]! - high <= 2 ** -22).toBe(true);
      }
      const timeS = random() < 0.5 ? list[whole(random, 0, list.length - 1)]!.timeS : random() * list.at(-1)!.timeS;
      const found = samples.firstAtOrAfter(timeS);
      expect(found).toBe(list.findIndex((each) => each.timeS >= timeS));
    }
    expect(samples.firstAtOrAfter(list.at(-1)!.timeS * 2)).toBe(list.length);
  });
});

describe('samples', () => {
  it('keeps the newest past its capacity, flags too, and the hash of all', () => {
    const few = newSamples(10);
    const all = newSamples();
    for (const each of feed(3, 3 * CHUNK + 7)) {
      put(few, each);
      put(all, each);
    }
    expect(few.first).toBe(2 * CHUNK);
    for (let n = few.first; n < few.end; n += 1)
      if (few.timeS(n) !== all.timeS(n) || few.valueG(n) !== all.valueG(n) || few.clipped(n) !== all.clipped(n))
        expect.unreachable(`sample ${n} differs`);
    expect([few.timeS(0), few.valueG(0), few.clipped(0)]).toEqual([Number.NaN, Number.NaN, false]);
    expect(few.firstAtOrAfter(0)).toBe(few.first);
    expect(few.hash).toBe(all.hash);
  });

  it('hashes time, value and flag of each sample', () => {
    const hashOf = (timeS: number, valueG: number, clipped: boolean): string => {
      const samples = newSamples();
      samples.append(timeS, valueG, clipped);
      return samples.hash;
    };
    const hashes = [hashOf(1, 2, false), hashOf(1, 2, true), hashOf(1.5, 2, false), hashOf(1, 2.5, false)];
    expect(new Set(hashes).size).toBe(4);
  });

  it.each([0, 1, 4095, 4096, 5000])('resumed from sample %i is what never had the later ones', (at) => {
    const samples = newSamples();
    const straight = newSamples();
    let saved = samples.save();
    let n = 0;
    for (const each of feed(4, 5500)) {
      if (n === at) saved = JSON.parse(JSON.stringify(samples.save())) as typeof saved;
      put(samples, each);
      if (n < at) put(straight, each);
      n += 1;
    }
    samples.restore(saved);
    const startS = straight.end > 0 ? straight.timeS(straight.end - 1) : 0;
    for (const each of feed(5, 4200)) {
      const moved = { ...each, timeS: startS + each.timeS };
      put(samples, moved);
      put(straight, moved);
    }
    expect([samples.first, samples.end, samples.hash]).toEqual([straight.first, straight.end, straight.hash]);
    for (let k = 0; k < samples.end; k += 1)
      if (samples.timeS(k) !== straight.timeS(k) || samples.clipped(k) !== straight.clipped(k))
        expect.unreachable(`sample ${k} differs`);
    const [some, all] = [new Float64Array(80), new Float64Array(80)];
    samples.envelope(0, samples.end, 40, some);
    straight.envelope(0, straight.end, 40, all);
    expect(some).toEqual(all);
  });

  it('takes 16.7 bytes a sample', () => {
    const samples = newSamples();
    for (let n = 0; n < CHUNK; n += 1) samples.append(n, 0, false);
    // Time and value 8 each, a bit, and 8/16 + 8/256 + 8/4096 for the levels.
    expect(samples.byteLength / CHUNK).toBeCloseTo(16 + 1 / 8 + 8 / 16 + 8 / 256 + 8 / 4096, 9);
  });

  it('refuses a sample that does not follow, or that is no number', () => {
    const samples = newSamples();
    expect(() => samples.append(Number.NaN, 0, false)).toThrow('at NaN s');
    samples.append(1, 0, false);
    expect(() => samples.append(1, 0, false)).toThrow('a sample of z at 1 s does not follow the one at 1 s');
    expect(() => samples.append(2, Number.NaN, false)).toThrow('got NaN');
    expect(() => samples.append(2, Number.POSITIVE_INFINITY, false)).toThrow('got Infinity');
    expect(samples.end).toBe(1);
  });
});
