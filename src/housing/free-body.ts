/**
 * The rigid body of a free housing: a cannon-es body, and the only place where the project touches cannon-es.
 * It is stepped by the body's own `integrate` alone: no world, no clock, no contact solver, no damping
 * (a world damps velocities by `Math.pow`, whose bits differ between engines). What cannon-es does in a step of h is
 *     v ← v + hF/m,  x ← x + hv,  q ← (q + ½h ω q), normalised.
 * Its leading of half a tick is mended by handing it a velocity that leads the other way, its turn by 2·atan(½|ω|h)
 * instead of |ω|h by stretching ω, and its missing gyroscopic term by handing it the turn that follows
 * from the angular momentum. Force and turn are the means over the step found by `GroupStep`, so place,
 * velocity and attitude come out of cannon-es in fourth order.
 */
import { Body, Box, Vec3 } from 'cannon-es';
import type { HousingSpec } from '../contract/run.ts';
import { type GroupStep, halfTangent, LAYOUT } from './group-step.ts';

const { Q, V, X } = LAYOUT;

export class FreeBody {
  readonly mass: number;
  /** Principal moments of inertia about the housing's axes [kg·m²]. */
  readonly inertia: Float64Array;
  readonly #body: Body;

  constructor(spec: HousingSpec) {
    const [x, y, z] = spec.size;
    this.#body = new Body({
      mass: spec.mass,
      shape: new Box(new Vec3(x / 2, y / 2, z / 2)),
      linearDamping: 0,
      angularDamping: 0,
      allowSleep: false,
    });
    this.mass = this.#body.mass;
    this.inertia = Float64Array.of(this.#body.inertia.x, this.#body.inertia.y, this.#body.inertia.z);
  }

  /** Falls without turning for h [s] under gravity alone: x + hv − ½gh², v − gh, to rounding. */
  fall(start: Float64Array, h: number, gravity: number, out: Float64Array): void {
    const body = this.#body;
    this.#place(start);
    body.force.set(0, 0, 0);
    body.velocity.set(start[V]!, start[V + 1]! - 0.5 * h * gravity, start[V + 2]!);
    body.angularVelocity.set(0, 0, 0);
    body.integrate(h, true, false);
    this.#read(out);
    out[V] = start[V]!;
    out[V + 1] = start[V + 1]! - h * gravity;
    out[V + 2] = start[V + 2]!;
  }

  /** Makes the step of h [s] that `step` has found, in two halves of one turn each. */
  advance(start: Float64Array, h: number, step: GroupStep, out: Float64Array): void {
    const body = this.#body;
    const a = step.meanAcceleration;
    const v = step.meanVelocity;
    this.#place(start);
    body.force.set(this.mass * a[0]!, this.mass * a[1]!, this.mass * a[2]!);
    // two half kicks and drifts cover hu + ¾h²a; with u = v̄ − ¾ha they cover the mean velocity's hv̄
    const ux = v[0]! - 0.75 * h * a[0]!;
    const uy = v[1]! - 0.75 * h * a[1]!;
    const uz = v[2]! - 0.75 * h * a[2]!;
    body.velocity.set(ux, uy, uz);
    this.#turnBy(step.firstTurn, h / 2);
    body.integrate(h / 2, true, false);
    this.#turnBy(step.secondTurn, h / 2);
    body.integrate(h / 2, true, false);
    this.#read(out);
    out[V] = body.velocity.x + (start[V]! - ux);
    out[V + 1] = body.velocity.y + (start[V + 1]! - uy);
    out[V + 2] = body.velocity.z + (start[V + 2]! - uz);
  }

  /** The angular velocity with which cannon-es turns by exactly `turn` [rad] in `h` [s]. */
  #turnBy(turn: Float64Array, h: number): void {
    const x = turn[0]!;
    const y = turn[1]!;
    const z = turn[2]!;
    const stretch = halfTangent(0.25 * (x * x + y * y + z * z)) / h;
    this.#body.angularVelocity.set(x * stretch, y * stretch, z * stretch);
  }

  #place(state: Float64Array): void {
    const body = this.#body;
    body.position.set(state[X]!, state[X + 1]!, state[X + 2]!);
    body.quaternion.set(state[Q]!, state[Q + 1]!, state[Q + 2]!, state[Q + 3]!);
  }

  #read(out: Float64Array): void {
    const { position, quaternion } = this.#body;
    out[X] = position.x;
    out[X + 1] = position.y;
    out[X + 2] = position.z;
    out[Q] = quaternion.x;
    out[Q + 1] = quaternion.y;
    out[Q + 2] = quaternion.z;
    out[Q + 3] = quaternion.w;
  }
}
