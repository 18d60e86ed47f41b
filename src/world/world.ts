/**
 * The world: one tick composes housing → element → read-out → recording. Each tick, in this order:
 *   1 apply the commands that take effect in it (a command off the tick cuts the tick in two)
 *   2 advance the housing, piece by piece
 *   3 take the specific force at each element over the piece (start, middle, end: a parabola)
 *   4 propagate each element over the piece, stops located
 *   5 read out the samples that are due, in order with 6
 *   6 append rows that are due, and the tick's end values, to the tape
 *   7 tick++, revision++
 * A run = its specification + the stamped commands; nothing else enters. `send` only queues; `step` runs to
 * its end or throws. Time is the integer tick; t = tick·h, never a running sum.
 */
import type { RunEvent } from '../contract/event.ts';
import type { Change, Command, ElementSpec, RunSpec } from '../contract/run.ts';
import type { Snapshot } from '../contract/snapshot.ts';
import { Element, type ElementState } from '../element/element.ts';
import { Housing } from '../housing/housing.ts';
import { type Kinematics, newKinematics } from '../housing/kinematics.ts';
import { specificForceAlong, spinSquaredAcross } from '../housing/specific-force.ts';
import { Readout } from '../readout/readout.ts';
import type { Checkpoint } from './checkpoint.ts';
import { asMotionsAndChanges, CommandQueue, SAME_INSTANT_SHARE } from './command-queue.ts';
import { EventLog } from './event-log.ts';
import { type RowMoment, RowWriter } from './row-writer.ts';
import { SnapshotView } from './snapshot-view.ts';
import { startPose } from './start-pose.ts';

/** Where a world's rows and samples go. All are called in the order of run time. */
export interface WorldSinks {
  /** A row of the record; the array is used again for the next row. */
  row?(row: number, values: Float64Array, moment: RowMoment): void;
  /** A read-out sample: reported value [g_n]; `clipped`: at an end of the range. */
  sample?(element: number, timeS: number, valueG: number, clipped: boolean): void;
  /**
   * After each tick: specific force, deflection and ideal reading of each element in turn at the ends of its
   * pieces, as one call with the lowest and one with the highest of them (one in all when there is one piece).
   */
  tickEnd?(values: Float64Array): void;
}

/** Values per element that `tickEnd` tells. */
const EXTREME_CHANNELS = 3;

export class World {
  readonly run: RunSpec;
  readonly housing: Housing;
  readonly elements: readonly Element[];
  readonly readouts: readonly (Readout | undefined)[];
  readonly events = new EventLog();
  #tick = 0;
  #gravity: number;
  #revision = 0;
  #queue: CommandQueue;
  readonly #sinks: WorldSinks;
  readonly #rows: RowWriter;
  readonly #view: SnapshotView;
  readonly #lowest: Float64Array;
  readonly #highest: Float64Array;
  /** Specific force at each element at the end of the last piece [m/s²]. */
  readonly #felt: Float64Array;
  readonly #state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
  readonly #tickEvents: RunEvent[] = [];
  readonly #start = newKinematics();
  readonly #middle = newKinematics();
  readonly #end = newKinematics();
  /** Pieces of the present tick that the elements have been taken over. */
  #piecesDone = 0;

  constructor(run: RunSpec, sinks: WorldSinks = {}, specs: readonly ElementSpec[] = run.elements) {
    this.run = run;
    this.#sinks = sinks;
    this.#gravity = run.gravity;
    this.#queue = CommandQueue.fromRun(run);
    this.housing = new Housing(run.housing, startPose(run), run.gravity, run.seed);
    this.elements = specs.map(
      (spec, index) => new Element(spec, { seed: run.seed, index, temperatureK: run.temperature, tickS: run.tick }),
    );
    this.readouts = specs.map((spec) => (spec.readout ? new Readout(spec.readout) : undefined));
    this.#lowest = new Float64Array(EXTREME_CHANNELS * specs.length).fill(Number.POSITIVE_INFINITY);
    this.#highest = new Float64Array(EXTREME_CHANNELS * specs.length).fill(Number.NEGATIVE_INFINITY);
    this.#felt = new Float64Array(specs.length);
    this.#rows = new RowWriter(this, sinks);
    this.#view = new SnapshotView(this);
    this.#settle();
  }

  /** Ticks done. */
  get tick(): number {
    return this.#tick;
  }

  /** Run time reached, the end of the last tick done [s]. */
  get timeS(): number {
    return this.#tick * this.run.tick;
  }

  get revision(): number {
    return this.#revision;
  }

  get gravity(): number {
    return this.#gravity;
  }

  /** Hash over every row written so far, as 16 hexadecimal digits. */
  get hash(): string {
    return this.#rows.hash;
  }

  /** Rows written so far. */
  get rowCount(): number {
    return this.#rows.count;
  }

