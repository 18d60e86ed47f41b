/** How views read a tape. Rows are equally spaced in time; row k stands at k/rateHz of run time. */
export interface TapeView {
  readonly rateHz: number;
  /** Rises with every row appended. */
  readonly revision: number;
  /** First row still kept, and one past the last. */
  readonly firstRow: number;
  readonly endRow: number;
  readonly channels: readonly TapeChannel[];
  /** Value of a channel at a row, exact at that instant; NaN where it is missing or the row is not kept. */
  value(channel: number, row: number): number;
  /**
   * Minimum and maximum of a channel over rows [from, to) and the ticks between them, by level:
   * cost grows with the number of buckets, not of rows. Written as [min, max] pairs into `out`; NaN, NaN for
   * a bucket without values. Bounds need not be whole: bucket b holds the rows k with
   * from + b·w ≤ k < from + (b + 1)·w, w = (to − from)/buckets, and the ticks since row k − 1 belong to row k.
   */
  envelope(channel: number, fromRow: number, toRow: number, buckets: number, out: Float64Array): void;
}

export interface TapeChannel {
  /** Unique, e.g. `z.specificForce`, `z.reading`, `housing.height`. */
  readonly name: string;
  readonly unit: 'm/s2' | 'm' | 'm/s';
}

/** The samples of one read-out: irregular against the rows, exact in time. */
export interface SampleView {
  readonly element: string;
  /** First sample kept and one past the last. */
  readonly first: number;
  readonly end: number;
  timeS(sample: number): number;
  /** Reported value [g_n]. */
  valueG(sample: number): number;
  /** The value stands at an end of the range. */
  clipped(sample: number): boolean;
  /** First kept sample at or after an instant [s]; `end` when there is none. */
  firstAtOrAfter(timeS: number): number;
  /** Minimum and maximum of the values [g_n] over samples [from, to) in equal parts, as the tape's envelope. */
  envelope(from: number, to: number, buckets: number, out: Float64Array): void;
}
