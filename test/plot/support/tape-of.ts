import type { TapeChannel } from '../../../src/contract/tape.ts';
import { Tape } from '../../../src/recording/tape.ts';

/** A tape of one channel, from a function of time; `ticks` per row widen the extremes between rows. */
export function tapeOf(
  value: (timeS: number) => number,
  rateHz: number,
  rows: number,
  ticks = 1,
  unit: TapeChannel['unit'] = 'm/s2',
): Tape {
  const tape = new Tape({ rateHz, capacityRows: rows + 1, channels: [{ name: 'z', unit, keep: 'f64' }] });
  const one = new Float64Array(1);
  for (let row = 0; row < rows; row++) {
    for (let k = ticks - 1; k > 0 && row > 0; k--) {
      one[0] = value((row - k / ticks) / rateHz);
      tape.tick(one);
    }
    one[0] = value(row / rateHz);
    tape.row(one);
  }
  return tape;
}

/** Numerical Recipes' quick generator (Press et al., 2nd ed., ch. 7.1: constants from memory), uniform in [0, 1). */
export function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
