/**
 * Forces on a free housing, and the rates they give. Which corners press is fixed by `pressed` from one located event
 * to the next, so that over a piece every force is smooth (bristles apart, see pad.ts).
 */
import type { AirDrag, PadSpec } from '../contract/motion.ts';
import { toMatrix } from '../numerics/quaternion.ts';
import { LAYOUT, type RateSource } from './group-step.ts';
import { bristleDamping, cornerForce, cornerStiffness, SHARES } from './pad.ts';

const { ACCELERATION, EXTRA, EXTRA_RATE, Q, TURN, V, W, W_RATE, X } = LAYOUT;

export const CORNERS = 8;
/** A bristle's bend in the pad's plane, x and z [m], per corner. */
export const BRISTLES = 2 * CORNERS;

/**
 * Longest step times the rate of the whole mass on the whole pad, √(k/m) with the stiffness where it stands, and times the bound
 * on the stiffest rate, turning included [–]. At fourth order the peak of a landing then errs by less than 1e-7.
 */
const WHOLE_RATE_STEP = 0.05;
const STIFFEST_RATE_STEP = 0.1;

export class Forces implements RateSource {
  gravity = 0;
  pad: PadSpec | null = null;
  /** Bit i: corner i presses. */
  pressed = 0;
  /** Of the last evaluation: non-gravitational force [N] and its torque about the centre of mass [N·m], room. */
  readonly force = new Float64Array(3);
  readonly torque = new Float64Array(3);
  /** Of the last `corners`: height [m], its rate [m/s], and the pad's force by its law without max [N]. */
  readonly height = new Float64Array(CORNERS);
  readonly heightRate = new Float64Array(CORNERS);
  readonly push = new Float64Array(CORNERS);
  readonly #mass: number;
  readonly #inertia: Float64Array;
  readonly #half: Float64Array;
  readonly #drag: number;
  readonly #matrix = new Float64Array(9);
  readonly #attitude = new Float64Array(4);
  readonly #omega = new Float64Array(3);
  readonly #arm = new Float64Array(3);
  readonly #speed = new Float64Array(3);

  constructor(mass: number, inertia: Float64Array, half: Float64Array, drag: AirDrag | undefined) {
    this.#mass = mass;
    this.#inertia = inertia;
    this.#half = half;
    // F = −½ρC_dA|v|v
    this.#drag = drag === undefined ? 0 : 0.5 * drag.airDensity * drag.coefficient * drag.area;
  }

  /** No force but gravity acts. */
  get falls(): boolean {
    return this.#drag === 0 && this.pressed === 0;
  }

  get hasFriction(): boolean {
    return this.pad !== null && this.pad.friction > 0 && this.pressed !== 0;
  }

  rates(state: Float64Array, _sinceS: number, out: Float64Array): void {
    this.#orient(state);
    const force = this.force;
    const torque = this.torque;
    force.fill(0);
    torque.fill(0);
    if (this.#drag > 0) {
      const vx = state[V]!;
      const vy = state[V + 1]!;
      const vz = state[V + 2]!;
      const d = -this.#drag * Math.sqrt(vx * vx + vy * vy + vz * vz);
      force[0] = d * vx;
      force[1] = d * vy;
      force[2] = d * vz;
    }
    if (this.pressed !== 0) this.#press(state, out);
    for (let i = 0; i < 3; i++) {
      out[TURN + i] = this.#omega[i]!;
      out[ACCELERATION + i] = force[i]! / this.#mass;
      out[W_RATE + i] = torque[i]!;
    }
    out[ACCELERATION + 1]! -= this.gravity;
  }

  /** Attitude as a matrix, and ω = R I⁻¹ Rᵀ L in the room. */
  #orient(state: Float64Array): void {
    const R = this.#matrix;
    const I = this.#inertia;
    for (let i = 0; i < 4; i++) this.#attitude[i] = state[Q + i]!;
    toMatrix(this.#attitude, R);
    const lx = state[W]!;
    const ly = state[W + 1]!;
    const lz = state[W + 2]!;
    const bx = (R[0]! * lx + R[3]! * ly + R[6]! * lz) / I[0]!;
    const by = (R[1]! * lx + R[4]! * ly + R[7]! * lz) / I[1]!;
    const bz = (R[2]! * lx + R[5]! * ly + R[8]! * lz) / I[2]!;
    this.#omega[0] = R[0]! * bx + R[1]! * by + R[2]! * bz;
    this.#omega[1] = R[3]! * bx + R[4]! * by + R[5]! * bz;
    this.#omega[2] = R[6]! * bx + R[7]! * by + R[8]! * bz;
  }

