import { atan2, cos, sin } from '../numerics/transcendental.ts';
import { leastSquares } from './least-squares.ts';
import type { Series } from './series.ts';

/** mean + amplitude·sin(2πft + phase), t from zero of run time. */
export interface SteadySine {
  readonly mean: number;
  readonly amplitude: number;
  /** −π … π [rad] */
  readonly phaseRad: number;
}

/**
 * The sine of a known frequency [Hz] that lies nearest to a line in the least squares sense. A span of whole periods, or
 * of many, keeps the mean apart from the sine. Source: the three-parameter sine fit of IEEE Std 1057 (from
 * memory).
 */
export function steadySine({ values, startS, rateHz }: Series, frequencyHz: number): SteadySine {
  const omega = 2 * Math.PI * frequencyHz;
  const fit = leastSquares(values.length, 3, (k, columns) => {
    const angle = omega * (startS + k / rateHz);
    columns[0] = 1;
    columns[1] = sin(angle);
    columns[2] = cos(angle);
    return values[k]!;
  });
  const inPhase = fit[1]!;
  const ahead = fit[2]!;
  return {
    mean: fit[0]!,
    amplitude: Math.sqrt(inPhase * inPhase + ahead * ahead),
    phaseRad: atan2(ahead, inPhase),
  };
}

/** An angle [rad] brought to −π … π by whole turns. */
export function principalAngle(angleRad: number): number {
  return angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
}
