/**
 * What an element is made of, as the numbers of its equations. Never changed: a changed element gets new ones, so
 * that the arcs of a tick keep those under which they were run.
 *
 * State z: q_n, q̇_n of each mode in turn, then, with a mount, y and ẏ of the mount. Equations:
 *     q̈_n + 2ζ_nω_nq̇_n + ω_n²q_n = −Γ_n·F          F the specific force felt: f, on a mount f + ÿ
 *     x = Σφ_nq_n − R·F                              R the static remainder of the modes left out
 *     ÿ + 2ζ_mω_mẏ + ω_m²y = −f + µ·Σ(M_nΓ_n/ΣM_kΓ_k²)(2ζ_nω_nq̇_n + ω_n²q_n)
 * The last term is what the springs and dampers of the modes do to the mount: Lagrange's equations of modes of
 * effective mass M_nΓ_n² on a mount of mass ΣM_kΓ_k²/µ. For the single mode (M = m, Γ = φ = 1, R = 0) this is the
 * two-mass system, and for µ = 0 the mount does not know of the element.
 *
 * Whatever pushes on the mass at the pick-off and back on the mount (a stop, the cubic spring, the field at the
 * mass) accelerates the coordinates in the ratio  q̇_n: φ_n/M_n + Γ_nσ,  ẏ: −σ,  σ = µ·Σφ_nΓ_n/ΣM_kΓ_k².
 */
import type { ElementSpec, ModeSpec, MountSpec } from '../contract/run.ts';

export interface Mechanics {
  readonly modes: number;
  readonly size: number;
  readonly omega: Float64Array;
  readonly zeta: Float64Array;
  /** Γ */
  readonly participation: Float64Array;
  /** φ at the pick-off */
  readonly shape: Float64Array;
  readonly modalMass: Float64Array;
  readonly mount: { readonly omega: number; readonly zeta: number; readonly massRatio: number } | undefined;
  /** One mode with φ = 1, no remainder, no mount: x = q. */
  readonly single: boolean;
  /** z′ = A·z + B·f + spring·N, A in row order. */
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** x = x_z·z + x_f·f */
  readonly deflectionRow: Float64Array;
  readonly deflectionInput: number;
  /** ẋ = v_z·z + v_f·f + x_f·f′ with v_z = x_z·A, v_f = x_z·B (R on a mount with µ > 0: less what N adds there). */
  readonly velocityRow: Float64Array;
  readonly velocityInput: number;
  /** Change of z per unit change of ẋ by an impulse at the pick-off; in the velocities only. */
  readonly kick: Float64Array;
  /** Change of z per unit displacement of the pick-off in the same ratio; in the positions only. */
  readonly push: Float64Array;
  /** Change of z′ per unit acceleration N given to the mass at the pick-off (mount held still: ẍ changes by N). */
  readonly spring: Float64Array;
  /** S: static deflection per unit specific force [s²]; its inverse makes the ideal reading. */
  readonly compliance: number;
  readonly readingPerMetre: number;
  /** Static change of q_n per unit N [s²], and of x. */
  readonly load: Float64Array;
  readonly loadCompliance: number;
  /** Distance of the stops [m]; Infinity: none. */
  readonly gapM: number;
  readonly restitution: number;
  /** κ [1/(m²·s²)] */
  readonly cubic: number;
  /** Below this rebound speed the mass rests [m/s]. */
  readonly restingSpeed: number;
  /** Bound of the rate at which z changes, coordinates scaled to like size [1/s]. */
  readonly rate: number;
  /**
   * A and its bound while a stop holds the pick-off. The stop pushes so that ẍ = 0: z′ = (1 − kick·v_z)(A·z + B·f) −
   * kick·(v_f·f′ + x_f·f″). What else pushes there (spring·N) is in the ratio of the kick and changes nothing.
   */
  readonly heldA: Float64Array;
  readonly heldRate: number;
}

