import { describe, expect, it } from 'vitest';
import type { ElementSpec } from '../../src/contract/run.ts';
import { BOLTZMANN } from '../../src/numerics/boltzmann.ts';
import { drive, newElement, none, stateAt, tickOnce } from './drive.ts';

const T = 300;
const OMEGA = 2 * Math.PI * 50;
const MASS = 1e-9;
const THERMAL = (BOLTZMANN * T) / (MASS * OMEGA ** 2); // kT/k [m²]
const SPEC = { naturalFrequency: 50, dampingRatio: 0.2, mass: MASS, thermalNoise: true };

/** Mean square deflection and velocity over `ticks`, looked at every `every` ticks, at τ. */
function meanSquares(
  spec: Partial<ElementSpec>,
  tickS: number,
  ticks: number,
  tauS: number,
  seed = 5,
): [number, number] {
  const element = newElement(spec, tickS, seed, T);
  let xx = 0;
  let vv = 0;
  drive(element, ticks, tickS, none, () => {
    const { deflection, velocity } = stateAt(element, tauS);
    xx += (deflection * deflection) / ticks;
    vv += (velocity * velocity) / ticks;
  });
  return [xx, vv];
}

/**
 * Four standard errors of a mean square of N normal values taken every Δt: 4√(2/N), and where they hang together, by
 * e^(−ζωΔt) of the swing, squared in squares: N counts for (1 − ρ²)/(1 + ρ²) of itself.
 */
function tolerance(ticks: number, tickS: number, zeta = 0.2, omega = OMEGA): number {
  const rho2 = Math.exp(-2 * zeta * omega * tickS);
  return 4 * Math.sqrt((2 / ticks) * ((1 + rho2) / (1 - rho2)));
}

