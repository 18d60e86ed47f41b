import { describe, expect, it } from 'vitest';
import type { DesignSpec } from '../../src/contract/design.ts';
import { doublings } from '../../src/design/doubled.ts';
import { ofMaterial, scaledConditions, scaledDesign } from '../../src/design/scaled.ts';
import { Element, type ElementState } from '../../src/element/element.ts';
import { ARM, apart, CHIP, CLAMPED, COIL, CONDITIONS, design, G, ON_ARM } from './bench.ts';

const ON_COIL: DesignSpec = { proofMass: { material: 'brass', diameter: 0.02 }, suspension: COIL, damping: {} };
const ON_CLAMPED: DesignSpec = { proofMass: { mass: 0.05 }, suspension: CLAMPED, damping: {} };

/** An eddy current brake's plate. */
const plate = {
  material: 'copper',
  thickness: 0.002,
  area: 4e-4,
  field: 0.3,
  gap: 0.006,
  fittedFactor: 0.4,
} as const;

describe('a design in the engine', () => {
  const element = (spec: DesignSpec, gap?: number): Element => {
    const { element: numbers } = design(spec, { ...CONDITIONS, gap });
    return new Element(
      {
        name: 'z',
        axis: [0, 1, 0],
        at: [0, 0, 0],
        gap,
        restitution: 0.5,
        thermalNoise: false,
        fieldAtMass: false,
        ...numbers,
      },
      { seed: 1, index: 0, temperatureK: 293.15, tickS: 1e-3 },
    );
  };
  const state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };

  it.for([
    ['arm', ON_ARM],
    ['hanging arm', { ...ON_ARM, suspension: { ...ARM, posture: 'hanging', beyondEnd: 0.01 } }],
    ['coil', ON_COIL],
    ['chip', { ...CHIP, damping: {} }],
  ] as const)('%s sags by its figure and reads what is felt', ([, spec]) => {
    const one = element(spec);
    one.settle(G, 0);
    one.at(0, state);
    expect(apart(state.deflection, -design(spec).figures.sagPerG)).toBeLessThan(1e-12);
    expect(apart(state.reading, G)).toBeLessThan(1e-12);
  });

  it('clamped at both ends sags by its figure, stiffening included', () => {
    const one = element(ON_CLAMPED);
    one.settle(20 * G, 0);
    one.at(0, state);
    const { stiffness, sagPerG } = design(ON_CLAMPED).figures;
    const x = -state.deflection;
    // Force on the mass: what 1 g does nearly straight, times 20. The modes left out lack 1e-4 of the point's deflection.
    const { cubicStiffness, modes } = design(ON_CLAMPED).element;
    const mobility = modes.reduce((sum, { shape, modalMass }) => sum + (shape * shape) / modalMass, 0);
    const load = stiffness * x + (cubicStiffness / mobility) * x ** 3;
    expect(apart(load, 20 * (stiffness * sagPerG + (cubicStiffness / mobility) * sagPerG ** 3))).toBeLessThan(1e-3);
    expect(x / sagPerG).toBeLessThan(19);
  });

  it('comes to its stop at its range', () => {
    const gap = 0.01;
    const one = element(ON_ARM, gap);
    const range = design(ON_ARM, { ...CONDITIONS, gap }).figures.range!;
    one.settle(0.9999 * range * G, 0);
    one.at(0, state);
    expect(state.onStop).toBe(0);
    one.settle(1.0001 * range * G, 0);
    one.at(0, state);
    expect(state.onStop).toBe(-1);
  });
});

