/** The page: wires session, clock, pictures and controls. What happens is decided elsewhere. */
import { render } from 'lit';
import type { Linked } from '../exchange/link.ts';
import { spanFigures } from '../plot/span-figures.ts';
import { TapePaper } from '../plot/tape-paper.ts';
import { scenarioText } from '../scenario/scenario-text.ts';
import { changeOf } from '../session/bench-limits.ts';
import { CHANNEL } from '../session/bench-run.ts';
import { handlingFrom } from '../session/handling-values.ts';
import { runSentence } from '../session/sentence.ts';
import { Session } from '../session/session.ts';
import { ROOM_AIR, type StartingBenchName } from '../session/settings.ts';
import { STARTING_BENCHES } from '../session/starting-benches.ts';
import { Trigger } from '../session/trigger.ts';
import type { BenchLayout } from '../ui/bench-layout.ts';
import type { Act, HandlingName, Setting } from '../ui/ui-events.ts';
import { Address } from './address.ts';
import { BenchPainter } from './bench-painter.ts';
import { benchView } from './bench-view.ts';
import { Clock } from './clock.ts';
import { deviceStorage, lessonLeftOpen } from './device-storage.ts';
import { focusSetting } from './focus-setting.ts';
import type { LessonDesk } from './lesson-desk.ts';
import { settingTouchesBench, touchesBench } from './lesson-lock.ts';
import { type PageState, startingState } from './page-state.ts';
import { type Drawing, Pictures } from './pictures.ts';
import { gravityAt, PLACES } from './places.ts';
import { PointerHand } from './pointer-hand.ts';
import { chooseOfRecord, takeRecord } from './record-in-hand.ts';
import { isLimited } from './slider-specs.ts';
import { slipFigures } from './slip-figures.ts';
import { whatChanged } from './what-changed.ts';

/** Ticks that one frame may take: more, and the run would fall ever further behind. */
const MOST_TICKS_A_FRAME = 6000;
/** A gap between frames that is worth a word [s of wall time]. */
const LONG_GAP_S = 2;
/** Ticks of a link's run that are replayed in one frame. */
const REPLAYED_A_FRAME = 20_000;
/** A loop over a marked span rests this long on its end [ms]. */
const LOOP_REST_MS = 400;

export class BenchPage {
  readonly #host: HTMLElement;
  readonly #clock: Clock;
  readonly #abort = new AbortController();
  #session: Session;
  #state: PageState;
  #painter!: BenchPainter;
  #paper!: TapePaper;
  #pictures!: Pictures;
  #hand: PointerHand | undefined;
  #active: HandlingName | undefined = 'hold';
  #trigger: Trigger | undefined;
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
  /** Fetched when the lesson sheet is first opened. */
  #lessons: LessonDesk | undefined;
  /** The run stands still until a prediction is stored. */
  #heldByLesson = false;

  /** How much drawing is worth; to be set before `build`. */
  drawing: Drawing = 'full';

  constructor(host: HTMLElement, session: Session = new Session(), wallMs = 0) {
    this.#host = host;
    this.#session = session;
    this.#clock = new Clock(session.bench.slowed);
    this.#state = startingState(session.bench.paperSpanS);
    this.#nowS = session.run.world.timeS;
    this.#clock.set(this.#nowS, wallMs);
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
    return this.#painter;
  }

