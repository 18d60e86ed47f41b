/**
 * S(u) = 10u³ − 15u⁴ + 6u⁵, clipped to 0…1: the quintic that leaves 0 and reaches 1 with zero first and second
 * derivative, so a displacement eased by it starts and ends without a jump of acceleration. With it come its
 * derivatives and the two integrals from 0, all with respect to u.
 */
export function smoothstep(u: number): number {
  if (u <= 0) return 0;
  if (u >= 1) return 1;
  return u * u * u * (10 + u * (-15 + 6 * u));
}

/** S′ = 30u²(1 − u)² */
export function smoothstepSlope(u: number): number {
  if (u <= 0 || u >= 1) return 0;
  const p = u * (1 - u);
  return 30 * p * p;
}

/** S″ = 60u(1 − u)(1 − 2u) */
export function smoothstepCurvature(u: number): number {
  if (u <= 0 || u >= 1) return 0;
  return 60 * u * (1 - u) * (1 - 2 * u);
}

/** ∫S = u⁴(5/2 − 3u + u²), past 1: u − 1/2 */
export function smoothstepArea(u: number): number {
  if (u <= 0) return 0;
  if (u >= 1) return u - 0.5;
  const u2 = u * u;
  return u2 * u2 * (2.5 + u * (-3 + u));
}

/** ∫∫S = u⁵(1/2 − u/2 + u²/7), past 1: 1/7 + u(u − 1)/2 */
export function smoothstepSecondArea(u: number): number {
  if (u <= 0) return 0;
  if (u >= 1) return 1 / 7 + (u * (u - 1)) / 2;
  const u2 = u * u;
  return u2 * u2 * u * (0.5 + u * (-0.5 + u / 7));
}
