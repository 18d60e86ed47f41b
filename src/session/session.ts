/**
 * One sitting at the bench: the settings, the run that is going on, the runs kept, what is pulled back, and
 * undo. Headless and without a clock: the page tells it how far run time should have come.
 */
import type { HandTarget, MotionSpec } from '../contract/motion.ts';
import type { Change, RunSpec } from '../contract/run.ts';
import type { Snapshot } from '../contract/snapshot.ts';
import type { World } from '../world/world.ts';
import { BenchRun } from './bench-run.ts';
import { carriedFor, type Handling, planFor, type Situation } from './handling.ts';
import {
  type BenchSettings,
  ELEMENT_NAME,
  LONGEST_RUN_S,
  naturalFrequencyHz,
  type StartingBench,
  startRun,
} from './settings.ts';
import { STARTING_BENCHES } from './starting-benches.ts';

/** Ticks that are cheaper to step than to look up. */
const STEPPED_ON = 500;

/** Runs kept beside the present one; the oldest goes first. */
const RUNS_KEPT = 4;

/** A run kept, and the settings as they stood when it was left. */
interface Kept {
  readonly run: BenchRun;
  readonly settings: BenchSettings;
  readonly marks: readonly Mark[];
}

/** From an instant of run time on [s] these settings hold. */
interface Mark {
  readonly fromS: number;
  readonly settings: BenchSettings;
}

export class Session {
  #settings: BenchSettings;
  #run: BenchRun;
  #viewed: World | undefined;
  #viewedS: number | undefined;
  readonly #kept: Kept[] = [];
  /** The settings of the present run, in time: going on from an instant of it brings those of that instant back. */
  #marks: Mark[] = [];
  readonly #undo: BenchSettings[] = [];
  readonly #redo: BenchSettings[] = [];
  #revision = 0;

  constructor(settings: BenchSettings = STARTING_BENCHES['table-top'].settings) {
    this.#settings = settings;
    this.#run = BenchRun.begin(startRun(STARTING_BENCHES[settings.bench], settings));
    this.#run.step();
  }

  /** A sitting that replays a run (settings, seed, timed commands) and has other settings by now. */
  static replay(run: RunSpec, settings: BenchSettings): Session {
    const session = new Session(settings);
    session.#run = replayed(run);
    return session;
  }

  get settings(): BenchSettings {
    return this.#settings;
  }

