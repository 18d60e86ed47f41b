import { describe, expect, it } from 'vitest';
import { type StoredChannel, Tape } from '../../src/recording/tape.ts';
import { anySize, seeded, whole } from './seeded.ts';

const CHANNELS: readonly StoredChannel[] = [
  { name: 'z.specificForce', unit: 'm/s2', keep: 'f64' },
  { name: 'housing.height', unit: 'm', keep: 'f32' },
];
/** Rows to a chunk, so that the tests cross its borders; the tape keeps up to two more than asked for. */
const CHUNK = 4096;

/** What goes into a tape: row k and the ticks before it, out of a seed; with gaps. */
function* feed(seed: number, rows: number): Generator<{ ticks: Float64Array[]; row: Float64Array }> {
  const random = seeded(seed);
  const values = (): Float64Array =>
    Float64Array.from(CHANNELS, () => (random() < 0.05 ? Number.NaN : 20 * random() - 10 + 1e-9 * random()));
  for (let k = 0; k < rows; k += 1) yield { ticks: Array.from({ length: whole(random, 0, 3) }, values), row: values() };
}

function put(tape: Tape, { ticks, row }: { ticks: readonly Float64Array[]; row: Float64Array }): void {
  for (const tick of ticks) tape.tick(tick);
  tape.row(row);
}

const newTape = (capacityRows = 1e6): Tape => new Tape({ rateHz: 1000, channels: CHANNELS, capacityRows });

/** Everything that a view can see, as text. */
function seen(tape: Tape, seed: number): string {
  const random = seeded(seed);
  const out = new Float64Array(40);
  const parts: unknown[] = [tape.firstRow, tape.endRow, tape.hash, tape.save()];
  for (let n = 0; n < 60; n += 1) {
    const from = whole(random, tape.firstRow, tape.endRow);
    tape.envelope(n % CHANNELS.length, from, whole(random, from, tape.endRow), 20, out);
    parts.push(out.join());
  }
  for (let row = tape.firstRow; row < tape.endRow; row += 1) parts.push(tape.value(0, row), tape.value(1, row));
  return JSON.stringify(parts, (_, value: unknown) => (Object.is(value, -0) ? '-0' : value));
}

describe('tape against a plain list, seeds 1 to 4', () => {
  it.each([1, 2, 3, 4])('gives each value back and every extreme of every window, seed %i', (seed) => {
    const rows = [...feed(seed, 2 * CHUNK + 777)];
    const tape = newTape();
    for (const each of rows) put(tape, each);
    expect([tape.firstRow, tape.endRow, tape.revision]).toEqual([0, rows.length, rows.length]);
    expect(rows.map((_, k) => tape.value(0, k))).toEqual(rows.map(({ row }) => row[0]));
    expect(rows.map((_, k) => tape.value(1, k))).toEqual(rows.map(({ row }) => Math.fround(row[1]!)));

    const random = seeded(100 + seed);
    for (let n = 0; n < 150; n += 1) {
      const channel = whole(random, 0, 1);
      const wide = random() < 0.5;
      const fractional = random() < 0.3 ? random() : 0;
      const from = whole(random, -20, rows.length) + fractional;
      const to = from + whole(random, 0, wide ? rows.length : 60) + fractional;
      const buckets = whole(random, 1, 30);
      const out = new Float64Array(2 * buckets);
      tape.envelope(channel, from, to, buckets, out);
      const start = Math.max(0, Math.ceil(from));
      for (let bucket = 0; bucket < buckets; bucket += 1) {
        let minimum = Number.POSITIVE_INFINITY;
        let maximum = Number.NEGATIVE_INFINITY;
        const edge = (b: number): number => Math.ceil(b === buckets ? to : from + ((to - from) * b) / buckets);
        for (let k = Math.max(start, edge(bucket)); k < Math.min(edge(bucket + 1), rows.length); k += 1) {
          const own =
            k === start ? [tape.value(channel, k)] : [...rows[k]!.ticks, rows[k]!.row].map((v) => v[channel]!);
          for (const value of own) {
            if (value < minimum) minimum = value;
            if (value > maximum) maximum = value;
          }
        }
        const [low, high] = [out[2 * bucket]!, out[2 * bucket + 1]!];
        if (minimum > maximum) {
          if (!(Number.isNaN(low) && Number.isNaN(high))) expect.unreachable(`bucket ${bucket} should be missing`);
          continue;
        }
        // Rounded outward, by at most one step of 32 bits: 2⁻²³ of values up to 10.
        const step = 10 * 2 ** -23;
        if (!(low <= minimum && minimum - low <= step && high >= maximum && high - maximum <= step))
          expect.unreachable(`rows ${from} to ${to}, bucket ${bucket}: ${low}, ${high} for ${minimum}, ${maximum}`);
      }
    }
  });
});

