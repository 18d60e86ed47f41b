/** The page: wires session, clock, pictures and controls. What happens is decided elsewhere. */
import { render } from 'lit';
import type { Linked } from '../exchange/link.ts';
import { spanFigures } from '../plot/span-figures.ts';
import { CHANNEL } from '../session/bench-run.ts';
import { handlingFrom } from '../session/handling-values.ts';
import { runSentence } from '../session/sentence.ts';
import { Session } from '../session/session.ts';
import type { StartingBenchName } from '../session/settings.ts';
import { STARTING_BENCHES } from '../session/starting-benches.ts';
import type { BenchLayout } from '../ui/bench-layout.ts';
import type { Act, HandlingName, Setting } from '../ui/ui-events.ts';
import { Address } from './address.ts';
import type { BenchPainter } from './bench-painter.ts';
import { BenchSurface } from './bench-surface.ts';
import { benchView } from './bench-view.ts';
import { Clock } from './clock.ts';
import { deviceStorage, lessonLeftOpen } from './device-storage.ts';
import { focusSetting } from './focus-setting.ts';
import { LessonDoor } from './lesson-door.ts';
import { touchesBench } from './lesson-lock.ts';
import type { PageDoor } from './page-door.ts';
import { type PageState, startingState } from './page-state.ts';
import type { Drawing } from './pictures.ts';
import { takeRecord } from './record-in-hand.ts';
import { RunFiles } from './run-files.ts';
import { SettingsDesk } from './settings-desk.ts';
import { slipFigures } from './slip-figures.ts';
import { TriggerDesk } from './trigger-desk.ts';
import { whatChanged } from './what-changed.ts';

/** Ticks that one frame may take: more, and the run would fall ever further behind. */
const MOST_TICKS_A_FRAME = 6000;
/** A gap between frames that is worth a word [s of wall time]. */
const LONG_GAP_S = 2;
/** Ticks of a link's run that are replayed in one frame. */
const REPLAYED_A_FRAME = 20_000;
/** A loop over a marked span rests this long on its end [ms]. */
const LOOP_REST_MS = 400;

