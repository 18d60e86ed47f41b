/** A mass on any of the suspensions. */
import type { SuspensionSpec } from '../contract/design.ts';
import { arm } from './arm.ts';
import { clampedArm } from './clamped-arm.ts';
import { coilSpring } from './coil-spring.ts';
import { foldedBeams } from './folded-beams.ts';
import type { Load, Suspended } from './suspended.ts';

export function suspend(spec: SuspensionSpec, load: Load): Suspended {
  switch (spec.kind) {
    case 'coil':
      return coilSpring(spec, load);
    case 'arm':
      return arm(spec, load);
    case 'clamped arm':
      return clampedArm(spec, load);
    case 'folded beams':
      return foldedBeams(spec, load);
  }
}
