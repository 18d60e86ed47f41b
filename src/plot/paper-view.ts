/** What the tape paper is told to draw, and what it tells back. Times are run time [s], values SI. */
import type { RunEvent } from '../contract/event.ts';
import type { SampleView, TapeView } from '../contract/tape.ts';
import type { Theme } from '../contract/view.ts';
import type { ReadingUnit } from './reading-format.ts';

/**
 * `felt` is what happened, `mass` what the mass did; these and `acceleration` stand on the pen's scale.
 * `velocity` and `height` have scales of their own, with the same zero line.
 */
export type LineKind = 'felt' | 'mass' | 'acceleration' | 'velocity' | 'height';

/** A paper shows at most one line of each kind. */
export interface PaperLine {
  readonly kind: LineKind;
  /** Name of the tape's channel. */
  readonly channel: string;
  /** Exact value at the paper's `endS`, inside a tick, in the channel's unit: the line is drawn on to it. */
  readonly endValue?: number | undefined;
}

export interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** A learner's predicted line, laid under the ink. */
export interface Sketch {
  /** Rising. */
  readonly timeS: readonly number[];
  /** [m/s²] */
  readonly valueMS2: readonly number[];
}

/** A few words written on the paper. */
export interface PaperNote {
  readonly timeS: number;
  /** [m/s²] */
  readonly valueMS2: number;
  readonly text: string;
}

export interface PaperView {
  readonly tape: TapeView;
  readonly samples: SampleView | undefined;
  readonly reported: 'dots' | 'steps' | 'none';
  /** Oldest first. */
  readonly events: readonly RunEvent[];
  /** The newest instant of the run. */
  readonly nowS: number;
  /** The instant under the nib: `nowS`, or an earlier one when the paper is pulled back. */
  readonly endS: number;
  /** Time from the paper's left edge to the nib [s]. */
  readonly spanS: number;
  readonly lines: readonly PaperLine[];
  readonly unit: ReadingUnit;
  /** −1 turns round every line on the pen's scale. */
  readonly sign: 1 | -1;
  /** Largest value of the pen's scale [m/s²]; zero is always in the middle, where the lever is level. */
  readonly range: 'automatic' | number;
  /** Magnitude of the reading at which the mass meets its stops [m/s²]. */
  readonly stopMS2: number | undefined;
  readonly theme: Theme;
  /** Larger type and thicker pens, to be seen from the back row. */
  readonly stage: boolean;
  readonly marked: Span | undefined;
  readonly sketch: Sketch | undefined;
  readonly notes: readonly PaperNote[];
  /** What a plain drag does; with Shift it always marks. */
  readonly drag: 'pull' | 'mark';
}

export interface CursorValue {
  readonly kind: LineKind | 'reported';
  /** Over the pixel column under the cursor [SI unit of the channel, in the sign shown]; equal where rows lie further apart than pixels. */
  readonly low: number;
  readonly high: number;
  /** At the row (or sample) nearest to the cursor. */
  readonly value: number;
}

export interface CursorReading {
  readonly timeS: number;
  readonly values: readonly CursorValue[];
  /** The event that stands within a few pixels of the cursor. */
  readonly event: RunEvent | undefined;
}

export interface PaperOptions {
  /** Distance from the nib to the paper's right edge [px]; undefined: 4.5 % of the width, 15…26 px. */
  readonly nibInsetPx?: number | undefined;
  /** Shortest and longest time across the paper that a zoom asks for [s]. */
  readonly shortestSpanS?: number | undefined;
  readonly longestSpanS?: number | undefined;
  readonly onCursor?: ((reading: CursorReading | undefined) => void) | undefined;
  /** A span was marked; `done` is false while the pointer is still down. */
  readonly onMark?: ((span: Span | undefined, done: boolean) => void) | undefined;
  /** The instant that should stand under the nib; equal to `nowS`: follow the run. */
  readonly onPull?: ((timeS: number) => void) | undefined;
  readonly onZoom?: ((spanS: number, endS: number) => void) | undefined;
  readonly onEventPick?: ((event: RunEvent) => void) | undefined;
}

/** A line of the scale beside the paper: the rule's figures stand at the paper's own lines. */
export interface ValueMark {
  readonly text: string;
  readonly yPx: number;
}
