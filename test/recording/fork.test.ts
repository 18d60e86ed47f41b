import { describe, expect, it } from 'vitest';
import { Samples } from '../../src/recording/samples.ts';
import { Tape } from '../../src/recording/tape.ts';

const channels = [{ name: 'x', unit: 'm', keep: 'f64' }] as const;

/** A tape with rows from … to, row k holding k. */
function write(tape: Tape, from: number, to: number, times = 1): Tape {
  for (let k = from; k < to; k += 1) tape.row(Float64Array.of(k * times));
  return tape;
}

describe('a tape that goes on from an earlier row', () => {
  it('has the same past, a future of its own, and leaves the other as it was', () => {
    const tape = write(new Tape({ rateHz: 1, channels, capacityRows: 100_000 }), 0, 10_000);
    const fork = write(tape.forkBefore(9000), 9000, 9500, -1);
    write(tape, 10_000, 20_000);
    expect([tape.value(0, 8999), tape.value(0, 9001), tape.endRow]).toEqual([8999, 9001, 20_000]);
    expect([fork.value(0, 8999), fork.value(0, 9001), fork.endRow]).toEqual([8999, -9001, 9500]);
    const extremes = new Float64Array(2);
    fork.envelope(0, 8000, 9500, 1, extremes);
    expect([...extremes]).toEqual([-9499, 8999]);
  });

  it('shared memory is not written again when either drops its oldest rows', () => {
    const tape = write(new Tape({ rateHz: 1, channels, capacityRows: 10_000 }), 0, 12_000);
    const fork = tape.forkBefore(11_000);
    const kept = tape.value(0, 4500);
    write(fork, 11_000, 40_000, -1);
    expect(tape.value(0, 4500)).toBe(kept);
    write(tape, 12_000, 60_000);
    expect([fork.value(0, 39_999), fork.value(0, 31_000), tape.value(0, 59_999)]).toEqual([-39_999, -31_000, 59_999]);
  });

  it('samples likewise, cut before an instant', () => {
    const samples = new Samples({ element: 'z', capacity: 20_000 });
    for (let k = 0; k < 6000; k += 1) samples.append(k / 100, k / 6000, false);
    const fork = samples.forkBefore(50);
    fork.append(50, 7, true);
    expect([fork.end, fork.valueG(5000), fork.clipped(5000), fork.valueG(4999)]).toEqual([5001, 7, true, 4999 / 6000]);
    expect([samples.end, samples.valueG(5000), samples.clipped(5000)]).toEqual([6000, 5000 / 6000, false]);
  });
});
