/** A mass on any of the suspensions, with at most so many modes. */
import type { SuspensionSpec } from '../contract/design.ts';
import { arm } from './arm.ts';
import { clampedArm } from './clamped-arm.ts';
import { coilSpring } from './coil-spring.ts';
import { foldedBeams } from './folded-beams.ts';
import { KEPT_MODES, type Load, type Suspended } from './suspended.ts';

export function suspend(spec: SuspensionSpec, load: Load, modes = KEPT_MODES): Suspended {
  switch (spec.kind) {
    case 'coil':
      return coilSpring(spec, load, modes);
    case 'arm':
      return arm(spec, load, modes);
    case 'clamped arm':
      return clampedArm(spec, load, modes);
    case 'folded beams':
      return foldedBeams(spec, load);
  }
}
