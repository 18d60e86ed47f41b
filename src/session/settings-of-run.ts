import type { AirDrag, PadSpec } from '../contract/motion.ts';
import type { ElementSpec, RunSpec } from '../contract/run.ts';
import {
  type BenchSettings,
  ELEMENT_NAME,
  LONGEST_RUN_S,
  naturalFrequencyHz,
  SENSING_AXES,
  type SensingDirection,
  type StartingBench,
  startRun,
  stiffnessFor,
} from './settings.ts';
import { settingsFault } from './settings-fault.ts';
import { STARTING_BENCHES } from './starting-benches.ts';

/**
 * The settings as a run has them at its end, so that a saved run can be taken up by hand; or why this bench cannot
 * take it. The run says nothing of the bench it was made on: it is the starting bench of the same tick whose natural
 * frequency is nearest, as a ratio. Nor does it tell a mass changed while it ran (the first one stands, and the spring gives
 * the frequency), a drop height other than that of its start, or air in which nothing fell.
 */
export function settingsOfRun(run: RunSpec): { readonly settings: BenchSettings } | { readonly fault: string } {
  const [element, second] = run.elements;
  if (!element || second || element.name !== ELEMENT_NAME)
    return { fault: `it has other elements than the one, called ${ELEMENT_NAME}, of this bench` };
  if (element.modes || element.mount || element.cubicStiffness !== 0)
    return { fault: 'its element has modes, a mount or a spring that stiffens, which this bench has not' };
  const { readout } = element;
  if (!readout) return { fault: 'its element is not read out' };
  const senses = (Object.keys(SENSING_AXES) as SensingDirection[]).find((direction) =>
    SENSING_AXES[direction].every((part, axis) => part === element.axis[axis]),
  );
  if (!senses) return { fault: 'its element senses askew; here it senses up and down, sideways or to and fro' };
  if (run.duration > LONGEST_RUN_S)
    return { fault: `it lasts ${run.duration} s; here a run lasts at most ${LONGEST_RUN_S} s` };
  const bench = nearestBench(run, element);
  if (!bench) return { fault: `its tick of ${run.tick} s is none of this bench's` };

  const foreign = foreignPart(run, element, bench);
  if (foreign) return { fault: foreign };

  const { massKg, pad } = bench.settings;
  let settings: BenchSettings = {
    ...bench.settings,
    seed: run.seed,
    massKg: element.mass ?? massKg,
    dampingRatio: element.dampingRatio,
    gapM: element.gap ?? null,
    senses,
    restitution: element.restitution,
    gravityMS2: run.gravity,
    dropHeightM: run.startHeight ?? bench.settings.dropHeightM,
    pad: padOf(run) ?? pad,
    air: airOf(run),
    readout,
  };
  settings = { ...settings, stiffnessNM: stiffnessFor(settings.massKg, element.naturalFrequency) };
  for (const change of run.changes) {
    if ('gravity' in change) settings = { ...settings, gravityMS2: change.gravity };
    else if ('set' in change) {
      const { naturalFrequency, dampingRatio, restitution, gap, readout: changed } = change.set;
      settings = {
        ...settings,
        ...(naturalFrequency === undefined ? {} : { stiffnessNM: stiffnessFor(settings.massKg, naturalFrequency) }),
        ...(dampingRatio === undefined ? {} : { dampingRatio }),
        ...(restitution === undefined ? {} : { restitution }),
        ...(gap === undefined ? {} : { gapM: gap }),
        ...(changed === undefined ? {} : { readout: changed }),
      };
    }
  }
  const fault = settingsFault(settings);
  return fault === undefined ? { settings } : { fault: `of its settings ${fault}` };
}

/** What a run has that no run of the bench can have: it would be lost with the next fresh run. */
function foreignPart(run: RunSpec, element: ElementSpec, bench: StartingBench): string | undefined {
  const own = startRun(bench, bench.settings);
  const { size, mass } = run.housing;
  if (mass !== own.housing.mass || size.some((edge, axis) => edge !== own.housing.size[axis]))
    return 'its housing is not that of this bench';
  if (element.at.some((place) => place !== 0)) return 'its element is not in the middle of the housing';
  if (element.thermalNoise || element.fieldAtMass || element.start || element.staticRemainder !== 0)
    return 'its element has thermal noise, a field at the mass, a start or a remainder, which this bench has not';
  return run.temperature === own.temperature ? undefined : `it is at ${run.temperature} K`;
}

function nearestBench(run: RunSpec, { naturalFrequency }: ElementSpec): StartingBench | undefined {
  const far = ({ settings }: StartingBench): number => {
    const ratio = naturalFrequency / naturalFrequencyHz(settings.massKg, settings.stiffnessNM);
    return Math.max(ratio, 1 / ratio);
  };
  return Object.values(STARTING_BENCHES)
    .filter(({ tickS, rowRateHz }) => tickS === run.tick && rowRateHz === run.record.rate)
    .sort((a, b) => far(a) - far(b))[0];
}

/** The pad that was set last: by a change, or by the letting go. */
function padOf({ motions, changes }: RunSpec): PadSpec | undefined {
  const set: { readonly at: number; readonly pad: PadSpec | null | undefined }[] = [
    ...motions.filter((motion) => motion.kind === 'free').map(({ from, pad }) => ({ at: from, pad })),
    ...changes.filter((change) => 'pad' in change),
  ];
  set.sort((a, b) => a.at - b.at);
  return set.reduce<PadSpec | undefined>((last, { pad }) => pad ?? last, undefined);
}

function airOf({ motions }: RunSpec): AirDrag | null {
  const falls = motions.filter((motion) => motion.kind === 'free');
  return falls[falls.length - 1]?.airDrag ?? null;
}
