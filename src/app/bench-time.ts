import type { Session } from '../session/session.ts';
import { Clock } from './clock.ts';

/** Ticks that one frame may take: more, and the run would fall ever further behind. */
const MOST_TICKS_A_FRAME = 6000;
/** A gap between frames that is worth a word [s of wall time]. */
const LONG_GAP_S = 2;
/** Ticks of a run taken up that are replayed in one frame. */
const REPLAYED_A_FRAME = 20_000;
/** A loop over a marked span rests this long on its end [ms]. */
const LOOP_REST_MS = 400;
/** Nearer than this to the newest ink is there [s]. */
const AT_THE_PEN_S = 1e-9;

/** How far a run taken up is still to be replayed, and where the paper was pulled back to then [s]. */
export interface Replay {
  readonly reachedS: number;
  readonly shownS: number | null;
}

/** The sitting's time: how far the run has come, by the clock, by a replay, or pulled back. */
export class BenchTime {
  readonly session: Session;
  readonly clock: Clock;
  readonly #say: (notice: string) => void;
  #nowS: number;
  #wallMs: number;
  #replay: Replay | undefined;
  #loopedMs: number | undefined;
  /** Pulled back to here, and not looked up yet [s]. */
  #pulledToS: number | undefined;

  constructor(session: Session, wallMs: number, say: (notice: string) => void) {
    this.session = session;
    this.clock = new Clock(session.bench.slowed);
    this.#say = say;
    this.#nowS = session.run.world.timeS;
    this.#wallMs = wallMs;
    this.clock.set(this.#nowS, wallMs);
  }

  /** Run time reached [s]. */
  get nowS(): number {
    return this.#nowS;
  }

  /** Wall time reached [ms]. */
  get wallMs(): number {
    return this.#wallMs;
  }

  /** Run time of the event that is being dealt with [s]. */
  get eventRunS(): number {
    return this.clock.runTimeOf(this.#wallMs);
  }

  get replays(): boolean {
    return this.#replay !== undefined;
  }

  /** Lets the run come to a wall time [ms], so that what is asked meets the same state at every frame rate. */
  comeTo(wallMs: number): void {
    this.#followPull();
    this.#wallMs = Math.max(this.#wallMs, wallMs);
    if (!this.#replay) this.#nowS = this.session.advanceTo(this.eventRunS, MOST_TICKS_A_FRAME);
  }

  /** Runs up to the wall time of a frame [ms]. */
  frame(wallMs: number): void {
    // A frame's time stamp is that of its screen's beat: an event dealt with meanwhile may bear a later one.
    this.#wallMs = Math.max(this.#wallMs, wallMs);
    this.#followPull();
    const { session, clock } = this;
    if (this.#replay) this.#replayOn(this.#replay);
    const { runS, droppedS } = clock.frame(this.#wallMs);
    const reached = session.advanceTo(runS, MOST_TICKS_A_FRAME);
    if (reached < runS - session.run.world.run.tick) clock.fallBackTo(reached, this.#wallMs);
    if (droppedS * clock.slowed > LONG_GAP_S) this.#say('The page slept: the run waited.');
    this.#nowS = reached;
  }

  /** Replays the run up to where it had come, some of it in each frame; then it stands still there. */
  replay(replay: Replay | undefined): void {
    this.#replay = replay;
  }

  #replayOn({ reachedS, shownS }: Replay): void {
    this.#nowS = this.session.advanceTo(reachedS, REPLAYED_A_FRAME);
    this.clock.stop(this.#wallMs);
    this.clock.set(this.#nowS, this.#wallMs);
    if (this.#nowS < Math.min(reachedS, this.session.endS)) return;
    this.#replay = undefined;
    if (shownS !== null) this.session.pullTo(shownS);
    this.#say('The run, as it stood. It is paused: go on when you like.');
  }

  /** Stands still. */
  stop(): void {
    this.clock.stop(this.#wallMs);
  }

  start(): void {
    this.clock.start(this.#wallMs);
  }

  setSlowed(slowed: number): void {
    this.clock.setSlowed(slowed, this.#wallMs);
  }

  /** Goes as in life up to an instant of run time [s]. */
  hurryTo(runS: number): void {
    this.clock.hurryTo(runS, this.#wallMs);
  }

  /** Another run stands on the bench: time goes on from where it has come. */
  follow(): void {
    this.#nowS = this.session.run.world.timeS;
    this.clock.set(this.#nowS, this.#wallMs);
  }

  /** Goes on: from where the paper was pulled back to, as a new run, or simply on. True: as a new run. */
  goOn(): boolean {
    const { session } = this;
    const anew = session.pulledBack;
    if (anew) {
      session.goOn();
      this.follow();
    }
    this.start();
    return anew;
  }

  oneTickOn(): void {
    this.stop();
    const { session } = this;
    const { world } = session.run;
    if (session.pulledBack) session.pullTo(session.shownS(this.#nowS) + world.run.tick);
    else this.clock.set(world.timeS + world.run.tick / 2, this.#wallMs);
  }

  /** Pulls the paper back to an instant [s] and stands still there; true unless that is the newest ink. */
  pull(timeS: number): boolean {
    const back = timeS < this.#nowS - AT_THE_PEN_S;
    this.#pulledToS = back ? timeS : undefined;
    if (back) this.stop();
    else this.session.toNewest();
    return back;
  }

  /** What was pulled since the last frame is looked up once: a wheel turns faster than the screen. */
  #followPull(): void {
    if (this.#pulledToS === undefined) return;
    this.session.pullTo(this.#pulledToS);
    this.#pulledToS = undefined;
  }

  /** Begins a loop anew. */
  beginLoop(): void {
    this.#loopedMs = undefined;
  }

  /** Shows a span again and again, at the speed that is set. */
  loop({ fromS, toS }: { readonly fromS: number; readonly toS: number }): void {
    this.stop();
    this.#loopedMs ??= this.#wallMs;
    const { slowed } = this.clock;
    const lengthMs = (toS - fromS) * slowed * 1000;
    const elapsed = (this.#wallMs - this.#loopedMs) % (lengthMs + LOOP_REST_MS);
    this.session.pullTo(fromS + Math.min(elapsed, lengthMs) / 1000 / slowed);
  }
}
