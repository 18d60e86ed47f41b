import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';
import { InputFiles, openOutputs } from '../../src/command/simulate-files.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { runScenario, simulate } from '../../src/scenario/simulate.ts';
import { FILES, RECORD_CSV } from './support/full-scenario.ts';

const launcher = join(projectRoot, 'src', 'command', 'run.mjs');
const entry = join(projectRoot, 'src', 'command', 'simulate.ts');
const folder = mkdtempSync(join(tmpdir(), 'simulate-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Call {
  readonly input?: string;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

function run(args: readonly string[], { input = '', cwd = folder, env = {} }: Call = {}): SpawnSyncReturns<string> {
  // As typed at a prompt, not inside the npm script that runs these tests.
  const { npm_lifecycle_event: _event, INIT_CWD: _folder, ...outside } = process.env;
  return spawnSync(process.execPath, [launcher, entry, ...args], {
    cwd,
    input,
    encoding: 'utf8',
    env: { ...outside, ...env },
  });
}

function file(name: string, content: unknown): string {
  writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return name;
}

const z = { name: 'z', axis: [0, 1, 0], at: [0, 0, 0], naturalFrequency: 10, dampingRatio: 0.05, gap: 0.02 };
const DROP = {
  seed: 1,
  gravity: 9.80665,
  duration: 1.5,
  tick: 0.0001,
  record: { rate: 1000 },
  housing: { mass: 0.5, size: [0.12, 0.06, 0.2] },
  elements: [z],
  motions: [
    { from: 0, kind: 'held' },
    { from: 0.5, kind: 'free', height: 0.3, pad: { stiffness: 20000, damping: 10, friction: 0.5 } },
  ],
};
const SHORT = { ...DROP, duration: 0.01, elements: [{ ...z, readout: { rate: 700, range: 20, bits: 12 } }] };

describe('simulate', () => {
  it('writes a row at every k/rate, from 0 to the duration, and nothing else', () => {
    const { status, stdout, stderr } = run([file('drop.json', DROP)]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const lines = stdout.split('\n');
    expect(lines[0]).toBe('time_s,px_m,py_m,pz_m,z_specific_force_m_s2,z_deflection_m,z_velocity_m_s');
    expect(lines).toHaveLength(1 + 1501 + 1);
    expect(lines.pop()).toBe('');
    const rows = lines.slice(1).map((line) => line.split(',').map(Number));
    rows.forEach((row, k) => expect(row[0]).toBe(k / 1000));
    // Held: f = g, and the mass sags by g/ω₀². The box, 0.06 m high, hangs 0.3 m above the pad.
    expect(rows[0]).toEqual([
      0,
      0,
      expect.closeTo(0.33, 15),
      0,
      9.80665,
      expect.closeTo(-9.80665 / (20 * Math.PI) ** 2, 14),
      0,
    ]);
    // Let go at 0.5 s, row 500 shows the value after: it falls and reads exactly 0.
    expect(rows[499]?.[4]).toBe(9.80665);
    expect(rows[500]?.[4]).toBe(0);
    expect(rows[600]?.[2]).toBeCloseTo(0.33 - (9.80665 * 0.1 ** 2) / 2, 12);
  });

  it('reads from standard input, and writes rows and samples into files', () => {
    const { status, stdout, stderr } = run(['-', '--out', 'rows.csv', '--samples=samples.csv'], {
      input: JSON.stringify(SHORT),
    });
    expect({ status, stdout, stderr }).toEqual({ status: 0, stdout: '', stderr: '' });
    const rows = readFileSync(join(folder, 'rows.csv'), 'utf8').trimEnd().split('\n');
    expect(rows).toHaveLength(1 + 11);
    const samples = readFileSync(join(folder, 'samples.csv'), 'utf8').trimEnd().split('\n');
    expect(samples[0]).toBe('element,time_s,reported_g');
    expect(samples.slice(1).map((line) => line.split(',').slice(0, 2))).toEqual(
      Array.from({ length: 8 }, (_, k) => ['z', (k / 700).toPrecision(17)]),
    );
    // The row at 0.01 s holds the last sample, of 7/700 s.
    expect(rows.at(-1)?.split(',').slice(-1)).toEqual([(7 / 700).toPrecision(17)]);
    // Half a step of 12 bits over ±20 m/s² from 1 g.
    expect(Math.abs(Number(samples[1]?.split(',')[2]) - 1)).toBeLessThanOrEqual(20 / 4096 / 9.80665);
  });

  it('a longer file of before is replaced whole', () => {
    file('before.csv', 'x'.repeat(1e6));
    expect(run([file('short.json', SHORT), '--out', 'before.csv']).status).toBe(0);
    expect(readFileSync(join(folder, 'before.csv'), 'utf8')).not.toContain('x'.repeat(10));
  });

  it('finds recorded files beside the scenario, or in the present folder with -', () => {
    mkdirSync(join(folder, 'deep'));
    file('deep/record.csv', RECORD_CSV);
    const recorded = {
      ...SHORT,
      motions: [
        {
          from: 0,
          kind: 'recorded',
          file: 'record.csv',
          time: 't_s',
          columns: ['ax', 'ay', 'az'],
          unit: 'm/s2',
          is: 'specificForce',
        },
      ],
    };
    const beside = run([file('deep/recorded.json', recorded)]);
    expect(beside.stderr).toBe('');
    expect(beside.stdout.split('\n')[1]?.split(',')[4]).toBe('2.0000000000000000');
    expect(run(['-'], { input: JSON.stringify(recorded), cwd: join(folder, 'deep') }).stdout).toBe(beside.stdout);
    expect(run(['-'], { input: JSON.stringify(recorded) })).toMatchObject({
      status: 2,
      stdout: '',
      stderr:
        'motions[0].file: found "record.csv", which cannot be read (there is no such file or folder); allowed: a CSV file, relative to the scenario\n',
    });
  });

  it('started by npm, takes paths from where it was typed', () => {
    file('typed.json', SHORT);
    expect(
      run(['typed.json'], { cwd: projectRoot, env: { npm_lifecycle_event: 'simulate', INIT_CWD: folder } }).status,
    ).toBe(0);
  });

  it('a reader that has seen enough ends it quietly', () => {
    const long = file('long.json', {
      ...DROP,
      duration: 4,
      record: { rate: 20000 },
      motions: [{ from: 0, kind: 'held' }],
    });
    const command = `"${process.execPath}" "${launcher}" "${entry}" ${long}; echo "exit $?" >&2`;
    const { stdout, stderr } = spawnSync('bash', ['-c', `{ ${command}; } | head -n 2`], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(stdout.split('\n')).toHaveLength(3);
    expect(stderr).toBe('exit 0\n');
  });

  it('says how it is used', () => {
    const { status, stdout, stderr } = run(['--help']);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    for (const option of ['SCENARIO', '--out FILE', '--samples FILE', '--help']) expect(stdout).toContain(option);
  });
});

describe('simulate refuses with exit code 2, a line for each fault, and writes nothing', () => {
  it('a scenario with faults', () => {
    const bad = file('bad.json', {
      ...DROP,
      tick: 0,
      motions: [
        { from: 0, kind: 'held' },
        { from: 0.5, kind: 'free', pad: { stiffness: -5 } },
      ],
      more: 1,
    });
    file('kept.csv', 'kept');
    const { status, stdout, stderr } = run([bad, '--out', 'kept.csv', '--samples', 'never.csv']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr.trimEnd().split('\n')).toEqual([
      'tick: found 0; allowed: a number from 1e-8 to 0.1, in s',
      'motions[1].pad.stiffness: found -5; allowed: a number above 0, at most 1e10, in N/m',
      expect.stringMatching(/^more: found the unknown key "more"; allowed: /),
    ]);
    expect(readFileSync(join(folder, 'kept.csv'), 'utf8')).toBe('kept');
    expect(existsSync(join(folder, 'never.csv'))).toBe(false);
  });

  it.each([
    ['no scenario', [], 'arguments: found 0 scenarios; allowed: one path, or - for standard input (--help shows more)'],
    ['two', ['a', 'b'], 'arguments: found 2 scenarios; allowed: one path, or - for standard input (--help shows more)'],
    ['an unknown option', ['a', '--fast'], /^arguments: Unknown option '--fast'/],
    ['an option without its file', ['a', '--out'], /^arguments: Option '--out <value>' argument missing/],
    [
      'no such file',
      ['none.json'],
      'scenario: found "none.json", which cannot be read (there is no such file or folder); allowed: a JSON file, or - for standard input',
    ],
    [
      'a folder',
      ['.'],
      'scenario: found ".", which cannot be read (it is a folder); allowed: a JSON file, or - for standard input',
    ],
  ] as const)('%s', (_what, args, sentence) => {
    const { status, stdout, stderr } = run(args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    if (typeof sentence === 'string') expect(stderr).toBe(`${sentence}\n`);
    else expect(stderr).toMatch(sentence);
    expect(stderr.trimEnd()).not.toContain('\n');
  });

  it('what is no JSON, with line and column', () => {
    expect(run(['-'], { input: '{\n  "duration": 1,\n}' })).toMatchObject({
      status: 2,
      stdout: '',
      stderr: 'scenario: found "}" in line 3, column 1; allowed: a key in double quotes\n',
    });
    expect(run(['-'], { input: '' })).toMatchObject({
      status: 2,
      stderr: 'scenario: found the end of the text in line 1, column 1; allowed: an object { … }\n',
    });
  });

  it('an output that cannot be written, leaving the other as it was', () => {
    file('other.csv', 'kept');
    const { status, stdout, stderr } = run([
      file('sound.json', SHORT),
      '--samples',
      'other.csv',
      '--out',
      'no-such-folder/rows.csv',
    ]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(
      /^--out: found ".*rows\.csv", which cannot be written \(there is no such file or folder\); allowed: the path of a file of its own\n$/,
    );
    expect(readFileSync(join(folder, 'other.csv'), 'utf8')).toBe('kept');
    expect(run(['sound.json', '--out', '.'])).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('(it is a folder)'),
    });
    expect(run(['sound.json', '--out', 'fresh.csv', '--samples', 'no-such-folder/s.csv']).status).toBe(2);
    expect(existsSync(join(folder, 'fresh.csv'))).toBe(false);
  });

  it('an output that would overwrite what the run reads, or the other output', () => {
    const text = JSON.stringify(SHORT);
    file('itself.json', text);
    symlinkSync(join(folder, 'itself.json'), join(folder, 'link.csv'));
    expect(run(['itself.json', '--out', 'link.csv'])).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('(the run reads it)'),
    });
    expect(readFileSync(join(folder, 'itself.json'), 'utf8')).toBe(text);
    expect(run(['itself.json', '--out', 'one.csv', '--samples', 'one.csv'])).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('(another option writes it)'),
    });
  });

  it('an output without permission', () => {
    const path = join(folder, file('locked.csv', 'kept'));
    chmodSync(folder, 0o755);
    chmodSync(path, 0o444);
    // Root may write anything: as nobody in particular (65534 by convention) it may not.
    const isRoot = process.getuid?.() === 0;
    if (isRoot) process.seteuid?.(65534);
    const { files, refusals } = openOutputs([{ option: '--out', path }], new InputFiles());
    if (isRoot) process.seteuid?.(0);
    expect(files).toEqual([]);
    expect(refusals).toEqual([expect.stringContaining('(permission denied)')]);
    expect(readFileSync(path, 'utf8')).toBe('kept');
  });
});

