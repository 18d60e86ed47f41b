import { describe, expect, it } from 'vitest';
import { matchesLock } from '../../src/command/install.mjs';

const lock = (packages: Record<string, object>) => JSON.stringify({ packages: { '': { name: 'bench' }, ...packages } });
const installed = (packages: Record<string, object>) => JSON.stringify({ packages });

describe('what is installed', () => {
  it('matches a lock file that asks for the same versions', () => {
    const packages = { 'node_modules/a': { version: '1.0.0' }, 'node_modules/a/node_modules/b': { version: '2.0.0' } };
    expect(matchesLock(lock(packages), installed(packages))).toBe(true);
  });

  it('does not match if a package is missing or of another version', () => {
    const wanted = lock({ 'node_modules/a': { version: '1.0.0' } });
    expect(matchesLock(wanted, installed({}))).toBe(false);
    expect(matchesLock(wanted, installed({ 'node_modules/a': { version: '1.0.1' } }))).toBe(false);
  });

  it('may lack packages for other platforms, but not hold another version of them', () => {
    const wanted = lock({ 'node_modules/for-another-platform': { version: '1.0.0', optional: true } });
    expect(matchesLock(wanted, installed({}))).toBe(true);
    expect(matchesLock(wanted, installed({ 'node_modules/for-another-platform': { version: '0.9.0' } }))).toBe(false);
  });
});
