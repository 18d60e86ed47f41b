/** A frame later than this does not count in full: the tab slept or the machine was busy [ms]. */
const LONGEST_FRAME_MS = 250;

export interface ClockReading {
  /** Run time that should have been reached [s]. */
  readonly runS: number;
  /** Run time left out because the frame came too late [s]. */
  readonly droppedS: number;
}

/**
 * The only reader of wall time: how far run time should have come. It counts from an anchor, never by adding
 * frames up, so that the frame rate leaves no trace: pointer events at the same wall times fall on the same
 * instants of run time at 10 frames a second and at 144.
 */
export class Clock {
  #anchorMs = 0;
  #anchorS = 0;
  #slowed: number;
  #running = false;
  #lastFrameMs: number | undefined;
  /** Up to here run time goes as in life [s], however much it is slowed. */
  #asInLifeToS = Number.NEGATIVE_INFINITY;

  constructor(slowed: number) {
    this.#slowed = slowed;
  }

  get running(): boolean {
    return this.#running;
  }

  /** How many times slower than life. */
  get slowed(): number {
    return this.#slowed;
  }

  setSlowed(slowed: number, wallMs: number): void {
    this.#anchor(wallMs, this.runTimeOf(wallMs));
    this.#slowed = slowed;
  }

  /** Goes as in life up to an instant of run time [s], then slowed as before: nothing worth a slow look happens till then. */
  hurryTo(runS: number, wallMs: number): void {
    this.#anchor(wallMs, this.runTimeOf(wallMs));
    this.#asInLifeToS = runS;
  }

  start(wallMs: number): void {
    if (this.#running) return;
    this.#anchor(wallMs, this.#anchorS);
    this.#lastFrameMs = wallMs;
    this.#running = true;
  }

  stop(wallMs: number): void {
    this.#anchor(wallMs, this.runTimeOf(wallMs));
    this.#running = false;
  }

  /** Run time begins again at an instant [s]. */
  set(runS: number, wallMs: number): void {
    this.#anchor(wallMs, runS);
    this.#asInLifeToS = Number.NEGATIVE_INFINITY;
    this.#lastFrameMs = wallMs;
  }

  /** The run came only this far [s]: what is missing is left out. */
  fallBackTo(runS: number, wallMs: number): void {
    this.#anchor(wallMs, runS);
  }

  /** Run time that belongs to a wall time [ms], such as a pointer event's time stamp. */
  runTimeOf(wallMs: number): number {
    if (!this.#running) return this.#anchorS;
    const elapsedS = Math.max(0, wallMs - this.#anchorMs) / 1000;
    const quickS = Math.min(elapsedS, Math.max(0, this.#asInLifeToS - this.#anchorS));
    return this.#anchorS + quickS + (elapsedS - quickS) / this.#slowed;
  }

  frame(wallMs: number): ClockReading {
    const sinceMs = this.#lastFrameMs === undefined ? 0 : wallMs - this.#lastFrameMs;
    this.#lastFrameMs = wallMs;
    if (!this.#running || sinceMs <= LONGEST_FRAME_MS) return { runS: this.runTimeOf(wallMs), droppedS: 0 };
    const lateMs = sinceMs - LONGEST_FRAME_MS;
    this.#anchorMs += lateMs;
    return { runS: this.runTimeOf(wallMs), droppedS: lateMs / 1000 / this.#slowed };
  }

  #anchor(wallMs: number, runS: number): void {
    this.#anchorMs = wallMs;
    this.#anchorS = runS;
  }
}
