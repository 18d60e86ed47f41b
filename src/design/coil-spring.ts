/**
 * A helical spring along the input axis: k = Gd⁴/8D³n (EN 13906-1; J. E. Shigley, Mechanical Engineering Design).
 * Its own mass moves along as that of a rod does: displacement sin(βu) from the fixed end, with a mass M at the other
 * β tan β = m_s/M (S. S. Rao, Mechanical Vibrations, rod with an end mass), ω = β√(k/m_s); the higher roots are its surge.
 * With a film's spring k_f on the mass: k β cos β = (Mω² − k_f) sin β. For heavy masses a third of its mass counts.
 *
 * Shear stress in the wire: 8FD/πd³ times Wahl's factor (4C − 1)/(4C − 4) + 0.615/C, C = D/d; borne up to strength/√3
 * (distortion energy). Guided along its axis: sideways swing, buckling and the ends are left out.
 */
import type { CoilSpec } from '../contract/design.ts';
import { cos, sin } from '../numerics/transcendental.ts';
import { firstRoots } from './first-roots.ts';
import { materialOf } from './materials.ts';
import { drawn, KEPT_MODES, type Load, type Suspended, type SuspendedMode } from './suspended.ts';

export function coilSpring(spec: CoilSpec, load: Load, count = KEPT_MODES): Suspended {
  const material = materialOf(spec.material);
  const { wire, diameter, turns } = spec;
  const wireSquare = wire * wire;
  const stiffness = (material.shearModulus * wireSquare * wireSquare) / (8 * diameter * diameter * diameter * turns);
  const own = ((material.density * Math.PI * wireSquare) / 4) * Math.PI * diameter * turns;
  const index = diameter / wire;
  const wahl = (4 * index - 1) / (4 * index - 4) + 0.615 / index;
  const pulled = load.weight + own / 2;
  return {
    modes: coilModes(stiffness, own, load, count),
    compliance: pulled / stiffness,
    pointCompliance: 1 / stiffness,
    cubic: 0,
    // The turn at the fixed end carries the whole spring too.
    stress: (wahl * 8 * diameter * (load.weight + own)) / (Math.PI * wireSquare * wire),
    stretchStress: 0,
    strength: material.strength / Math.sqrt(3),
    turn: 0,
    ownMass: own,
    sag: drawn((u) => (load.weight * u + own * (u - (u * u) / 2)) / pulled),
  };
}

/** Modes of a spring of stiffness k [N/m] and own mass [kg] with a load at its end. */
export function coilModes(stiffness: number, own: number, load: Load, count = KEPT_MODES): SuspendedMode[] {
  const n = load.inertia / own;
  const film = load.spring / stiffness;
  const roots = firstRoots((beta) => cos(beta) - (n * beta - film / beta) * sin(beta), count);
  return roots.map((beta) => {
    const [s, c] = [sin(beta), cos(beta)];
    const size = 0.5 - (s * c) / (2 * beta) + n * s * s;
    const scale = (s < 0 ? -1 : 1) * Math.sqrt(n / size);
    return {
      omega: beta * Math.sqrt(stiffness / own),
      shape: scale * s,
      participation: ((1 - c) / beta + (load.weight / own) * s) / (size * scale),
      stretch: 0,
      drawn: drawn((u) => scale * sin(beta * u)),
    };
  });
}
