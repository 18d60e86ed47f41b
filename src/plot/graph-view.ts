/** What a graph is told to draw. Numbers are in the unit that the axis names. */
import type { Theme } from '../contract/view.ts';

export interface GraphAxis {
  /** What it is, with its unit: "drive frequency, Hz". */
  readonly label: string;
  readonly law: 'linear' | 'logarithmic';
  /** Both ends, the smaller first; logarithmic ones above 0. */
  readonly range: 'automatic' | readonly [number, number];
}

export type GraphLook = 'ink' | 'pencil' | 'dot' | 'plain';

export interface GraphLine {
  readonly name: string;
  /** Rising. */
  readonly x: ArrayLike<number>;
  /** As long as x; NaN leaves a gap. */
  readonly y: ArrayLike<number>;
  readonly look: GraphLook;
}

export interface GraphPoints {
  readonly name: string;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** Ends of each point's bar, when its doubt is known. */
  readonly low?: ArrayLike<number> | undefined;
  readonly high?: ArrayLike<number> | undefined;
  readonly form: 'dot' | 'ring' | 'cross';
  readonly look: GraphLook;
}

/** A stretch of one axis. */
export interface GraphBand {
  readonly name: string;
  readonly axis: 'x' | 'y';
  readonly from: number;
  readonly to: number;
}

/** A value of one axis that has a name. */
export interface GraphMarker {
  readonly name: string;
  readonly axis: 'x' | 'y';
  readonly at: number;
}

export interface GraphView {
  /** What the graph shows, in a few words. */
  readonly title: string;
  readonly x: GraphAxis;
  readonly y: GraphAxis;
  readonly lines: readonly GraphLine[];
  readonly points: readonly GraphPoints[];
  readonly bands: readonly GraphBand[];
  readonly markers: readonly GraphMarker[];
  readonly theme: Theme;
  readonly stage: boolean;
}

export interface GraphCursor {
  readonly x: number;
  /** Of the lines and points that have a value at the cursor, in their order, at their own nearest x. */
  readonly values: readonly { readonly name: string; readonly x: number; readonly y: number }[];
}

export interface GraphOptions {
  readonly onCursor?: ((cursor: GraphCursor | undefined) => void) | undefined;
}
