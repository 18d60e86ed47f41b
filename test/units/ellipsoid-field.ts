/**
 * Gravity outside the WGS 84 ellipsoid in closed form, to check the series in the height against: components
 * along u and β of ellipsoidal-harmonic coordinates (W. A. Heiskanen and H. Moritz, Physical Geodesy (1967),
 * section 2-9; NIMA TR8350.2, chapter 4; from memory, and confirmed by giving the published surface values).
 */
const A = 6378137;
const F = 1 / 298.257223563;
const B = A * (1 - F);
const GM = 3986004.418e8;
const OMEGA = 7292115e-11;
const E = Math.sqrt(A * A - B * B);

/** Magnitude of gravity [m/s²] at a geodetic latitude [rad] and a height above the ellipsoid [m]. */
export function ellipsoidGravity(latitudeRad: number, heightM: number): number {
  const e2 = (E / A) ** 2;
  const across = A / Math.sqrt(1 - e2 * Math.sin(latitudeRad) ** 2);
  const radius = (across + heightM) * Math.cos(latitudeRad);
  const z = (across * (1 - e2) + heightM) * Math.sin(latitudeRad);

  const sum = radius ** 2 + z ** 2 - E ** 2;
  const u = Math.sqrt((sum / 2) * (1 + Math.sqrt(1 + (2 * E * z) ** 2 / sum ** 2)));
  const wide = Math.sqrt(u * u + E * E);
  const beta = Math.atan2(z * wide, radius * u);
  const [sine, cosine] = [Math.sin(beta), Math.cos(beta)];
  const w = Math.sqrt((u * u + (E * sine) ** 2) / (u * u + E * E));

  const q = (at: number): number => ((1 + (3 * at * at) / (E * E)) * Math.atan(E / at) - (3 * at) / E) / 2;
  const qSlope = 3 * (1 + (u * u) / (E * E)) * (1 - (u / E) * Math.atan(E / u)) - 1;
  const alongU =
    -(GM / wide ** 2 + ((OMEGA * A) ** 2 * E * qSlope * (sine ** 2 / 2 - 1 / 6)) / (wide ** 2 * q(B))) / w +
    (OMEGA ** 2 * u * cosine ** 2) / w;
  const alongBeta = (((OMEGA * A) ** 2 * q(u) * sine * cosine) / (wide * q(B)) - OMEGA ** 2 * wide * sine * cosine) / w;
  return Math.hypot(alongU, alongBeta);
}
