/** Parts of a design one by one, each against a closed form of a textbook. */
import { expect, it } from 'vitest';
import { coilSpring } from '../../src/design/coil-spring.ts';
import { fieldOf } from '../../src/design/eddy-currents.ts';
import { foldedBeams } from '../../src/design/folded-beams.ts';
import { fluidOf } from '../../src/design/liquids.ts';
import { bodyOf } from '../../src/design/proof-mass.ts';
import { apart, CLAMPED, COIL, CONDITIONS, design, FOLDED, G, ON_ARM } from './bench.ts';

const load = { inertia: 0.02, weight: 0.02, turning: 0, spring: 0 };

it('a block turns with m(a² + h²)/12 and a ball with (2/5)mr² (any text on mechanics)', () => {
  expect(bodyOf({ mass: 3, size: [0.3, 9, 0.4] })).toMatchObject({ turning: (3 * 0.25) / 12 });
  const ball = bodyOf({ mass: 3, diameter: 0.2 });
  expect(apart('turning' in ball ? ball.turning : 0, 0.4 * 3 * 0.01)).toBeLessThan(1e-12);
  const cube = bodyOf({ mass: 8.44, material: 'brass' });
  expect(apart('size' in cube ? cube.size[0] : 0, 0.1)).toBeLessThan(1e-12);
});

it('a coil of index 8 is stressed by 1.184 times 8FD/πd³, Wahl’s factor in handbooks', () => {
  // Wahl's factor for C = 8: 31/28 + 0.615/8 = 1.184 (J. E. Shigley, Mechanical Engineering Design, springs; from memory).
  const spec = { ...COIL, wire: 1e-3, diameter: 8e-3 };
  const { stress, ownMass } = coilSpring(spec, load);
  expect(apart(stress, (1.184 * 8 * (0.02 + ownMass) * 8e-3) / (Math.PI * 1e-9))).toBeLessThan(1e-4);
});

it('a fold is stressed at its ends by FL/8 over wt²/6, half its own outer beams beside what they carry', () => {
  const { stress, ownMass } = foldedBeams({ ...FOLDED, linkMass: 0.001 }, load);
  const carried = 0.02 + 0.001 + ownMass / 2 + ownMass / 4;
  expect(apart(stress, (6 * carried * 2e-4) / (8 * 2.5e-5 * 4e-12))).toBeLessThan(1e-12);
});

it('two magnets face to face at a hair’s breadth join to one: full field inside a long one', () => {
  const magnets = { remanence: 1.2, diameter: 0.01, length: 10 };
  const plate = { material: 'copper', thickness: 1e-9, area: 1e-4, magnets, gap: 1e-8, fittedFactor: 1 } as const;
  expect(apart(fieldOf(plate), 1.2)).toBeLessThan(1e-5);
});

it('castor oil at 40 °C weighs 948 kg/m³', () => {
  // 961 at 20 °C and some 0.66 less a kelvin: handbooks of oils (from memory), 0.3 %.
  const oil = { liquid: 'castor oil', share: 1, nominalViscosity: 1e-4 } as const;
  expect(apart(fluidOf(oil, 313.15).density, 948)).toBeLessThan(0.003);
});

it('a vane in oil displaces nothing to speak of, so nothing is taken off', () => {
  const liquid = {
    liquid: 'castor oil',
    share: 1,
    nominalViscosity: 1e-4,
    vane: { area: 1e-4, gap: 1e-3, count: 2 },
  } as const;
  const spec = { ...ON_ARM, proofMass: { material: 'brass', diameter: 0.02 }, damping: { liquid } } as const;
  const { figures } = design(spec);
  expect(figures.displacedMass).toBe(0);
  expect(figures.sagPerG).toBe(design({ ...spec, damping: {} }).figures.sagPerG);
});

it('the range of an arm held at both ends counts its stiffening: force 192EIx/L³ + 11.52EAx³/L³', () => {
  const [gap, l, w, t] = [1e-3, CLAMPED.length, CLAMPED.width, CLAMPED.thickness];
  const [ei, ea] = [(206e9 * w * t ** 3) / 12, 206e9 * w * t];
  const { range } = design({ ...ON_ARM, suspension: CLAMPED }, { ...CONDITIONS, gap }).figures;
  // Its own weight counts half (384 against 192).
  const pulled = 0.05 + (7850 * w * t * l) / 2;
  expect(apart(range!, (192 * ei * gap + 11.52 * ea * gap ** 3) / l ** 3 / (pulled * G))).toBeLessThan(1e-12);
});
