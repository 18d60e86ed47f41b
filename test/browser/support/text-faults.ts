import type { Page } from 'playwright-core';

/**
 * What is wrong with the words on the page as it stands, one line each: cut off by their own box, outside the screen, or
 * lying over other words. Words that a scrolling sheet hides are out of sight, not cut. Empty is well.
 */
export function textFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    interface Words {
      readonly text: string;
      readonly element: Element;
      readonly box: DOMRect;
      readonly seen: { left: number; top: number; right: number; bottom: number };
    }
    /** A hair of overlap is no overlap: a face's boxes are wider and much taller than its letters [px]. */
    const SLACK = 3;
    const SLACK_HIGH = 7;
    const all: Words[] = [];
    const parentOf = (element: Element): Element | null =>
      element.assignedSlot ?? element.parentElement ?? (element.getRootNode() as ShadowRoot).host ?? null;

    const seenPart = (element: Element, box: DOMRect): Words['seen'] | undefined => {
      const seen = { left: box.left, top: box.top, right: box.right, bottom: box.bottom };
      for (let at: Element | null = element; at; at = parentOf(at)) {
        const style = getComputedStyle(at);
        if (style.visibility === 'hidden' || style.opacity === '0') return undefined;
        if (!/auto|scroll/u.test(style.overflowX + style.overflowY)) continue;
        const port = at.getBoundingClientRect();
        seen.left = Math.max(seen.left, port.left);
        seen.top = Math.max(seen.top, port.top);
        seen.right = Math.min(seen.right, port.right);
        seen.bottom = Math.min(seen.bottom, port.bottom);
      }
      return seen.right - seen.left > SLACK && seen.bottom - seen.top > SLACK ? seen : undefined;
    };

    const visit = (root: Element | ShadowRoot): void => {
      for (const node of root.childNodes) {
        if (node instanceof Element) {
          visit(node);
          if (node.shadowRoot) visit(node.shadowRoot);
        } else if (node.nodeType === Node.TEXT_NODE && node.textContent!.trim() !== '') {
          const element = node.parentElement ?? (root as ShadowRoot).host;
          if (!element.checkVisibility()) continue;
          const range = document.createRange();
          range.selectNodeContents(node);
          for (const box of range.getClientRects()) {
            const seen = seenPart(element, box);
            // Words for screen readers only are a pixel large.
            const clip = getComputedStyle(element).clipPath;
            if (seen && clip === 'none') all.push({ text: node.textContent!.trim().slice(0, 40), element, box, seen });
          }
        }
      }
    };
    visit(document.body);

    const faults = new Set<string>();
    for (const { text, element, box } of all) {
      const style = getComputedStyle(element);
      if (style.overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1) faults.add(`cut: ${text}`);
      if (box.left < -1 || box.right > window.innerWidth + 1) faults.add(`outside the screen: ${text}`);
    }
    for (const [n, a] of all.entries()) {
      for (const b of all.slice(n + 1)) {
        if (a.element === b.element) continue;
        const wide = Math.min(a.seen.right, b.seen.right) - Math.max(a.seen.left, b.seen.left);
        const high = Math.min(a.seen.bottom, b.seen.bottom) - Math.max(a.seen.top, b.seen.top);
        if (wide > SLACK && high > SLACK_HIGH) faults.add(`over each other: ${a.text} | ${b.text}`);
      }
    }
    return [...faults];
  });
}