/** Below this share of ω₀·gap a rebound counts as rest [–]: 1e-6 is far under a pixel and ends the bouncing series. */
const RESTING_SPEED_SHARE = 1e-6;

/** The parameters of a specification that enter the equations. */
export type Mechanical = Pick<
  ElementSpec,
  | 'naturalFrequency'
  | 'dampingRatio'
  | 'modes'
  | 'staticRemainder'
  | 'gap'
  | 'restitution'
  | 'cubicStiffness'
  | 'mount'
  | 'mass'
>;

export function mechanicsOf(spec: Mechanical): Mechanics {
  const modes: readonly ModeSpec[] = spec.modes ?? [
    {
      naturalFrequency: spec.naturalFrequency,
      dampingRatio: spec.dampingRatio,
      participation: 1,
      shape: 1,
      modalMass: spec.mass ?? 1,
    },
  ];
  const omega = Float64Array.from(modes, (mode) => 2 * Math.PI * mode.naturalFrequency);
  const zeta = Float64Array.from(modes, (mode) => mode.dampingRatio);
  const participation = Float64Array.from(modes, (mode) => mode.participation);
  const shape = Float64Array.from(modes, (mode) => mode.shape);
  const modalMass = Float64Array.from(modes, (mode) => mode.modalMass);
  const mount = spec.mount && mountOf(spec.mount);
  const remainder = spec.staticRemainder;
  const single = modes.length === 1 && shape[0] === 1 && remainder === 0 && !mount;

  const sum = (term: (n: number) => number): number => modes.reduce((total, _, n) => total + term(n), 0);
  const effectiveMass = sum((n) => modalMass[n]! * participation[n]! * participation[n]!);
  // Modes that a uniform force does not drive do not move the mount either.
  const perMass = mount && effectiveMass > 0 ? mount.massRatio / effectiveMass : 0;
  const compliance = remainder + sum((n) => (shape[n]! * participation[n]!) / (omega[n]! * omega[n]!));
  if (!(compliance > 0))
    throw new RangeError(`static deflection per unit specific force must be > 0, got ${compliance} s²`);
  const mobility = sum((n) => (shape[n]! * shape[n]!) / modalMass[n]!);
  if (!(mobility > 0)) throw new RangeError(`some mode must move the pick-off, got shapes ${shape.join(', ')}`);

  const load = shape.map((phi, n) => phi / (mobility * modalMass[n]! * omega[n]! * omega[n]!));

  const size = 2 * modes.length + (mount ? 2 : 0);
  const { a, b, feltRow, feltInput } = equations(omega, zeta, participation, modalMass, perMass, mount);
  const deflectionRow = feltRow.map((felt) => -remainder * felt);
  for (let n = 0; n < modes.length; n += 1) deflectionRow[2 * n]! += shape[n]!;
  const velocityRow = rowTimes(deflectionRow, a);

  const ratio = new Float64Array(size);
  const sigma = perMass * sum((n) => shape[n]! * participation[n]!);
  for (let n = 0; n < modes.length; n += 1) ratio[2 * n + 1] = shape[n]! / modalMass[n]! + participation[n]! * sigma;
  if (mount) ratio[size - 1] = -sigma;
  const positions = new Float64Array(size);
  for (let i = 0; i < size; i += 2) positions[i] = ratio[i + 1]!;

  const kick = scaled(ratio, 1 / dotProduct(velocityRow, ratio));
  const heldRow = rowTimes(velocityRow, a);
  const heldA = a.map((value, i) => value - kick[Math.floor(i / size)]! * heldRow[i % size]!);

  const gapM = spec.gap ?? Infinity;
  return {
    modes: modes.length,
    size,
    omega,
    zeta,
    participation,
    shape,
    modalMass,
    mount,
    single,
    a,
    b,
    deflectionRow,
    deflectionInput: -remainder * feltInput,
    velocityRow,
    velocityInput: dotProduct(deflectionRow, b),
    kick,
    push: scaled(positions, 1 / dotProduct(deflectionRow, positions)),
    spring: scaled(ratio, 1 / mobility),
    compliance,
    readingPerMetre: single ? (omega[0]! * omega[0]!) / participation[0]! : 1 / compliance,
    load,
    loadCompliance: dotProduct(shape, load),
    gapM,
    restitution: spec.restitution,
    cubic: spec.cubicStiffness,
    restingSpeed: gapM === Infinity ? 0 : RESTING_SPEED_SHARE * omega[0]! * gapM,
    rate: rateBound(a, omega, mount),
    heldA,
    heldRate: rateBound(heldA, omega, mount),
  };
}

