import { html, type TemplateResult } from 'lit';
import type { Inline, Prose, TextBlock } from '../contract/lesson.ts';
import { sendWish } from './ui-events.ts';

const NARROW_NO_BREAK_SPACE = /\u202f/gu;

/** A measured value with its unit; a narrow space is too fine in the page's faces to part the two. */
export function valueText(text: string): string {
  return text.replace(NARROW_NO_BREAK_SPACE, '\u00a0');
}

/** A text of a lesson, block by block. It is a tree of our own, so nothing in it can be markup or code. */
export function proseBlocks(prose: Prose): readonly TemplateResult[] {
  return prose.map(blockTemplate);
}

/** The same as one run of words, for labels and legends, in which no block may stand. */
export function proseWords(prose: Prose): readonly TemplateResult[] {
  return prose.map((block) =>
    block.kind === 'paragraph'
      ? html`<span>${block.children.map(inlineTemplate)}</span> `
      : html`${block.kind === 'note' ? proseWords(block.children) : block.items.map(proseWords)}`,
  );
}

function blockTemplate(block: TextBlock): TemplateResult {
  if (block.kind === 'paragraph') return html`<p>${block.children.map(inlineTemplate)}</p>`;
  if (block.kind === 'note') return html`<div class="aside" role="note">${proseBlocks(block.children)}</div>`;
  const items = block.items.map((item) => html`<li>${proseBlocks(item)}</li>`);
  return block.ordered ? html`<ol class="list">${items}</ol>` : html`<ul class="list">${items}</ul>`;
}

function inlineTemplate(inline: Inline): TemplateResult | string {
  switch (inline.kind) {
    case 'text':
      return inline.text;
    case 'emphasis':
      return html`<em>${inline.children.map(inlineTemplate)}</em>`;
    case 'strong':
      return html`<strong>${inline.children.map(inlineTemplate)}</strong>`;
    case 'term':
      return html`<button class="term" type="button" @click=${(event: Event) => lookUp(event, inline.term)}>${inline.children.map(inlineTemplate)}</button>`;
    case 'figure':
      return html`<b class="figure">${valueText(inline.text)}</b>`;
  }
}

function lookUp(event: Event, term: string): void {
  const from = event.currentTarget as HTMLElement;
  sendWish(from, { wish: 'look up', term, from });
}
