/** The page: wires session, clock, pictures and controls. What happens is decided elsewhere. */
import type { Linked } from '../exchange/link.ts';
import { Session } from '../session/session.ts';
import type { StartingBenchName } from '../session/settings.ts';
import { STARTING_BENCHES } from '../session/starting-benches.ts';
import type { BenchLayout } from '../ui/bench-layout.ts';
import type { FirstStep } from '../ui/short-way-in.ts';
import type { Act, Setting } from '../ui/ui-events.ts';
import { Address } from './address.ts';
import { BenchFrames } from './bench-frames.ts';
import type { BenchPainter } from './bench-painter.ts';
import { BenchSurface } from './bench-surface.ts';
import { BenchTime } from './bench-time.ts';
import type { Clock } from './clock.ts';
import { deviceStorage, lessonLeftOpen } from './device-storage.ts';
import { focusSetting } from './focus-setting.ts';
import { HandlingDesk } from './handling-desk.ts';
import { LessonDoor } from './lesson-door.ts';
import { touches } from './lesson-lock.ts';
import { linkedOf, linkedState } from './linked-page.ts';
import type { PageDoor } from './page-door.ts';
import { type PageState, startingState } from './page-state.ts';
import type { Drawing } from './pictures.ts';
import { placeOf } from './places.ts';
import { takeRecord } from './record-in-hand.ts';
import { RunFiles } from './run-files.ts';
import { SettingsDesk } from './settings-desk.ts';
import { TriggerDesk } from './trigger-desk.ts';

const PULLED_BACK =
  'Pulled back: everything shows that instant. Going on begins a new run from there; a drag with Shift held marks a span.';