describe('tape', () => {
  it('keeps an extreme between two rows that no row shows', () => {
    const tape = newTape();
    tape.row(Float64Array.of(1, 0));
    tape.tick(Float64Array.of(-3, 0));
    tape.tick(Float64Array.of(7, 0));
    tape.row(Float64Array.of(2, 0));
    const out = new Float64Array(4);
    tape.envelope(0, 0, 2, 1, out);
    expect([out[0], out[1]]).toEqual([-3, 7]);
    tape.envelope(0, 0, 2, 2, out);
    expect([...out]).toEqual([1, 1, -3, 7]); // the ticks belong to the row after them
    tape.envelope(0, 1, 2, 1, out);
    expect([out[0], out[1]]).toEqual([2, 2]); // what came before the first row of a window stays out
  });

  it('never narrows an extreme, of whatever size, seed 5', () => {
    const random = seeded(5);
    const tape = newTape();
    const out = new Float64Array(2);
    let minimum = Number.POSITIVE_INFINITY;
    let maximum = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < 600; k += 1) {
      const value = anySize(random) * 2 ** -whole(random, 0, 250);
      minimum = Math.min(minimum, value);
      maximum = Math.max(maximum, value);
      tape.row(Float64Array.of(value, 0));
      tape.envelope(0, 0, k + 1, 1, out);
      expect(out[0]! <= minimum && out[1]! >= maximum).toBe(true);
    }
  });

  it('shows missing values as NaN and leaves them out of the extremes', () => {
    const tape = newTape();
    for (const value of [Number.NaN, 4, Number.NaN, Number.NaN]) tape.row(Float64Array.of(value, Number.NaN));
    const out = new Float64Array(8);
    tape.envelope(0, 0, 4, 1, out);
    expect([out[0], out[1]]).toEqual([4, 4]);
    tape.envelope(0, 0, 4, 4, out);
    expect([...out]).toEqual([Number.NaN, Number.NaN, 4, 4, Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
    tape.envelope(1, 0, 4, 1, out);
    expect([out[0], out[1]]).toEqual([Number.NaN, Number.NaN]);
    expect(tape.value(0, 0)).toBeNaN();
    expect([tape.value(0, -1), tape.value(0, 4)]).toEqual([Number.NaN, Number.NaN]);
  });

  it('covers a window that reaches beyond its rows, and one narrower than its buckets', () => {
    const tape = newTape();
    for (let k = 0; k < 4; k += 1) tape.row(Float64Array.of(k, 0));
    const out = new Float64Array(8);
    tape.envelope(0, -4, 12, 4, out);
    expect([...out]).toEqual([Number.NaN, Number.NaN, 0, 3, Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
    tape.envelope(0, 1, 3, 4, out);
    expect([...out]).toEqual([1, 1, Number.NaN, Number.NaN, 2, 2, Number.NaN, Number.NaN]);
    tape.envelope(0, 2, 2, 1, out);
    expect(out[0]).toBeNaN();
  });

  it.each([1, 300, CHUNK, CHUNK + 1])('keeps at least %i rows and not two chunks more, the newest', (capacity) => {
    const tape = newTape(capacity);
    const full = newTape();
    for (const each of feed(6, 4 * CHUNK + 5)) {
      put(tape, each);
      put(full, each);
      const kept = tape.endRow - tape.firstRow;
      if (kept < Math.min(capacity, tape.endRow) || kept > capacity + 2 * CHUNK)
        expect.unreachable(`${kept} rows of ${tape.endRow} kept`);
    }
    expect(tape.firstRow).toBeGreaterThan(0);
    const [some, all] = [new Float64Array(60), new Float64Array(60)];
    tape.envelope(0, tape.firstRow, tape.endRow, 30, some);
    full.envelope(0, tape.firstRow, tape.endRow, 30, all);
    expect(some).toEqual(all);
    for (let k = tape.firstRow; k < tape.endRow; k += 1)
      if (!Object.is(tape.value(0, k), full.value(0, k))) expect.unreachable(`row ${k} differs`);
    expect(tape.value(0, tape.firstRow - 1)).toBeNaN();
    expect(tape.hash).toBe(full.hash); // of all rows ever appended
  });

  it('hashes the full precision of every value of every row and nothing else', () => {
    const hashOf = (values: readonly number[][], ticks: readonly number[][] = []): string => {
      const tape = newTape();
      for (const tick of ticks) tape.tick(Float64Array.from(tick));
      for (const row of values) tape.row(Float64Array.from(row));
      return tape.hash;
    };
    const plain = hashOf([[1, 2]]);
    expect(hashOf([[1, 2]], [[5, 6]])).toBe(plain);
    expect(hashOf([[1, 2 + 1e-12]])).not.toBe(plain); // although that channel keeps 32 bits
    expect(hashOf([[2, 1]])).not.toBe(plain);
    expect(
      hashOf([
        [1, 2],
        [1, 2],
      ]),
    ).not.toBe(plain);
  });

  it.each([0, 1, 15, 16, 17, 255, 4095, 4096, 4097, 6001])(
    'resumed from row %i is bit for bit a tape that never had the later rows',
    (at) => {
      const tape = newTape();
      const straight = newTape();
      let saved = tape.save();
      let k = 0;
      for (const each of feed(7, 6500)) {
        if (k === at) {
          for (const tick of each.ticks) tape.tick(tick); // extremes pending when saved
          saved = JSON.parse(JSON.stringify(tape.save())) as typeof saved;
          tape.row(each.row);
        } else put(tape, each);
        if (k < at) put(straight, each);
        else if (k === at) for (const tick of each.ticks) straight.tick(tick);
        k += 1;
      }
      const before = tape.revision;
      tape.truncate(at);
      tape.restore(saved);
      expect(tape.revision).toBeGreaterThan(before);
      expect(seen(tape, at)).toBe(seen(straight, at));
      for (const each of feed(8, 5000)) {
        put(tape, each);
        put(straight, each);
      }
      expect(seen(tape, at)).toBe(seen(straight, at));
    },
  );

  it('resumed before its oldest row begins empty there, with the hash of the whole run', () => {
    const short = newTape(1);
    const long = newTape();
    let saved = long.save();
    let k = 0;
    for (const each of feed(9, 3 * CHUNK)) {
      put(short, each);
      put(long, each);
      k += 1;
      if (k === 100) saved = short.save();
    }
    expect(short.firstRow).toBeGreaterThan(100);
    short.restore(saved);
    long.restore(saved);
    expect([short.firstRow, short.endRow, short.byteLength]).toEqual([100, 100, 0]);
    for (const each of feed(10, CHUNK + 50)) {
      put(short, each);
      put(long, each);
    }
    expect([short.firstRow, short.hash]).toEqual([100, long.hash]);
    const [some, all] = [new Float64Array(20), new Float64Array(20)];
    short.envelope(0, 100, short.endRow, 10, some);
    long.envelope(0, 100, long.endRow, 10, all);
    expect(some).toEqual(all);
  });

  it('holds ten minutes of three elements and the housing at 2 kHz, levels included, in less than 200 MB', () => {
    const channels: StoredChannel[] = ['x', 'y', 'z'].flatMap((name) => [
      { name: `${name}.specificForce`, unit: 'm/s2', keep: 'f64' },
      { name: `${name}.deflection`, unit: 'm', keep: 'f64' },
    ]);
    channels.push(
      { name: 'housing.height', unit: 'm', keep: 'f32' },
      { name: 'housing.velocity', unit: 'm/s', keep: 'f32' },
      { name: 'housing.acceleration', unit: 'm/s2', keep: 'f32' },
    );
    const capacityRows = 10 * 60 * 2000;
    const tape = new Tape({ rateHz: 2000, channels, capacityRows });
    const values = new Float64Array(channels.length);
    // The memory is that of a whole number of chunks: two different fillings give its law.
    for (let k = 0; k < CHUNK + 1; k += 1) tape.row(values.fill(k));
    const perChunk = tape.byteLength / 2;
    for (let k = 0; k < CHUNK; k += 1) tape.row(values.fill(k));
    expect(tape.byteLength).toBe(3 * perChunk);
    // At the most, a chunk more than the capacity fills (held to in 'keeps at least …').
    const bytes = (Math.ceil(capacityRows / CHUNK) + 1) * perChunk;
    expect(bytes).toBeLessThan(200e6);
    // 6·16 + 3·12 bytes a row, and 8/16 + 8/256 + 8/4096 for the levels of each channel.
    expect(perChunk / CHUNK).toBeCloseTo(6 * 16 + 3 * 12 + 9 * (8 / 16 + 8 / 256 + 8 / 4096), 9);
  });

  it('refuses what it cannot keep, with value and limits', () => {
    const tape = newTape();
    for (const bad of [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e39]) {
      expect(() => tape.row(Float64Array.of(0, bad))).toThrow(`housing.height must lie within ±3.4028234663852886e+38`);
      expect(() => tape.tick(Float64Array.of(bad, 0))).toThrow(`got ${bad}`);
    }
    expect(tape.endRow).toBe(0);
    expect(() => tape.truncate(1)).toThrow('no row 1');
    expect(() => tape.truncate(-1)).toThrow('got -1');
    expect(() => tape.envelope(0, 5, 4, 1, new Float64Array(2))).toThrow('got 5 to 4');
    expect(() => tape.envelope(0, 0, 4, 2, new Float64Array(3))).toThrow('2 buckets does not fit into 3');
    expect(() => new Tape({ rateHz: 0, channels: CHANNELS, capacityRows: 1 })).toThrow('got 0');
    expect(() => newTape(0.5)).toThrow('got 0.5');
    expect(() => new Tape({ rateHz: 1, channels: [CHANNELS[0]!, CHANNELS[0]!], capacityRows: 1 })).toThrow('same name');
  });
});