describe('a run does not depend on how it is looked at', () => {
  function rows(data: object): Map<number, number[]> {
    const { run: spec } = parseScenario(JSON.stringify(data), FILES);
    const seen = new Map<number, number[]>();
    if (spec) simulate(spec, { row: (_row, values) => seen.set(values[0] ?? Number.NaN, [...values].slice(1)) });
    return seen;
  }

  it('the rows that two record rates share are the same, bit for bit', () => {
    const coarse = rows({ ...DROP, tick: 1 / 7300, record: { rate: 250 } });
    const fine = rows({ ...DROP, tick: 1 / 7300, record: { rate: 1000 } });
    expect(coarse.size).toBe(376);
    for (const [timeS, values] of coarse) expect(fine.get(timeS)).toEqual(values);
  });

  it('samples come in the order of their instants, those of one instant in the order of the elements', () => {
    const elements = [
      { ...z, name: 'slow', readout: { rate: 300 } },
      { ...z, name: 'fast', readout: { rate: 900 } },
    ];
    const samples: [number, number][] = [];
    runScenario(JSON.stringify({ ...DROP, duration: 0.1, tick: 0.01, elements }), FILES, {
      sample: (element, timeS) => samples.push([timeS, element]),
    });
    expect(samples).toEqual([...samples].sort(([t, i], [u, j]) => t - u || i - j));
    expect(samples.filter(([, element]) => element === 0)).toHaveLength(31);
    expect(samples.filter(([, element]) => element === 1)).toHaveLength(91);
  });

  it('faults mean that nothing has run', () => {
    let called = false;
    const faults = runScenario('{}', FILES, {
      row: () => {
        called = true;
      },
    });
    expect(faults.map(({ path }) => path)).toEqual(['duration', 'elements', 'motions']);
    expect(called).toBe(false);
  });
});