  /** The run so far as a scenario that the headless run replays to the same hash. */
  get scenario(): string {
    return scenarioText(this.#session.asRun());
  }

  /** A page that brings back what a link holds; the run is replayed before anything else goes on. */
  static fromLink(host: HTMLElement, { run, settings, reachedS, page }: Linked, wallMs: number): BenchPage {
    const opened = new BenchPage(host, Session.replay(run, settings), wallMs);
    const { theme, spanS, unit, signTurned, lines, slowed, shownS } = page;
    opened.#clock.setSlowed(slowed, wallMs);
    opened.#replay = { reachedS, shownS };
    const shown = new Set<string>(lines);
    opened.#change({
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
    const layout = this.#find<BenchLayout>('bench-layout');
    const options = { signal: this.#abort.signal };
    layout.addEventListener('act', (event) => this.#at(event, () => this.#act(event.detail)), options);
    layout.addEventListener('setting', (event) => this.#at(event, () => this.#set(event.detail)), options);
    await layout.updateComplete;
    this.#paper = new TapePaper(this.#find('.paper-host'), {
      onMark: (marked, done) => this.#change({ marked, looping: done ? this.#state.looping : false }),
      onPull: (timeS) => this.#pull(timeS),
      onZoom: (spanS, endS) => {
        this.#change({ spanS });
        this.#pull(endS);
      },
      onEventPick: ({ timeS }) => this.#pull(timeS),
    });
    this.#makePictures();
    const observer = new ResizeObserver(() => this.#painter.resized());
    for (const area of ['riding', 'room', 'paper', 'rule'] as const) observer.observe(layout.area(area));
    window.addEventListener('scroll', () => this.#painter.resized(), { ...options, passive: true });
    document.addEventListener('visibilitychange', () => this.#slept(), options);
    this.#clock.start(this.#wallMs);
    this.#applyTheme();
    if (lessonLeftOpen(deviceStorage()) !== undefined) this.#act({ what: 'open sheet', sheet: 'lesson' });
  }

  /** Says something once, where the sentence of the run stands. */
  say(notice: string): void {
    this.#change({ notice });
  }

  /** Runs and draws up to a wall time [ms]. */
  frame(wallMs: number): void {
    this.run(wallMs);
    this.#draw(wallMs);
    if (!this.#replay && !this.#hand?.holds) void this.#address.keep(wallMs, () => this.#linked());
  }

  /** Runs up to a wall time [ms] without drawing. */
  run(wallMs: number): void {
    this.#wallMs = wallMs;
    const session = this.#session;
    if (this.#replay) this.#replayOn(this.#replay, wallMs);
    const { runS, droppedS } = this.#clock.frame(wallMs);
    const reached = session.advanceTo(runS, MOST_TICKS_A_FRAME);
    if (reached < runS - session.run.world.run.tick) this.#clock.fallBackTo(reached, wallMs);
    if (droppedS * this.#clock.slowed > LONG_GAP_S) this.#change({ notice: 'The page slept: the run waited.' });
    this.#nowS = reached;
    if (reached >= session.endS && !this.#state.notice)
      this.#change({ notice: 'The paper is at its end: begin a fresh run.' });
    if (this.#trigger?.watch(session.run.tape)) this.#triggered(this.#trigger);
    if (this.#state.looping) this.#loop(wallMs);
    this.#followEvents();
    this.#lessons?.frame(wallMs);
  }

  #draw(wallMs: number): void {
    const session = this.#session;
    const reached = this.#nowS;
    const changed = this.#dirty;
    if (changed) this.#render();
    const snapshot = session.look(reached);
    // Nothing new to see: a bench that stands still costs nothing.
    if (!changed && snapshot.timeS === this.#shownBeforeS && this.#pictures.settled && this.#painter.measured) return;
    this.#painter.paint(session, this.#state, {
      wallMs,
      nowS: reached,
      sinceS: Math.max(0, snapshot.timeS - this.#shownBeforeS),
      snapshot,
      roomArrows: new Set(),
      sketch: this.#lessons?.sketch,
      notes: this.#lessons?.notes ?? [],
    });
    this.#shownBeforeS = snapshot.timeS;
  }

  /** Brings a link's run up to where it had come, some of it in each frame; then it stands still there. */
  #replayOn({ reachedS, shownS }: { reachedS: number; shownS: number | null }, wallMs: number): void {
    this.#nowS = this.#session.advanceTo(reachedS, REPLAYED_A_FRAME);
    this.#clock.stop(wallMs);
    this.#clock.set(this.#nowS, wallMs);
    if (this.#nowS < reachedS) return;
    this.#replay = undefined;
    if (shownS !== null) this.#session.pullTo(shownS);
    this.#change({ notice: 'The run of the link, as it stood. It is paused: go on when you like.' });
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
        slowed: this.#clock.slowed,
        shownS: session.pulledBack ? session.shownS(this.#nowS) : null,
      },
    };
  }

  dispose(): void {
    this.#abort.abort();
    this.#hand?.dispose();
    this.#pictures.dispose();
    this.#paper.dispose();
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
    if (!this.#replay) this.#nowS = this.#session.advanceTo(this.#eventRunS, MOST_TICKS_A_FRAME);
  }

  #act(act: Act): void {
    const session = this.#session;
    if (touchesBench(act) && this.#refused()) return;
    switch (act.what) {
      case 'handle':
        this.#handle(act.handling);
        break;
      case 'show handling':
        this.#change({ handling: act.handling });
        break;
      case 'pause':
        this.#clock.stop(this.#wallMs);
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
        session[act.what](this.#eventRunS);
        this.#settled();
        break;
      case 'line':
        this.#change({
          lines: this.#state.lines.map((line) => (line.id === act.line ? { ...line, shown: act.shown } : line)),
        });
        break;
      case 'turn sign':
        this.#change({ signTurned: !this.#state.signTurned });
        break;
      case 'fold':
        this.#change({ folded: act.folded });
        break;
      case 'open sheet':
        this.#change({ sheet: act.sheet, folded: false });
        if (act.sheet === 'lesson') void this.#openLessons();
        break;
      case 'starting bench':
        this.#choose(act.bench as StartingBenchName);
        break;
      case 'theme':
        this.#change({ theme: act.theme });
        this.#applyTheme();
        break;
      case 'stage':
        this.#change({ stage: act.on });
        this.#applyTheme();
        break;
      case 'letters':
        this.#change({ letters: act.on });
        break;
      case 'file':
        takeRecord(act.file).then((record) => this.#change({ record, handling: 'recorded' }));
        break;
      case 'loop span':
        this.#loopedMs = undefined;
        this.#change({ looping: act.on });
        if (!act.on) session.toNewest();
        break;
      case 'clear span':
        this.#change({ marked: undefined, looping: false });
        session.toNewest();
        break;
      case 'arm trigger':
        this.#arm(act.on);
        break;
      case 'skip':
        this.#change({ wayInSkipped: true });
        this.#act({ what: 'open sheet', sheet: 'lesson' });
        break;
      case 'lesson':
        this.#lessons?.take(act.wish);
        this.#keepLock();
        break;
    }
    this.#dirty = true;
  }

  #set({ name, value, final }: Setting): void {
    const session = this.#session;
    this.#dirty = true;
    if (settingTouchesBench(name) && this.#refused()) return;
    if (name === 'slowdown') {
      this.#lessons?.slowed(Number(value));
      this.#clock.setSlowed(Number(value), this.#wallMs);
      this.#done('slow');
    } else if (isLimited(name)) {
      session.set(changeOf(session.settings, name, Number(value)), this.#sliding === name, this.#eventRunS);
      this.#sliding = final ? undefined : name;
      if (name === 'gravity') this.#change({ place: '', latitude: Number.NaN, placeHeightM: Number.NaN });
      if (name === 'drop.height' && final) this.#reposition();
    } else if (name === 'readout.bits') {
      const bits = Number(value) || undefined;
      session.set({ readout: { ...session.settings.readout, bits } }, false, this.#eventRunS);
    } else if (name === 'readout.on') {
      this.#act({ what: 'line', line: 'reported', shown: value === true });
    } else if (name === 'air') {
      session.set({ air: value === true ? ROOM_AIR : null }, false, this.#eventRunS);
    } else if (name === 'springBy') {
      this.#change({ springBy: value === 'stiffness' ? 'stiffness' : 'frequency' });
    } else if (name === 'place' || name === 'latitude' || name === 'placeHeight') {
      this.#moveTo(name, value);
    } else if (name.startsWith('record.')) {
      const { record } = this.#state;
      if (record) this.#change({ record: chooseOfRecord(record, name, String(value)) });
    } else if (name.startsWith('trigger.')) {
      this.#setTrigger(name, value);
    } else if (typeof value !== 'boolean') {
      this.#change({ fields: { ...this.#state.fields, [name]: value } });
    }
  }

  #sliding: string | undefined;

  /** Run time of the event that is being dealt with [s]. */
  get #eventRunS(): number {
    return this.#clock.runTimeOf(this.#wallMs);
  }

  #handle(kind: HandlingName): void {
    const session = this.#session;
    const { fields, record } = this.#state;
    this.#change({ handling: kind, notice: '' });
    const handling = handlingFrom(kind, fields, record?.motion);
    if (!handling) {
      this.#change({ sheet: 'records', folded: false, notice: 'Choose a recorded file first.' });
      return;
    }
    this.#goOn();
    if (kind === 'push' && fields['push.where'] === 'space' && session.settings.gravityMS2 !== 0) {
      session.set({ gravityMS2: 0 }, false, this.#eventRunS);
      this.#change({ place: 'space' });
    }
    session.handle(handling, this.#eventRunS);
    this.#active = kind;
    if (kind === 'drop') this.#done('drop');
  }

  /** Goes on: from where the paper was pulled back to, as a new run, or simply on. */
  #goOn(): void {
    const session = this.#session;
    if (this.#state.looping) this.#change({ looping: false });
    if (session.pulledBack) {
      session.goOn();
      this.#nowS = session.run.world.timeS;
      this.#clock.set(this.#nowS, this.#wallMs);
      this.#eventCount = session.run.world.events.all.length;
    }
    this.#clock.start(this.#wallMs);
    this.#dirty = true;
  }

  #oneTickOn(): void {
    this.#clock.stop(this.#wallMs);
    const { world } = this.#session.run;
    if (this.#session.pulledBack) {
      this.#session.pullTo(this.#session.shownS(this.#nowS) + world.run.tick);
      return;
    }
    this.#clock.set(world.timeS + world.run.tick / 2, this.#wallMs);
  }

  #choose(name: StartingBenchName): void {
    const bench = STARTING_BENCHES[name];
    const { gravityMS2, dropHeightM } = this.#session.settings;
    this.#session.choose({ ...bench.settings, gravityMS2, dropHeightM });
    this.#clock.setSlowed(bench.slowed, this.#wallMs);
    this.#change({ spanS: bench.paperSpanS });
    this.#begun();
  }

  /** A run has begun anew. */
  #begun(): void {
    this.#nowS = this.#session.run.world.timeS;
    this.#clock.set(this.#nowS, this.#wallMs);
    this.#clock.start(this.#wallMs);
    this.#active = 'hold';
    this.#eventCount = 0;
    this.#trigger = undefined;
    this.#change({
      marked: undefined,
      looping: false,
      notice: '',
      trigger: { ...this.#state.trigger, armed: false },
    });
  }

  /** Undo or redo may have begun a run of another bench. */
  #settled(): void {
    const { world } = this.#session.run;
    if (world.timeS < this.#nowS - world.run.tick) this.#begun();
  }

  #moveTo(name: 'place' | 'latitude' | 'placeHeight', value: number | string | boolean): void {
    const found = name === 'place' ? PLACES.find(({ id }) => id === value) : undefined;
    const latitude = found ? found.latitude : name === 'latitude' ? Number(value) : this.#state.latitude;
    const heightM = found ? found.heightM : name === 'placeHeight' ? Number(value) : this.#state.placeHeightM;
    this.#change({ place: found?.id ?? 'typed', latitude, placeHeightM: heightM });
    const place = found ?? { id: 'typed', name: 'typed', latitude: latitude || 0, heightM: heightM || 0 };
    this.#session.set({ gravityMS2: gravityAt(place) }, false, this.#eventRunS);
  }

  /** The clamp follows the drop height when it holds the housing. */
  #reposition(): void {
    if (this.#session.motionShown.kind !== 'held') return;
    const hold = handlingFrom('hold', this.#state.fields, undefined);
    if (hold) this.#session.handle(hold, this.#eventRunS);
  }

  #setTrigger(name: string, value: number | string | boolean): void {
    const { trigger } = this.#state;
    const next = {
      'trigger.line': { ...trigger, line: value === 'mass' ? ('mass' as const) : ('felt' as const) },
      'trigger.direction': { ...trigger, rising: value === 'rising' },
      'trigger.level': { ...trigger, levelMS2: Number(value) },
      'trigger.before': { ...trigger, beforeS: Number(value) },
      'trigger.after': { ...trigger, afterS: Number(value) },
    }[name];
    if (next) this.#change({ trigger: next });
    if (this.#trigger) this.#arm(true);
  }

  #arm(on: boolean): void {
    const { trigger } = this.#state;
    this.#trigger = on
      ? new Trigger(
          {
            channel: trigger.line === 'felt' ? CHANNEL.specificForce : CHANNEL.reading,
            rising: trigger.rising,
            level: trigger.levelMS2,
            beforeS: trigger.beforeS,
            afterS: trigger.afterS,
          },
          this.#session.run.tape,
        )
      : undefined;
    this.#change({ trigger: { ...trigger, armed: on } });
  }

  #triggered({ plan, foundS = 0 }: Trigger): void {
    const fromS = Math.max(0, foundS - plan.beforeS);
    const toS = foundS + plan.afterS;
    this.#trigger = undefined;
    this.#clock.stop(this.#wallMs);
    this.#session.pullTo(toS);
    this.#change({
      trigger: { ...this.#state.trigger, armed: false },
      marked: { fromS, toS },
      spanS: (toS - fromS) * 1.25,
    });
  }

  // ——— time ———

  #pull(timeS: number): void {
    if (timeS >= this.#nowS - 1e-9) {
      this.#session.toNewest();
    } else {
      this.#session.pullTo(timeS);
      this.#clock.stop(this.#wallMs);
      this.#lessons?.pulledBack(timeS);
    }
    this.#dirty = true;
  }

  #loop(wallMs: number): void {
    const { marked } = this.#state;
    if (!marked) return;
    this.#clock.stop(wallMs);
    this.#loopedMs ??= wallMs;
    const lengthMs = (marked.toS - marked.fromS) * this.#clock.slowed * 1000;
    const elapsed = (wallMs - this.#loopedMs) % (lengthMs + LOOP_REST_MS);
    const at = marked.fromS + Math.min(elapsed, lengthMs) / 1000 / this.#clock.slowed;
    this.#session.pullTo(at);
  }

  #slept(): void {
    if (document.hidden) {
      this.#clock.stop(this.#wallMs);
      this.#change({ notice: 'The page was hidden: the run is paused.' });
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

  // ——— lessons ———

  /** Lessons and what reads them stay out of the first load. */
  async #openLessons(): Promise<void> {
    if (this.#lessons) return;
    try {
      const { LessonDesk: Desk } = await import('./lesson-desk.ts');
      this.#lessons ??= new Desk({
        session: () => this.#session,
        slowed: () => this.#clock.slowed,
        shownS: () => this.#session.shownS(this.#nowS),
        laid: (slowed) => this.#laid(slowed),
        handle: (handling, fields) => {
          this.#change({ fields: { ...this.#state.fields, ...fields } });
          this.#act({ what: 'handle', handling });
        },
        set: (setting) => this.#set(setting),
        pull: (timeS) => this.#pull(timeS),
        lead: (setting) => this.#lead(setting),
        changed: () => {
          this.#dirty = true;
        },
      });
      this.#dirty = true;
    } catch (error) {
      this.#change({
        notice: `The lessons could not be fetched (${String(error)}). Open their sheet again to try once more.`,
      });
    }
  }

  /** A lesson has laid the bench out anew. */
  #laid(slowed: number | undefined): void {
    const { bench, settings } = this.#session;
    if (slowed !== undefined) this.#clock.setSlowed(slowed, this.#wallMs);
    const place = PLACES.find(({ gravityMS2 }) => gravityMS2 === settings.gravityMS2)?.id ?? '';
    this.#replay = undefined;
    this.#change({ spanS: bench.paperSpanS, place, latitude: Number.NaN, placeHeightM: Number.NaN });
    this.#begun();
  }

  /** While a prediction is waited for the run stands still; once it is stored it goes on. */
  #keepLock(): void {
    const locked = this.#lessons?.locked !== undefined;
    if (locked) this.#clock.stop(this.#wallMs);
    else if (this.#heldByLesson) {
      this.#clock.start(this.#wallMs);
      this.#change({ notice: '' });
    }
    this.#heldByLesson = locked;
  }

