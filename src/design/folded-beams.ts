/**
 * A mass on four folds: from the ground a beam goes out to a link, a second one back to the mass. Each of the eight
 * beams bends as an S, clamped to bodies that do not turn, stiffness 12EI/L³; two in a row, four side by side: 24EI/L³.
 * The links go half the way of the mass, the beams on average ¾ and ¼ (with the S: 13/35 of the square):
 *     M = m + m_links/4 + (12/35)m_beams,   pulled by f: m_w + m_links/2 + m_beams/2
 * W. C. Tang, T.-C. H. Nguyen, R. T. Howe, Sensors and Actuators 20 (1989) 25–32 and Tang's thesis (Berkeley, 1990;
 * from memory). The folds let the beams get shorter, so they stay linear. One mode: the links' own swing against
 * the mass, and turning, lie higher and are left out.
 */
import type { FoldedBeamsSpec } from '../contract/design.ts';
import { materialOf } from './materials.ts';
import { drawn, type Load, type Suspended, stripOf } from './suspended.ts';

const BEAMS = 8;

export function foldedBeams(spec: FoldedBeamsSpec, load: Load): Suspended {
  const material = materialOf(spec.material);
  const { length, ei, massPerLength, stressPerMoment } = stripOf(spec, material);
  const beams = BEAMS * massPerLength * length;
  const stiffness = (24 * ei) / (length * length * length);
  const moving = load.inertia + spec.linkMass / 4 + (12 / 35) * beams;
  const pulled = load.weight + spec.linkMass / 2 + beams / 2;
  const shape = Math.sqrt(load.inertia / moving);
  /** From the ground (0) to the link (1): an S of half the mass's way. */
  const outer = (u: number): number => (u * u * (3 - 2 * u)) / 2;
  return {
    modes: [
      {
        omega: Math.sqrt((stiffness + load.spring) / moving),
        shape,
        participation: pulled / (moving * shape),
        stretch: 0,
        drawn: drawn((u) => shape * outer(u)),
      },
    ],
    compliance: pulled / stiffness,
    pointCompliance: 1 / stiffness,
    cubic: 0,
    // The four outer beams carry all but half their own weight: an S under the force F/4 has the moment FL/8 at its ends.
    stress: (stressPerMoment * length * (load.weight + spec.linkMass + 0.75 * beams)) / 8,
    stretchStress: 0,
    strength: material.strength,
    turn: 0,
    ownMass: beams,
    sag: drawn(outer),
  };
}