export class BenchPage implements PageDoor {
  readonly #host: HTMLElement;
  readonly #time: BenchTime;
  #state: PageState;
  #surface!: BenchSurface;
  readonly #handling: HandlingDesk;
  readonly #frames: BenchFrames;
  #dirty = true;
  readonly #address = new Address();
  readonly #trigger = new TriggerDesk(this);
  readonly #lessons = new LessonDoor(this, {
    act: (act) => this.#act(act),
    set: (setting) => this.#set(setting),
    pull: (timeS) => this.#pull(timeS),
    begun: () => {
      this.#time.replay(undefined);
      this.#begun();
    },
    focus: (setting) => {
      this.#frames.render();
      void focusSetting(this.#host, setting);
    },
  });
  readonly #settings = new SettingsDesk(this, {
    settled: () => this.#settled(),
    line: (line, shown) => this.#act({ what: 'line', line, shown }),
    slow: (slowdown) => {
      this.#lessons.desk?.slowed(slowdown);
      if (slowdown > this.clock.slowed) this.#done('slow');
      this.#handling.slowed(slowdown);
    },
    trigger: (name, value) => this.#trigger.set(name, value),
    field: (name) => this.#handling.field(name),
  });
  readonly #files = new RunFiles(this, {
    linked: () => linkedOf(this),
    taken: (reachedS) => {
      this.#begun();
      this.#stands();
      this.#time.replay({ reachedS, shownS: null });
    },
  });

  /** How much drawing is worth; to be set before `build`. */
  drawing: Drawing = 'full';

  constructor(host: HTMLElement, session: Session = new Session(), wallMs = 0) {
    this.#host = host;
    this.#time = new BenchTime(session, wallMs, (notice) => this.say(notice));
    this.#handling = new HandlingDesk(this, this.#time, {
      inSpace: (wanted) => this.#settings.inSpace(wanted),
      done: (step) => this.#done(step),
    });
    this.#frames = new BenchFrames(host, this, this.#handling, this.#lessons);
    this.#state = startingState(session.bench.paperSpanS);
  }

  get session(): Session {
    return this.#time.session;
  }

  /** Wall time of an event [ms], on the clock of the frames. */
  wallOf: (event: Event) => number = ({ timeStamp }) => timeStamp;

  get clock(): Clock {
    return this.#time.clock;
  }

  get nowS(): number {
    return this.#time.nowS;
  }

  get painter(): BenchPainter {
    return this.#surface.painter;
  }

  get state(): PageState {
    return this.#state;
  }

  get wallMs(): number {
    return this.#time.wallMs;
  }

  get eventRunS(): number {
    return this.#time.eventRunS;
  }

  /** The run so far as a scenario that the headless run replays to the same hash. */
  get scenario(): string {
    return this.#files.scenario;
  }

  /** A page that brings back what a link holds; the run is replayed before anything else goes on. */
  static fromLink(host: HTMLElement, { run, settings, reachedS, page }: Linked, wallMs: number): BenchPage {
    const opened = new BenchPage(host, Session.replay(run, settings), wallMs);
    opened.#time.setSlowed(page.slowed);
    opened.#time.replay({ reachedS, shownS: page.shownS });
    opened.change(linkedState(page, opened.#state));
    return opened;
  }

  /** Puts the page together; afterwards `frame` may be called. */
  async build(): Promise<void> {
    this.#frames.render();
    const layout = this.#host.querySelector<BenchLayout>('bench-layout')!;
    layout.addEventListener('act', (event) => this.#at(event, () => this.#act(event.detail)));
    layout.addEventListener('setting', (event) => this.#at(event, () => this.#set(event.detail)));
    await layout.updateComplete;
    this.#surface = new BenchSurface(this.#host, this, this.drawing, {
      wallOf: (event) => this.wallOf(event),
      pull: (timeS) => this.#pull(timeS),
      mayHold: () => !this.#refusesHand(),
      held: (holds, wallMs) => this.#handling.held(holds, wallMs),
    });
    document.addEventListener('visibilitychange', () => this.#slept());
    this.#time.start();
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
    if (!this.#time.replays && !this.#surface.holds) void this.#address.keep(wallMs, () => linkedOf(this));
  }

  /** Runs up to a wall time [ms] without drawing. */
  run(wallMs: number): void {
    this.#time.frame(wallMs);
    const { session, nowS: reached } = this;
    if (reached >= session.endS && !this.#state.notice)
      this.change({ notice: 'The paper is at its end: begin a fresh run.' });
    this.#trigger.watch();
    if (this.#state.looping && this.#state.marked) this.#time.loop(this.#state.marked);
    this.#handling.followEvents();
    this.#lessons.desk?.frame(wallMs);
  }

  #draw(wallMs: number): void {
    const changed = this.#dirty;
    this.#dirty = false;
    if (changed) this.#frames.render();
    this.#frames.paint(this.#surface, wallMs, changed);
  }

  // ——— what the controls ask ———

  /** Does what an event asks, at the wall time of the event: the frame rate must leave no trace. */
  #at(event: Event, doIt: () => void): void {
    this.#time.comeTo(this.wallOf(event));
    doIt();
  }

  #act(act: Act): void {
    const session = this.session;
    if (this.#refuses(act)) return;
    switch (act.what) {
      case 'handle':
        this.#handling.handle(act.handling);
        break;
      case 'show handling':
        this.change({ handling: act.handling });
        break;
      case 'pause':
        this.#time.stop();
        break;
      case 'go on':
        this.#handling.goOn();
        break;
      case 'one tick on':
        this.#time.oneTickOn();
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
        this.#time.beginLoop();
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
      case 'second paper':
        this.change({ secondPaper: act.subject });
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
    if (!this.#refuses(setting)) this.#settings.set(setting);
  }

  #choose(name: StartingBenchName): void {
    const bench = STARTING_BENCHES[name];
    const { gravityMS2, dropHeightM } = this.session.settings;
    this.session.choose({ ...bench.settings, gravityMS2, dropHeightM });
    this.#begun();
    this.#stands();
  }

  /** Another bench may stand there: paper, speed and place are its own. */
  #stands(): void {
    const { bench, settings } = this.session;
    this.#time.setSlowed(bench.slowed);
    this.change({
      spanS: bench.paperSpanS,
      place: placeOf(settings.gravityMS2),
      latitude: Number.NaN,
      placeHeightM: Number.NaN,
    });
  }

  /** A run has begun anew. */
  #begun(): void {
    this.#time.follow();
    this.#time.start();
    this.#handling.begun(false);
    this.#settings.elsewhere();
    this.#trigger.arm(false);
    this.change({ marked: undefined, looping: false, notice: '' });
  }

  /** Undo or redo may have begun a run of another bench. */
  #settled(): void {
    const { world } = this.session.run;
    if (world.timeS < this.nowS - world.run.tick) this.#begun();
  }

  // ——— time ———

  #pull(timeS: number): void {
    const back = this.#time.pull(timeS);
    if (back) this.#lessons.desk?.pulledBack(timeS);
    this.change({ notice: back ? PULLED_BACK : '' });
  }

  #slept(): void {
    if (document.hidden) {
      this.#time.stop();
      this.change({ notice: 'The page was hidden: the run is paused.' });
    }
  }

  #openSheet(sheet: string): void {
    // The short way in has had its turn once the lessons lie open.
    const wayInSkipped = this.#state.wayInSkipped || sheet === 'lesson';
    this.change({ sheet, folded: false, wayInSkipped });
    if (sheet === 'lesson') void this.#lessons.open();
    if (sheet === 'words') void import('./words-sheets.ts');
  }

  /** Shows a kept run again, standing still at its newest ink. */
  #bringBack(index: number): void {
    const session = this.session;
    session.bringBack(index);
    this.#begun();
    this.#time.stop();
    this.#handling.begun(true);
    this.#stands();
    this.change({ runNote: 'Brought back. The run that stood here is kept instead.' });
  }

  /** The bench may not be touched so: a lesson waits for a prediction, or a run is being replayed. Says why. */
  #refuses(asked: Act | Setting): boolean {
    return touches(asked) && this.#refusesHand();
  }

  #refusesHand(): boolean {
    if (this.#lessons.refusesHand()) return true;
    if (this.#time.replays) this.change({ notice: 'The run is being replayed: a moment.' });
    return this.#time.replays;
  }

  // ——— how the page stands ———

  change(changed: Partial<PageState>): void {
    this.#state = { ...this.#state, ...changed };
    this.#dirty = true;
  }

  #done(step: FirstStep): void {
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
}
