import { describe, expect, it } from 'vitest';
import { LinearSystem } from '../../src/numerics/linear-system.ts';
import { type DeviateSource, NoiseBridge } from '../../src/numerics/noise-bridge.ts';
import { gaussianPairAt } from '../../src/numerics/random.ts';

/** Velocity steps of a free particle: x is the integral of a Brownian path v, all laws known. */
const PARTICLE = new LinearSystem(Float64Array.of(0, 1, 0, 0), [], 1, Float64Array.of(0, 0, 0, 1));
const SPAN = 2;

const sourceOf =
  (trial: number): DeviateSource =>
  (node, out) =>
    gaussianPairAt(11, 0, trial, node, out, 0);

function path(bridge: NoiseBridge, trial: number, instants: readonly number[]): number[][] {
  const source = sourceOf(trial);
  const increment = new Float64Array(2);
  bridge.increment(source, increment);
  const out = new Float64Array(2);
  return instants.map((tau) => {
    bridge.at(tau, increment, source, out);
    return [...out];
  });
}

describe('a bridge of noise', () => {
  const bridge = new NoiseBridge(PARTICLE, SPAN);

  it('starts at 0 and ends at the increment', () => {
    const increment = new Float64Array(2);
    bridge.increment(sourceOf(5), increment);
    const [start, end] = path(bridge, 5, [0, SPAN]);
    expect(start).toEqual([0, 0]);
    for (let i = 0; i < 2; i += 1) expect(end![i]).toBeCloseTo(increment[i]!, 14);
  });

  it('gives an instant the same value whichever others are asked for, and is continuous across the middles', () => {
    const fine = path(
      bridge,
      3,
      Array.from({ length: 65 }, (_, k) => (k * SPAN) / 64),
    );
    const coarse = path(bridge, 3, [SPAN, SPAN / 2, 0]);
    expect(coarse[1]).toEqual(fine[32]);
    const [before, after] = path(bridge, 3, [SPAN / 4 - 1e-12, SPAN / 4]);
    for (let i = 0; i < 2; i += 1) expect(before![i]).toBeCloseTo(after![i]!, 9);
  });

  it('has the variance of the unpinned path at every instant: v: τ, x: τ³/3, over all ends (seed 11, 6000 paths)', () => {
    const instants = [SPAN / 32, SPAN / 2, (3 * SPAN) / 4, SPAN];
    const N = 6000;
    const squares = instants.map(() => [0, 0, 0]);
    for (let trial = 0; trial < N; trial += 1) {
      path(bridge, trial, instants).forEach(([x, v], k) => {
        squares[k]![0]! += (x! * x!) / N;
        squares[k]![1]! += (v! * v!) / N;
        squares[k]![2]! += (x! * v!) / N;
      });
    }
    instants.forEach((tau, k) => {
      const [xx, vv, xv] = squares[k]!;
      // Standard error of a variance from N normal values: √(2/N) of it.
      const tolerance = 4 * Math.sqrt(2 / N);
      expect(Math.abs(xx! / (tau ** 3 / 3) - 1)).toBeLessThan(tolerance);
      expect(Math.abs(vv! / tau - 1)).toBeLessThan(tolerance);
      expect(Math.abs(xv! / (tau ** 2 / 2) - 1)).toBeLessThan(tolerance);
    });
  });

  it('between two instants has the increments of the unpinned path: v over a sixteenth of the span (seed 11, 6000 paths)', () => {
    const N = 6000;
    let square = 0;
    let product = 0;
    for (let trial = 0; trial < N; trial += 1) {
      const [a, b, c] = path(bridge, trial, [SPAN / 4, (5 * SPAN) / 16, (6 * SPAN) / 16]);
      square += ((b![1]! - a![1]!) ** 2 / N) * (16 / SPAN);
      product += (((b![1]! - a![1]!) * (c![1]! - b![1]!)) / N) * (16 / SPAN);
    }
    expect(Math.abs(square - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
    expect(Math.abs(product)).toBeLessThan(4 / Math.sqrt(N));
  });

  it('given both ends, at the middle has variance x: h³/192, v: h/16', () => {
    // The law of x and v midway given both at both ends, from the covariance [[τ³/3, τ²/2], [τ²/2, τ]] by hand.
    const increment = new Float64Array(2);
    const out = new Float64Array(2);
    // Ends at 0: only node 1, the middle, is drawn; one deviate at a time.
    const parts = [0, 1].map((which) => {
      const source: DeviateSource = (node, deviates) => {
        deviates.fill(0);
        if (node === 1) deviates[which] = 1;
      };
      bridge.at(SPAN / 2, increment, source, out);
      return [...out];
    });
    const variance = [0, 1].map((i) => parts[0]![i]! ** 2 + parts[1]![i]! ** 2);
    expect(variance[0]).toBeCloseTo(SPAN ** 3 / 192, 14);
    expect(variance[1]).toBeCloseTo(SPAN / 16, 14);
  });
});
