import type { TapeView } from '../contract/tape.ts';

/** What is waited for: a line of the tape passing a level. */
export interface TriggerPlan {
  readonly channel: number;
  readonly rising: boolean;
  /** In the channel's unit. */
  readonly level: number;
  readonly beforeS: number;
  readonly afterS: number;
}

/** Watches a tape, row by row, for a line passing a level; the instant is that of the first row past it. */
export class Trigger {
  readonly plan: TriggerPlan;
  #row: number;
  #foundS: number | undefined;
  readonly #extremes = new Float64Array(2);

  /** Looks at rows from here on only. */
  constructor(plan: TriggerPlan, tape: TapeView) {
    this.plan = plan;
    this.#row = Math.max(tape.endRow, 1);
  }

  /** Instant at which it was met [s]; undefined while waiting. */
  get foundS(): number | undefined {
    return this.#foundS;
  }

  /** Looks at the rows that have come; true from the instant on at which all that is wanted stands on the tape. */
  watch(tape: TapeView): boolean {
    const { channel, rising, level, afterS } = this.plan;
    for (; this.#foundS === undefined && this.#row < tape.endRow; this.#row += 1) {
      const before = tape.value(channel, this.#row - 1);
      tape.envelope(channel, this.#row, this.#row + 1, 1, this.#extremes);
      const past = rising
        ? this.#extremes[1]! >= level && before < level
        : this.#extremes[0]! <= level && before > level;
      if (past) this.#foundS = this.#row / tape.rateHz;
    }
    return this.#foundS !== undefined && (tape.endRow - 1) / tape.rateHz >= this.#foundS + afterS;
  }
}
