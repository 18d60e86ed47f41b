/**
 * The pad: what a corner at depth d below the unloaded top feels. The stiffness k and damping c of the whole pad under
 * a flat landing are shared by the four corners of a face, so that each has k/4 and c/4:
 *     N = max(0, (k/4)·d + (c/4)·ḋ).
 * It cannot pull, and it has recovered before the next touch: nothing is remembered but what presses now.
 * With a thickness D the linear term becomes that of a tangent cushion, (k/4)·(2D/π)·tan(πd/2D)
 * (R. D. Mindlin, "Dynamics of Package Cushioning", Bell System Technical Journal 24 (1945) 353–461, class C cushions;
 * the formula from memory).
 *
 * Friction: a bristle at every pressed corner, a spring of k/4 with a damper beside it, ends in a slider that gives
 * way at µN. At less it sticks (with the spring's little give), beyond it slides with exactly µN against the slip.
 * With bristle bend s and slip speed v (both in the pad's plane), T = k_t s + c_t v:
 *     |T| ≤ µN:  F = −T,         ṡ = v
 *     |T| > µN:  F = −µN T/|T|,  ṡ = (µN T/|T| − k_t s)/c_t
 * Both agree at |T| = µN, so the force has no jump and the rate none that depends on the step.
 */
import type { PadSpec } from '../contract/motion.ts';
import { cos, tan } from '../numerics/transcendental.ts';

/** Corners of a face, which share the pad [–]. */
export const SHARES = 4;

/** From this share of the thickness on the tangent cushion goes on straight (2.5e-6 of its initial compliance is left). */
const STRAIGHT_FROM = 0.999;

/** Damping ratio of the bristles: half critical for the whole mass on the whole pad. */
const BRISTLE_DAMPING_RATIO = 0.5;

/** Elastic force of one corner [N] at depth d > 0 [m]; continued below zero for locating the instant of d = 0. */
export function cornerForce(pad: PadSpec, depthM: number): number {
  const k = pad.stiffness / SHARES;
  const D = pad.thickness;
  if (D === undefined) return k * depthM;
  const limit = STRAIGHT_FROM * D;
  if (depthM <= limit) return ((2 * k * D) / Math.PI) * tan((Math.PI * depthM) / (2 * D));
  return cornerForce(pad, limit) + cornerStiffness(pad, limit) * (depthM - limit);
}

/** Its slope dN/dd [N/m]: k/4, or (k/4)/cos²(πd/2D). */
export function cornerStiffness(pad: PadSpec, depthM: number): number {
  const k = pad.stiffness / SHARES;
  if (pad.thickness === undefined || depthM <= 0) return k;
  const c = cos((Math.PI * Math.min(depthM, STRAIGHT_FROM * pad.thickness)) / (2 * pad.thickness));
  return k / (c * c);
}

/** Damper of one bristle [N·s/m]. */
export function bristleDamping(pad: PadSpec, mass: number): number {
  return (2 * BRISTLE_DAMPING_RATIO * Math.sqrt(pad.stiffness * mass)) / SHARES;
}
