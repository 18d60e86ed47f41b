/** Names in one row, each over its mark. */
export interface RowLabel {
  readonly text: string;
  /** Where its mark stands [px]. */
  readonly markPx: number;
  readonly widthPx: number;
  /** Smaller goes first. */
  readonly rank: number;
  /** Left end as placed [px]; NaN: no room. */
  leftPx: number;
}

/** A label and the places that it may take. */
interface Link {
  readonly label: RowLabel;
  least: number;
  most: number;
}

/** A mark stays under its own name, at least this far from the name's ends [px]. */
const UNDER_PX = 3;

/**
 * Places names without overlap within [leftPx, rightPx], `gapPx` apart and in the order of their marks, as near
 * to the middle over their marks as can be; a name never moves off its mark. Names of one rank make room for each
 * other; those of a later rank take what is left and move nothing. Within a rank the earlier in the list goes
 * first. Names without room get NaN.
 */
export function placeLabels(labels: readonly RowLabel[], leftPx: number, rightPx: number, gapPx: number): void {
  const chain: Link[] = [];
  const ranks = [...new Set(labels.map(({ rank }) => rank))].sort((a, b) => a - b);
  for (const rank of ranks) {
    for (const label of labels) {
      if (label.rank !== rank) continue;
      label.leftPx = NaN;
      const half = Math.max(0, label.widthPx / 2 - UNDER_PX);
      const ideal = label.markPx - label.widthPx / 2;
      const link = {
        label,
        least: Math.max(leftPx, ideal - half),
        most: Math.min(rightPx - label.widthPx, ideal + half),
      };
      if (link.least <= link.most) insert(chain, link, gapPx);
    }
    settle(chain, gapPx);
  }
}

/** Adds a link where its mark stands, if then all can still be placed. */
function insert(chain: Link[], link: Link, gap: number): void {
  let at = chain.length;
  while (at > 0 && chain[at - 1]!.label.markPx > link.label.markPx) at--;
  chain.splice(at, 0, link);
  let free = -Infinity;
  for (const { label, least, most } of chain) {
    const left = Math.max(least, free);
    if (left > most) {
      chain.splice(at, 1);
      return;
    }
    free = left + label.widthPx + gap;
  }
}

/** Gives every link its place, and keeps it there. */
function settle(chain: readonly Link[], gap: number): void {
  let free = Infinity; // from the right: how far each may go so that those after it still fit
  for (let i = chain.length - 1; i >= 0; i--) {
    const link = chain[i]!;
    link.most = Math.min(link.most, free - gap - link.label.widthPx);
    free = link.most;
  }
  free = -Infinity;
  for (const link of chain) {
    const { label } = link;
    const left = Math.min(Math.max(label.markPx - label.widthPx / 2, link.least, free), link.most);
    label.leftPx = left;
    link.least = left;
    link.most = left;
    free = left + label.widthPx + gap;
  }
}
