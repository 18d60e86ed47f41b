/** A label to be placed near its anchor, in the picture's box [px], y downward. */
export interface LabelBox {
  readonly name: string;
  readonly anchorXPx: number;
  readonly anchorYPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Side of the anchor that is tried first. */
  readonly side: LabelSide;
  /** Clear distance between the anchor and the label [px]. */
  readonly distancePx: number;
}

export type LabelSide = 'left' | 'right' | 'above' | 'below';

export interface Rectangle {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface PlacedLabel extends Rectangle {
  readonly name: string;
  readonly side: LabelSide;
  /** Where the leader line leaves the label: the middle of the edge that faces the anchor. */
  readonly leaderXPx: number;
  readonly leaderYPx: number;
}

const OTHER_SIDES: Readonly<Record<LabelSide, readonly LabelSide[]>> = {
  left: ['left', 'above', 'below', 'right'],
  right: ['right', 'above', 'below', 'left'],
  above: ['above', 'right', 'left', 'below'],
  below: ['below', 'right', 'left', 'above'],
};

/** Further out, in steps of this [px], when no side is free close by. */
const STEP_PX = 16;
const STEPS = 5;
/** Kept between two labels [px]. */
const GAP_PX = 4;

/**
 * Places labels one after another (the first has the choice) so that none leaves the picture, covers another or covers
 * what is to be kept clear. `before` holds the last placing: a label stays on its side while that is free, so
 * that it does not hop about as its anchor moves. A label for which nothing is free is left out.
 */
export function placeLabels(
  labels: readonly LabelBox[],
  widthPx: number,
  heightPx: number,
  keepClear: readonly Rectangle[],
  before: readonly PlacedLabel[],
): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const label of labels) {
    const last = before.find((candidate) => candidate.name === label.name)?.side;
    const sides = last === undefined ? OTHER_SIDES[label.side] : [last, ...OTHER_SIDES[label.side]];
    const found = firstFree(label, sides, (box) => {
      const inside =
        box.xPx >= 0 && box.yPx >= 0 && box.xPx + box.widthPx <= widthPx && box.yPx + box.heightPx <= heightPx;
      return inside && !placed.some((other) => overlap(box, other)) && !keepClear.some((other) => overlap(box, other));
    });
    if (found !== undefined) placed.push(found);
  }
  return placed;
}

function firstFree(
  label: LabelBox,
  sides: readonly LabelSide[],
  free: (box: Rectangle) => boolean,
): PlacedLabel | undefined {
  for (let step = 0; step < STEPS; step += 1) {
    for (const side of sides) {
      // Along the edge: centred first, then slid to either side.
      for (const slide of [0, -0.5, 0.5]) {
        const box = boxAt(label, side, label.distancePx + step * STEP_PX, slide);
        if (free(box)) return { ...box, name: label.name, side, ...leaderStart(box, side) };
      }
    }
  }
  return undefined;
}

function boxAt(label: LabelBox, side: LabelSide, distancePx: number, slide: number): Rectangle {
  const { anchorXPx: x, anchorYPx: y, widthPx, heightPx } = label;
  const acrossX = x - widthPx / 2 + slide * widthPx;
  const acrossY = y - heightPx / 2 + slide * heightPx;
  switch (side) {
    case 'left':
      return { xPx: x - distancePx - widthPx, yPx: acrossY, widthPx, heightPx };
    case 'right':
      return { xPx: x + distancePx, yPx: acrossY, widthPx, heightPx };
    case 'above':
      return { xPx: acrossX, yPx: y - distancePx - heightPx, widthPx, heightPx };
    case 'below':
      return { xPx: acrossX, yPx: y + distancePx, widthPx, heightPx };
  }
}

function leaderStart(box: Rectangle, side: LabelSide): { readonly leaderXPx: number; readonly leaderYPx: number } {
  const middleX = box.xPx + box.widthPx / 2;
  const middleY = box.yPx + box.heightPx / 2;
  switch (side) {
    case 'left':
      return { leaderXPx: box.xPx + box.widthPx + 2, leaderYPx: middleY };
    case 'right':
      return { leaderXPx: box.xPx - 2, leaderYPx: middleY };
    case 'above':
      return { leaderXPx: middleX, leaderYPx: box.yPx + box.heightPx + 1 };
    case 'below':
      return { leaderXPx: middleX, leaderYPx: box.yPx - 1 };
  }
}

function overlap(a: Rectangle, b: Rectangle): boolean {
  return (
    a.xPx < b.xPx + b.widthPx + GAP_PX &&
    b.xPx < a.xPx + a.widthPx + GAP_PX &&
    a.yPx < b.yPx + b.heightPx + GAP_PX &&
    b.yPx < a.yPx + a.heightPx + GAP_PX
  );
}
