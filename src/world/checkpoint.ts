import type { ElementSpec } from '../contract/run.ts';
import type { HousingSave } from '../housing/housing.ts';
import type { ReadoutSave } from '../readout/readout.ts';
import type { RowSave } from './row-writer.ts';

/** A world's whole state between two ticks. */
export interface Checkpoint {
  readonly tick: number;
  /** [m/s²] */
  readonly gravity: number;
  /** Commands that have taken effect. */
  readonly applied: number;
  readonly housing: HousingSave;
  readonly elements: readonly { readonly spec: ElementSpec; readonly state: readonly number[] }[];
  readonly readouts: readonly (ReadoutSave | undefined)[];
  readonly rows: RowSave;
}
