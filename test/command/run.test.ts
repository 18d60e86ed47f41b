import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';

it('the launcher adds nothing to the output of its entry and passes arguments, input and exit code on', () => {
  const cache = join(projectRoot, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'entry-'));
  try {
    const entry = join(folder, 'entry.mts');
    writeFileSync(
      entry,
      `import { readFileSync } from 'node:fs';
       const words: readonly string[] = [...process.argv.slice(2), readFileSync(0, 'utf8')];
       process.stdout.write(words.join('|'));
       process.exitCode = 7;`,
    );
    const launcher = join(projectRoot, 'src', 'command', 'run.mjs');
    const result = spawnSync(process.execPath, [launcher, entry, '--some', 'argument'], {
      input: 'in',
      encoding: 'utf8',
    });
    expect(result).toMatchObject({ stdout: '--some|argument|in', stderr: '', status: 7 });
  } finally {
    rmSync(folder, { recursive: true });
  }
});
