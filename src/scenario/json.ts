/**
 * Reads JSON (RFC 8259) into nodes that remember what JSON.parse drops: keys given twice, and numbers as
 * they were written (1e999 is valid JSON and becomes Infinity). Faults say the path, line and column.
 */
import { pathTo, quoted, type Report, ROOT } from './fault.ts';

export type JsonNode =
  | { readonly type: 'null' }
  | { readonly type: 'boolean'; readonly value: boolean }
  | { readonly type: 'number'; readonly value: number; readonly text: string }
  | { readonly type: 'string'; readonly value: string }
  | { readonly type: 'list'; readonly items: readonly JsonNode[] }
  | { readonly type: 'object'; readonly members: ReadonlyMap<string, JsonNode> };

/** Deepest nesting read [levels]: far beyond any scenario, far below the call stack. */
const DEEPEST = 100;

const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const WORD = /[\p{L}\p{N}_$.+-]+/uy;
/** Up to the closing quote, an escape, or what may not stand in a string. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are exactly what a JSON string may not hold
const PLAIN = /[^"\\\u0000-\u001f]*/y;
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

/** What stopped the reading; reported once, then unwound. */
class Unreadable extends Error {}

/** The root of `text`, or undefined after its syntax fault was reported. Repeated keys are reported too. */
export function readJson(text: string, report: Report): JsonNode | undefined {
  try {
    return new Reader(text, report).whole();
  } catch (error) {
    if (error instanceof Unreadable) return undefined;
    throw error;
  }
}

class Reader {
  readonly #text: string;
  readonly #report: Report;
  #at = 0;
  #line = 1;
  #lineStart = 0;
  #depth = 0;

  constructor(text: string, report: Report) {
    this.#text = text;
    this.#report = report;
    if (text.startsWith('\ufeff')) this.#at = this.#lineStart = 1; // a byte order mark is no part of the text
  }

  whole(): JsonNode {
    const root = this.#value(ROOT, 'an object { … }');
    this.#skip();
    if (this.#at < this.#text.length) this.#fail(ROOT, 'nothing after the end of the scenario');
    return root;
  }

  #value(path: string, allowed: string): JsonNode {
    this.#skip();
    switch (this.#text[this.#at]) {
      case '{':
        return this.#nested(path, () => this.#object(path));
      case '[':
        return this.#nested(path, () => this.#list(path));
      case '"':
        return { type: 'string', value: this.#string(path) };
      default:
        return this.#numberOrWord(path, allowed);
    }
  }

  #nested(path: string, read: () => JsonNode): JsonNode {
    this.#depth += 1;
    if (this.#depth > DEEPEST) this.#fail(path, `at most ${DEEPEST} levels of brackets`);
    this.#at += 1;
    const node = read();
    this.#at += 1;
    this.#depth -= 1;
    return node;
  }

  #object(path: string): JsonNode {
    const members = new Map<string, JsonNode>();
    this.#skip();
    if (this.#text[this.#at] === '}') return { type: 'object', members };
    for (;;) {
      this.#skip();
      if (this.#text[this.#at] !== '"') this.#fail(path, 'a key in double quotes');
      const place = this.#place();
      const key = this.#string(path);
      const below = pathTo(path, key);
      if (members.has(key)) this.#report(below, `the key ${quoted(key)} again ${place}`, 'every key once');
      this.#expect(':', below, 'a colon after the key');
      members.set(key, this.#value(below, 'a value after the colon'));
      if (!this.#separated('}', path, 'a comma or }')) return { type: 'object', members };
    }
  }

  #list(path: string): JsonNode {
    const items: JsonNode[] = [];
    this.#skip();
    if (this.#text[this.#at] === ']') return { type: 'list', items };
    for (;;) {
      items.push(this.#value(pathTo(path, items.length), 'a value'));
      if (!this.#separated(']', path, 'a comma or ]')) return { type: 'list', items };
    }
  }

  /** True after a comma, false at the closing bracket (not yet passed). */
  #separated(closing: string, path: string, allowed: string): boolean {
    this.#skip();
    const next = this.#text[this.#at];
    if (next === closing) return false;
    if (next !== ',') this.#fail(path, allowed);
    this.#at += 1;
    return true;
  }

  #string(path: string): string {
    let value = '';
    this.#at += 1;
    for (;;) {
      value += this.#match(PLAIN);
      const stop = this.#text[this.#at];
      if (stop === '"') break;
      if (stop !== '\\') this.#fail(path, 'a string closed by a double quote in the same line');
      value += this.#escape(path);
    }
    this.#at += 1;
    return value;
  }

  #escape(path: string): string {
    const letter = this.#text[this.#at + 1] ?? '';
    const plain = ESCAPES[letter];
    if (plain !== undefined) {
      this.#at += 2;
      return plain;
    }
    const code = this.#text.slice(this.#at + 2, this.#at + 6);
    if (letter !== 'u' || !/^[0-9a-fA-F]{4}$/.test(code)) {
      this.#fail(path, 'the escapes \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u and four hexadecimal digits');
    }
    this.#at += 6;
    return String.fromCharCode(Number.parseInt(code, 16));
  }

  #numberOrWord(path: string, allowed: string): JsonNode {
    const start = this.#at;
    const text = this.#match(NUMBER);
    const end = this.#at;
    this.#at = start;
    const word = this.#match(WORD);
    this.#at = end;
    if (text !== '' && word.length <= text.length) return { type: 'number', value: Number(text), text };
    this.#at = start + word.length;
    if (word === 'null') return { type: 'null' };
    if (word === 'true' || word === 'false') return { type: 'boolean', value: word === 'true' };
    this.#at = start;
    return this.#fail(
      path,
      word === ''
        ? allowed
        : 'a number as 0.5, -2 or 1e-3, a string in double quotes, true, false, null, a list or an object',
    );
  }

  #expect(character: string, path: string, allowed: string): void {
    this.#skip();
    if (this.#text[this.#at] !== character) this.#fail(path, allowed);
    this.#at += 1;
  }

  #match(pattern: RegExp): string {
    pattern.lastIndex = this.#at;
    const text = pattern.exec(this.#text)?.[0] ?? '';
    this.#at += text.length;
    return text;
  }

  /** Passes white space. Lines are counted here, for only here may a valid text break a line. */
  #skip(): void {
    for (; this.#at < this.#text.length; this.#at++) {
      const c = this.#text[this.#at];
      if (c === '\n') [this.#line, this.#lineStart] = [this.#line + 1, this.#at + 1];
      else if (c !== ' ' && c !== '\t' && c !== '\r') return;
    }
  }

  #place(): string {
    return `in line ${this.#line}, column ${this.#at - this.#lineStart + 1}`;
  }

  #fail(path: string, allowed: string): never {
    const place = this.#place();
    const word = this.#match(WORD) || this.#text.slice(this.#at, this.#at + 1);
    this.#report(path, `${word === '' ? 'the end of the text' : quoted(word)} ${place}`, allowed);
    throw new Unreadable();
  }
}