  /** Queues a command for the next tick, or for the first that does not begin before an instant [s]; tells when it takes effect [s]. */
  send(command: Command, notBeforeS = 0): number {
    const tick = Math.max(this.#tick, Math.ceil(notBeforeS / this.run.tick - 1e-6));
    const atS = tick * this.run.tick;
    this.#queue.insert({ atS, command });
    return atS;
  }

  /** Takes back the handling that has not taken effect yet, motions and a hand's targets; changes of settings stay. */
  takeBackHandling(): void {
    this.#queue = this.#queue.withoutHandling();
  }

  /** Runs one tick. */
  step(): void {
    const h = this.run.tick;
    const startS = this.#tick * h;
    this.housing.beginTick(startS, h);
    for (const element of this.elements) element.beginTick(this.#tick);
    this.#piecesDone = 0;
    let tau = 0;
    for (;;) {
      this.#applyDue(startS, tau);
      const next = this.#nextCutTau(startS, h);
      this.housing.advance(next);
      this.#takeElementsAlong();
      if (next === h) break;
      tau = next;
    }
    for (const element of this.elements) element.endTick();
    this.#collectEvents(startS);
    this.#rows.writeTick(startS, h, startS + h * (1 - SAME_INSTANT_SHARE));
    this.#tellExtremes();
    this.#tick += 1;
    this.#revision += 1;
  }

  /** Runs until the instant [s] lies within, not at the end of, the last tick done. */
  runTo(timeS: number): void {
    const last = timeS + this.run.tick * SAME_INSTANT_SHARE;
    while (this.#tick * this.run.tick <= last) this.step();
  }

  /** The state at an instant [s] within the last tick done; the view is live, copy to keep. */
  stateAt(timeS: number): Snapshot {
    return this.#view.at(timeS);
  }

  /** The run so far as a specification that replays it; `pending`: with the commands that are still to take effect. */
  asRun(durationS: number, pending = false): RunSpec {
    const { entries, applied } = this.#queue;
    const told = pending ? entries : entries.slice(0, applied);
    return { ...this.run, ...asMotionsAndChanges(told), duration: durationS };
  }

  /** Everything needed to go on from here, bit for bit. */
  save(): Checkpoint {
    return {
      tick: this.#tick,
      gravity: this.#gravity,
      applied: this.#queue.applied,
      housing: this.housing.save(),
      elements: this.elements.map((element) => ({ spec: element.spec, state: element.save() })),
      readouts: this.readouts.map((readout) => readout?.save()),
      rows: this.#rows.save(),
    };
  }

  /**
   * A world standing where the checkpoint was taken. With `future` it replays the commands that followed;
   * without, it goes on by itself.
   */
  static restore(world: World, checkpoint: Checkpoint, future: boolean, sinks: WorldSinks = {}): World {
    const restored = new World(
      world.run,
      sinks,
      checkpoint.elements.map(({ spec }) => spec),
    );
    const queue = new CommandQueue(world.#queue.entries);
    queue.applied = checkpoint.applied;
    restored.#queue = future ? queue : queue.past();
    restored.#tick = checkpoint.tick;
    restored.#gravity = checkpoint.gravity;
    restored.housing.restore(checkpoint.housing);
    for (const [index, element] of restored.elements.entries()) element.restore(checkpoint.elements[index]!.state);
    for (const [index, readout] of restored.readouts.entries()) {
      const saved = checkpoint.readouts[index];
      if (readout && saved) readout.restore(saved);
    }
    restored.events.copyBefore(world.events, checkpoint.tick * world.run.tick);
    restored.#rows.restore(checkpoint.rows);
    return restored;
  }

  /** Kinematics at τ [s] of the last tick; at a jump those after it. */
  kinematicsAt(tauS: number, out: Kinematics): void {
    const { housing } = this;
    const upTo = tauS + this.run.tick * SAME_INSTANT_SHARE;
    let piece = housing.pieceCount - 1;
    while (piece > 0 && housing.pieceStart(piece) > upTo) piece -= 1;
    housing.kinematics(piece, Math.max(tauS, housing.pieceStart(piece)), out);
  }

  /** Static start of every element: under gravity in the first attitude, or under a felt record's first sample. */
  #settle(): void {
    // Of motions that begin together the last one leads.
    const first = this.run.motions.filter(({ from }) => from === 0).pop();
    const felt = first?.kind === 'recorded' && first.is === 'specificForce';
    // A housing of its own: looking at the first instant must not move the one that runs.
    const { housing, tick, seed, gravity } = this.run;
    const still = new Housing(housing, startPose(this.run), gravity, seed);
    still.beginTick(0, tick);
    if (felt) still.begin(first, 0);
    still.advance(tick);
    still.kinematics(0, 0, this.#start);
    for (const element of this.elements)
      element.settle(specificForceAlong(this.#start, element.spec.at, element.spec.axis), 0);
  }

  /** Applies what takes effect up to τ. */
  #applyDue(startS: number, tauS: number): void {
    const same = this.run.tick * SAME_INSTANT_SHARE;
    for (let next = this.#queue.next; next && next.atS - startS <= tauS + same; next = this.#queue.next)
      this.#apply(this.#queue.take(), next.atS);
  }

  /** τ of the next command inside this tick, else its end. */
  #nextCutTau(startS: number, h: number): number {
    const next = this.#queue.next;
    if (!next) return h;
    const tau = next.atS - startS;
    return tau < h * (1 - SAME_INSTANT_SHARE) ? tau : h;
  }

  #apply(command: Command, atS: number): void {
    if (command.kind === 'motion') this.housing.begin(command.motion, atS);
    else if (command.kind === 'target') {
      if (this.housing.motionKind === 'hand') this.housing.target({ ...command.target, at: atS });
    } else this.#change(command.change, atS);
  }

  #change(change: Change, atS: number): void {
    if ('gravity' in change) {
      this.#gravity = change.gravity;
      this.housing.setGravity(change.gravity);
    } else if ('pad' in change) this.housing.setPad(change.pad);
    else {
      const index = this.elements.findIndex(({ spec }) => spec.name === change.element);
      const element = this.elements[index];
      if (!element) throw new RangeError(`no element is named ${change.element}`);
      element.change(change.set);
      if (change.set.readout) this.readouts[index]?.change(change.set.readout, atS);
    }
    this.#tickEvents.push({ kind: 'change', timeS: atS, what: describeChange(change) });
  }

  /** Steps 3 and 4: takes the elements over the pieces that the housing has added. */
  #takeElementsAlong(): void {
    const { housing, elements } = this;
    const count = housing.pieceCount;
    for (; this.#piecesDone < count; this.#piecesDone += 1) {
      const piece = this.#piecesDone;
      // Where an earlier piece of the tick ended; the end of the last is told when the tick is over.
      if (piece > 0 && this.#sinks.tickEnd) this.#noteExtremes(housing.pieceStart(piece));
      const startTau = housing.pieceStart(piece);
      const duration = housing.pieceDuration(piece);
      const steady = housing.isSteady(piece);
      housing.felt(piece, startTau, this.#start);
      if (!steady) {
        housing.felt(piece, startTau + duration / 2, this.#middle);
        housing.felt(piece, startTau + duration, this.#end);
      }
      const middle = steady ? this.#start : this.#middle;
      const end = steady ? this.#start : this.#end;
      for (let index = 0; index < elements.length; index += 1)
        this.#takeElement(index, startTau, duration, middle, end);
    }
  }

  #takeElement(index: number, startTau: number, duration: number, middle: Kinematics, end: Kinematics): void {
    const element = this.elements[index]!;
    const { at, axis, fieldAtMass } = element.spec;
    const start = this.#start;
    const f0 = specificForceAlong(start, at, axis);
    // A steady piece has one moment for all three.
    const fMid = middle === start ? f0 : specificForceAlong(middle, at, axis);
    const f1 = end === start ? f0 : specificForceAlong(end, at, axis);
    this.#felt[index] = f1;
    const w0 = fieldAtMass ? spinSquaredAcross(start, axis) : 0;
    const wMid = fieldAtMass ? spinSquaredAcross(middle, axis) : 0;
    const w1 = fieldAtMass ? spinSquaredAcross(end, axis) : 0;
    element.advance(startTau, duration, f0, fMid, f1, w0, wMid, w1);
  }

  /** Widens the extremes by what stands at the end of a piece, τ [s]. */
  #noteExtremes(tauS: number): void {
    const state = this.#state;
    for (let index = 0; index < this.elements.length; index += 1) {
      this.elements[index]!.at(tauS, state);
      this.#widen(EXTREME_CHANNELS * index, this.#felt[index]!);
      this.#widen(EXTREME_CHANNELS * index + 1, state.deflection);
      this.#widen(EXTREME_CHANNELS * index + 2, state.reading);
    }
  }

  #widen(channel: number, value: number): void {
    if (value < this.#lowest[channel]!) this.#lowest[channel] = value;
    if (value > this.#highest[channel]!) this.#highest[channel] = value;
  }

  /** Tells the extremes of the tick, behind its rows: they belong to the next one. */
  #tellExtremes(): void {
    if (!this.#sinks.tickEnd) return;
    this.#noteExtremes(this.run.tick);
    this.#sinks.tickEnd(this.#lowest);
    if (this.#piecesDone > 1) this.#sinks.tickEnd(this.#highest);
    this.#lowest.fill(Number.POSITIVE_INFINITY);
    this.#highest.fill(Number.NEGATIVE_INFINITY);
  }

  /** What happened in the tick, in the order of its instants. */
  #collectEvents(startS: number): void {
    const events = this.#tickEvents;
    for (const event of this.housing.events) events.push(event);
    for (const element of this.elements)
      for (const { tauS, side, speedMS, rests } of element.stopHits)
        events.push({ kind: 'stop hit', timeS: startS + tauS, element: element.spec.name, side, speedMS, rests });
    if (events.length === 0) return;
    events.sort((a, b) => a.timeS - b.timeS);
    this.events.append(events);
    events.length = 0;
  }
}

function describeChange(change: Change): string {
  if ('gravity' in change) return 'gravity';
  if ('pad' in change) return 'pad';
  return `${change.element}: ${Object.keys(change.set).join(', ')}`;
}
