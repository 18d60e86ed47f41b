/**
 * `npm run -s simulate -- scenario.json`: runs a scenario and writes its rows as CSV. Exit code 0 after a whole
 * run, 2 for a scenario or an argument with faults (one line each on standard error, nothing written), 1 when
 * the run or the writing broke off.
 */
import { once } from 'node:events';
import { dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { RunSpec } from '../contract/run.ts';
import { rowWriter, SAMPLE_HEADER, sampleLine } from '../scenario/csv.ts';
import { faultSentence, quoted } from '../scenario/fault.ts';
import { parseScenario } from '../scenario/parse-scenario.ts';
import { simulation } from '../scenario/simulate.ts';
import { InputFiles, type OutputFile, openOutputs, reasonOf, type Wanted } from './simulate-files.ts';

const HELP = `npm run -s simulate -- SCENARIO [--out FILE] [--samples FILE] [--hash]

Runs a scenario and writes its rows as CSV.

  SCENARIO         a JSON file, or - for standard input
  --out FILE       write the rows to FILE instead of standard output
  --samples FILE   write every read-out sample at its own instant: element,time_s,reported_g
  --hash           also print the fingerprint of all rows, on standard error
  --help           show this

Paths are taken from the present folder, those inside a scenario from the folder of its file.
The README has the keys of a scenario and their ranges.
Exit code: 0 after a whole run, 2 if something is wrong with the scenario or the arguments, 1 if it broke off.
`;

/** Text gathered before it is passed on [characters]: few large writes, yet a reader waits little. */
const PIECE = 1 << 16;

/** What is wrong with arguments or scenario, in sentences. */
class Refusal extends Error {
  readonly sentences: readonly string[];

  constructor(sentences: readonly string[]) {
    super(sentences[0]);
    this.sentences = sentences;
  }
}

// Whoever reads the rows may have seen enough (head, a closed pager): that is no fault.
process.stdout.on('error', (error) => {
  process.exit('code' in error && error.code === 'EPIPE' ? 0 : brokeOff(error));
});

try {
  await main();
} catch (error) {
  if (error instanceof Refusal) {
    process.stderr.write(error.sentences.map((sentence) => `${sentence}\n`).join(''));
    process.exitCode = 2;
  } else process.exitCode = brokeOff(error);
}

function brokeOff(error: unknown): number {
  process.stderr.write(`The run broke off: ${reasonOf(error)}\n`);
  return 1;
}

async function main(): Promise<void> {
  const { scenario, outputs, hash, help } = readArguments();
  if (help) {
    process.stdout.write(HELP);
    return;
  }
  const inputs = new InputFiles();
  const text = await readScenario(scenario, inputs);
  const folder = scenario === '-' ? startFolder() : dirname(resolve(startFolder(), scenario));
  const parsed = parseScenario(text, { readFile: (path) => inputs.read(resolve(folder, path)) });
  if (parsed.run === undefined) throw new Refusal(parsed.faults.map(faultSentence));
  const { run, warnings } = parsed;
  const wanted = outputs.map(({ option, path }) => ({ option, path: resolve(startFolder(), path) }));
  const { files, refusals } = openOutputs(wanted, inputs);
  if (refusals.length > 0) throw new Refusal(refusals);
  const fileOf = (option: string): OutputFile | undefined =>
    files[outputs.findIndex((output) => output.option === option)];
  for (const { path, words } of warnings) process.stderr.write(`${path}: ${words}\n`);
  const fingerprint = await write(run, fileOf('--out'), fileOf('--samples'));
  if (hash) process.stderr.write(`hash ${fingerprint}\n`);
  for (const file of files) file.close();
}

interface Arguments {
  readonly scenario: string;
  readonly outputs: readonly Wanted[];
  readonly hash: boolean;
  readonly help: boolean;
}

function readArguments(): Arguments {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse();
  } catch (error) {
    throw new Refusal([
      `arguments: ${error instanceof Error ? error.message.split('\n')[0] : error} (--help shows what is allowed)`,
    ]);
  }
  const { values, positionals } = parsed;
  const [scenario = '', ...more] = positionals;
  if (!values.help && (scenario === '' || more.length > 0)) {
    throw new Refusal([
      `arguments: found ${positionals.length} scenarios; allowed: one path, or - for standard input (--help shows more)`,
    ]);
  }
  const outputs = (['out', 'samples'] as const).flatMap((name) => {
    const path = values[name];
    return path === undefined ? [] : [{ option: `--${name}`, path }];
  });
  return { scenario, outputs, hash: values.hash, help: values.help };
}

function parse() {
  return parseArgs({
    allowPositionals: true,
    options: {
      out: { type: 'string' },
      samples: { type: 'string' },
      hash: { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
    },
  });
}

/** Where the command was typed: npm goes to the project's folder first, and tells where it came from. */
function startFolder(): string {
  const typedIn = process.env.npm_lifecycle_event === 'simulate' ? process.env.INIT_CWD : undefined;
  return typedIn ?? process.cwd();
}

async function readScenario(scenario: string, inputs: InputFiles): Promise<string> {
  try {
    if (scenario !== '-') return inputs.read(resolve(startFolder(), scenario));
    process.stdin.setEncoding('utf8');
    let text = '';
    for await (const piece of process.stdin) text += piece;
    return text;
  } catch (error) {
    throw new Refusal([
      `scenario: found ${quoted(scenario)}, which cannot be read (${reasonOf(error)}); allowed: a JSON file, or - for standard input`,
    ]);
  }
}

/** Writes rows and samples; gives the hash of all rows. */
async function write(run: RunSpec, out: OutputFile | undefined, samplesOut: OutputFile | undefined): Promise<string> {
  const writer = rowWriter(run);
  let rows = writer.header;
  let samples = SAMPLE_HEADER;
  const pass = async (): Promise<void> => {
    if (out) out.write(rows);
    else if (!process.stdout.write(rows)) await once(process.stdout, 'drain');
    rows = '';
    samplesOut?.write(samples);
    samples = '';
  };
  const ticks = simulation(run, {
    row(_row, values) {
      rows += writer.row(values);
    },
    sample(element, timeS, valueG) {
      if (samplesOut) samples += sampleLine(run.elements[element]?.name ?? '', timeS, valueG);
    },
  });
  let step = ticks.next();
  for (; !step.done; step = ticks.next()) if (rows.length + samples.length > PIECE) await pass();
  await pass();
  return step.value;
}
