/** The element inside the housing as the room view shows it: the riding view's parts, to the housing's true size. */
import type { Vector } from '../contract/geometry.ts';
import type { ElementLook } from '../contract/view.ts';
import { uprightTo } from './axis-frame.ts';
import { type MechanismLayout, mechanismLayout } from './mechanism-layout.ts';
import { CAP, PLINTH, POST } from './riding-layout.ts';

export interface RoomMechanism {
  readonly layout: MechanismLayout;
  /** Drawing units per metre. */
  readonly perM: number;
  /** Size of small parts [–]. */
  readonly k: number;
  /** Height of the 0 line above the housing's centre along the element's axis, in drawing units. */
  readonly zeroUp: number;
  /** Turns the upright drawing to the element's axis: unit quaternion. */
  readonly upright: readonly [number, number, number, number];
}

/** The room view shows the housing small: its posts and mouldings are drawn this much stronger than in the riding view [–]. */
const BOLDER = 1.6;
/** And the parts inside. */
const BOLDER_PARTS = 1.3;

/** Drawing units across the least of height and width: then small parts have the riding view's proportions. */
const DRAWN_SPAN = 420;

export function roomMechanism(size: Vector, axis: Vector, look: ElementLook): RoomMechanism {
  const perM = DRAWN_SPAN / Math.min(size[0], size[1]);
  const upright = uprightTo(axis);
  const k = BOLDER;
  const side = (POST.inset + POST.width + 2) * k;
  const cap = (CAP.slab + CAP.moulding) * k;
  const plinth = (PLINTH.slab + PLINTH.moulding) * k;
  // The box as it lies about the upright drawing: along, across and in front of the axis.
  const steep = Math.abs(axis[1]) > 0.7;
  const flatX = !steep && Math.abs(axis[0]) > 0.7;
  const height = (steep ? size[1] : flatX ? size[0] : size[2]) * perM;
  const width = (steep ? size[0] : flatX ? size[1] : size[0]) * perM;
  const depth = (steep ? size[2] : flatX ? size[2] : size[1]) * perM;
  const top = -height / 2 + (steep && axis[1] > 0 ? cap : side);
  const bottom = height / 2 - (steep && axis[1] > 0 ? plinth : side);
  const left = -width / 2 + side;
  const zeroY = (top + bottom) / 2;
  const swing = (bottom - top) * 0.58;
  const layout = mechanismLayout({
    left,
    right: width / 2 - side,
    top,
    bottom,
    k: Math.min(BOLDER_PARTS, width / 330, height / 290, depth / 110),
    depth: Math.min(depth - 2 * side, 150),
    penPinX: -width / 2 - 52 * BOLDER_PARTS,
    zeroY,
    penTopY: zeroY - swing,
    penBottomY: zeroY + swing,
    reversed: false,
    look,
    massRightMost: Number.POSITIVE_INFINITY,
  });
  return { layout, perM, k, zeroUp: -zeroY, upright };
}