describe('thermal noise', () => {
  it('keeps ⟨x²⟩ = kT/k and ⟨v²⟩ = kT/m at any tick, from 0.06 to 30 rad (seed 5, 4 standard errors)', () => {
    for (const [tickS, ticks] of [
      [2e-4, 20_000],
      [0.01, 12_000],
      [0.1, 12_000],
    ] as const) {
      const [xx, vv] = meanSquares(SPEC, tickS, ticks, tickS);
      expect(Math.abs(xx / THERMAL - 1)).toBeLessThan(tolerance(ticks, tickS));
      expect(Math.abs(vv / (OMEGA ** 2 * THERMAL) - 1)).toBeLessThan(tolerance(ticks, tickS));
    }
  });

  it('over one short tick adds what a free particle gets: D·h³/3 to x, D·h to v, D = 4kTζω/m (4000 ticks from rest)', () => {
    const tickS = 1e-5; // ωh = 0.003
    const N = 4000;
    const element = newElement({ ...SPEC, start: { deflection: 0, velocity: 0 } }, tickS, 5, T);
    let xx = 0;
    let vv = 0;
    for (let tick = 0; tick < N; tick += 1) {
      element.settle(0, 0);
      tickOnce(element, tick, tickS, none);
      const { deflection, velocity } = stateAt(element, tickS);
      xx += deflection ** 2 / N;
      vv += velocity ** 2 / N;
    }
    const intensity = (4 * BOLTZMANN * T * 0.2 * OMEGA) / MASS;
    expect(Math.abs(xx / ((intensity * tickS ** 3) / 3) - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
    expect(Math.abs(vv / (intensity * tickS) - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
  });

  it('inside the tick too, in its middle and off it (seed 5, 4 standard errors)', () => {
    const ticks = 4000;
    for (const share of [0.5, 0.3]) {
      const [xx, vv] = meanSquares(SPEC, 0.05, ticks, 0.05 * share);
      expect(Math.abs(xx / THERMAL - 1)).toBeLessThan(tolerance(ticks, 0.05));
      // Between the last middles, δ = h/32 apart, the path is the expected one: its v lacks up to (δ/4)·4ζω of kT/m.
      const missing = share === 0.5 ? 0 : (0.05 / 32) * 0.2 * OMEGA;
      expect(Math.abs(vv / (OMEGA ** 2 * THERMAL) - 1)).toBeLessThan(tolerance(ticks, 0.05) + missing);
    }
  });

  it('starts in equilibrium: over 2000 elements ⟨x²⟩ = kT/k about the settled value, ⟨v²⟩ = kT/m', () => {
    let mean = 0;
    let xx = 0;
    let vv = 0;
    const N = 2000;
    const sag = -1e-5 / OMEGA ** 2; // about as large as the noise
    for (let index = 0; index < N; index += 1) {
      const element = newElement(SPEC, 1e-3, 5, T, index);
      element.settle(1e-5, 0);
      const { deflection, velocity } = stateAt(element, 0);
      mean += (deflection - sag) / N;
      xx += (deflection - sag) ** 2 / N;
      vv += velocity ** 2 / N;
    }
    expect(Math.abs(mean) / Math.sqrt(THERMAL)).toBeLessThan(4 / Math.sqrt(N));
    expect(Math.abs(xx / THERMAL - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
    expect(Math.abs(vv / (OMEGA ** 2 * THERMAL) - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
  });

  it('starts in equilibrium with a mount of its own weight: relative to it ⟨v²⟩ = 2kT/m (2000 elements)', () => {
    const spec = { ...SPEC, mount: { naturalFrequency: 70, dampingRatio: 0.15, massRatio: 1 } };
    const N = 2000;
    let vv = 0;
    let later = 0;
    for (let index = 0; index < N; index += 1) {
      const element = newElement(spec, 0.004, 5, T, index);
      element.settle(0, 0);
      vv += stateAt(element, 0).velocity ** 2 / N;
      tickOnce(element, 0, 0.004, none);
      later += stateAt(element, 0.004).deflection ** 2 / N;
    }
    expect(Math.abs(vv / (2 * OMEGA ** 2 * THERMAL) - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
    // Half a swing later it still is, and would not be had the mount started at rest.
    expect(Math.abs(later / THERMAL - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
  });

  it('with a stated start begins there', () => {
    const element = newElement({ ...SPEC, start: { deflection: 1e-9, velocity: 2e-9 } }, 1e-3);
    element.settle(9.8, 0);
    expect(stateAt(element, 0)).toMatchObject({ deflection: 1e-9, velocity: 2e-9 });
  });

  it('gives each mode its kT: ⟨x²⟩ = Σφ²·kT/(Mω²) (seed 5, 4 standard errors)', () => {
    const modes = [
      { naturalFrequency: 50, dampingRatio: 0.2, participation: 1.2, shape: 1.1, modalMass: MASS },
      { naturalFrequency: 80, dampingRatio: 0.3, participation: 0.5, shape: -1.4, modalMass: 0.6 * MASS },
    ];
    const expected = modes.reduce(
      (sum, { shape, modalMass, naturalFrequency }) =>
        sum + (shape ** 2 * BOLTZMANN * T) / (modalMass * (2 * Math.PI * naturalFrequency) ** 2),
      0,
    );
    const [xx] = meanSquares({ ...SPEC, modes }, 0.05, 6000, 0.05);
    expect(Math.abs(xx / expected - 1)).toBeLessThan(tolerance(6000, 0.05));
  });

  it('on a mount keeps ⟨x²⟩ = kT/k, whether the mount feels the element or not (seed 5, 4 standard errors)', () => {
    for (const massRatio of [0, 0.5, 3]) {
      const spec = { ...SPEC, mount: { naturalFrequency: 70, dampingRatio: 0.15, massRatio } };
      for (const share of [1, 0.5]) {
        const [xx, vv] = meanSquares(spec, 0.05, 4000, 0.05 * share);
        expect(Math.abs(xx / THERMAL - 1)).toBeLessThan(tolerance(4000, 0.05, 0.1));
        // Relative to the mount, which has kT of its own: kT(1/m + µ/m).
        const expected = OMEGA ** 2 * THERMAL * (1 + massRatio);
        expect(Math.abs(vv / expected - 1)).toBeLessThan(tolerance(4000, 0.05, 0.1));
      }
    }
  });

  it('shows at low frequency the density 4kTc of its force: the mean of the reading over t has variance 2kTc/(m²t)', () => {
    // One-sided density S of what is read gives S/(2t) for the mean over a time t much longer than 1/(ζω).
    const density = (4 * BOLTZMANN * T * 2 * 0.2 * OMEGA) / MASS;
    const element = newElement(SPEC, 0.005, 6, T);
    const perMean = 200; // 1 s
    const means: number[] = [];
    let sum = 0;
    drive(element, 200 * perMean, 0.005, none, (tick) => {
      sum += stateAt(element, 0.005).reading / perMean;
      if ((tick + 1) % perMean === 0) {
        means.push(sum);
        sum = 0;
      }
    });
    const variance = means.reduce((total, mean) => total + (mean * mean) / means.length, 0);
    // 200 means: √(2/200); samples 5 ms apart alias what is left at 200 Hz, (50/200)⁴ = 0.4 %.
    expect(Math.abs(variance / (density / 2) - 1)).toBeLessThan(4 * Math.sqrt(2 / 200) + 0.01);
  });

  it('does not change with what is looked at: the ends are the same bits, an instant always the same', () => {
    const quiet = newElement(SPEC, 0.01);
    const looked = newElement(SPEC, 0.01);
    quiet.settle(0, 0);
    looked.settle(0, 0);
    for (let tick = 0; tick < 50; tick += 1) {
      tickOnce(quiet, tick, 0.01, none);
      tickOnce(looked, tick, 0.01, none);
      const forward = [0.001, 0.0042, 0.009].map((tau) => stateAt(looked, tau).deflection);
      const backward = [0.009, 0.0042, 0.001].map((tau) => stateAt(looked, tau).deflection).reverse();
      expect(forward).toEqual(backward);
      expect(stateAt(looked, 0.01)).toEqual(stateAt(quiet, 0.01));
    }
  });

  it('runs continuously from tick to tick', () => {
    const element = newElement(SPEC, 0.01);
    element.settle(0, 0);
    let last = stateAt(element, 0);
    for (let tick = 0; tick < 20; tick += 1) {
      tickOnce(element, tick, 0.01, none);
      const start = stateAt(element, 0);
      expect(start).toEqual(last);
      const almost = stateAt(element, 0.01 - 1e-12);
      last = stateAt(element, 0.01);
      expect(Math.abs(almost.deflection - last.deflection)).toBeLessThan(1e-8 * Math.sqrt(THERMAL));
    }
  });

  it('differs between elements, ticks and seeds, and repeats for the same three', () => {
    const first = (index: number, seed: number): number[] => {
      const element = newElement(SPEC, 0.01, seed, T, index);
      const out: number[] = [];
      drive(element, 3, 0.01, none, () => out.push(stateAt(element, 0.01).deflection));
      return out;
    };
    expect(first(0, 1)).toEqual(first(0, 1));
    const values = [...first(0, 1), ...first(1, 1), ...first(0, 2)];
    expect(new Set(values).size).toBe(values.length);
  });
});

describe('thermal noise at a stop', () => {
  const gap = Math.sqrt(THERMAL);

  it('does not move a mass that rests', () => {
    const element = newElement({ ...SPEC, gap }, 0.001);
    const force = 10 * OMEGA ** 2 * gap;
    drive(
      element,
      50,
      0.001,
      () => force,
      () => {
        expect(stateAt(element, 0.0004)).toMatchObject({ deflection: -gap, velocity: 0, onStop: -1 });
        expect(stateAt(element, 0.001)).toMatchObject({ deflection: -gap, velocity: 0, onStop: -1 });
      },
    );
    // Let go it starts from the stop; the noise of 10 µs is 1e-5 of the gap.
    element.beginTick(50);
    element.advance(0, 0.001, 0, 0, 0, 0, 0, 0);
    element.endTick();
    const free = stateAt(element, 1e-5);
    expect(free.onStop).toBe(0);
    expect(Math.abs(free.deflection / -gap - 1)).toBeLessThan(1e-4);
  });

  it('does not carry it beyond: with the stops at one standard deviation it is between them at every instant', () => {
    const element = newElement({ ...SPEC, gap }, 0.002);
    let touches = 0;
    let farthest = 0;
    drive(element, 1500, 0.002, none, () => {
      touches += element.stopHits.length;
      for (const tau of [0.0003, 0.001, 0.002])
        farthest = Math.max(farthest, Math.abs(stateAt(element, tau).deflection));
    });
    expect(touches).toBeGreaterThan(150);
    expect(farthest).toBe(gap);
  });
});