function mountOf({ naturalFrequency, dampingRatio, massRatio }: MountSpec): NonNullable<Mechanics['mount']> {
  return { omega: 2 * Math.PI * naturalFrequency, zeta: dampingRatio, massRatio };
}

interface Equations {
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** F = feltRow·z + feltInput·f */
  readonly feltRow: Float64Array;
  readonly feltInput: number;
}

function equations(
  omega: Float64Array,
  zeta: Float64Array,
  participation: Float64Array,
  modalMass: Float64Array,
  perMass: number,
  mount: Mechanics['mount'],
): Equations {
  const modes = omega.length;
  const size = 2 * modes + (mount ? 2 : 0);
  const y = 2 * modes;
  const feltRow = new Float64Array(size);
  if (mount) {
    feltRow[y] = -mount.omega * mount.omega;
    feltRow[y + 1] = -2 * mount.zeta * mount.omega;
    for (let n = 0; n < modes; n += 1) {
      const back = perMass * modalMass[n]! * participation[n]!;
      feltRow[2 * n] = back * omega[n]! * omega[n]!;
      feltRow[2 * n + 1] = back * 2 * zeta[n]! * omega[n]!;
    }
  }
  const feltInput = mount ? 0 : 1;
  const a = new Float64Array(size * size);
  const b = new Float64Array(size);
  for (let n = 0; n < modes; n += 1) {
    const row = (2 * n + 1) * size;
    a[2 * n * size + 2 * n + 1] = 1;
    for (let k = 0; k < size; k += 1) a[row + k] = -participation[n]! * feltRow[k]!;
    a[row + 2 * n]! -= omega[n]! * omega[n]!;
    a[row + 2 * n + 1]! -= 2 * zeta[n]! * omega[n]!;
    b[2 * n + 1] = -participation[n]! * feltInput;
  }
  if (mount) {
    // ÿ = F − f
    a[y * size + y + 1] = 1;
    a.set(feltRow, (y + 1) * size);
    b[y + 1] = -1;
  }
  return { a, b, feltRow, feltInput };
}

/** Largest row sum of |A| with velocities divided by their ω, and the mount's coordinates scaled to weigh alike. */
function rateBound(a: Float64Array, omega: Float64Array, mount: Mechanics['mount']): number {
  const scale: number[] = [];
  for (const w of omega) scale.push(1, w);
  if (mount) {
    const y = Math.min(1, Math.min(...omega) / mount.omega);
    scale.push(y, y * mount.omega);
  }
  let most = 0;
  for (let row = 0; row < scale.length; row += 1) {
    let sum = 0;
    for (let k = 0; k < scale.length; k += 1) sum += (Math.abs(a[row * scale.length + k]!) * scale[k]!) / scale[row]!;
    most = Math.max(most, sum);
  }
  return most;
}

function rowTimes(row: Float64Array, a: Float64Array): Float64Array {
  return row.map((_, k) => row.reduce((sum, value, i) => sum + value * a[i * row.length + k]!, 0));
}

function dotProduct(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}

function scaled(v: Float64Array, factor: number): Float64Array {
  return v.map((value) => value * factor);
}
