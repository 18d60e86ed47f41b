import type { Vector } from '../contract/geometry.ts';
import type { AirDrag, PadSpec } from '../contract/motion.ts';
import type { HousingSpec, ReadoutSpec, RunSpec } from '../contract/run.ts';
import type { ElementLook } from '../contract/view.ts';

/** What a person sets at the bench. SI units. */
export interface BenchSettings {
  readonly seed: number;
  /** Proof mass [kg] and the spring's stiffness [N/m]; natural frequency = √(k/m)/2π. */
  readonly massKg: number;
  readonly stiffnessNM: number;
  readonly dampingRatio: number;
  /** Distance of the stops [m]; null: none. */
  readonly gapM: number | null;
  /** Which way the element senses, in the housing's own frame. */
  readonly senses: SensingDirection;
  readonly restitution: number;
  readonly gravityMS2: number;
  /** Height of the lowest point from which it is dropped [m]. */
  readonly dropHeightM: number;
  readonly pad: PadSpec;
  /** Air that the falling housing meets; null: none. */
  readonly air: AirDrag | null;
  readonly readout: ReadoutSpec;
  /** Which starting bench it came from: decides what is not set by hand. */
  readonly bench: StartingBenchName;
}

export type SensingDirection = 'up and down' | 'sideways' | 'to and fro';

/** Input axis of each direction, housing frame: those printed on the housing, Z up, X to the right, Y away from the viewer. */
export const SENSING_AXES: Readonly<Record<SensingDirection, Vector>> = {
  'up and down': [0, 1, 0],
  sideways: [1, 0, 0],
  'to and fro': [0, 0, -1],
};

export type StartingBenchName = 'table-top' | 'stiff' | 'chip';

/** A bench to start from: its settings and what only the bench decides. */
export interface StartingBench {
  readonly name: StartingBenchName;
  readonly title: string;
  readonly line: string;
  readonly look: ElementLook;
  /** What the spring is, on the label beside it. */
  readonly springWords: string;
  readonly tickS: number;
  readonly rowRateHz: number;
  readonly housing: HousingSpec;
  /** Seconds of run time across the paper, and how much slower than life it starts. */
  readonly paperSpanS: number;
  readonly slowed: number;
  readonly settings: BenchSettings;
}

/** Undamped natural frequency [Hz] of a mass [kg] on a spring [N/m]. */
export function naturalFrequencyHz(massKg: number, stiffnessNM: number): number {
  return Math.sqrt(stiffnessNM / massKg) / (2 * Math.PI);
}

/** Stiffness [N/m] that gives a mass [kg] a natural frequency [Hz]. */
export function stiffnessFor(massKg: number, frequencyHz: number): number {
  const omega = 2 * Math.PI * frequencyHz;
  return massKg * omega * omega;
}

/**
 * Air at the sea's level (ISO 2533: 1.225 kg/m³ at 15 °C; 1.204 at 20 °C) on the front of the bench's housing; drag
 * coefficient of a cube face on, 1.05, from memory.
 */
export const ROOM_AIR: AirDrag = { area: 0.012, coefficient: 1.05, airDensity: 1.204 };

/** Name of the one element of the bench. */
export const ELEMENT_NAME = 'z';

/** A run may last this long before it must be begun anew [s]. */
export const LONGEST_RUN_S = 600;

/** The run that a bench starts: held at the drop height, level, settled. */
export function startRun(bench: StartingBench, settings: BenchSettings): RunSpec {
  return {
    seed: settings.seed,
    gravity: settings.gravityMS2,
    duration: LONGEST_RUN_S,
    tick: bench.tickS,
    temperature: 293.15,
    record: { rate: bench.rowRateHz },
    housing: bench.housing,
    elements: [
      {
        name: ELEMENT_NAME,
        axis: SENSING_AXES[settings.senses],
        at: [0, 0, 0],
        naturalFrequency: naturalFrequencyHz(settings.massKg, settings.stiffnessNM),
        dampingRatio: settings.dampingRatio,
        staticRemainder: 0,
        gap: settings.gapM ?? undefined,
        restitution: settings.restitution,
        cubicStiffness: 0,
        thermalNoise: false,
        mass: settings.massKg,
        fieldAtMass: false,
        readout: settings.readout,
      },
    ],
    motions: [{ kind: 'held', from: 0, within: 0.2 }],
    changes: [],
    startHeight: settings.dropHeightM,
  };
}
