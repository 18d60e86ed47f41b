import { describe, expect, it } from 'vitest';
import { type JsonNode, readJson } from '../../src/scenario/json.ts';
import { chance } from './support/chance.ts';

function read(text: string): { value: unknown; faults: string[] } {
  const faults: string[] = [];
  const node = readJson(text, (path, found, allowed) => faults.push(`${path}: ${found}; ${allowed}`));
  return { value: node && plain(node), faults };
}

function plain(node: JsonNode): unknown {
  if (node.type === 'list') return node.items.map(plain);
  if (node.type === 'object') return Object.fromEntries([...node.members].map(([key, value]) => [key, plain(value)]));
  return node.type === 'null' ? null : node.value;
}

function accepted(text: string): { value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return undefined;
  }
}

describe('reading JSON (RFC 8259)', () => {
  // The examples of RFC 8259, section 13.
  it.each([
    '{"Image":{"Width":800,"Height":600,"Title":"View from 15th Floor","Thumbnail":{"Url":"http://www.example.com/image/481989943","Height":125,"Width":100},"Animated":false,"IDs":[116,943,234,38793]}}',
    '"Hello world!"',
    '42',
    'true',
  ])('reads the example %s', (text) => {
    expect(read(text)).toEqual({ value: JSON.parse(text), faults: [] });
  });

  it.each([
    '{}',
    '[]',
    '[ ]',
    '{ }',
    '\t[1 ,\r\n2]',
    '-0',
    '-0.0e-0',
    '1E+2',
    '1e5',
    '0.1',
    '"\\u00e9\\n\\/\\"\\\\"',
    '"\\ud83d\\ude00"',
    '"\u2028"',
    'null',
    '{"":{}}',
    '{"__proto__":1}',
    '',
    ' ',
    '[1,]',
    '[,1]',
    '{"a"}',
    '{"a":}',
    '{a:1}',
    "{'a':1}",
    '{"a":1,}',
    '{"a" 1}',
    '01',
    '1.',
    '.5',
    '+1',
    '- 1',
    '0x10',
    '1e',
    '1e+',
    'NaN',
    'Infinity',
    '-Infinity',
    'nul',
    'True',
    '"a',
    '"\n"',
    '"\\x"',
    '"\\u12g4"',
    '"\t"',
    '[1] 2',
    '[1',
    '{"a":1',
    ']',
    '}',
    '[1}',
    '/* */ 1',
    '1 // one',
    '"\\',
    '[1 2]',
    '--1',
    '1-1',
    '1a',
    'truefalse',
    '\u00a01',
    '"\\u12"',
  ])('accepts and refuses like JSON.parse: %j', (text) => {
    const platform = accepted(text);
    const { value, faults } = read(text);
    expect(faults.length).toBe(platform ? 0 : 1);
    if (platform) expect(value).toEqual(platform.value);
  });

  it('agrees with JSON.parse on 20 000 broken texts (seed 1)', () => {
    const random = chance(1);
    const pieces = '{}[],:"\\ \n0123456789.eE+-truefalsnbu'.split('');
    const whole = '{"a":[1,-2.5e3,"x\\n\\u0041",true,null],"b":{"c":{}}}';
    let valid = 0;
    for (let n = 0; n < 20_000; n++) {
      let text = whole;
      for (let edits = random.whole(0, 3); edits > 0; edits--) {
        const at = random.whole(0, text.length);
        text =
          text.slice(0, at) + (random.unit() < 0.7 ? random.pick(pieces) : '') + text.slice(at + random.whole(0, 2));
      }
      const platform = accepted(text);
      const { value, faults } = read(text);
      const repeated = faults.filter((fault) => fault.includes('every key once'));
      expect(faults.length - repeated.length === 0, `${text}: ${faults}`).toBe(platform !== undefined);
      if (platform && repeated.length === 0) expect(value).toEqual(platform.value);
      valid += platform ? 1 : 0;
    }
    expect(valid).toBeGreaterThan(5000);
  });
});

describe('what JSON.parse does not tell', () => {
  it('a key given twice, with its place', () => {
    expect(read('{"a": 1,\n "b": {"c": 1,\n   "c": 2}}').faults).toEqual([
      'b.c: the key "c" again in line 3, column 4; every key once',
    ]);
  });

  it('a number too large for a double is kept as written', () => {
    const faults: string[] = [];
    expect(readJson('1e999', (path) => faults.push(path))).toEqual({
      type: 'number',
      value: Number.POSITIVE_INFINITY,
      text: '1e999',
    });
    expect(faults).toEqual([]);
  });

  it('path, line and column of a slip', () => {
    expect(read('{\n  "elements": [\r\n    { "name": "z", "gap": 0,02 }\n  ]\n}').faults).toEqual([
      'elements[0]: "02" in line 3, column 29; a key in double quotes',
    ]);
    expect(read('\ufeff{"tick": NaN}').faults[0]).toContain('tick: "NaN" in line 1, column 10;');
    expect(read('{"a": [1, 2').faults).toEqual(['a: the end of the text in line 1, column 12; a comma or ]']);
  });

  it('brackets nested without end are refused, not followed', () => {
    expect(read('['.repeat(1_000_000)).faults).toHaveLength(1);
    expect(read(`${'['.repeat(100)}${']'.repeat(100)}`).faults).toEqual([]);
    expect(read(`${'['.repeat(101)}${']'.repeat(101)}`).faults[0]).toContain('at most 100 levels');
  });
});