describe('damping', () => {
  it('brass in oil loses what it displaces: 0.9/8.44 of its sag', () => {
    const oil: DesignSpec = {
      ...ON_COIL,
      suspension: { ...COIL, wire: 1e-3 },
      damping: { liquid: { liquid: 'olive oil', share: 1, nominalViscosity: 1e-4 } },
    };
    const [dry, wet] = [design({ ...oil, damping: {} }), design(oil)];
    const ownShare = dry.figures.suspensionMass / 2;
    const expected = (dry.figures.proofMass * (1 - 912 / 8440) + ownShare) / (dry.figures.proofMass + ownShare);
    expect(apart(wet.figures.sagPerG / dry.figures.sagPerG, expected)).toBeLessThan(1e-12);
    // The liquid that moves along is that of Stokes's ball at the frequency found: more than half of what is displaced.
    expect(wet.figures.addedMass).toBeGreaterThan(0.5 * wet.figures.displacedMass);
    const inertia = wet.figures.proofMass + wet.figures.addedMass;
    const slower = Math.sqrt(
      (inertia + dry.figures.suspensionMass / 3) / (dry.figures.proofMass + dry.figures.suspensionMass / 3),
    );
    expect(apart(dry.figures.naturalFrequency / wet.figures.naturalFrequency, slower)).toBeLessThan(1e-3);
  });

  it('of several dampers is their sum, and each mode has its share by φ²/ω', () => {
    const film = { plate: [0.02, 0.03], gap: 5e-4, count: 1, pressure: 101325 } as const;
    const both = design({ ...ON_ARM, damping: { eddyCurrents: plate, gasFilm: film } });
    const { eddyCurrents, gasFilm, liquid, material } = both.figures.dampingShares;
    expect(liquid).toBe(0);
    expect(material).toBe(2e-4);
    expect(apart(eddyCurrents + gasFilm + material, both.figures.dampingRatio)).toBeLessThan(1e-12);
    const eddy = design({ ...ON_ARM, damping: { eddyCurrents: plate } });
    const c = 0.4 * 58e6 * 0.002 * 4e-4 * 0.09;
    for (const { dampingRatio, naturalFrequency, shape, modalMass } of eddy.element.modes) {
      const rate = (c * shape * shape) / modalMass;
      expect(apart(dampingRatio - 2e-4, rate / (4 * Math.PI * naturalFrequency))).toBeLessThan(1e-9);
    }
  });

  it('toward vacuum leaves the material: 1/Q is its loss factor', () => {
    const film = { ...CHIP.damping.gasFilm!, pressure: 0 };
    expect(apart(design({ ...CHIP, damping: { gasFilm: film } }).figures.qualityFactor, 1e5)).toBeLessThan(1e-12);
    const ratios = [101325, 1000, 10, 0.1].map((pressure) => {
      const damping = { gasFilm: { ...film, pressure } };
      return design({ ...CHIP, damping }).figures.dampingRatio;
    });
    ratios.slice(1).forEach((ratio, i) => expect(ratio).toBeLessThan(ratios[i]!));
  });

  it('the gas film’s spring raises the first frequency by the root of its share', () => {
    const thick = design({
      ...CHIP,
      damping: { gasFilm: { ...CHIP.damping.gasFilm!, plate: [1e-4, 1e-4], count: 20 } },
    });
    const bare = design({ ...CHIP, damping: {} });
    const raised = Math.sqrt(1 + thick.figures.gasStiffness / thick.figures.stiffness);
    expect(raised).toBeGreaterThan(1.015);
    expect(apart(thick.figures.naturalFrequency / bare.figures.naturalFrequency, raised)).toBeLessThan(1e-12);
    expect(thick.figures.sagPerG).toBe(bare.figures.sagPerG);
  });
});

