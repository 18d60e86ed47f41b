import { describe, expect, it } from 'vitest';
import { type Kinematics, newKinematics } from '../../src/housing/kinematics.ts';
import { specificForceAlong, spinSquaredAcross } from '../../src/housing/specific-force.ts';
import reference from '../reference/rotation_offset.json' with { type: 'json' };
import { Bench, STANDARD_GRAVITY } from './bench.ts';

type Triple = readonly [number, number, number];
const AXES: readonly Triple[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

function along(k: Kinematics, at: Triple): number[] {
  return AXES.map((axis) => specificForceAlong(k, at, axis));
}

function kinematics(parts: Partial<Record<keyof Kinematics, readonly number[]>>): Kinematics {
  const k = newKinematics();
  for (const [name, values] of Object.entries(parts)) (k[name as keyof Kinematics] as Float64Array).set(values);
  return k;
}

/** The file gives twelve digits. */
const DIGITS = 1e-11;

// rotation_offset.json: computed with NumPy from f = a + α × r + ω × (ω × r) − g, the relation for two points of a rigid body
// in any text on rigid-body mechanics, written out there in components
describe('specific force off the centre of rotation (test/reference/rotation_offset.json)', () => {
  it.for(reference.spin_about_vertical.cases)('spun about the vertical at $omega_rad_s rad/s, r = $r_m m', (c) => {
    // the file's body axes have z up
    const k = kinematics({
      specificForce: [0, 0, STANDARD_GRAVITY],
      angularVelocity: [0, 0, c.omega_rad_s],
      angularAcceleration: [0, 0, c.alpha_rad_s2],
    });
    along(k, [c.r_m, 0, 0]).forEach((f, i) => {
      expect(Math.abs(f - c.f_body_m_per_s2[i]!)).toBeLessThan(DIGITS * 100);
    });
    expect(spinSquaredAcross(k, [1, 0, 0])).toBe(c.omega_rad_s ** 2);
    expect(spinSquaredAcross(k, [0, 0, 1])).toBe(0);
  });

  it.for(reference.general_rigid_body)('of a rigid body turning anyhow, r = $r_m', (c) => {
    const k = kinematics({
      specificForce: c.a_origin_body_m_per_s2.map((a, i) => a - c.gravity_body_m_per_s2[i]!),
      angularVelocity: c.omega_rad_s,
      angularAcceleration: c.alpha_rad_s2,
    });
    along(k, c.r_m as unknown as Triple).forEach((f, i) => {
      expect(Math.abs(f - c.f_body_m_per_s2[i]!)).toBeLessThan(DIGITS * 10);
    });
  });

  it('of a housing that spins about a horizontal axis, once the motion has settled', () => {
    const { r_m: r, omega_rad_s: omega, rows } = reference.spin_about_horizontal;
    // at t the arm along x has turned by ω(t − within/2)
    for (const [degrees, radial, tangential] of rows as [number, number, number][]) {
      const angle = ((degrees + 360) / 180) * Math.PI;
      const timeS = angle / omega + 0.05;
      const bench = new Bench([{ kind: 'spin', from: 0, axis: [0, 0, 1], rate: omega, within: 0.1 }]);
      bench.runTo(timeS);
      const k = bench.at(timeS);
      expect(Math.abs(specificForceAlong(k, [r, 0, 0], [1, 0, 0]) - radial)).toBeLessThan(DIGITS * 10);
      expect(Math.abs(specificForceAlong(k, [r, 0, 0], [0, 1, 0]) - tangential)).toBeLessThan(DIGITS * 10);
    }
  });
});

describe('a freely falling housing', () => {
  const points: readonly Triple[] = [
    [0, 0, 0],
    [0.03, -0.02, 0.01],
    [-0.06, 0.03, 0.1],
  ];

  it('that does not spin reads exactly zero wherever the element sits', () => {
    const bench = new Bench([
      { kind: 'held', from: 0, within: 0.2 },
      { kind: 'free', from: 0.01234, pad: { stiffness: 2e4, damping: 10, friction: 0.5 } },
    ]);
    const k = newKinematics();
    while (bench.timeS < 0.4) {
      bench.step();
      if (bench.timeS < 0.013) continue;
      for (const share of [0, 0.3, 0.5, 1]) {
        bench.housing.kinematics(bench.housing.pieceCount - 1, share * bench.tickS, k);
        for (const point of points) expect(along(k, point)).toEqual([0, 0, 0]);
        expect(Array.from(k.specificForce)).toEqual([0, 0, 0]);
      }
    }
  });

  it('that spins reads exactly zero at its centre of mass and ω²r toward the axis beside it', () => {
    // about a principal axis, so that ω stays
    const bench = new Bench([{ kind: 'free', from: 0, spin: [0, 11, 0] }]);
    bench.runTo(0.7);
    const k = bench.at(0.7);
    expect(along(k, [0, 0, 0])).toEqual([0, 0, 0]);
    const [x, y, z] = along(k, [0.05, 0.02, 0]);
    expect(Math.abs(x! + 121 * 0.05)).toBeLessThan(1e-12);
    expect(y).toBe(0);
    expect(Math.abs(z!)).toBeLessThan(1e-12);
  });
});
