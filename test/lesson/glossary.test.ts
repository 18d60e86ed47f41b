import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';
import { GLOSSARY, TERM_IDS } from '../../src/lesson/glossary.ts';

const FOLDER = join(projectRoot, 'lessons');
const LINK = /\]\(term:([^)]*)\)/gu;

describe('the glossary', () => {
  it('names each term once, by an address of small letters', () => {
    expect(TERM_IDS.size).toBe(GLOSSARY.length);
    for (const { id } of GLOSSARY) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/u);
  });

  it.each(GLOSSARY)('$term: one line, where it comes from, where to see it move', ({ line, source, see }) => {
    // About two lines of the sheet at 1024 px.
    expect(line.length).toBeLessThanOrEqual(110);
    for (const text of [line, source, see]) expect(text).not.toBe('');
  });

  it.each(readdirSync(FOLDER))('%s leads to three terms or more, all of them there', (file) => {
    const source = readFileSync(join(FOLDER, file), 'utf8');
    const named = [...source.matchAll(LINK)].map(([, id]) => id!);
    expect(named.filter((id) => !TERM_IDS.has(id))).toEqual([]);
    expect(new Set(named).size).toBeGreaterThanOrEqual(3);
  });
});
