/** Draws one frame: tape, both pictures, labels and the figures that run along. Reads a snapshot, keeps no physics. */
import type { MotionSpec } from '../contract/motion.ts';
import type { Snapshot } from '../contract/snapshot.ts';
import type { ForceArrow, PaperScale, RidingGeometry, RoomFrame, RoomGeometry } from '../contract/view.ts';
import type { PaperLine, PaperNote, PaperView, Sketch } from '../plot/paper-view.ts';
import { type ReadingUnit, signed, unitName } from '../plot/reading-format.ts';
import type { TapePaper } from '../plot/tape-paper.ts';
import { along, CHANNEL } from '../session/bench-run.ts';
import type { Session } from '../session/session.ts';
import type { BenchLayout } from '../ui/bench-layout.ts';
import type { PenRule } from '../ui/pen-rule.ts';
import type { ReadingFigure } from '../ui/reading-figure.ts';
import type { SceneLabels } from '../ui/scene-labels.ts';
import { quantityText } from '../units/quantity-text.ts';
import { G_N } from '../units/standard-gravity.ts';
import type { PageState } from './page-state.ts';
import { ridingLabels, roomLabels } from './picture-labels.ts';
import type { Pictures } from './pictures.ts';

/** Thickness of the felt as drawn when the pad states none [m]. */
const FELT_M = 0.05;
/** Figures that run along are written anew this often [ms]: often enough to follow, seldom enough to read. */
const FIGURES_EVERY_MS = 120;
/** Width of the riding view from which its parts are named [px]. */
const LABELS_FROM_PX = 260;
/** Swept through in one frame by more than this share of a period, the mass is a veil [–]. */
const VEIL_FROM_PERIODS = 0.2;

const RIDING_ARROWS: ReadonlySet<ForceArrow> = new Set(['arm pulls', 'gravity on the mass']);

/** The parts of the page that a frame touches. */
export interface Stage {
  readonly layout: BenchLayout;
  readonly paper: TapePaper;
  readonly rule: PenRule;
  readonly figure: ReadingFigure;
  readonly ridingLabels: SceneLabels;
  readonly roomLabels: SceneLabels;
}

export interface FrameInput {
  readonly wallMs: number;
  readonly nowS: number;
  /** Run time since the frame before [s]. */
  readonly sinceS: number;
  readonly snapshot: Snapshot;
  readonly roomArrows: ReadonlySet<ForceArrow>;
  /** A learner's line and marks, laid on the paper. */
  readonly sketch: Sketch | undefined;
  readonly notes: readonly PaperNote[];
}

interface Boxes {
  readonly ridingLeft: number;
  readonly ridingTop: number;
  readonly ridingWidth: number;
  readonly ridingHeight: number;
  readonly paperLeft: number;
  readonly paperTop: number;
  readonly ruleTop: number;
  readonly roomWidth: number;
  readonly roomHeight: number;
}

export class BenchPainter {
  readonly #stage: Stage;
  #pictures: Pictures;
  #boxes: Boxes | undefined;
  #figuresAtMs = Number.NEGATIVE_INFINITY;
  /** The figures are those of the last frame. */
  #written = false;
  readonly #extremes = new Float64Array(2);
  /** What the last frame drew. */
  riding: RidingGeometry | undefined;
  room: RoomGeometry | undefined;
  /** The paper's scale in the riding view's box. */
  ridingScale: PaperScale | undefined;

  constructor(stage: Stage, pictures: Pictures) {
    this.#stage = stage;
    this.#pictures = pictures;
  }

  /** Sizes are as they were at the last frame, and the figures were written. */
  get measured(): boolean {
    return this.#boxes !== undefined && this.#written;
  }

  /** Sizes have changed: measured before the next frame. */
  resized(): void {
    this.#boxes = undefined;
  }