  get bench(): StartingBench {
    return STARTING_BENCHES[this.#settings.bench];
  }

  get run(): BenchRun {
    return this.#run;
  }

  get keptRuns(): readonly BenchRun[] {
    return this.#kept.map(({ run }) => run);
  }

  /** The settings that undo and redo would lead to. */
  get undoTo(): BenchSettings | undefined {
    return this.#undo[this.#undo.length - 1];
  }

  get redoTo(): BenchSettings | undefined {
    return this.#redo[this.#redo.length - 1];
  }

  /** Rises with every change that is not a tick. */
  get revision(): number {
    return this.#revision;
  }

  /** Run time that the views show: the present, or where the paper was pulled back to [s]. */
  shownS(nowS: number): number {
    return this.#viewedS ?? nowS;
  }

  get pulledBack(): boolean {
    return this.#viewedS !== undefined;
  }

  /** The longest that this run may last [s]. */
  get endS(): number {
    return this.#run.world.run.duration;
  }

  /** Lets run time come to an instant [s], at most so many ticks on; tells how far it came. */
  advanceTo(timeS: number, mostTicks = Number.POSITIVE_INFINITY): number {
    const { world } = this.#run;
    const wantedS = Math.min(timeS, this.endS);
    let left = mostTicks;
    for (; world.timeS <= wantedS && left > 0; left -= 1) this.#run.step();
    return Math.min(wantedS, world.timeS);
  }

  /** The state at the instant shown [s]; `nowS` must lie in the last tick done. */
  look(nowS: number): Snapshot {
    if (this.#viewedS === undefined || !this.#viewed) return this.#run.world.stateAt(nowS);
    return this.#viewed.stateAt(this.#viewedS);
  }

  /** The motion that leads the housing in what is shown. */
  get motionShown(): MotionSpec {
    return (this.#viewed ?? this.#run.world).housing.motion;
  }

  /**
   * What a key, a button or a field asks of the housing. Pulled back, it goes on from there as a new run. Tells up to when
   * the housing is only carried to its place [s]; the present if it need not be.
   */
  handle(handling: Handling, notBeforeS = 0): number {
    this.#goOnIfPulledBack();
    const { world } = this.#run;
    world.takeBackHandling();
    const nowS = Math.max(world.timeS, notBeforeS);
    const plan = planFor(handling, this.#situation());
    for (const { afterS, command } of plan) world.send(command, nowS + afterS);
    this.#revision += 1;
    return nowS + carriedFor(plan);
  }

  /** A hand takes hold of the housing where it is. */
  grab(notBeforeS = 0): void {
    this.#goOnIfPulledBack();
    const { world } = this.#run;
    world.takeBackHandling();
    world.send({ kind: 'motion', motion: { kind: 'hand', from: 0, targets: [] } }, notBeforeS);
    this.#revision += 1;
  }

  /** The hand goes on toward a place. */
  lead(target: Omit<HandTarget, 'at'>, notBeforeS = 0): void {
    this.#run.world.send({ kind: 'target', target: { ...target, at: 0 } }, notBeforeS);
  }

  /** The hand lets go: dropped or thrown, as it was moving. */
  letGo(notBeforeS = 0): void {
    const { pad, air } = this.#settings;
    const motion = { kind: 'free', from: 0, pad, airDrag: air ?? undefined } as const;
    this.#run.world.send({ kind: 'motion', motion }, notBeforeS);
    this.#revision += 1;
  }

  /** The hand gives the housing to the clamp, where it is. */
  clampHere(notBeforeS = 0): void {
    this.#run.world.send({ kind: 'motion', motion: { kind: 'held', from: 0, within: 0.2 } }, notBeforeS);
    this.#revision += 1;
  }

  /** Sets something while it runs. While a slider moves, `mergeWithLast` keeps one step of undo for all of it. */
  set(changed: Partial<BenchSettings>, mergeWithLast = false, notBeforeS = 0): void {
    this.#goOnIfPulledBack();
    if (!mergeWithLast || this.#undo.length === 0) this.#undo.push(this.#settings);
    this.#redo.length = 0;
    this.#apply({ ...this.#settings, ...changed }, notBeforeS);
  }

  undo(notBeforeS = 0): void {
    const before = this.#undo.pop();
    if (!before) return;
    this.#goOnIfPulledBack();
    this.#redo.push(this.#settings);
    this.#apply(before, notBeforeS);
  }

  redo(notBeforeS = 0): void {
    const again = this.#redo.pop();
    if (!again) return;
    this.#goOnIfPulledBack();
    this.#undo.push(this.#settings);
    this.#apply(again, notBeforeS);
  }

  /** A fresh run with the same settings and seed; the old one is kept. */
  fresh(): void {
    this.#keep();
    this.#begin(this.#settings);
  }

  /** A fresh run; nothing is kept. */
  clear(): void {
    this.#kept.length = 0;
    this.#begin(this.#settings);
  }

  /** Begins anew on another starting bench; the old run is kept and undo leads back to its settings. */
  choose(settings: BenchSettings): void {
    this.#keep();
    this.#undo.push(this.#settings);
    this.#redo.length = 0;
    this.#begin(settings);
  }

  /** Pulls the paper back to an instant [s] of this run: everything shows it. */
  pullTo(timeS: number): void {
    const wantedS = Math.max(0, Math.min(timeS, this.#run.world.timeS));
    this.#viewed = this.#stepOnTo(wantedS) ?? this.#run.history.at(wantedS);
    this.#viewedS = Math.min(wantedS, this.#viewed.timeS);
    this.#revision += 1;
  }

  /** Back to the newest ink. */
  toNewest(): void {
    this.#viewed = undefined;
    this.#viewedS = undefined;
    this.#revision += 1;
  }

  /** Goes on from the instant shown as a new run; the old one is kept. */
  goOn(): void {
    this.#goOnIfPulledBack();
  }

  /** Shows a kept run again, with the settings that it had; the present one takes its place. */
  bringBack(index: number): void {
    const kept = this.#kept[index];
    if (!kept) return;
    this.#kept[index] = { run: this.#run, settings: this.#settings, marks: this.#marks };
    this.#run = kept.run;
    this.#settings = kept.settings;
    this.#marks = [...kept.marks];
    this.#undo.length = 0;
    this.#redo.length = 0;
    this.toNewest();
  }

  /** Goes over to a run read from elsewhere, replayed from its start; the present one is kept. */
  take(run: RunSpec, settings: BenchSettings): void {
    this.#keep();
    this.#settings = settings;
    this.#marks = [];
    this.#undo.length = 0;
    this.#redo.length = 0;
    this.#run = replayed(run);
    this.toNewest();
  }

  /** The run so far, to be replayed elsewhere bit for bit: up to its last row; `pending`: with what is planned. */
  asRun(pending = false): RunSpec {
    const { world } = this.#run;
    const { record, tick } = world.run;
    return world.asRun(Math.max(tick, (world.rowCount - 1) / record.rate), pending);
  }

  /** A little later than what is viewed already: that world stepped on; else undefined. */
  #stepOnTo(timeS: number): World | undefined {
    const world = this.#viewed;
    const tickS = this.#run.world.run.tick;
    if (!world || timeS < world.timeS - tickS || timeS > world.timeS + STEPPED_ON * tickS) return undefined;
    while (world.timeS < timeS && world.tick < this.#run.world.tick) world.step();
    return world;
  }

  #situation(): Situation {
    const { world } = this.#run;
    const { housing } = world.stateAt(world.timeS);
    const { size } = world.run.housing;
    return {
      position: housing.position,
      attitude: housing.attitude,
      motion: housing.motion,
      speed: Math.sqrt(housing.velocity.reduce((sum, part) => sum + part * part, 0)),
      gravityMS2: this.#settings.gravityMS2,
      pad: this.#settings.pad,
      airDrag: this.#settings.air ?? undefined,
      home: [0, this.#settings.dropHeightM + size[1] / 2, 0],
    };
  }

  #apply(next: BenchSettings, notBeforeS: number): void {
    const before = this.#settings;
    this.#settings = next;
    this.#revision += 1;
    if (next.bench !== before.bench || next.seed !== before.seed || next.senses !== before.senses) {
      this.#keep(before);
      this.#begin(next);
      return;
    }
    const { world } = this.#run;
    let fromS = Math.max(notBeforeS, world.timeS);
    for (const change of changesBetween(before, next)) fromS = world.send({ kind: 'change', change }, notBeforeS);
    if (this.#marks.length === 0) this.#marks.push({ fromS: 0, settings: before });
    this.#marks.push({ fromS, settings: next });
  }

  #begin(settings: BenchSettings): void {
    this.#settings = settings;
    this.#marks = [];
    this.#run = BenchRun.begin(startRun(STARTING_BENCHES[settings.bench], settings));
    this.#run.step();
    this.toNewest();
  }

  /** Keeps the present run, with the settings that it has. */
  #keep(settings = this.#settings): void {
    this.#kept.unshift({ run: this.#run, settings, marks: this.#marks });
    this.#kept.length = Math.min(this.#kept.length, RUNS_KEPT);
  }

  #goOnIfPulledBack(): void {
    if (this.#viewedS === undefined) return;
    const next = this.#run.goOnFrom(this.#viewedS);
    this.#keep();
    this.#run = next;
    // What was set later than that is not in the run that goes on.
    this.#marks = this.#marks.filter(({ fromS }) => fromS < next.world.timeS);
    this.#settings = this.#marks[this.#marks.length - 1]?.settings ?? this.#settings;
    this.#run.step();
    this.toNewest();
  }
}

function replayed(run: RunSpec): BenchRun {
  const begun = BenchRun.begin({ ...run, duration: LONGEST_RUN_S });
  begun.step();
  return begun;
}

/** The commands that lead from one set of settings to another of the same bench. */
function changesBetween(before: BenchSettings, next: BenchSettings): Change[] {
  const changes: Change[] = [];
  const at = 0;
  const set = {
    ...(next.massKg !== before.massKg || next.stiffnessNM !== before.stiffnessNM
      ? { naturalFrequency: naturalFrequencyHz(next.massKg, next.stiffnessNM) }
      : {}),
    ...(next.dampingRatio !== before.dampingRatio ? { dampingRatio: next.dampingRatio } : {}),
    ...(next.gapM !== before.gapM ? { gap: next.gapM } : {}),
    ...(next.restitution !== before.restitution ? { restitution: next.restitution } : {}),
    ...(next.readout !== before.readout ? { readout: next.readout } : {}),
  };
  if (Object.keys(set).length > 0) changes.push({ at, element: ELEMENT_NAME, set });
  if (next.gravityMS2 !== before.gravityMS2) changes.push({ at, gravity: next.gravityMS2 });
  if (next.pad !== before.pad) changes.push({ at, pad: next.pad });
  return changes;
}
