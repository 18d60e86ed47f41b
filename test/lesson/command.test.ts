import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';
import { SMALL_LESSON } from './support/small-lesson.ts';

const folder = mkdtempSync(join(tmpdir(), 'lesson-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

function lesson(...args: readonly string[]) {
  const entry = [join(projectRoot, 'src/command/run.mjs'), 'src/command/lesson.ts', ...args];
  // Whatever npm has told the test runner is not meant for it.
  const { npm_lifecycle_event: _event, INIT_CWD: _cwd, ...env } = process.env;
  return spawnSync(process.execPath, entry, { cwd: folder, encoding: 'utf8', env });
}

describe('lesson check', () => {
  it('prints a table and succeeds when all proofs hold', () => {
    file('small.md', SMALL_LESSON);
    const { status, stdout, stderr } = lesson('check', 'small.md');
    expect(stderr).toBe('');
    expect(stdout.split('\n').map((line) => line.replaceAll(/ {2,}/gu, ' | '))).toEqual([
      'holds | small · drop | model answer | all pass',
      'holds | small · drop | nothing | none passes',
      'holds | small · drop | answers without the bench | none passes',
      'holds | small · drop | rings | zeroAtEnd: ringing',
      '4 of 4 proofs hold',
      '',
    ]);
    expect(status).toBe(0);
  });

  it('fails, and says what it found, when one does not', () => {
    file('weak.md', SMALL_LESSON.replace('if: dampingRatio < 0.3', 'if: dampingRatio < 0.01'));
    const { status, stdout } = lesson('check', 'weak.md');
    expect(stdout).toMatch(/^FAILS {2}small · drop {2}rings +zeroAtEnd: ringing; found zeroAtEnd: wrong$/mu);
    expect(stdout).toContain('3 of 4 proofs hold');
    expect(status).toBe(1);
  });

  it('names file, line and what is allowed when a lesson cannot be read, and proves nothing', () => {
    file('bad.md', SMALL_LESSON.replace('of: reading', 'of: needle'));
    const { status, stdout, stderr } = lesson('check', 'bad.md', 'absent.md');
    expect(stdout).toBe('');
    expect(stderr).toMatch(/^bad\.md:\d+: drop · measure\[1\]\.of: found "needle"; allowed: reading, felt/mu);
    expect(stderr).toContain('"absent.md", which cannot be read');
    expect(status).toBe(2);
  });

  it.each([[[]], [['check']], [['prove', 'small.md']], [['check', '--all']]])('%j is no command', (args) => {
    const { status, stdout, stderr } = lesson(...args);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain('arguments: ');
  });
});
