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
import { quantityText } from '../units/quantity-text.ts';
import { Address } from './address.ts';
import type { BenchPainter } from './bench-painter.ts';
import { BenchSurface } from './bench-surface.ts';
import { BenchTime } from './bench-time.ts';
import { benchView } from './bench-view.ts';
import type { Clock } from './clock.ts';
import { deviceStorage, lessonLeftOpen } from './device-storage.ts';
import { focusSetting } from './focus-setting.ts';
import { LessonDoor } from './lesson-door.ts';
import { touchesBench } from './lesson-lock.ts';
import { linkedOf, linkedState } from './linked-page.ts';
import type { PageDoor } from './page-door.ts';
import { type PageState, startingState } from './page-state.ts';
import type { Drawing } from './pictures.ts';
import { gravityAt, PLACES } from './places.ts';
import { takeRecord } from './record-in-hand.ts';
import { RunFiles } from './run-files.ts';
import { SecondPaperDesk } from './second-paper-desk.ts';
import { SettingsDesk } from './settings-desk.ts';
import { slipFigures } from './slip-figures.ts';
import { TriggerDesk } from './trigger-desk.ts';
import { whatChanged } from './what-changed.ts';

/** The key that stays pressed while a motion lasts that no key asked for. */
const BY_MOTION: Readonly<Record<string, HandlingName | undefined>> = { held: 'hold', free: 'drop' };

