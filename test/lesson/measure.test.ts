/** Every figure against the closed form of a line made for it. */
import { describe, expect, it } from 'vitest';
import { Attempt, type Moment, type MomentName } from '../../src/lesson/evidence.ts';
import { parseExpression } from '../../src/lesson/expression.ts';
import type { Take } from '../../src/lesson/lesson.ts';
import { measure } from '../../src/lesson/measure.ts';
import { evidence, letGo, liftOff, type Made, touch } from './support/synthetic-run.ts';

const at = (name: MomentName, offsetS = 0): Moment => ({ name, offsetS });
const formula = parseExpression;
const none = () => Number.NaN;
const G = 9.80665;

const LET_GO = 0.31234;
const TOUCH = 0.69876;
const OMEGA = 2 * Math.PI * 8;
const DAMPED = OMEGA * Math.sqrt(1 - 0.05 * 0.05);

/** Held at one g, then swinging about zero with ζ = 0.05 from letting go. */
const swing = (timeS: number): number => {
  const t = timeS - LET_GO;
  if (t < 0) return G;
  return G * Math.exp(-0.05 * OMEGA * t) * (Math.cos(DAMPED * t) + (0.05 * OMEGA * Math.sin(DAMPED * t)) / DAMPED);
};

const FALL: Made = {
  lines: { reading: swing, specificForce: (timeS) => (timeS < LET_GO ? G : 0) },
  events: [letGo(LET_GO), touch(TOUCH), liftOff(TOUCH + 0.02)],
};

function take(made: Made, rule: Take, begins: MomentName = 'let go'): number | undefined {
  return measure(rule, new Attempt(evidence(made), begins), none);
}

const fall = { of: 'reading', from: at('let go'), to: at('touch'), minus: undefined } as const;

describe('figures of a fall', () => {
  it('duration and value', () => {
    expect(take(FALL, { take: 'duration', from: at('let go'), to: at('touch') })).toBe(TOUCH - LET_GO);
    const value = take(FALL, { take: 'value', of: 'reading', at: at('let go', 0.1), minus: undefined });
    // Straight lines between rows h apart err by h²·|v″|/8, |v″| ≤ ω²·1 g.
    const bound = (G * OMEGA * OMEGA) / 8 / 2000 ** 2;
    expect(Math.abs(value! - swing(LET_GO + 0.1))).toBeLessThan(bound);
    expect(take(FALL, { take: 'value', of: 'reading', at: at('let go', 0.1), minus: formula('1 g') })).toBeCloseTo(
      value! - G,
      12,
    );
  });

  it('what the box felt just before letting go is not looked at', () => {
    const felt = { ...fall, of: 'felt' } as const;
    expect(take(FALL, { take: 'highest', ...felt })).toBe(0);
    expect(take(FALL, { take: 'mean', ...felt })).toBe(0);
    expect(take(FALL, { take: 'rms', ...felt })).toBe(0);
  });

  it('lowest: the first trough, one g times e^(−πζ/√(1 − ζ²)) below zero', () => {
    // Overshoot of a second-order step, K. Ogata, Modern Control Engineering (from memory).
    const trough = -G * Math.exp((-Math.PI * 0.05) / Math.sqrt(1 - 0.05 * 0.05));
    expect(Math.abs(take(FALL, { take: 'lowest', ...fall })! / trough - 1)).toBeLessThan(1e-6);
  });

  it('mean over two whole swings: 2ζ(1 − e^(−4πζ/√(1 − ζ²)))/(4π·…) of one g, as the lesson says', () => {
    const period = (2 * Math.PI) / DAMPED;
    // ∫e^(−σt)(cos + (σ/ω_d) sin)dt over whole swings = (2ζ/ω₀)(1 − e^(−σT)).
    const exact = (((G * 2 * 0.05) / OMEGA) * (1 - Math.exp(-0.05 * OMEGA * 2 * period))) / (2 * period);
    const mean = take(FALL, { take: 'mean', ...fall, to: at('let go', 2 * period) });
    expect(Math.abs(mean! - exact)).toBeLessThan(1e-5 * G);
    const area = take(FALL, { take: 'area', ...fall, to: at('let go', 2 * period) });
    expect(Math.abs(area! - exact * 2 * period)).toBeLessThan(1e-5 * G);
  });

  it('crossing, swings and settling', () => {
    // cos φ + (σ/ω_d) sin φ = 0 at tan φ = −ω_d/σ.
    const quarter = (Math.PI - Math.atan(DAMPED / (0.05 * OMEGA))) / DAMPED;
    const level = formula('0 g');
    expect(Math.abs(take(FALL, { take: 'crossing', ...fall, level })! - quarter)).toBeLessThan(1e-5);
    expect(take(FALL, { take: 'crossing', ...fall, level: formula('2 g') })).toBe(Number.POSITIVE_INFINITY);
    expect(take(FALL, { take: 'swings', ...fall, level })).toBe(3);
    const settling = take(FALL, { take: 'settling', ...fall, level, band: formula('0.5 g') })!;
    expect(Math.abs(Math.abs(swing(LET_GO + settling)) / G - 0.5)).toBeLessThan(1e-4);
    expect(take(FALL, { take: 'settling', ...fall, level, band: formula('0.05 g') })).toBe(Number.POSITIVE_INFINITY);
  });

  it('ring frequency, decrement and damping', () => {
    expect(Math.abs(take(FALL, { take: 'ringFrequency', ...fall })! - DAMPED / (2 * Math.PI))).toBeLessThan(1e-9);
    expect(Math.abs(take(FALL, { take: 'damping', ...fall })! - 0.05)).toBeLessThan(1e-10);
    expect(
      Math.abs(take(FALL, { take: 'decrement', ...fall })! - (2 * Math.PI * 0.05) / Math.sqrt(1 - 0.0025)),
    ).toBeLessThan(1e-9);
  });
});

