import { sin } from '../numerics/transcendental.ts';

/** Normal gravity at the equator [m/s²]. This and the next five: WGS 84, NIMA TR8350.2, 3rd ed., ch. 3 and 4. */
const EQUATOR_MS2 = 9.7803253359;
/** Somigliana's constant [–]. */
const K = 0.00193185265241;
/** First eccentricity squared [–]. */
const E2 = 0.00669437999013;
/** Semi-major axis [m]. */
const A = 6378137;
/** Flattening [–]. */
const F = 1 / 298.257223563;
/** ω²a²b/GM [–]. */
const M = 0.00344978650684;

/** Heights for which the series holds to 2e-6 m/s² [m]. */
export const LOWEST_PLACE_M = -500;
export const HIGHEST_PLACE_M = 20_000;

/**
 * Gravity of the reference ellipsoid at a geodetic latitude [rad] and a height above the ellipsoid [m], in m/s²:
 *     g₀ = g_e·(1 + k sin²L)/√(1 − e² sin²L)
 *     g = g₀·[1 − 2(1 + f + m − 2f sin²L)·h/a + 3h²/a²]
 * At height 0 exact to the digits of the constants; the series in h leaves out terms of third order, below
 * 2e-6 m/s² up to 20 km. Real gravity departs from it by local masses, up to some 3e-3 m/s². Height above
 * sea level instead of above the ellipsoid errs by up to 3e-4 m/s² (the geoid lies within about 100 m of it).
 * Source: WGS 84, NIMA TR8350.2, 3rd ed., chapter 4 (closed formula of Somigliana; series in the height).
 */
export function normalGravity(latitudeRad: number, heightM: number): number {
  if (!(Math.abs(latitudeRad) <= Math.PI / 2))
    throw new RangeError(`latitude must lie within ±π/2 rad, got ${latitudeRad}`);
  if (!(heightM >= LOWEST_PLACE_M && heightM <= HIGHEST_PLACE_M))
    throw new RangeError(`height must lie between ${LOWEST_PLACE_M} and ${HIGHEST_PLACE_M} m, got ${heightM}`);
  const sine = sin(latitudeRad);
  const s2 = sine * sine;
  const h = heightM / A;
  const surface = (EQUATOR_MS2 * (1 + K * s2)) / Math.sqrt(1 - E2 * s2);
  return surface * (1 - 2 * (1 + F + M - 2 * F * s2) * h + 3 * h * h);
}