export class BenchPage implements PageDoor {
  readonly #host: HTMLElement;
  readonly #time: BenchTime;
  #state: PageState;
  #surface!: BenchSurface;
  readonly #second: SecondPaperDesk;
  #active: HandlingName | undefined = 'hold';
  /** What a key asked for last; it leads until a hand takes over. */
  #asked: HandlingName | undefined;
  /** Gravity before a push in weightless space [m/s²], to come back with the next handling. */
  #gravityBeforeSpace: number | undefined;
  #shownBeforeS = 0;
  /** The last frame showed a stretch of time: standing still, an instant is drawn once more. */
  #blurred = false;
  #slowedBefore: number | undefined;
  #eventCount = 0;
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
      this.#render();
      void focusSetting(this.#host, setting);
    },
  });
  readonly #settings = new SettingsDesk(this, {
    settled: () => this.#settled(),
    line: (line, shown) => this.#act({ what: 'line', line, shown }),
    slow: (slowdown) => {
      this.#lessons.desk?.slowed(slowdown);
      if (slowdown > this.clock.slowed) this.#done('slow');
      this.#time.setSlowed(slowdown);
    },
    trigger: (name, value) => this.#trigger.set(name, value),
    field: (name) => {
      const [handling] = name.split('.');
      if (handling === this.#asked && (handling === 'shake' || handling === 'spin')) this.#handle(handling);
    },
  });
  readonly #files = new RunFiles(this, {
    linked: () => linkedOf(this),
    taken: (reachedS) => {
      this.#begun();
      this.#time.replay({ reachedS, shownS: null });
    },
  });

  /** How much drawing is worth; to be set before `build`. */
  drawing: Drawing = 'full';

  constructor(host: HTMLElement, session: Session = new Session(), wallMs = 0) {
    this.#host = host;
    this.#second = new SecondPaperDesk(this, host);
    this.#time = new BenchTime(session, wallMs, (notice) => this.say(notice));
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
    this.#render();
    const layout = this.#host.querySelector<BenchLayout>('bench-layout')!;
    layout.addEventListener('act', (event) => this.#at(event, () => this.#act(event.detail)));
    layout.addEventListener('setting', (event) => this.#at(event, () => this.#set(event.detail)));
    await layout.updateComplete;
    this.#surface = new BenchSurface(this.#host, this, this.drawing, {
      wallOf: (event) => this.wallOf(event),
      pull: (timeS) => this.#pull(timeS),
      mayHold: () => !this.#lessons.refusesHand(),
      held: (holds, wallMs) => this.#held(holds, wallMs),
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
    this.#followEvents();
    this.#lessons.desk?.frame(wallMs);
  }

  #draw(wallMs: number): void {
    const session = this.session;
    const reached = this.nowS;
    const changed = this.#dirty;
    if (changed) this.#render();
    const snapshot = session.look(reached);
    // Nothing new to see: a bench that stands still costs nothing.
    if (
      !changed &&
      snapshot.timeS === this.#shownBeforeS &&
      !this.#blurred &&
      this.#surface.pictures.settled &&
      this.#surface.painter.measured
    )
      return;
    const sinceS = Math.max(0, snapshot.timeS - this.#shownBeforeS);
    this.#surface.painter.paint(session, this.#state, {
      wallMs,
      nowS: reached,
      sinceS,
      snapshot,
      roomArrows: new Set(),
      sketch: this.#lessons.desk?.sketch,
      notes: this.#lessons.desk?.notes ?? [],
    });
    this.#blurred = sinceS > 0;
    this.#shownBeforeS = snapshot.timeS;
  }

  // ——— what the controls ask ———

  /** Does what an event asks, at the wall time of the event: the frame rate must leave no trace. */
  #at(event: Event, doIt: () => void): void {
    this.#time.comeTo(this.wallOf(event));
    doIt();
  }

  #act(act: Act): void {
    const session = this.session;
    if (this.#lessons.refuses(act) || (this.#time.replays && this.#replays(act))) return;
    switch (act.what) {
      case 'handle':
        this.#handle(act.handling);
        break;
      case 'show handling':
        this.change({ handling: act.handling });
        break;
      case 'pause':
        this.#time.stop();
        break;
      case 'go on':
        this.#goOn();
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
    if (!this.#lessons.refuses(setting)) this.#settings.set(setting);
  }

  #handle(kind: HandlingName): void {
    const session = this.session;
    const { fields, record } = this.#state;
    this.change({ handling: kind, notice: '' });
    const handling = handlingFrom(kind, fields, record?.motion);
    if (!handling) {
      this.change({ sheet: 'records', folded: false, notice: 'Choose a recorded file first.' });
      return;
    }
    this.#goOn();
    this.#inSpace(kind === 'push' && fields['push.where'] === 'space');
    const carriedToS = session.handle(handling, this.eventRunS);
    // Nobody wants to watch ten times slowed how it is carried back to its place.
    this.#time.hurryTo(carriedToS);
    this.#active = kind;
    this.#asked = kind;
    if (kind === 'drop') this.#done('drop');
  }

  /** Out in weightless space, or back to where it was. */
  #inSpace(wanted: boolean): void {
    const { session } = this;
    const { gravityMS2 } = session.settings;
    if (wanted && gravityMS2 !== 0) {
      this.#gravityBeforeSpace = gravityMS2;
      session.set({ gravityMS2: 0 }, false, this.eventRunS);
      this.change({ place: 'space' });
    } else if (!wanted && this.#gravityBeforeSpace !== undefined) {
      const back = this.#gravityBeforeSpace;
      this.#gravityBeforeSpace = undefined;
      if (gravityMS2 !== 0) return;
      session.set({ gravityMS2: back }, false, this.eventRunS);
      const place = PLACES.find((each) => gravityAt(each) === back)?.id ?? '';
      this.change({
        place,
        notice: `Back from weightless space: gravity is ${quantityText(back, 'acceleration', 'm/s²')} again.`,
      });
    }
  }

  /** Goes on: from where the paper was pulled back to, as a new run, or simply on. */
  #goOn(): void {
    if (this.#state.looping) this.change({ looping: false });
    if (this.#time.goOn()) this.#eventCount = this.session.run.world.events.all.length;
    this.#dirty = true;
  }

  #choose(name: StartingBenchName): void {
    const bench = STARTING_BENCHES[name];
    const { gravityMS2, dropHeightM } = this.session.settings;
    this.session.choose({ ...bench.settings, gravityMS2, dropHeightM });
    this.#time.setSlowed(bench.slowed);
    this.change({ spanS: bench.paperSpanS });
    this.#begun();
  }

  /** A run has begun anew. */
  #begun(): void {
    this.#time.follow();
    this.#time.start();
    this.#active = 'hold';
    this.#asked = undefined;
    this.#eventCount = 0;
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
    if (this.#time.pull(timeS)) this.#lessons.desk?.pulledBack(timeS);
    this.#dirty = true;
  }

  #slept(): void {
    if (document.hidden) {
      this.#time.stop();
      this.change({ notice: 'The page was hidden: the run is paused.' });
    }
  }

  /** Things that happen change what the page says. */
  #followEvents(): void {
    const { all } = this.session.run.world.events;
    if (all.length === this.#eventCount) return;
    const fresh = all.slice(this.#eventCount);
    this.#eventCount = all.length;
    if (fresh.some(({ kind }) => kind === 'touch')) this.#done('look');
    if (fresh.every(({ kind }) => kind === 'stop hit')) return;
    for (const event of fresh) if (event.kind === 'motion') this.#active = this.#asked ?? BY_MOTION[event.motion];
    this.#dirty = true;
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
    const session = this.session;
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
    void this.#second.draw();
  }

  #markedFigures() {
    const { marked, lines, unit } = this.#state;
    if (!marked) return undefined;
    const line = lines.find(({ id, shown }) => shown && id === 'mass') ? 'mass' : 'felt';
    const channel = line === 'mass' ? CHANNEL.reading : CHANNEL.specificForce;
    const figures = spanFigures(this.session.run.tape, channel, marked.fromS, marked.toS);
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
    this.#time.comeTo(wallMs);
    if (holds) {
      this.#goOn();
      this.#slowedBefore = this.clock.slowed;
      this.#time.setSlowed(1);
      this.#active = undefined;
      this.#asked = undefined;
      this.#done('grab');
    } else if (this.#slowedBefore !== undefined) {
      this.#time.setSlowed(this.#slowedBefore);
      this.#slowedBefore = undefined;
    }
    this.#dirty = true;
  }
}
