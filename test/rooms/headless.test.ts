import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';
import { ROOMS } from './table.ts';

const headless = JSON.parse(readFileSync(join(projectRoot, 'tsconfig.headless.json'), 'utf8')) as {
  readonly include: readonly string[];
};

describe('headless rooms', () => {
  it('are all type-checked without the DOM library', () => {
    const declared = Object.keys(ROOMS).filter((name) => ROOMS[name]?.headless);
    expect([...headless.include].sort()).toEqual(declared.map((name) => `src/${name}`).sort());
  });

  it('know no document, clock, timer, console or process, whatever they import', () => {
    const names = [
      'document',
      'window',
      'performance',
      'setTimeout',
      'requestAnimationFrame',
      'console',
      'process',
      'fetch',
    ];
    const cache = join(projectRoot, 'node_modules', '.cache');
    mkdirSync(cache, { recursive: true });
    const folder = mkdtempSync(join(cache, 'headless-'));
    try {
      writeFileSync(join(folder, 'sample.ts'), names.map((name) => `export const a_${name} = ${name};\n`).join(''));
      const settings = {
        extends: join(projectRoot, 'tsconfig.headless.json'),
        include: ['sample.ts', ...headless.include.map((room) => join(projectRoot, room))],
      };
      writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(settings));
      const tsc = join(projectRoot, 'node_modules', 'typescript', 'bin', 'tsc');
      const { stdout } = spawnSync(process.execPath, [tsc, '-p', folder, '--pretty', 'false'], { encoding: 'utf8' });
      const unknown = [...stdout.matchAll(/sample\.ts\(.*Cannot find name '(\w+)'/g)].map((match) => match[1]);
      expect(unknown).toEqual(names);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