  paint(session: Session, state: PageState, input: FrameInput): void {
    const boxes = this.#measure();
    const { snapshot } = input;
    const { paper } = this.#stage;
    paper.draw(paperView(session, state, input));
    const scale = paper.scale();
    this.ridingScale = moved(scale, boxes.paperTop - boxes.ridingTop);
    this.riding = this.#pictures.riding.draw(snapshot, {
      scale: this.ridingScale,
      nibXPx: paper.nibXPx + boxes.paperLeft - boxes.ridingLeft,
      element: 0,
      look: session.bench.look,
      housingSizeM: session.bench.housing.size,
      arrows: RIDING_ARROWS,
      swept: this.#swept(session, input),
    });
    this.room = this.#pictures.room.draw(snapshot, roomFrame(session, this.riding.enlargement, input));
    this.#stage.rule.scale = moved(scale, boxes.paperTop - boxes.ruleTop);
    this.#written = Math.abs(input.wallMs - this.#figuresAtMs) >= FIGURES_EVERY_MS;
    if (!this.#written) return;
    this.#figuresAtMs = input.wallMs;
    this.#write(state, session, snapshot, boxes, this.riding, this.room);
  }

  /** Figures and labels: said a few times a second. */
  #write(
    state: PageState,
    session: Session,
    snapshot: Snapshot,
    boxes: Boxes,
    riding: RidingGeometry,
    room: RoomGeometry,
  ): void {
    const element = snapshot.elements[0]!;
    const { figure } = this.#stage;
    const reading = state.signTurned ? -element.reading : element.reading;
    const [number = '', ...unit] = signedReading(reading, state.unit).split(/[\u202f\u00a0 ]/u);
    figure.figure = number;
    figure.unit = unit.join(' ');
    const { deflection } = element;
    figure.mass =
      Math.abs(deflection) < 1e-12
        ? 'mass in the middle'
        : `mass ${quantityText(Math.abs(deflection), 'length')} ${deflection < 0 ? 'low' : 'high'}`;
    figure.drawn = `drawn ×${quantityText(riding.enlargement, 'dimensionless')}`;
    const left = this.#stage.ridingLabels;
    left.widthPx = boxes.ridingWidth;
    left.heightPx = boxes.ridingHeight;
    left.keepClear = riding.solids;
    // On a phone only a strip of the inside is seen: words would cover it.
    left.labels =
      boxes.ridingWidth < LABELS_FROM_PX
        ? []
        : ridingLabels(riding, element, snapshot.gravity, session.bench.springWords);
    const right = this.#stage.roomLabels;
    right.widthPx = boxes.roomWidth;
    right.heightPx = boxes.roomHeight;
    right.labels = roomLabels(room, snapshot, releaseHeight(session));
  }

  /** What the mass swept through when it moves too fast for the frame; over one period, so that the veil stands still. */
  #swept(session: Session, { sinceS, snapshot }: FrameInput): { low: number; high: number } | undefined {
    const frequency = snapshot.elements[0]!.spec.naturalFrequency;
    if (sinceS * frequency < VEIL_FROM_PERIODS) return undefined;
    const { tape } = session.run;
    const to = Math.floor(snapshot.timeS * tape.rateHz) + 1;
    const from = to - Math.max(2, Math.ceil(Math.max(sinceS, 1 / frequency) * tape.rateHz));
    tape.envelope(CHANNEL.deflection, from, to, 1, this.#extremes);
    const [low = Number.NaN, high = Number.NaN] = this.#extremes;
    return Number.isNaN(low) ? undefined : { low, high };
  }

  #measure(): Boxes {
    if (this.#boxes) return this.#boxes;
    const { layout } = this.#stage;
    const riding = layout.box('riding');
    const paper = layout.box('paper');
    const rule = layout.box('rule');
    const room = layout.box('room');
    const ratio = this.#pictures.pixelRatio;
    this.#pictures.riding.resize(riding.width, riding.height, ratio);
    this.#pictures.room.resize(room.width, room.height, ratio);
    this.#boxes = {
      ridingLeft: riding.left,
      ridingTop: riding.top,
      ridingWidth: riding.width,
      ridingHeight: riding.height,
      paperLeft: paper.left,
      paperTop: paper.top,
      ruleTop: rule.top,
      roomWidth: room.width,
      roomHeight: room.height,
    };
    return this.#boxes;
  }
}