  /** Arm of a corner from the centre of mass and its speed, room frame. */
  #corner(i: number, state: Float64Array): void {
    const R = this.#matrix;
    const half = this.#half;
    const x = (i & 1) === 0 ? -half[0]! : half[0]!;
    const y = (i & 2) === 0 ? -half[1]! : half[1]!;
    const z = (i & 4) === 0 ? -half[2]! : half[2]!;
    const arm = this.#arm;
    const omega = this.#omega;
    arm[0] = R[0]! * x + R[1]! * y + R[2]! * z;
    arm[1] = R[3]! * x + R[4]! * y + R[5]! * z;
    arm[2] = R[6]! * x + R[7]! * y + R[8]! * z;
    this.#speed[0] = state[V]! + omega[1]! * arm[2]! - omega[2]! * arm[1]!;
    this.#speed[1] = state[V + 1]! + omega[2]! * arm[0]! - omega[0]! * arm[2]!;
    this.#speed[2] = state[V + 2]! + omega[0]! * arm[1]! - omega[1]! * arm[0]!;
  }

  #press(state: Float64Array, out: Float64Array): void {
    const pad = this.pad!;
    const arm = this.#arm;
    const rubs = pad.friction > 0;
    const kt = pad.stiffness / SHARES;
    const ct = rubs ? bristleDamping(pad, this.#mass) : 0;
    for (let i = 0; i < CORNERS; i++) {
      if (((this.pressed >> i) & 1) === 0) {
        out[EXTRA_RATE + 2 * i] = 0;
        out[EXTRA_RATE + 2 * i + 1] = 0;
        continue;
      }
      this.#corner(i, state);
      const n = this.#normal(pad, state[X + 1]! + arm[1]!, this.#speed[1]!);
      let fx = 0;
      let fz = 0;
      if (rubs) {
        const sx = state[EXTRA + 2 * i]!;
        const sz = state[EXTRA + 2 * i + 1]!;
        const tx = kt * sx + ct * this.#speed[0]!;
        const tz = kt * sz + ct * this.#speed[2]!;
        const t = Math.sqrt(tx * tx + tz * tz);
        const limit = pad.friction * Math.max(n, 0);
        const share = t > limit ? limit / t : 1;
        fx = -share * tx;
        fz = -share * tz;
        out[EXTRA_RATE + 2 * i] = share === 1 ? this.#speed[0]! : (-fx - kt * sx) / ct;
        out[EXTRA_RATE + 2 * i + 1] = share === 1 ? this.#speed[2]! : (-fz - kt * sz) / ct;
      }
      this.force[0]! += fx;
      this.force[1]! += n;
      this.force[2]! += fz;
      this.torque[0]! += arm[1]! * fz - arm[2]! * n;
      this.torque[1]! += arm[2]! * fx - arm[0]! * fz;
      this.torque[2]! += arm[0]! * n - arm[1]! * fx;
    }
  }

  /** The pad's force on a corner by its law, without max. */
  #normal(pad: PadSpec, height: number, heightRate: number): number {
    return cornerForce(pad, -height) - (pad.damping / SHARES) * heightRate;
  }

  /** Heights, their rates and the pad's force by its law at all corners. */
  corners(state: Float64Array): void {
    this.#orient(state);
    for (let i = 0; i < CORNERS; i++) {
      this.#corner(i, state);
      const height = state[X + 1]! + this.#arm[1]!;
      this.height[i] = height;
      this.heightRate[i] = this.#speed[1]!;
      this.push[i] = this.pad === null ? 0 : this.#normal(this.pad, height, this.#speed[1]!);
    }
  }

  /** |ω| [rad/s]; by Euler's equations and I₁ ≤ I₂ + I₃ it also bounds how fast ω itself turns. */
  turnRate(state: Float64Array): number {
    if (state[W] === 0 && state[W + 1] === 0 && state[W + 2] === 0) return 0;
    this.#orient(state);
    const w = this.#omega;
    return Math.sqrt(w[0]! * w[0]! + w[1]! * w[1]! + w[2]! * w[2]!);
  }

  /**
   * Longest step [s] that resolves the forces. The stiffest rate is bounded by the trace: with wᵢ = 1/m + (r × n)·I⁻¹(r × n)
   * the inverse mass a corner shows along n, ω² ≤ Σkᵢwᵢ, and for the dampers 2ζω ≤ Σcᵢwᵢ.
   */
  longestStep(state: Float64Array): number {
    let longest = Number.POSITIVE_INFINITY;
    if (this.#drag > 0) {
      const vx = state[V]!;
      const vy = state[V + 1]!;
      const vz = state[V + 2]!;
      const rate = (this.#drag / this.#mass) * Math.sqrt(vx * vx + vy * vy + vz * vz);
      if (rate > 0) longest = STIFFEST_RATE_STEP / rate;
    }
    const pad = this.pad;
    return pad === null || this.pressed === 0 ? longest : Math.min(longest, this.#contactStep(pad, state));
  }

  #contactStep(pad: PadSpec, state: Float64Array): number {
    this.#orient(state);
    const lateralK = pad.friction > 0 ? pad.stiffness / SHARES : 0;
    const lateralC = pad.friction > 0 ? bristleDamping(pad, this.#mass) : 0;
    let whole = 0;
    let stiffness = 0;
    let damping = 0;
    for (let i = 0; i < CORNERS; i++) {
      if (((this.pressed >> i) & 1) === 0) continue;
      this.#corner(i, state);
      const depth = -(state[X + 1]! + this.#arm[1]!);
      const w = this.#inverseMass(1);
      const k = cornerStiffness(pad, depth);
      whole = Math.max(whole, (SHARES * k) / this.#mass);
      stiffness += k * w;
      damping += (pad.damping / SHARES) * w;
      if (lateralK === 0) continue;
      const lateral = this.#inverseMass(0) + this.#inverseMass(2);
      stiffness += lateralK * lateral;
      damping += lateralC * lateral;
    }
    const stiffest = Math.max(Math.sqrt(stiffness), damping / 2);
    return Math.min(WHOLE_RATE_STEP / Math.sqrt(whole), STIFFEST_RATE_STEP / stiffest);
  }

  /** 1/m + (r × n)·I⁻¹(r × n) of the present corner along room axis n [1/kg]. */
  #inverseMass(n: 0 | 1 | 2): number {
    const r = this.#arm;
    const R = this.#matrix;
    // r × eₙ
    const cx = n === 1 ? -r[2]! : n === 2 ? r[1]! : 0;
    const cy = n === 0 ? r[2]! : n === 2 ? -r[0]! : 0;
    const cz = n === 0 ? -r[1]! : n === 1 ? r[0]! : 0;
    let sum = 1 / this.#mass;
    for (let j = 0; j < 3; j++) {
      const b = R[j]! * cx + R[3 + j]! * cy + R[6 + j]! * cz;
      sum += (b * b) / this.#inertia[j]!;
    }
    return sum;
  }

  /** Angular velocity in the housing, of the last evaluation. */
  bodyRates(omega: Float64Array, alpha: Float64Array): void {
    const R = this.#matrix;
    const I = this.#inertia;
    const w = this.#omega;
    const t = this.torque;
    for (let j = 0; j < 3; j++) {
      omega[j] = R[j]! * w[0]! + R[3 + j]! * w[1]! + R[6 + j]! * w[2]!;
      alpha[j] = R[j]! * t[0]! + R[3 + j]! * t[1]! + R[6 + j]! * t[2]!;
    }
    const wx = omega[0]!;
    const wy = omega[1]!;
    const wz = omega[2]!;
    // Euler: Iα = τ − ω × (Iω)
    alpha[0] = (alpha[0]! - (I[2]! - I[1]!) * wy * wz) / I[0]!;
    alpha[1] = (alpha[1]! - (I[0]! - I[2]!) * wz * wx) / I[1]!;
    alpha[2] = (alpha[2]! - (I[1]! - I[0]!) * wx * wy) / I[2]!;
  }

  /** Specific force Rᵀ F/m, of the last evaluation; exactly zero where nothing but gravity acts. */
  bodyForce(out: Float64Array): void {
    if (this.falls) {
      out.fill(0);
      return;
    }
    const R = this.#matrix;
    const fx = this.force[0]! / this.#mass;
    const fy = this.force[1]! / this.#mass;
    const fz = this.force[2]! / this.#mass;
    for (let j = 0; j < 3; j++) out[j] = R[j]! * fx + R[3 + j]! * fy + R[6 + j]! * fz;
  }
}
