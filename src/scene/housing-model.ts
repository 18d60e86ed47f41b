/** The housing: cap, plinth and reeded corner posts of brass, an ivory back, panes of glass. y upward. */
import { Group, type Object3D, PlaneGeometry } from 'three';
import type { Materials } from './materials.ts';
import { MeshKit } from './mesh-kit.ts';
import { CAP, PLINTH, POST } from './riding-layout.ts';
import { FRONT_PANE } from './textures.ts';

/** Outer edges, all parts within; z from −depth/2 to depth/2. */
export interface HousingShape {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly depth: number;
  /** Size of small parts [–], see RidingLayout. */
  readonly k: number;
  /** An ivory back, or glass there too. */
  readonly back: boolean;
}

export function buildHousing(shape: HousingShape, materials: Materials): Object3D {
  const { x0, x1, y0, y1, depth, k } = shape;
  const group = new Group();
  const kit = new MeshKit();
  const z1 = depth / 2;
  const z0 = -z1;
  const moulding = 4 * k;
  const ceiling = y1 - (CAP.slab + CAP.moulding) * k;
  const floor = y0 + (PLINTH.slab + PLINTH.moulding) * k;

  kit.box(materials.plate, x0, y1 - CAP.slab * k, z0, x1, y1, z1, 3.5 * k);
  kit.box(
    materials.brass,
    x0 + moulding,
    ceiling,
    z0 + moulding,
    x1 - moulding,
    y1 - (CAP.slab - 2) * k,
    z1 - moulding,
    2.2 * k,
  );
  kit.box(materials.plate, x0, y0, z0, x1, y0 + PLINTH.slab * k, z1, 3.5 * k);
  kit.box(
    materials.brass,
    x0 + moulding,
    y0 + (PLINTH.slab - 2) * k,
    z0 + moulding,
    x1 - moulding,
    floor,
    z1 - moulding,
    2.2 * k,
  );
  kit.add(
    materials.plate,
    new PlaneGeometry(x1 - x0 - 2.4 * moulding, depth - 2.4 * moulding)
      .rotateX(-Math.PI / 2)
      .translate((x0 + x1) / 2, floor + 0.3 * k, 0),
  );

  const at = (POST.inset + POST.width / 2) * k;
  for (const x of [x0 + at, x1 - at]) {
    for (const z of [z0 + at, z1 - at]) post(kit, materials, x, z, floor, ceiling, k);
  }
  if (shape.back) kit.pane(materials.back, x0 + at, floor, x1 - at, ceiling, z0 + 1.5 * at);
  kit.build(group);

  const panes = new MeshKit();
  for (const x of [x0 + at, x1 - at]) {
    const side = new PlaneGeometry(depth - 3 * at, ceiling - floor).rotateY(Math.PI / 2);
    panes.add(materials.glass, side.translate(x, (floor + ceiling) / 2, 0));
    spreadTexture(side, FRONT_PANE + 0.01, 1);
  }
  const front = new PlaneGeometry(x1 - x0 - 3.2 * at, ceiling - floor);
  panes.add(materials.glass, front.translate((x0 + x1) / 2, (floor + ceiling) / 2, z1 - at));
  spreadTexture(front, 0, FRONT_PANE - 0.007);
  const glass = panes.single();
  glass.castShadow = glass.receiveShadow = false;
  glass.renderOrder = 4;
  group.add(glass);
  return group;
}

/** Lets a pane show the part from … to of the texture's breadth. */
function spreadTexture(geometry: PlaneGeometry, from: number, to: number): void {
  const uv = geometry.getAttribute('uv');
  for (let point = 0; point < uv.count; point++) uv.setX(point, from + uv.getX(point) * (to - from));
}

/** Four reeds round a core, with a turned foot and head. */
function post(
  kit: MeshKit,
  materials: Materials,
  x: number,
  z: number,
  floor: number,
  ceiling: number,
  k: number,
): void {
  const reed = 3.1 * k;
  for (const dx of [-1, 1]) {
    for (const dz of [-1, 1])
      kit.upright(materials.brass, x + dx * reed, floor, ceiling, z + dz * reed, reed * 1.04, 12);
  }
  const foot = POST.width * 0.5 * k;
  for (const [y, up] of [
    [floor, 1],
    [ceiling, -1],
  ] as const) {
    kit.box(
      materials.brass,
      x - foot,
      Math.min(y, y + up * 5 * k),
      z - foot,
      x + foot,
      Math.max(y, y + up * 5 * k),
      z + foot,
      1.2 * k,
    );
    kit.box(
      materials.brass,
      x - foot * 0.9,
      Math.min(y + up * 5.5 * k, y + up * 13 * k),
      z - foot * 0.9,
      x + foot * 0.9,
      Math.max(y + up * 5.5 * k, y + up * 13 * k),
      z + foot * 0.9,
      2 * k,
    );
  }
}