export class BenchPage implements PageDoor {
  readonly clock: Clock;
  readonly #host: HTMLElement;
  readonly #abort = new AbortController();
  #session: Session;
  #state: PageState;
  #surface!: BenchSurface;
  #active: HandlingName | undefined = 'hold';
  #nowS = 0;
  #shownBeforeS = 0;
  #loopedMs: number | undefined;
  #slowedBefore: number | undefined;
  #wallMs = 0;
  #eventCount = 0;
  #dirty = true;
  /** How far a link's run is still to be replayed. */
  #replay: { readonly reachedS: number; readonly shownS: number | null } | undefined;
  readonly #address = new Address();
  readonly #trigger = new TriggerDesk(this);
  readonly #lessons = new LessonDoor(this, {
    act: (act) => this.#act(act),
    set: (setting) => this.#set(setting),
    pull: (timeS) => this.#pull(timeS),
    begun: () => {
      this.#replay = undefined;
      this.#begun();
    },
    focus: (setting) => {
      this.#render();
      void focusSetting(this.#host, setting);
    },
  });
  readonly #settings = new SettingsDesk(this, {
    settled: () => this.#settled(),
    line: (line, shown) => this.#act({ what: 'line', line, shown }),
    slow: (slowdown) => {
      this.#lessons.desk?.slowed(slowdown);
      this.clock.setSlowed(slowdown, this.#wallMs);
      this.#done('slow');
    },
    trigger: (name, value) => this.#trigger.set(name, value),
  });
  readonly #files = new RunFiles(this, {
    linked: () => this.#linked(),
    taken: (reachedS) => {
      this.#begun();
      this.#replay = { reachedS, shownS: null };
    },
  });

  /** How much drawing is worth; to be set before `build`. */
  drawing: Drawing = 'full';

  constructor(host: HTMLElement, session: Session = new Session(), wallMs = 0) {
    this.#host = host;
    this.#session = session;
    this.clock = new Clock(session.bench.slowed);
    this.#state = startingState(session.bench.paperSpanS);
    this.#nowS = session.run.world.timeS;
    this.clock.set(this.#nowS, wallMs);
    this.#wallMs = wallMs;
  }

  get session(): Session {
    return this.#session;
  }

  /** Wall time of an event [ms], on the clock of the frames. */
  wallOf: (event: Event) => number = ({ timeStamp }) => timeStamp;

  get nowS(): number {
    return this.#nowS;
  }

  get painter(): BenchPainter {
    return this.#surface.painter;
  }

  get state(): PageState {
    return this.#state;
  }

  get wallMs(): number {
    return this.#wallMs;
  }

  /** The run so far as a scenario that the headless run replays to the same hash. */
  get scenario(): string {
    return this.#files.scenario;
  }

  /** A page that brings back what a link holds; the run is replayed before anything else goes on. */
  static fromLink(host: HTMLElement, { run, settings, reachedS, page }: Linked, wallMs: number): BenchPage {
    const opened = new BenchPage(host, Session.replay(run, settings), wallMs);
    const { theme, spanS, unit, signTurned, lines, slowed, shownS } = page;
    opened.clock.setSlowed(slowed, wallMs);
    opened.#replay = { reachedS, shownS };
    const shown = new Set<string>(lines);
    opened.change({
      theme,
      spanS,
      unit,
      signTurned,
      lines: opened.#state.lines.map((line) => ({ ...line, shown: shown.has(line.id) })),
      notice: 'Replaying the run of the link.',
    });
    return opened;
  }

  /** Puts the page together; afterwards `frame` may be called. */
  async build(): Promise<void> {
    this.#render();
    const layout = this.#host.querySelector<BenchLayout>('bench-layout')!;
    const options = { signal: this.#abort.signal };
    layout.addEventListener('act', (event) => this.#at(event, () => this.#act(event.detail)), options);
    layout.addEventListener('setting', (event) => this.#at(event, () => this.#set(event.detail)), options);
    await layout.updateComplete;
    this.#surface = new BenchSurface(this.#host, this, this.drawing, {
      wallOf: (event) => this.wallOf(event),
      pull: (timeS) => this.#pull(timeS),
      mayHold: () => !this.#lessons.refusesHand(),
      held: (holds, wallMs) => this.#held(holds, wallMs),
    });
    document.addEventListener('visibilitychange', () => this.#slept(), options);
    this.clock.start(this.#wallMs);
    this.#applyTheme();
    if (lessonLeftOpen(deviceStorage()) !== undefined) this.#openSheet('lesson');
  }

  /** Says something once, where the sentence of the run stands. */
  say(notice: string): void {
    this.change({ notice });
  }

  /** Runs and draws up to a wall time [ms]. */
  frame(wallMs: number): void {
    this.run(wallMs);
    this.#draw(wallMs);
    if (!this.#replay && !this.#surface.holds) void this.#address.keep(wallMs, () => this.#linked());
  }

  /** Runs up to a wall time [ms] without drawing. */
  run(wallMs: number): void {
    this.#wallMs = wallMs;
    const session = this.#session;
    if (this.#replay) this.#replayOn(this.#replay, wallMs);
    const { runS, droppedS } = this.clock.frame(wallMs);
    const reached = session.advanceTo(runS, MOST_TICKS_A_FRAME);
    if (reached < runS - session.run.world.run.tick) this.clock.fallBackTo(reached, wallMs);
    if (droppedS * this.clock.slowed > LONG_GAP_S) this.change({ notice: 'The page slept: the run waited.' });
    this.#nowS = reached;
    if (reached >= session.endS && !this.#state.notice)
      this.change({ notice: 'The paper is at its end: begin a fresh run.' });
    this.#trigger.watch();
    if (this.#state.looping) this.#loop(wallMs);
    this.#followEvents();
    this.#lessons.desk?.frame(wallMs);
  }

  #draw(wallMs: number): void {
    const session = this.#session;
    const reached = this.#nowS;
    const changed = this.#dirty;
    if (changed) this.#render();
    const snapshot = session.look(reached);
    // Nothing new to see: a bench that stands still costs nothing.
    if (
      !changed &&
      snapshot.timeS === this.#shownBeforeS &&
      this.#surface.pictures.settled &&
      this.#surface.painter.measured
    )
      return;
    this.#surface.painter.paint(session, this.#state, {
      wallMs,
      nowS: reached,
      sinceS: Math.max(0, snapshot.timeS - this.#shownBeforeS),
      snapshot,
      roomArrows: new Set(),
      sketch: this.#lessons.desk?.sketch,
      notes: this.#lessons.desk?.notes ?? [],
    });
    this.#shownBeforeS = snapshot.timeS;
  }

  /** Brings a link's run up to where it had come, some of it in each frame; then it stands still there. */
  #replayOn({ reachedS, shownS }: { reachedS: number; shownS: number | null }, wallMs: number): void {
    this.#nowS = this.#session.advanceTo(reachedS, REPLAYED_A_FRAME);
    this.clock.stop(wallMs);
    this.clock.set(this.#nowS, wallMs);
    if (this.#nowS < reachedS) return;
    this.#replay = undefined;
    if (shownS !== null) this.#session.pullTo(shownS);
    this.change({ notice: 'The run, as it stood. It is paused: go on when you like.' });
  }

  /** What goes into the address. */
  #linked(): Linked {
    const { theme, spanS, unit, signTurned, lines } = this.#state;
    const session = this.#session;
    return {
      run: session.asRun(true),
      settings: session.settings,
      reachedS: this.#nowS,
      page: {
        theme,
        spanS,
        unit,
        signTurned,
        lines: lines.filter(({ shown }) => shown).map(({ id }) => id),
        slowed: this.clock.slowed,
        shownS: session.pulledBack ? session.shownS(this.#nowS) : null,
      },
    };
  }

  dispose(): void {
    this.#abort.abort();
    this.#surface.dispose();
  }

  // ——— what the controls ask ———

  /** Does what an event asks, at the wall time of the event: the frame rate must leave no trace. */
  #at(event: Event, doIt: () => void): void {
    this.#comeTo(this.wallOf(event));
    doIt();
  }

  /** Lets the run come to a wall time [ms], so that what is asked meets the same state at every frame rate. */
  #comeTo(wallMs: number): void {
    this.#wallMs = Math.max(this.#wallMs, wallMs);
    if (!this.#replay) this.#nowS = this.#session.advanceTo(this.eventRunS, MOST_TICKS_A_FRAME);
  }

  #act(act: Act): void {
    const session = this.#session;
    if (this.#lessons.refuses(act) || (this.#replay && this.#replays(act))) return;
    switch (act.what) {
      case 'handle':
        this.#handle(act.handling);
        break;
      case 'show handling':
        this.change({ handling: act.handling });
        break;
      case 'pause':
        this.clock.stop(this.#wallMs);
        break;
      case 'go on':
        this.#goOn();
        break;
      case 'one tick on':
        this.#oneTickOn();
        break;
      case 'fresh run':
        session.fresh();
        this.#begun();
        break;
      case 'clear':
        session.clear();
        this.#begun();
        break;
      case 'undo':
      case 'redo':
        session[act.what](this.eventRunS);
        this.#settled();
        break;
      case 'line':
        this.change({
          lines: this.#state.lines.map((line) => (line.id === act.line ? { ...line, shown: act.shown } : line)),
        });
        break;
      case 'turn sign':
        this.change({ signTurned: !this.#state.signTurned });
        break;
      case 'fold':
        this.change({ folded: act.folded });
        break;
      case 'open sheet':
        this.#openSheet(act.sheet);
        break;
      case 'starting bench':
        this.#choose(act.bench as StartingBenchName);
        break;
      case 'theme':
        this.change({ theme: act.theme });
        this.#applyTheme();
        break;
      case 'stage':
        this.change({ stage: act.on });
        this.#applyTheme();
        break;
      case 'letters':
        this.change({ letters: act.on });
        break;
      case 'file':
        takeRecord(act.file).then((record) => this.change({ record, handling: 'recorded' }));
        break;
      case 'loop span':
        this.#loopedMs = undefined;
        this.change({ looping: act.on });
        if (!act.on) session.toNewest();
        break;
      case 'clear span':
        this.change({ marked: undefined, looping: false });
        session.toNewest();
        break;
      case 'arm trigger':
        this.#trigger.arm(act.on);
        break;
      case 'save run':
        this.#files.save();
        break;
      case 'copy link':
        void this.#files.copyLink();
        break;
      case 'open run':
        void this.#files.open(act.file);
        break;
      case 'bring back':
        this.#bringBack(act.index);
        break;
      case 'skip':
        this.#openSheet('lesson');
        break;
      case 'lesson':
        this.#lessons.take(act.wish);
        break;
    }
    this.#dirty = true;
  }

  #set(setting: Setting): void {
    this.#dirty = true;
    if (!this.#lessons.refuses(setting)) this.#settings.set(setting);
  }

  /** Run time of the event that is being dealt with [s]. */
  get eventRunS(): number {
    return this.clock.runTimeOf(this.#wallMs);
  }

  #handle(kind: HandlingName): void {
    const session = this.#session;
    const { fields, record } = this.#state;
    this.change({ handling: kind, notice: '' });
    const handling = handlingFrom(kind, fields, record?.motion);
    if (!handling) {
      this.change({ sheet: 'records', folded: false, notice: 'Choose a recorded file first.' });
      return;
    }
    this.#goOn();
    if (kind === 'push' && fields['push.where'] === 'space' && session.settings.gravityMS2 !== 0) {
      session.set({ gravityMS2: 0 }, false, this.eventRunS);
      this.change({ place: 'space' });
    }
    session.handle(handling, this.eventRunS);
    this.#active = kind;
    if (kind === 'drop') this.#done('drop');
  }

  /** Goes on: from where the paper was pulled back to, as a new run, or simply on. */
  #goOn(): void {
    const session = this.#session;
    if (this.#state.looping) this.change({ looping: false });
    if (session.pulledBack) {
      session.goOn();
      this.#nowS = session.run.world.timeS;
      this.clock.set(this.#nowS, this.#wallMs);
      this.#eventCount = session.run.world.events.all.length;
    }
    this.clock.start(this.#wallMs);
    this.#dirty = true;
  }

  #oneTickOn(): void {
    this.clock.stop(this.#wallMs);
    const { world } = this.#session.run;
    if (this.#session.pulledBack) {
      this.#session.pullTo(this.#session.shownS(this.#nowS) + world.run.tick);
      return;
    }
    this.clock.set(world.timeS + world.run.tick / 2, this.#wallMs);
  }

  #choose(name: StartingBenchName): void {
    const bench = STARTING_BENCHES[name];
    const { gravityMS2, dropHeightM } = this.#session.settings;
    this.#session.choose({ ...bench.settings, gravityMS2, dropHeightM });
    this.clock.setSlowed(bench.slowed, this.#wallMs);
    this.change({ spanS: bench.paperSpanS });
    this.#begun();
  }

  /** A run has begun anew. */
  #begun(): void {
    this.#nowS = this.#session.run.world.timeS;
    this.clock.set(this.#nowS, this.#wallMs);
    this.clock.start(this.#wallMs);
    this.#active = 'hold';
    this.#eventCount = 0;
    this.#trigger.arm(false);
    this.change({ marked: undefined, looping: false, notice: '' });
  }

  /** Undo or redo may have begun a run of another bench. */
  #settled(): void {
    const { world } = this.#session.run;
    if (world.timeS < this.#nowS - world.run.tick) this.#begun();
  }

  // ——— time ———

  #pull(timeS: number): void {
    if (timeS >= this.#nowS - 1e-9) {
      this.#session.toNewest();
    } else {
      this.#session.pullTo(timeS);
      this.clock.stop(this.#wallMs);
      this.#lessons.desk?.pulledBack(timeS);
    }
    this.#dirty = true;
  }

  #loop(wallMs: number): void {
    const { marked } = this.#state;
    if (!marked) return;
    this.clock.stop(wallMs);
    this.#loopedMs ??= wallMs;
    const lengthMs = (marked.toS - marked.fromS) * this.clock.slowed * 1000;
    const elapsed = (wallMs - this.#loopedMs) % (lengthMs + LOOP_REST_MS);
    const at = marked.fromS + Math.min(elapsed, lengthMs) / 1000 / this.clock.slowed;
    this.#session.pullTo(at);
  }

  #slept(): void {
    if (document.hidden) {
      this.clock.stop(this.#wallMs);
      this.change({ notice: 'The page was hidden: the run is paused.' });
    }
  }

  /** Things that happen change what the page says. */
  #followEvents(): void {
    const { all } = this.#session.run.world.events;
    if (all.length === this.#eventCount) return;
    const fresh = all.slice(this.#eventCount);
    this.#eventCount = all.length;
    if (fresh.some(({ kind }) => kind === 'touch')) this.#done('look');
    if (fresh.every(({ kind }) => kind === 'stop hit')) return;
    for (const event of fresh) if (event.kind === 'motion') this.#active = activeFor(event.motion, this.#active);
    this.#dirty = true;
  }

  #openSheet(sheet: string): void {
    // The short way in has had its turn once the lessons lie open.
    const wayInSkipped = this.#state.wayInSkipped || sheet === 'lesson';
    this.change({ sheet, folded: false, wayInSkipped });
    if (sheet === 'lesson') void this.#lessons.open();
  }

  /** Shows a kept run again, standing still at its newest ink. */
  #bringBack(index: number): void {
    const session = this.#session;
    session.bringBack(index);
    this.#begun();
    this.clock.stop(this.#wallMs);
    this.#eventCount = session.run.world.events.all.length;
    this.change({ spanS: session.bench.paperSpanS, runNote: 'Brought back. The run that stood here is kept instead.' });
  }

  /** While a run is replayed nothing may touch it. */
  #replays(act: Act): boolean {
    if (!touchesBench(act)) return false;
    this.change({ notice: 'The run is being replayed: a moment.' });
    return true;
  }

  // ——— drawing ———

  #render(): void {
    this.#dirty = false;
    const session = this.#session;
    const { run } = session;
    const sentence = runSentence(run.world.events.all, (timeS) => run.readingAt(timeS));
    render(
      benchView(this.#state, {
        session,
        slowed: this.clock.slowed,
        paused: !this.clock.running,
        active: this.#active,
        span: this.#markedFigures(),
        undoWhat: whatChanged(session.undoTo, session.settings),
        redoWhat: whatChanged(session.redoTo, session.settings),
        sentence,
        found: sentence,
        lessons: this.#lessons.view,
        covered: this.#lessons.desk?.covered ?? false,
      }),
      this.#host,
    );
  }

  #markedFigures() {
    const { marked, lines, unit } = this.#state;
    if (!marked) return undefined;
    const line = lines.find(({ id, shown }) => shown && id === 'mass') ? 'mass' : 'felt';
    const channel = line === 'mass' ? CHANNEL.reading : CHANNEL.specificForce;
    const figures = spanFigures(this.#session.run.tape, channel, marked.fromS, marked.toS);
    return figures && slipFigures(figures, line === 'mass' ? 'what the mass did' : 'what happened', unit);
  }

  change(changed: Partial<PageState>): void {
    this.#state = { ...this.#state, ...changed };
    this.#dirty = true;
  }

  #done(step: 'drop' | 'look' | 'slow' | 'grab'): void {
    if (this.#state.firstSteps.has(step)) return;
    this.change({ firstSteps: new Set([...this.#state.firstSteps, step]) });
  }

  #applyTheme(): void {
    const root = document.documentElement;
    root.dataset['theme'] = this.#state.theme;
    root.toggleAttribute('data-stage', this.#state.stage);
    this.#surface.pictures.setTheme(this.#state.theme);
    this.#surface.painter.resized();
  }

  /** While a hand leads it, time runs as in life: slowed, the housing would lag behind the hand. */
  #held(holds: boolean, wallMs: number): void {
    this.#comeTo(wallMs);
    if (holds) {
      this.#goOn();
      this.#slowedBefore = this.clock.slowed;
      this.clock.setSlowed(1, wallMs);
      this.#active = undefined;
      this.#done('grab');
    } else if (this.#slowedBefore !== undefined) {
      this.clock.setSlowed(this.#slowedBefore, wallMs);
      this.#slowedBefore = undefined;
    }
    this.#dirty = true;
  }
}

/** The key that stays pressed while a motion lasts. */
function activeFor(motion: string, before: HandlingName | undefined): HandlingName | undefined {
  if (motion === 'held') return 'hold';
  if (motion === 'free') return before === 'throw' ? 'throw' : 'drop';
  if (motion === 'hand') return before;
  return before;
}
