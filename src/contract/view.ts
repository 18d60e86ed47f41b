/**
 * What the page's parts tell each other about pictures. Lengths ending in Px are CSS pixels in the
 * picture's own box, y downward. A picture keeps no physics: it draws the snapshot that it is given.
 */
import type { Vector } from './geometry.ts';
import type { Snapshot } from './snapshot.ts';

export type Theme = 'day' | 'evening';

/** How readings stand on the paper; the riding view obeys it so that pen and newest ink meet. */
export interface PaperScale {
  /** y of the 0 line. */
  readonly zeroYPx: number;
  /** Pixels upward per m/s² of reading; negative when the sign is turned round. */
  readonly pxPerMS2: number;
  /** Edges of the paper: what would leave it is drawn at the edge. */
  readonly topYPx: number;
  readonly bottomYPx: number;
}

export interface ElementLook {
  readonly form: 'arm' | 'coil';
  /** A paddle in oil, or nothing that is seen. */
  readonly damper: 'oil' | 'none';
  /** Share of the housing's inside that the arm spans, for drawing only. */
  readonly span: number;
}

export type ForceArrow = 'arm pulls' | 'gravity on the mass' | 'clamp holds' | 'gravity on the housing' | 'pad pushes';

export interface RidingFrame {
  readonly scale: PaperScale;
  /** x of the nib's tip: where the newest ink stands. */
  readonly nibXPx: number;
  /** Index of the element shown. */
  readonly element: number;
  readonly look: ElementLook;
  /** Edge lengths of the housing [m], as its specification says: E is reckoned against them. */
  readonly housingSizeM: Vector;
  readonly arrows: ReadonlySet<ForceArrow>;
  /** Deflection swept since the last frame [m]: drawn as a veil instead of a flicker when it moves too fast to see. */
  readonly swept?: { readonly low: number; readonly high: number } | undefined;
}

/** A named place that a label belongs to. */
export interface Anchor {
  readonly name: string;
  readonly xPx: number;
  readonly yPx: number;
  readonly visible: boolean;
}

/** [px] */
export interface Box {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** What the riding view drew, for labels and for tests. */
export interface RidingGeometry {
  /** Tip of the pen. */
  readonly penXPx: number;
  readonly penYPx: number;
  /** The proof mass's pin, and where it would be at x = 0. */
  readonly massXPx: number;
  readonly massYPx: number;
  readonly unbentYPx: number;
  /** E: drawn deflection over true deflection, at the picture's own scale of the housing [–]. */
  readonly enlargement: number;
  /** The picture's own scale of the housing: drawn height over true height [px/m]. Mass offset = E·x·this, upward. */
  readonly housingPxPerM: number;
  /** Lever arms b/a: pen offset = −(b/a)·mass offset; negative when the sign is turned round. */
  readonly leverRatio: number;
  /** The pen stands at the paper's edge: the true value lies beyond. */
  readonly offPaper: boolean;
  readonly anchors: readonly Anchor[];
  /** Boxes about what moves: no label may cover it. */
  readonly solids: readonly Box[];
}

export type RidingPart = 'mass' | 'arm' | 'pen' | 'stop' | 'damper' | 'clamp' | 'housing';

export interface RidingPicture {
  resize(widthPx: number, heightPx: number, pixelRatio: number): void;
  setTheme(theme: Theme): void;
  draw(snapshot: Snapshot, frame: RidingFrame): RidingGeometry;
  /** What lies under a point of the last drawing. */
  part(xPx: number, yPx: number): RidingPart | undefined;
  /** False while drawing the same state again would refine its shadows: draw on until it is true. */
  readonly settled: boolean;
  dispose(): void;
}

export interface RoomFrame {
  /** Height from which it is to be let go [m]: a ghost outline and a mark on the rule; undefined: none. */
  readonly releaseHeightM?: number | undefined;
  /** What holds the housing at present: the stand's jaws, a hand, the shaker's table, nothing. */
  readonly holder: 'clamp' | 'hand' | 'shaker' | 'none';
  /** Pad in place, and its thickness as drawn [m]. */
  readonly pad: { readonly thicknessM: number } | undefined;
  readonly look: ElementLook;
  /** Edge lengths of the housing [m], as its specification says. */
  readonly housingSizeM: Vector;
  readonly element: number;
  /** E·x for the mass inside, as the riding view draws it, in metres of the room's true scale. */
  readonly enlargement: number;
  readonly arrows: ReadonlySet<ForceArrow>;
  /** The camera follows the housing closer. */
  readonly follow: boolean;
  /** Positions swept since the last frame, room frame [m]: veil instead of flicker. */
  readonly swept?: { readonly low: readonly number[]; readonly high: readonly number[] } | undefined;
}

export interface RoomGeometry {
  /** Centre of the housing. */
  readonly housingXPx: number;
  readonly housingYPx: number;
  /** Lowest corner of the housing, and the pad's top under it. */
  readonly lowestYPx: number;
  readonly padTopYPx: number;
  /** Pixels per metre at the housing's distance, for turning a drag into metres. */
  readonly pxPerM: number;
  readonly anchors: readonly Anchor[];
}

export type RoomPart = 'housing' | 'clamp' | 'pad' | 'rule' | 'shaker';

export interface RoomPicture {
  resize(widthPx: number, heightPx: number, pixelRatio: number): void;
  setTheme(theme: Theme): void;
  draw(snapshot: Snapshot, frame: RoomFrame): RoomGeometry;
  part(xPx: number, yPx: number): RoomPart | undefined;
  /** As for the riding picture. */
  readonly settled: boolean;
  /** Where in the vertical plane z = 0 of the room a point of the picture lies [m]. */
  place(xPx: number, yPx: number): readonly [number, number, number];
  dispose(): void;
}
