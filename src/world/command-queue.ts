import type { HandMotion, HandTarget, MotionSpec } from '../contract/motion.ts';
import type { Change, Command, RunSpec } from '../contract/run.ts';

/** A command and the instant of run time at which it takes effect [s]. */
export interface StampedCommand {
  readonly atS: number;
  readonly command: Command;
}

/** Two instants closer than this share of a tick are one: rounding of n·h against a time given in seconds [–]. */
export const SAME_INSTANT_SHARE = 1e-9;

/**
 * The stamped commands of a run in the order in which they take effect. A scenario's motions and changes
 * are the same commands, known beforehand; a hand's later targets become commands of their own, so that a
 * live run and its replay take one path.
 */
export class CommandQueue {
  readonly #entries: StampedCommand[];
  #next = 0;

  constructor(entries: readonly StampedCommand[]) {
    this.#entries = [...entries];
  }

  static fromRun(run: RunSpec): CommandQueue {
    const entries: StampedCommand[] = [];
    for (const motion of run.motions) entries.push(...commandsOf(motion));
    for (const change of run.changes) entries.push({ atS: change.at, command: { kind: 'change', change } });
    return new CommandQueue(entries.sort(inOrder));
  }

  get entries(): readonly StampedCommand[] {
    return this.#entries;
  }

  /** How many entries have taken effect. */
  get applied(): number {
    return this.#next;
  }

  set applied(count: number) {
    this.#next = count;
  }

  /** The next command to take effect, or undefined. */
  get next(): StampedCommand | undefined {
    return this.#entries[this.#next];
  }

  take(): Command {
    const entry = this.#entries[this.#next];
    if (!entry) throw new RangeError('no command left to take');
    this.#next += 1;
    return entry.command;
  }

  /** Adds a command in its place among those that have not taken effect yet. */
  insert(entry: StampedCommand): void {
    let place = this.#entries.length;
    while (place > this.#next && inOrder(this.#entries[place - 1]!, entry) > 0) place -= 1;
    this.#entries.splice(place, 0, entry);
  }

  /** A queue in which of what is to come only the changes are left. */
  withoutHandling(): CommandQueue {
    const queue = new CommandQueue(
      this.#entries.filter(({ command }, index) => index < this.#next || command.kind === 'change'),
    );
    queue.applied = this.#next;
    return queue;
  }

  /** A queue that knows only what has taken effect: the past of a run that goes on differently. */
  past(): CommandQueue {
    const queue = new CommandQueue(this.#entries.slice(0, this.#next));
    queue.applied = this.#next;
    return queue;
  }
}

/** By instant; at one instant motions before changes, so that a scenario, which keeps them apart, replays alike. */
function inOrder(a: StampedCommand, b: StampedCommand): number {
  if (a.atS !== b.atS) return a.atS - b.atS;
  return Number(a.command.kind === 'change') - Number(b.command.kind === 'change');
}

/** The commands that one motion of a scenario stands for. */
function commandsOf(motion: MotionSpec): StampedCommand[] {
  if (motion.kind !== 'hand') return [{ atS: motion.from, command: { kind: 'motion', motion } }];
  const taken: HandMotion = { ...motion, targets: [] };
  return [
    { atS: motion.from, command: { kind: 'motion', motion: taken } },
    ...motion.targets.map((target): StampedCommand => ({ atS: target.at, command: { kind: 'target', target } })),
  ];
}

/** The motions and changes that the first `count` commands amount to: a run that replays them. */
export function asMotionsAndChanges(entries: readonly StampedCommand[]): {
  readonly motions: MotionSpec[];
  readonly changes: Change[];
} {
  const motions: MotionSpec[] = [];
  const changes: Change[] = [];
  for (const { atS, command } of entries) {
    if (command.kind === 'motion') motions.push({ ...command.motion, from: atS });
    else if (command.kind === 'change') changes.push({ ...command.change, at: atS });
    else {
      const last = motions.length - 1;
      const hand = motions[last];
      // A target that no hand leads to has no effect; the world refuses it at the door.
      if (hand?.kind === 'hand')
        motions[last] = { ...hand, targets: [...hand.targets, { ...command.target, at: atS } satisfies HandTarget] };
    }
  }
  return { motions, changes };
}
