/**
 * Markdown read into our own small tree. What the tree has no place for is a fault, raw HTML above all: nothing in a
 * lesson can run, and no address leads out of the page.
 */
import { lexer, type Token, type Tokens } from 'marked';
import type { Inline, Prose, TextBlock } from '../contract/lesson.ts';
import { type Faults, quoted } from './fault.ts';

/** Where a piece of text stands, for faults. */
export interface TextPlace {
  readonly path: string;
  /** Line of its first line in the file. */
  readonly line: number;
}

const ALLOWED = 'paragraphs, lists, quotes, *emphasis*, **strong**, [a term](term:its-name) and `=figure`';

/** Address of a term of the glossary. */
const TERM = /^term:([a-z][a-z0-9-]*)$/u;
const FIGURE = /^=([a-z][A-Za-z0-9]*)$/u;

/** Text with blocks; `names` takes the figures that it refers to. */
export function readProse(markdown: string, place: TextPlace, faults: Faults): Prose {
  return new ProseReader(place, faults).blocks(lexer(markdown));
}

export class ProseReader {
  readonly #path: string;
  readonly #faults: Faults;
  #line: number;

  constructor({ path, line }: TextPlace, faults: Faults) {
    this.#path = path;
    this.#line = line;
    this.#faults = faults;
  }

  blocks(tokens: readonly Token[]): Prose {
    const blocks: TextBlock[] = [];
    const firstLine = this.#line;
    let before = 0;
    for (const token of tokens) {
      this.#line = firstLine + before;
      const block = this.#block(token);
      if (block) blocks.push(block);
      before += linesIn(token.raw);
    }
    this.#line = firstLine;
    return blocks;
  }

  #block(token: Token): TextBlock | undefined {
    switch (token.type) {
      case 'space':
        return undefined;
      // `text` is a paragraph of a tight list.
      case 'text':
      case 'paragraph':
        return { kind: 'paragraph', children: this.#inlines(token.tokens ?? [token]) };
      case 'list': {
        const list = token as Tokens.List;
        const firstLine = this.#line;
        let before = 0;
        const items = list.items.map((item) => {
          this.#line = firstLine + before;
          before += linesIn(item.raw);
          if (item.task) this.#refuse(item.raw);
          return this.blocks(item.tokens);
        });
        return { kind: 'list', ordered: list.ordered, items };
      }
      case 'blockquote':
        return { kind: 'note', children: this.blocks(token.tokens ?? []) };
      case 'html':
        this.#refuse(token.raw, 'HTML; ');
        return undefined;
      default:
        this.#refuse(token.raw);
        return undefined;
    }
  }

  #inlines(tokens: readonly Token[]): Inline[] {
    const inlines: Inline[] = [];
    for (const token of tokens) {
      const inline = this.#inline(token);
      if (inline) inlines.push(inline);
    }
    return inlines;
  }

  #inline(token: Token): Inline | undefined {
    switch (token.type) {
      case 'text':
      case 'escape':
        return { kind: 'text', text: (token as Tokens.Text).text.replace(/\s*\n\s*/gu, ' ') };
      case 'br':
        return { kind: 'text', text: ' ' };
      case 'em':
        return { kind: 'emphasis', children: this.#inlines(token.tokens ?? []) };
      case 'strong':
        return { kind: 'strong', children: this.#inlines(token.tokens ?? []) };
      case 'link': {
        const term = TERM.exec((token as Tokens.Link).href)?.[1];
        if (term !== undefined) return { kind: 'term', term, children: this.#inlines(token.tokens ?? []) };
        this.#refuse(token.raw, 'a link out of the page; ');
        return undefined;
      }
      case 'codespan': {
        const name = FIGURE.exec((token as Tokens.Codespan).text)?.[1];
        if (name !== undefined) return { kind: 'figure', name, text: '' };
        this.#refuse(token.raw);
        return undefined;
      }
      case 'html':
        this.#refuse(token.raw, 'HTML; ');
        return undefined;
      default:
        this.#refuse(token.raw);
        return undefined;
    }
  }

  #refuse(raw: string, what = ''): void {
    this.#faults.push({ line: this.#line, path: this.#path, found: `${what}${quoted(raw.trim())}`, allowed: ALLOWED });
  }
}

export function linesIn(raw: string): number {
  return raw.split('\n').length - 1;
}

/** Every inline of a text, at any depth. */
export function* inlinesOf(prose: Prose): Generator<Inline> {
  for (const block of prose) {
    if (block.kind === 'paragraph') yield* within(block.children);
    else if (block.kind === 'note') yield* inlinesOf(block.children);
    else for (const item of block.items) yield* inlinesOf(item);
  }
}

function* within(inlines: readonly Inline[]): Generator<Inline> {
  for (const inline of inlines) {
    yield inline;
    if ('children' in inline) yield* within(inline.children);
  }
}

/** The same text with the numbers of its figures filled in. */
export function fillFigures(prose: Prose, textOf: (name: string) => string): Prose {
  return prose.map((block): TextBlock => {
    if (block.kind === 'paragraph') return { ...block, children: fillInlines(block.children, textOf) };
    if (block.kind === 'note') return { ...block, children: fillFigures(block.children, textOf) };
    return { ...block, items: block.items.map((item) => fillFigures(item, textOf)) };
  });
}

function fillInlines(inlines: readonly Inline[], textOf: (name: string) => string): Inline[] {
  return inlines.map((inline) => {
    if (inline.kind === 'figure') return { ...inline, text: textOf(inline.name) };
    return 'children' in inline ? { ...inline, children: fillInlines(inline.children, textOf) } : inline;
  });
}

/** Bare words of a text, for tables and tests. */
export function plainText(prose: Prose): string {
  const words = (block: TextBlock) =>
    [...inlinesOf([block])].map((inline) => ('text' in inline ? inline.text : '')).join('');
  return prose.map(words).join(' ');
}
