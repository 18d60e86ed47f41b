import { describe, expect, it } from 'vitest';
import { arm, armModes } from '../../src/design/arm.ts';
import { clampedArm, clampedModes } from '../../src/design/clamped-arm.ts';
import { materialOf } from '../../src/design/materials.ts';
import { type Load, stripOf } from '../../src/design/suspended.ts';
import { ARM, apart, CLAMPED, design, G, ON_ARM } from './bench.ts';
import { beamFrequencies } from './finite-elements.ts';

const steel = materialOf('spring steel');
const load: Load = { inertia: 0.06, weight: 0.05, turning: 8e-6, spring: 30 };

describe('an arm with all its parts', () => {
  const strip = stripOf(ARM, steel);
  const beam = {
    ...strip,
    mass: load.inertia,
    turning: load.turning,
    spring: load.spring,
    pull: 0,
    end: 'free',
  } as const;

  it.for([0, 0.02, 0.1])('has the frequencies of finite elements with the mass %d m beyond its end', (beyondEnd) => {
    const finite = beamFrequencies({ ...beam, beyondEnd }, 3);
    // 40 elements err by about (b/40)⁴/720: below 1e-6 up to the third mode.
    armModes(strip, beyondEnd, load).forEach(({ omega }, n) => expect(apart(omega, finite[n]!)).toBeLessThan(1e-6));
  });

  it.for(['hanging', 'standing'] as const)('%s swings as finite elements with geometric stiffness do', (posture) => {
    const spec = { ...ON_ARM, suspension: { ...ARM, posture, beyondEnd: 0.01 } };
    const pull = posture === 'hanging' ? G : -G;
    const [finite] = beamFrequencies(
      { ...strip, mass: 0.05, turning: 0, spring: 0, beyondEnd: 0.01, pull, end: 'free' },
      1,
    );
    // Rayleigh's quotient with the level mode: gravity changes ω² by 3 %; its error is the square of that, 1e-5 found.
    expect(apart(2 * Math.PI * design(spec).figures.naturalFrequency, finite!)).toBeLessThan(3e-5);
  });

  it('its modes together give the handbook’s static deflection', () => {
    const whole = arm({ ...ARM, beyondEnd: 0.02 }, { ...load, spring: 0 });
    const modes = armModes(strip, 0.02, { ...load, spring: 0 }, 12);
    const sum = (f: (mode: (typeof modes)[number]) => number): number => modes.reduce((all, mode) => all + f(mode), 0);
    const deflection = sum(({ shape, participation, omega }) => (shape * participation) / (omega * omega));
    const point = sum(({ shape, omega }) => (shape * shape) / (load.inertia * omega * omega));
    // Found 1e-9 and 1e-7: the modes left out fall with b⁻⁴ and less of them reaches the mass.
    expect(apart(deflection, whole.compliance)).toBeLessThan(1e-7);
    expect(apart(point, whole.pointCompliance)).toBeLessThan(1e-5);
  });

  it('is drawn from its clamp to where the mass hangs', () => {
    const { sag, modes } = arm(ARM, load);
    expect(sag[0]).toBe(0);
    expect(apart(sag.at(-1)!, 1)).toBeLessThan(1e-12);
    for (const { drawn, shape } of modes) expect(Math.abs(drawn.at(-1)! - shape)).toBeLessThan(1e-9);
  });
});

describe('an arm clamped at both ends', () => {
  const strip = stripOf(CLAMPED, steel);

  it('has the frequencies of finite elements of one half with half the mass', () => {
    const half = { ...strip, length: strip.length / 2, mass: load.inertia / 2, spring: load.spring / 2 };
    const finite = beamFrequencies({ ...half, turning: 0, beyondEnd: 0, pull: 0, end: 'guided' }, 3);
    // (b/40)⁴/1440 with b = 7.1 for the third: 7e-7; found 1.03e-6.
    clampedModes(strip, load).forEach(({ omega }, n) => expect(apart(omega, finite[n]!)).toBeLessThan(2e-6));
  });

  it('its modes together give the handbook’s static deflection', () => {
    const modes = clampedModes(strip, { ...load, spring: 0 }, 12);
    const whole = clampedArm(CLAMPED, { ...load, spring: 0 });
    const deflection = modes.reduce(
      (all, mode) => all + (mode.shape * mode.participation) / (mode.omega * mode.omega),
      0,
    );
    expect(apart(deflection, whole.compliance)).toBeLessThan(1e-7);
    expect(apart(whole.sag[20]!, 1)).toBeLessThan(1e-12);
    expect(whole.sag[40]).toBe(0);
  });

  it('stiffens as a stretched beam does, solved with its tension', () => {
    const { cubic, pointCompliance, stretchStress } = clampedArm(CLAMPED, load);
    const force = 2e-3;
    const { tension, middle } = stretchedBeam(force);
    const found = middle / pointCompliance + cubic * middle * middle * middle;
    // The next term of the series is a share of the square of the stiffening, here (3e-4)².
    expect(apart(found - middle / pointCompliance, force - middle / pointCompliance)).toBeLessThan(2e-3);
    expect(apart(stretchStress * middle * middle * CLAMPED.width * CLAMPED.thickness, tension)).toBeLessThan(1e-3);
  });

  /**
   * Half the beam under F/2 and a tension N: EIw″″ = Nw″, w(0) = w′(0) = w′(l) = 0; middle deflection and
   * ½∫w′² in closed form; N = EA·(strain), by bisection.
   */
  function stretchedBeam(force: number): { readonly tension: number; readonly middle: number } {
    const half = strip.length / 2;
    const area = CLAMPED.width * CLAMPED.thickness;
    const slopes = (tension: number) => {
      const k = Math.sqrt(tension / strip.ei);
      // w′ = (F/2N)(1 − cosh k(x − l/2)/cosh(kl/2))
      return (x: number): number =>
        (force / (2 * tension)) * (1 - Math.cosh(k * (x - half / 2)) / Math.cosh((k * half) / 2));
    };
    const mean = (f: (x: number) => number): number => {
      const n = 400;
      let sum = 0;
      for (let i = 0; i <= n; i += 1) sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * f((i * half) / n);
      return sum / (3 * n);
    };
    let [low, high] = [1e-9, 1e3];
    for (let i = 0; i < 200; i += 1) {
      const tension = Math.sqrt(low * high);
      const slope = slopes(tension);
      const strained = steel.youngsModulus * area * 0.5 * mean((x) => slope(x) * slope(x));
      if (strained > tension) low = tension;
      else high = tension;
    }
    return { tension: low, middle: half * mean(slopes(low)) };
  }
});
