/** Does something as soon as an element has a size: what lies on a folded or covered sheet takes no focus. */
export function whenShown(element: HTMLElement, doIt: () => void): void {
  const observer = new ResizeObserver(() => {
    if (element.getClientRects().length === 0) return;
    observer.disconnect();
    doIt();
  });
  observer.observe(element);
}