/** A scale as seen from another box. */
function moved({ zeroYPx, pxPerMS2, topYPx, bottomYPx }: PaperScale, byPx: number): PaperScale {
  return { zeroYPx: zeroYPx + byPx, pxPerMS2, topYPx: topYPx + byPx, bottomYPx: bottomYPx + byPx };
}

function paperView(session: Session, state: PageState, { snapshot, nowS, sketch, notes }: FrameInput): PaperView {
  const element = snapshot.elements[0]!;
  const { housing } = snapshot;
  const shown = new Set(state.lines.filter((line) => line.shown).map(({ id }) => id));
  const lines: PaperLine[] = [];
  const add = (kind: PaperLine['kind'], channel: string, endValue: number) => {
    if (shown.has(kind)) lines.push({ kind, channel, endValue });
  };
  add('felt', 'specificForce', element.specificForce);
  add('mass', 'reading', element.reading);
  const { axis } = element.spec;
  add('acceleration', 'acceleration', along(axis, housing.acceleration));
  add('velocity', 'velocity', along(axis, housing.velocity));
  add('height', 'height', housing.lowestM);
  const { spec } = element;
  const omega = 2 * Math.PI * spec.naturalFrequency;
  return {
    tape: session.run.tape,
    samples: session.run.samples,
    reported: shown.has('reported') ? 'dots' : 'none',
    events: session.run.world.events.all,
    nowS,
    endS: snapshot.timeS,
    spanS: state.spanS,
    lines,
    unit: state.unit,
    sign: state.signTurned ? -1 : 1,
    range: state.range,
    stopMS2: spec.gap === undefined ? undefined : spec.gap * omega * omega,
    theme: state.theme,
    stage: state.stage,
    marked: state.marked,
    sketch,
    notes,
    drag: state.drag,
  };
}

function roomFrame(session: Session, enlargement: number, { roomArrows }: FrameInput): RoomFrame {
  const { pad } = session.settings;
  return {
    releaseHeightM: releaseHeight(session),
    holder: holderOf(session.motionShown),
    pad: { thicknessM: pad.thickness ?? FELT_M },
    look: session.bench.look,
    housingSizeM: session.bench.housing.size,
    element: 0,
    enlargement,
    arrows: roomArrows,
    follow: false,
  };
}

/** Nearer than this it was let go at the drop height [m]. */
const AT_DROP_HEIGHT_M = 0.01;

/** Where it is let go from, for the mark on the rule [m]; undefined while a hand has it, or let it go elsewhere. */
function releaseHeight({ settings, motionShown, run }: Session): number | undefined {
  const { dropHeightM } = settings;
  if (motionShown.kind === 'hand') return undefined;
  if (motionShown.kind !== 'free') return dropHeightM;
  const letGo = run.world.events.all.findLast(({ kind }) => kind === 'let go');
  const away = letGo?.kind === 'let go' ? Math.abs(letGo.heightM - dropHeightM) : 0;
  return away < AT_DROP_HEIGHT_M ? dropHeightM : undefined;
}

/** The big figure: always in the unit of the rule beside it, so that it does not jump between g and mg. */
function signedReading(valueMS2: number, unit: ReadingUnit): string {
  const size = unit === 'g_n' ? G_N : 1;
  const number = valueMS2 / size;
  const text = Math.abs(number) < 9.995 ? number.toFixed(2) : String(Number(number.toPrecision(3)));
  const plain = Number(text) === 0 ? '0.00' : text.replace('-', '\u2212');
  return `${signed(Number(text), plain)} ${unitName(unit)}`;
}

/** What is seen to hold the housing in a motion. */
function holderOf(motion: MotionSpec): RoomFrame['holder'] {
  switch (motion.kind) {
    case 'held':
      return motion.tremor ? 'hand' : 'clamp';
    case 'free':
      return 'none';
    case 'shake':
    case 'recorded':
      return 'shaker';
    default:
      return 'hand';
  }
}
