import type { RunEvent } from '../contract/event.ts';
import type { MotionSpec } from '../contract/motion.ts';
import type { ElementSpec } from '../contract/run.ts';
import type { ElementSnapshot, HousingSnapshot, Snapshot } from '../contract/snapshot.ts';
import type { ElementState } from '../element/element.ts';
import { newKinematics } from '../housing/kinematics.ts';
import { specificForceAlong } from '../housing/specific-force.ts';
import type { World } from './world.ts';

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** One live snapshot, written anew at each look: no allocation while frames are drawn. */
export class SnapshotView {
  readonly #world: World;
  readonly #kinematics = newKinematics();
  readonly #state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
  readonly #housing: Writable<HousingSnapshot>;
  readonly #elements: Writable<ElementSnapshot>[];
  readonly #snapshot: Writable<Snapshot>;

  constructor(world: World) {
    this.#world = world;
    const { position, velocity, acceleration, attitude, angularVelocity, specificForce } = this.#kinematics;
    this.#housing = {
      position,
      velocity,
      acceleration,
      attitude,
      angularVelocity,
      specificForce,
      lowestM: 0,
      motion: 'held' as MotionSpec['kind'],
      inContact: false,
    } as unknown as Writable<HousingSnapshot>;
    this.#elements = world.elements.map(({ spec }) => ({
      spec,
      deflection: 0,
      velocity: 0,
      specificForce: 0,
      reading: 0,
      onStop: 0,
      reported: Number.NaN,
      sampleTimeS: Number.NaN,
    }));
    this.#snapshot = {
      revision: 0,
      timeS: 0,
      gravity: 0,
      housing: this.#housing,
      elements: this.#elements,
      events: [] as readonly RunEvent[],
    };
  }

  /** The state at an instant [s], which must lie within the last tick done. */
  at(timeS: number): Snapshot {
    const world = this.#world;
    const { tick: tickS } = world.run;
    const startS = (world.tick - 1) * tickS;
    if (!(timeS >= startS - tickS && timeS <= startS + tickS * (1 + 1e-9)))
      throw new RangeError(`the instant must lie in the last tick, ${startS} … ${startS + tickS} s, got ${timeS} s`);
    const tauS = Math.min(tickS, Math.max(0, timeS - startS));
    world.kinematicsAt(tauS, this.#kinematics);
    this.#housing.lowestM = world.housing.lowest(this.#kinematics);
    this.#housing.motion = world.housing.motionKind;
    this.#housing.inContact = world.housing.inContact;
    for (let index = 0; index < this.#elements.length; index += 1) this.#lookAt(index, tauS);
    this.#snapshot.revision = world.revision;
    this.#snapshot.timeS = timeS;
    this.#snapshot.gravity = world.gravity;
    this.#snapshot.events = world.events.all;
    return this.#snapshot;
  }

  #lookAt(index: number, tauS: number): void {
    const element = this.#world.elements[index]!;
    const view = this.#elements[index]!;
    const readout = this.#world.readouts[index];
    element.at(tauS, this.#state);
    view.spec = element.spec as ElementSpec;
    view.deflection = this.#state.deflection;
    view.velocity = this.#state.velocity;
    view.reading = this.#state.reading;
    view.onStop = this.#state.onStop;
    view.specificForce = specificForceAlong(this.#kinematics, element.spec.at, element.spec.axis);
    view.reported = readout ? readout.latestG : Number.NaN;
    view.sampleTimeS = readout ? readout.latestTimeS : Number.NaN;
  }
}
