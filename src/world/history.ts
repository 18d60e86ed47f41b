import type { Checkpoint } from './checkpoint.ts';
import { World, type WorldSinks } from './world.ts';

/** Ticks between checkpoints: replaying that many stays far below the 100 ms within which an instant must be back. */
const TICKS_BETWEEN = 1024;

/** Checkpoints of a running world, so that any instant of a long run is back at once and bit for bit. */
export class History {
  readonly #world: World;
  readonly #checkpoints: Checkpoint[];

  /** Must begin before the world's first tick, or with the checkpoints of the past that it shares. */
  constructor(world: World, shared: readonly Checkpoint[] = []) {
    this.#world = world;
    this.#checkpoints = [...shared];
    this.note();
  }

  /** To be called after every tick. */
  note(): void {
    if (this.#world.tick === this.#checkpoints.length * TICKS_BETWEEN) this.#checkpoints.push(this.#world.save());
  }

  /**
   * A world of its own whose last tick holds the instant [s]; it replays the same commands when stepped on.
   * The instant must lie in what has been run.
   */
  at(timeS: number): World {
    const world = this.#standBefore(this.#tickOf(timeS));
    world.step();
    return world;
  }

  /** A world, with its history, that goes on from the end of the tick that holds the instant [s]; its future is open. */
  goOnFrom(timeS: number, sinks: WorldSinks): { readonly world: World; readonly history: History } {
    const tick = this.#tickOf(timeS) + 1;
    const replayed = this.#standBefore(tick);
    const world = World.restore(replayed, replayed.save(), false, sinks);
    return { world, history: new History(world, this.#checkpoints.slice(0, Math.floor(tick / TICKS_BETWEEN) + 1)) };
  }

  /** The tick that holds an instant; the last one for the very end. */
  #tickOf(timeS: number): number {
    const { tick } = this.#world;
    const wanted = Math.floor(timeS / this.#world.run.tick + 1e-9);
    if (!(wanted >= 0 && tick > 0)) throw new RangeError(`no tick holds ${timeS} s; run so far: ${tick} ticks`);
    return Math.min(wanted, tick - 1);
  }

  #standBefore(tick: number): World {
    const checkpoint = this.#checkpoints[Math.min(this.#checkpoints.length - 1, Math.floor(tick / TICKS_BETWEEN))]!;
    const world = World.restore(this.#world, checkpoint, true);
    while (world.tick < tick) world.step();
    return world;
  }
}
