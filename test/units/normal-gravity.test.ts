import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HIGHEST_PLACE_M, LOWEST_PLACE_M, normalGravity } from '../../src/units/normal-gravity.ts';
import { ellipsoidGravity } from './ellipsoid-field.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const LATITUDES = [-90, -60, -33, 0, 15, 30, 45, 52, 60, 75, 90];

interface GravityTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly [number, number])[];
}
// Computed in Python from the closed formula, printed to 11 digits.
const { normal_gravity_WGS84: table } = JSON.parse(
  readFileSync(new URL('../reference/mechanics.json', import.meta.url), 'utf8'),
) as { readonly normal_gravity_WGS84: GravityTable };

describe('normal gravity', () => {
  // NIMA TR8350.2, Department of Defense World Geodetic System 1984, 3rd ed., ch. 4 (table of derived constants:
  // equator and pole; the value for 45° follows from its closed formula). Printed digit ± 1: the rounded
  // constants give the pole as …9379.
  it.each([
    [0, 9.7803253359],
    [45, 9.8061977694],
    [90, 9.8321849378],
  ])('on the ellipsoid at %i° is the published one', (degrees, published) => {
    expect(Math.abs(normalGravity(radians(degrees), 0) - published)).toBeLessThan(1.5e-10);
  });

  it('agrees with the table computed elsewhere', () => {
    expect(table.columns).toEqual(['latitude_deg', 'g_m_per_s2']);
    expect(table.rows.length).toBe(8);
    for (const [degrees, g] of table.rows) expect(Math.abs(normalGravity(radians(degrees), 0) - g)).toBeLessThan(6e-11);
  });

  // H. Moritz, Geodetic Reference System 1980: another ellipsoid, 9.7803267715, 9.806199203, 9.8321863685 m/s².
  it('differs from that of the older reference system by 1.4e-6 m/s² and no more', () => {
    for (const [degrees, grs80] of [
      [0, 9.7803267715],
      [45, 9.806199203],
      [90, 9.8321863685],
    ] as const) {
      const difference = grs80 - normalGravity(radians(degrees), 0);
      expect(difference).toBeGreaterThan(1.3e-6);
      expect(difference).toBeLessThan(1.5e-6);
    }
  });

  it('on the ellipsoid is that of the closed field, worked out from GM, a, f and ω alone', () => {
    for (const degrees of LATITUDES)
      expect(Math.abs(normalGravity(radians(degrees), 0) - ellipsoidGravity(radians(degrees), 0))).toBeLessThan(1e-11);
  });

  it('above it follows the closed field within the stated 2e-6 m/s², within 3e-7 m/s² to 3 km', () => {
    let worst = 0;
    for (const degrees of LATITUDES)
      for (const heightM of [LOWEST_PLACE_M, 100, 1000, 3000, 8849, HIGHEST_PLACE_M]) {
        const error = Math.abs(normalGravity(radians(degrees), heightM) - ellipsoidGravity(radians(degrees), heightM));
        expect(error).toBeLessThan(heightM <= 3000 ? 3e-7 : 2e-6);
        worst = Math.max(worst, error);
      }
    expect(worst).toBeGreaterThan(5e-7); // measured 1.45e-6: three times better, and the bound should be tightened
  });

  // Free-air gradient 0.3086 mGal/m, common practice in gravity surveys (1 mGal = 1e-5 m/s²).
  it('falls by 0.3086 mGal a metre', () => {
    const gradient = (normalGravity(radians(45), 0) - normalGravity(radians(45), 100)) / 100;
    expect(Math.abs(gradient - 0.3086e-5)).toBeLessThan(0.0001e-5);
  });

  it('is the same north and south', () => {
    for (const degrees of LATITUDES)
      expect(normalGravity(radians(degrees), 500)).toBe(normalGravity(-radians(degrees), 500));
  });

  it('refuses places off the Earth and heights beyond the series', () => {
    expect(() => normalGravity(1.58, 0)).toThrow('±π/2 rad, got 1.58');
    expect(() => normalGravity(Number.NaN, 0)).toThrow('got NaN');
    expect(() => normalGravity(0, 20_001)).toThrow('between -500 and 20000 m, got 20001');
    expect(() => normalGravity(0, Number.NaN)).toThrow('got NaN');
  });
});
