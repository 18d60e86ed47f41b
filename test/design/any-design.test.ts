import { expect, it } from 'vitest';
import type { DesignSpec, Material, SuspensionSpec } from '../../src/contract/design.ts';
import { designed } from '../../src/design/design.ts';
import { MATERIALS } from '../../src/design/materials.ts';
import { chance } from '../scenario/support/chance.ts';
import { CONDITIONS } from './bench.ts';

const NAMES = Object.keys(MATERIALS) as Material[];

it('any design gives finite numbers in order, or says why not: 1500 at random (seed 3)', () => {
  const random = chance(3);
  const between = (low: number, high: number): number => low * (high / low) ** random.between(0, 1);
  const scale = (): number => 10 ** random.between(-6, -1);
  const maybe = <T>(value: () => T): T | undefined => (random.whole(0, 2) === 0 ? value() : undefined);
  let built = 0;
  for (let n = 0; n < 1500; n += 1) {
    const s = scale();
    const length = (): number => s * between(0.01, 10);
    const strip = { material: random.pick(NAMES), length: length(), width: length(), thickness: s * between(1e-4, 1) };
    const suspension = random.pick<() => SuspensionSpec>([
      () => ({
        kind: 'coil',
        material: strip.material,
        wire: strip.thickness,
        diameter: length(),
        turns: between(1, 100),
      }),
      () => ({ kind: 'arm', ...strip, beyondEnd: length(), posture: random.pick(['level', 'hanging', 'standing']) }),
      () => ({ kind: 'clamped arm', ...strip }),
      () => ({ kind: 'folded beams', ...strip, linkMass: 0 }),
    ])();
    const spec: DesignSpec = {
      proofMass: random.pick([
        { mass: between(1e-15, 10) },
        { material: random.pick(NAMES), size: [length(), length(), length()] },
        { material: random.pick(NAMES), diameter: length() },
      ]),
      suspension,
      damping: {
        liquid: maybe(() => ({
          liquid: random.pick(['water', 'glycerol', 'silicone oil', 'castor oil', 'olive oil']),
          share: random.between(0, 1),
          nominalViscosity: between(1e-6, 1),
          vane: maybe(() => ({ area: s * s * between(0.01, 1), gap: s * between(1e-3, 1), count: 2 })),
        })),
        gasFilm: maybe(() => ({
          plate: [length(), length()],
          gap: s * between(1e-3, 1),
          count: 1,
          pressure: between(1e-3, 1e6),
        })),
        eddyCurrents: maybe(() => ({
          material: 'copper',
          thickness: s * 0.01,
          area: s * s,
          field: 0.3,
          gap: s * 0.1,
          fittedFactor: 0.5,
        })),
      },
    };
    const { design, faults } = designed(spec, { ...CONDITIONS, gap: maybe(() => s * between(1e-4, 1)) });
    if (design === undefined) {
      expect(faults.length).toBeGreaterThan(0);
      for (const { found, allowed } of faults) expect(`${found} ${allowed}`).not.toMatch(/NaN|undefined/);
      continue;
    }
    built += 1;
    const { element, figures, warnings } = design;
    const words = JSON.stringify(spec);
    const frequencies = element.modes.map((mode) => mode.naturalFrequency);
    expect(
      [...frequencies].sort((a, b) => a - b),
      words,
    ).toEqual(frequencies);
    const numbers = [
      element.staticRemainder,
      element.cubicStiffness,
      element.mass,
      ...element.modes.flatMap((mode) => Object.values(mode)),
    ];
    for (const value of [...numbers, ...Object.values(figures)])
      if (typeof value === 'number') expect(Number.isFinite(value), words).toBe(true);
    // The static deflection of the modes and the remainder is that of the figures, less what the film's spring keeps.
    let sum = element.staticRemainder;
    for (const { naturalFrequency, participation, shape } of element.modes)
      sum += (shape * participation) / (2 * Math.PI * naturalFrequency) ** 2;
    expect(sum, words).toBeGreaterThan(0);
    // Three modes leave little of the deflection out unless an arm is heavy against its mass.
    expect(Math.abs(element.staticRemainder), words).toBeLessThan(0.1 * sum);
    expect(warnings.map((warning) => warning.words).join(' ')).not.toMatch(/NaN|undefined|Infinity/);
  }
  expect(built).toBeGreaterThan(300);
});