  /** The bench is locked: says why. */
  #refused(): boolean {
    const locked = this.#lessons?.locked;
    if (locked !== undefined) this.#change({ notice: locked });
    return locked !== undefined;
  }

  /** Leads to where a setting is made. */
  #lead(setting: string): void {
    const sheet = setting === 'gap' ? 'element' : /^(gravity|pad\.)/u.test(setting) ? 'place' : undefined;
    if (sheet) {
      this.#change({ sheet, folded: false });
      return;
    }
    if (setting === 'drop.height') this.#change({ handling: 'drop' });
    this.#render();
    void focusSetting(this.#host, setting);
  }

  // ——— drawing ———

  #render(): void {
    this.#dirty = false;
    const session = this.#session;
    const { world, tape } = session.run;
    const sentence = runSentence(world.events.all, (timeS) =>
      tape.value(CHANNEL.reading, Math.min(tape.endRow - 1, Math.floor(timeS * tape.rateHz))),
    );
    render(
      benchView(this.#state, {
        session,
        slowed: this.#clock.slowed,
        paused: !this.#clock.running,
        active: this.#active,
        span: this.#markedFigures(),
        undoWhat: whatChanged(session.undoTo, session.settings),
        redoWhat: whatChanged(session.redoTo, session.settings),
        sentence,
        found: sentence,
        lessons: this.#lessons?.view,
        covered: this.#lessons?.covered ?? false,
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

  #change(changed: Partial<PageState>): void {
    this.#state = { ...this.#state, ...changed };
    this.#dirty = true;
  }

  #done(step: 'drop' | 'look' | 'slow' | 'grab'): void {
    if (this.#state.firstSteps.has(step)) return;
    this.#change({ firstSteps: new Set([...this.#state.firstSteps, step]) });
  }

  #applyTheme(): void {
    const root = document.documentElement;
    root.dataset['theme'] = this.#state.theme;
    root.toggleAttribute('data-stage', this.#state.stage);
    this.#pictures.setTheme(this.#state.theme);
    this.#painter.resized();
  }

  #makePictures(): void {
    this.#pictures = new Pictures(
      this.#find('.riding-canvas'),
      this.#find('.room-canvas'),
      this.#state.theme,
      this.drawing,
      () => {
        this.#attachHand();
        this.#painter.resized();
        this.#change({ notice: 'The graphics went away: the bench is drawn flat and goes on.' });
      },
    );
    this.#painter = new BenchPainter(
      {
        layout: this.#find('bench-layout'),
        paper: this.#paper,
        rule: this.#find('pen-rule'),
        figure: this.#find('reading-figure'),
        ridingLabels: this.#find('.riding-labels'),
        roomLabels: this.#find('.room-labels'),
      },
      this.#pictures,
    );
    this.#attachHand();
  }

  #attachHand(): void {
    this.#hand?.dispose();
    this.#hand = new PointerHand({
      session: () => this.#session,
      room: () => this.#pictures.room,
      riding: () => this.#pictures.riding,
      wallOf: (event) => this.wallOf(event),
      runTimeOf: (wallMs) => this.#clock.runTimeOf(wallMs),
      position: () => this.#session.look(this.#nowS).housing.position,
      roomPxPerM: () => this.#painter.room?.pxPerM ?? 1000,
      mayHold: () => !this.#refused(),
      onHold: (holds, wallMs) => this.#held(holds, wallMs),
    });
    this.#hand.attach(this.#pictures.roomCanvas, 'room');
    this.#hand.attach(this.#pictures.ridingCanvas, 'riding');
  }

  /** While a hand leads it, time runs as in life: slowed, the housing would lag behind the hand. */
  #held(holds: boolean, wallMs: number): void {
    this.#comeTo(wallMs);
    if (holds) {
      this.#goOn();
      this.#slowedBefore = this.#clock.slowed;
      this.#clock.setSlowed(1, wallMs);
      this.#active = undefined;
      this.#done('grab');
    } else if (this.#slowedBefore !== undefined) {
      this.#clock.setSlowed(this.#slowedBefore, wallMs);
      this.#slowedBefore = undefined;
    }
    this.#dirty = true;
  }

  #find<E extends Element>(selector: string): E {
    const found = this.#host.querySelector<E>(selector);
    if (!found) throw new Error(`the page lacks ${selector}`);
    return found;
  }
}

/** The key that stays pressed while a motion lasts. */
function activeFor(motion: string, before: HandlingName | undefined): HandlingName | undefined {
  if (motion === 'held') return 'hold';
  if (motion === 'free') return before === 'throw' ? 'throw' : 'drop';
  if (motion === 'hand') return before;
  return before;
}