describe('figures of other lines', () => {
  it('slope, whenHighest and area of a straight or bent line', () => {
    const made: Made = {
      lines: { height: (t) => 1 - (t - 1) * (t - 1), velocity: (t) => -2 * (t - 1) },
      events: [letGo(0.3)],
    };
    const stretch = { from: at('let go', 0.2), to: at('let go', 1), minus: undefined } as const;
    expect(take(made, { take: 'slope', of: 'velocity', ...stretch })).toBeCloseTo(-2, 9);
    expect(take(made, { take: 'whenHighest', of: 'height', ...stretch })).toBeCloseTo(0.5, 9);
    expect(take(made, { take: 'area', of: 'velocity', ...stretch })).toBeCloseTo(0.16, 9);
    // Mean of (5 − 2u)² over u = −0.5 … 0.3.
    const square = (20 + 1.6 + (4 / 3) * (0.027 + 0.125)) / 0.8;
    expect(take(made, { take: 'rms', of: 'velocity', ...stretch, minus: formula('-5') })).toBeCloseTo(
      Math.sqrt(square),
      9,
    );
  });

  it('gain and phase of one line against another, amplitude of one', () => {
    const omega = 2 * Math.PI * 5;
    const made: Made = {
      lines: { specificForce: (t) => G + 2 * Math.sin(omega * t), reading: (t) => G + 3 * Math.sin(omega * t - 1) },
      events: [letGo(0.1)],
    };
    const steady = {
      of: 'reading',
      from: at('let go', 0.2),
      to: at('let go', 1.2),
      minus: undefined,
      frequency: formula('5 Hz'),
    } as const;
    expect(take(made, { take: 'amplitude', ...steady })).toBeCloseTo(3, 10);
    expect(take(made, { take: 'gain', ...steady, against: 'felt' })).toBeCloseTo(1.5, 10);
    expect(take(made, { take: 'phase', ...steady, against: 'felt' })).toBeCloseTo(-1, 10);
  });

  it('a formula asks for what is known; unknown gives nothing', () => {
    const rule: Take = { take: 'formula', value: formula('2 * known') };
    const attempt = new Attempt(evidence({}), 'start');
    expect(measure(rule, attempt, () => 4)).toBe(8);
    expect(measure(rule, attempt, none)).toBeUndefined();
  });
});

describe('nothing is measured', () => {
  const mean: Take = { take: 'mean', ...fall };
  it('before the tape holds the whole span', () => {
    expect(take({ ...FALL, endS: TOUCH - 0.01 }, mean)).toBeUndefined();
    expect(take({ ...FALL, events: [letGo(LET_GO)] }, mean)).toBeUndefined();
    expect(take({ ...FALL, events: [] }, mean)).toBeUndefined();
  });

  it('when a setting was changed within it, but a change before or after does no harm', () => {
    const change = (timeS: number) => ({ ...FALL, changes: [{ at: timeS, gravity: 5 }] });
    expect(take(change(LET_GO + 0.1), mean)).toBeUndefined();
    expect(take(change(LET_GO - 0.1), mean)).toBeDefined();
    expect(take(change(TOUCH + 0.1), mean)).toBeDefined();
  });

  it('on a span of fewer than eight rows', () => {
    expect(take(FALL, { ...mean, to: at('let go', 0.003) } as Take)).toBeUndefined();
  });
});
