/** The door for scenarios: from JSON text to a run, or to every fault that can be found in one pass. */
import type { RecordedData } from '../contract/motion.ts';
import type { RunSpec } from '../contract/run.ts';
import { buildRun } from './build.ts';
import { withDesigns } from './designed-elements.ts';
import { type Fault, pathTo, quoted, type Report, ROOT } from './fault.ts';
import { readJson } from './json.ts';
import { type LooseScenario, type ScenarioValue, scenario } from './keys.ts';
import { readRecordedFile } from './recorded-file.ts';
import { checkRules } from './rules.ts';

export interface ScenarioFiles {
  /** The text of a recorded file, named as in the scenario; throws an Error that says why it cannot be read. */
  readFile(path: string): string;
}

/** A limit of the model or a caution that a sound scenario comes near. */
export interface Warning {
  readonly path: string;
  readonly words: string;
}

export type Parsed =
  | { readonly run: RunSpec; readonly warnings: readonly Warning[]; readonly faults?: undefined }
  | { readonly run?: undefined; readonly faults: readonly Fault[] };

/** The run that a scenario (JSON text) stands for, with every default filled in, or its faults. Never throws. */
export function parseScenario(text: string, files: ScenarioFiles): Parsed {
  const faults: Fault[] = [];
  const faultyPaths = new Set<string>();
  const report: Report = (path, found, allowed) => {
    faults.push({ path, found, allowed });
    faultyPaths.add(path);
  };
  const root = readJson(text, report);
  if (root === undefined) return { faults };
  const written = scenario.read(root, ROOT, report);
  if (written === undefined) return { faults };
  const findings = { report, faulty: (path: string) => faultyPaths.has(path) };
  const faultyBelow = (path: string): boolean =>
    [...faultyPaths].some((at) => at === path || at.startsWith(`${path}.`) || at.startsWith(`${path}[`));
  const warnings: Warning[] = [];
  const value = withDesigns(written, findings, faultyBelow, (path, words) => warnings.push({ path, words }));
  checkRules(value, findings);
  const records = readRecords(value, files, report);
  // Without faults nothing is missing.
  return faults.length > 0 ? { faults } : { run: buildRun(value as ScenarioValue, records), warnings };
}

/** Reads the file of every recorded motion that says enough to do so. */
function readRecords({ motions }: LooseScenario, files: ScenarioFiles, report: Report): Map<number, RecordedData> {
  const records = new Map<number, RecordedData>();
  const texts = new Map<string, string | undefined>();
  for (const [i, motion] of (motions ?? []).entries()) {
    if (motion?.kind !== 'recorded') continue;
    const { file, time, columns = [], unit } = motion;
    if (file === undefined) continue;
    const path = pathTo('motions', i);
    if (!texts.has(file)) texts.set(file, readText(file, files, pathTo(path, 'file'), report));
    const text = texts.get(file);
    const names = columns.filter((name) => name !== undefined);
    if (
      text === undefined ||
      time === undefined ||
      unit === undefined ||
      names.length === 0 ||
      names.length < columns.length
    )
      continue;
    const record = readRecordedFile(text, { file, time, columns: names, unit }, path, report);
    if (record !== undefined) records.set(i, record);
  }
  return records;
}

function readText(file: string, files: ScenarioFiles, path: string, report: Report): string | undefined {
  try {
    return files.readFile(file);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    report(
      path,
      `${quoted(file)}, which cannot be read (${why.replace(/\s+/g, ' ').slice(0, 200)})`,
      'a CSV file, relative to the scenario',
    );
    return undefined;
  }
}
