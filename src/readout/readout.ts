import type { ReadoutSpec } from '../contract/run.ts';
import { Converter } from './converter.ts';

interface PlannedChange {
  readonly spec: ReadoutSpec;
  readonly atS: number;
}

/** Everything that a read-out needs to go on, bit for bit; plain JSON. */
export interface ReadoutSave {
  readonly spec: ReadoutSpec;
  /** k of the next sample. */
  readonly nextIndex: number;
  readonly latest: { readonly timeS: number; readonly valueG: number } | null;
  readonly planned: readonly PlannedChange[];
}

/**
 * From the reading of an element to the numbers that are reported: samples at exactly k/rate of run time,
 * clipped to the range, in the steps of the converter. Whoever runs it asks `nextDueS`, looks up the reading at
 * that instant and hands it to `take`.
 */
export class Readout {
  #spec: ReadoutSpec;
  #converter: Converter;
  #nextIndex = 0;
  #latestG = Number.NaN;
  #latestTimeS = Number.NaN;
  #planned: PlannedChange[] = [];

  constructor(spec: ReadoutSpec) {
    this.#spec = spec;
    this.#converter = new Converter(spec);
  }

  /** As it holds for the sample taken last or due next. */
  get spec(): ReadoutSpec {
    return this.#spec;
  }

  /** Latest sample [g_n]; NaN before the first. */
  get latestG(): number {
    return this.#latestG;
  }

  /** Its instant [s]; NaN before the first. */
  get latestTimeS(): number {
    return this.#latestTimeS;
  }

  /** Reading [m/s²] → value that would be reported [m/s²]. */
  convert(readingMS2: number): number {
    return this.#converter.convert(readingMS2);
  }

  /** The value reported for a reading [m/s²] stands at an end of the range. */
  clipped(readingMS2: number): boolean {
    return this.#converter.clipped(readingMS2);
  }

  /** Instant of the next sample [s of run time]: k/rate. */
  nextDueS(): number {
    let dueS = this.#nextIndex / this.#spec.rate;
    while (this.#planned.length > 0 && dueS >= this.#planned[0]!.atS) {
      this.#goOver(this.#planned.shift()!);
      dueS = this.#nextIndex / this.#spec.rate;
    }
    return dueS;
  }

  /** Takes the sample that is due: `timeS` is what `nextDueS` said, the reading [m/s²] is that of this instant. */
  take(timeS: number, readingMS2: number): void {
    this.#latestG = this.#converter.convertToG(readingMS2);
    this.#latestTimeS = timeS;
    this.#nextIndex += 1;
  }

  /**
   * Goes on with another specification at an instant [s], not before that of an earlier change. Samples
   * still due before it are taken as they were; then the first k/rate ≥ atS of the new rate, but no
   * instant twice.
   */
  change(spec: ReadoutSpec, atS: number): void {
    this.#planned.push({ spec, atS });
  }

  save(): ReadoutSave {
    const sampled = !Number.isNaN(this.#latestTimeS);
    return {
      spec: this.#spec,
      nextIndex: this.#nextIndex,
      latest: sampled ? { timeS: this.#latestTimeS, valueG: this.#latestG } : null,
      planned: [...this.#planned],
    };
  }

  restore(saved: ReadoutSave): void {
    this.#spec = saved.spec;
    this.#converter = new Converter(saved.spec);
    this.#nextIndex = saved.nextIndex;
    this.#latestG = saved.latest?.valueG ?? Number.NaN;
    this.#latestTimeS = saved.latest?.timeS ?? Number.NaN;
    this.#planned = [...saved.planned];
  }

  #goOver({ spec, atS }: PlannedChange): void {
    this.#spec = spec;
    this.#converter = new Converter(spec);
    // The product may round to either side of a whole number; the quotients decide.
    let index = Math.max(0, Math.ceil(atS * spec.rate) - 1);
    while (index / spec.rate < atS || index / spec.rate <= this.#latestTimeS) index += 1;
    this.#nextIndex = index;
  }
}
