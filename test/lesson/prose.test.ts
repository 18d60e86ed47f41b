import { describe, expect, it } from 'vitest';
import type { Faults } from '../../src/lesson/fault.ts';
import { fillFigures, inlinesOf, plainText, readProse } from '../../src/lesson/prose.ts';

function read(markdown: string) {
  const faults: Faults = [];
  return { prose: readProse(markdown, { path: 'test', line: 1 }, faults), faults };
}

describe('text of a lesson', () => {
  it('becomes a small tree', () => {
    const { prose, faults } = read(
      'One *two* **three** [four](term:specific-force) `=five`,\nsix.\n\n> A note.\n\n1. first\n2. second\n   - inner\n',
    );
    expect(faults).toEqual([]);
    expect(prose).toEqual([
      {
        kind: 'paragraph',
        children: [
          { kind: 'text', text: 'One ' },
          { kind: 'emphasis', children: [{ kind: 'text', text: 'two' }] },
          { kind: 'text', text: ' ' },
          { kind: 'strong', children: [{ kind: 'text', text: 'three' }] },
          { kind: 'text', text: ' ' },
          { kind: 'term', term: 'specific-force', children: [{ kind: 'text', text: 'four' }] },
          { kind: 'text', text: ' ' },
          { kind: 'figure', name: 'five', text: '' },
          { kind: 'text', text: ', six.' },
        ],
      },
      { kind: 'note', children: [{ kind: 'paragraph', children: [{ kind: 'text', text: 'A note.' }] }] },
      {
        kind: 'list',
        ordered: true,
        items: [
          [{ kind: 'paragraph', children: [{ kind: 'text', text: 'first' }] }],
          [
            { kind: 'paragraph', children: [{ kind: 'text', text: 'second' }] },
            {
              kind: 'list',
              ordered: false,
              items: [[{ kind: 'paragraph', children: [{ kind: 'text', text: 'inner' }] }]],
            },
          ],
        ],
      },
    ]);
  });

  it('takes the numbers of its figures, and leaves the tree of the file as it was', () => {
    const { prose } = read('It fell for **`=fall`**.\n\n- and read `=end`\n\n> `=fall`');
    const filled = fillFigures(prose, (name) => ({ fall: '0.3 s', end: '0 g' })[name] ?? '?');
    expect(plainText(filled)).toBe('It fell for 0.3 s. and read 0 g 0.3 s');
    expect(plainText(prose)).toBe('It fell for . and read  ');
  });

  it.each([
    '<p>hello</p>',
    'a <b onclick="x()">b</b>',
    'a <!-- comment --> b',
    '<script>alert(1)</script>',
    '[x](javascript:alert(1))',
    '[x](term:specific-force "title") [y](data:text/html,hi)',
    '[x](https://example.org)',
    '<https://example.org>',
    'www.example.org',
    'me@example.org',
    '[x]: https://example.org\n\n[x]',
    '![x](term:picture)',
    '# Heading',
    '---',
    '```js\ncode\n```',
    '    code',
    '`code`',
    '`=Bad name`',
    '~~gone~~',
    '| a |\n|---|\n| b |',
    '- [x] task',
    '[x](term:Not-A-Term)',
  ])('%j is refused with a sentence', (markdown) => {
    const { faults, prose } = read(markdown);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults[0]!.allowed).toContain('paragraphs, lists');
    // Nothing of it gets into the tree but bare text.
    for (const inline of inlinesOf(prose)) expect(['text', 'emphasis', 'strong', 'term']).toContain(inline.kind);
  });

  it('what looks like markup but is none stays bare text', () => {
    const { prose, faults } = read('2 < 3 > 1 &amp; a_b_c & ½·g·t² \\*plain\\* <svg/onload=alert(1)>');
    expect(faults).toEqual([]);
    expect(plainText(prose)).toBe('2 < 3 > 1 &amp; a_b_c & ½·g·t² *plain* <svg/onload=alert(1)>');
  });
});