describe('carried along by similarity', () => {
  const table: DesignSpec = {
    proofMass: { material: 'brass', size: [0.03, 0.03, 0.012] },
    suspension: { ...ARM, beyondEnd: 0.015 },
    damping: { eddyCurrents: plate },
  };
  const gap = { ...CONDITIONS, gap: 0.02 };
  const [factor, shrunk] = [1e-3, design(scaledDesign(table, 1e-3), scaledConditions(gap, 1e-3))];
  const before = design(table, gap);
  const power = (found: number, old: number): number => Math.log(found / old) / Math.log(factor);

  it.for([
    ['naturalFrequency', -1],
    ['sagPerG', 2],
    ['range', -1],
    ['stressPerG', 1],
    ['thermalDeflection', -0.5],
    ['proofMass', 3],
    ['stiffness', 1],
    ['turnPerG', 1],
    ['masslessError', 0],
  ] as const)('its %s goes with the power %d of the length', ([figure, exponent]) => {
    expect(Math.abs(power(shrunk.figures[figure]!, before.figures[figure]!) - exponent)).toBeLessThan(1e-9);
  });

  it('its damping by eddy currents falls with the length, by a squeeze film rises', () => {
    const share = 'eddyCurrents';
    expect(Math.abs(power(shrunk.figures.dampingShares[share], before.figures.dampingShares[share]) - 1)).toBeLessThan(
      1e-9,
    );
    const film = { plate: [0.02, 0.03], gap: 2e-4, count: 1, pressure: 101325 } as const;
    const filmed = { ...table, damping: { gasFilm: film } };
    // Thick gas and slow: the film's height stays well above the free path, the squeeze number below 1e-3.
    const [large, small] = [design(filmed), design(scaledDesign(filmed, 0.3))];
    const found = Math.log(small.figures.dampingShares.gasFilm / large.figures.dampingShares.gasFilm) / Math.log(0.3);
    expect(Math.abs(found + 1)).toBeLessThan(0.005);
  });

  it('its noise at the same Q goes with the power −2', () => {
    const ringing = { ...table, damping: {} };
    const [large, small] = [design(ringing), design(scaledDesign(ringing, 1e-3))];
    expect(Math.abs(power(small.figures.noiseDensity, large.figures.noiseDensity) + 2)).toBeLessThan(1e-9);
  });

  it('in silicon, a step of its own, swings faster by √(E/ρ)', () => {
    const small = scaledDesign(
      { ...table, damping: {}, proofMass: { ...table.proofMass, material: 'spring steel' } },
      1e-3,
    );
    const [steel, silicon] = [design(small), design(ofMaterial(small, 'silicon 110'))];
    const speed = Math.sqrt(169e9 / 2329 / (206e9 / 7850));
    expect(apart(silicon.figures.naturalFrequency / steel.figures.naturalFrequency, speed)).toBeLessThan(1e-9);
  });
});

describe('what if I double it', () => {
  const light: DesignSpec = {
    ...ON_ARM,
    proofMass: { mass: 0.5 },
    suspension: { ...ARM, material: 'silicon 110', length: 0.05 },
  };
  const conditions = { ...CONDITIONS, gap: 0.001 };
  const found = doublings(light, conditions);
  const of = (path: string) => found.find((one) => one.path === path)?.factors;

  it('an arm that is light beside its mass sags 8 times as far and swings 2.83 times as slowly', () => {
    // sag ∝ L³, f ∝ L^−3/2; the arm's own mass is 0.5 % of the other.
    expect(apart(of('suspension.length')!.sagPerG!, 8)).toBeLessThan(0.01);
    expect(apart(of('suspension.length')!.naturalFrequency!, 8 ** -0.5)).toBeLessThan(0.01);
    expect(apart(of('suspension.thickness')!.sagPerG!, 1 / 8)).toBeLessThan(0.01);
    expect(apart(of('suspension.thickness')!.stressPerG!, 1 / 4)).toBeLessThan(0.01);
    expect(apart(of('proofMass.mass')!.naturalFrequency!, Math.SQRT1_2)).toBeLessThan(0.01);
    expect(apart(of('gap')!.range!, 2)).toBeLessThan(1e-12);
  });

  it('every number is tried, and what could not be built says why', () => {
    expect(found.map(({ path }) => path)).toEqual([
      'proofMass.mass',
      'suspension.length',
      'suspension.width',
      'suspension.thickness',
      'gap',
    ]);
    const filmed = doublings(CHIP, { ...CONDITIONS, gap: 1.5e-6 });
    expect(filmed.map(({ path }) => path)).toContain('damping.gasFilm.plate[1]');
    expect(filmed.find(({ path }) => path === 'gap')?.fault).toContain('damping.gasFilm.gap');
  });
});
