/** Gathers small still parts by material and makes one mesh of each, so that a picture needs few draw calls. */
import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  ExtrudeGeometry,
  LatheGeometry,
  type Material,
  Mesh,
  type Object3D,
  PlaneGeometry,
  type Shape,
  SphereGeometry,
  Vector2,
} from 'three';

import type { Tinted } from './materials.ts';
import { roundedBox } from './rounded-box.ts';

export type Paint = Material | Tinted;

export interface Light {
  readonly casts?: boolean;
  readonly receives?: boolean;
}

export class MeshKit {
  readonly #parts = new Map<Material, BufferGeometry[]>();

  /** Takes the geometry over. */
  add(paint: Paint, geometry: BufferGeometry): void {
    const material = 'tint' in paint ? paint.material : paint;
    if ('tint' in paint) tint(geometry, paint);
    const list = this.#parts.get(material);
    if (list === undefined) this.#parts.set(material, [geometry]);
    else list.push(geometry);
  }

  /** A box from corner to corner; radius 0: sharp. */
  box(paint: Paint, x0: number, y0: number, z0: number, x1: number, y1: number, z1: number, radius = 0): void {
    const [width, height, depth] = [x1 - x0, y1 - y0, z1 - z0];
    const round = Math.min(radius, width / 2, height / 2, depth / 2) * 0.98;
    const geometry = round > 0 ? roundedBox(width, height, depth, round) : new BoxGeometry(width, height, depth);
    geometry.translate((x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2);
    this.add(paint, geometry);
  }

  /** An upright cylinder. */
  upright(paint: Paint, x: number, y0: number, y1: number, z: number, radius: number, sides = 18): void {
    this.add(paint, new CylinderGeometry(radius, radius, y1 - y0, sides).translate(x, (y0 + y1) / 2, z));
  }

  /** A lathe-turned upright part: pairs of radius and height. */
  turned(
    paint: Paint,
    x: number,
    y: number,
    z: number,
    profile: readonly (readonly [number, number])[],
    sides = 28,
  ): void {
    const points = profile.map(([radius, height]) => new Vector2(radius, height));
    this.add(paint, new LatheGeometry(points, sides).translate(x, y, z));
  }

  /** A domed screw head or pin facing the viewer. */
  dome(paint: Paint, x: number, y: number, z: number, radius: number): void {
    const geometry = new SphereGeometry(radius, 16, 8, 0, Math.PI * 2, 0, Math.PI / 2);
    this.add(
      paint,
      geometry
        .scale(1, 0.62, 1)
        .rotateX(Math.PI / 2)
        .translate(x, y, z),
    );
  }

  /** A flat shape with thickness, its front at z. */
  sheet(paint: Paint, shape: Shape, z: number, thickness: number, bevel: number): void {
    const geometry = new ExtrudeGeometry(shape, {
      depth: Math.max(0.01, thickness - 2 * bevel),
      bevelEnabled: bevel > 0,
      bevelSize: bevel,
      bevelThickness: bevel,
      bevelOffset: -bevel,
      bevelSegments: 2,
      curveSegments: 10,
    });
    this.add(paint, geometry.translate(0, 0, z - thickness + bevel));
  }

  /** An upright pane facing the viewer. */
  pane(paint: Paint, x0: number, y0: number, x1: number, y1: number, z: number): void {
    this.add(paint, new PlaneGeometry(x1 - x0, y1 - y0).translate((x0 + x1) / 2, (y0 + y1) / 2, z));
  }

  /** The one mesh of parts that are all of one material. */
  single(): Mesh {
    const [entry] = this.#parts;
    if (entry === undefined) throw new Error('no part to make a mesh of');
    const mesh = new Mesh(merged(entry[1]), entry[0]);
    mesh.castShadow = mesh.receiveShadow = true;
    return mesh;
  }

  /** Makes the meshes, adds them to `parent`, and forgets the parts. */
  build(parent: Object3D, light: Light = {}): void {
    for (const [material, list] of this.#parts) {
      const mesh = new Mesh(merged(list), material);
      mesh.castShadow = light.casts ?? true;
      mesh.receiveShadow = light.receives ?? true;
      mesh.matrixAutoUpdate = false;
      parent.add(mesh);
    }
    this.#parts.clear();
  }
}

/** A rod along y from its foot at 0 to 1, to be stretched and turned. */
export function stretchableRod(radius: number, paint: Paint): Mesh {
  const kit = new MeshKit();
  kit.upright(paint, 0, 0, 1, 0, radius);
  return kit.single();
}

function tint(geometry: BufferGeometry, { tint: color, opacity }: Tinted): void {
  const count = geometry.getAttribute('position').count;
  const size = opacity === undefined ? 3 : 4;
  const values = new Float32Array(count * size);
  for (let point = 0; point < count; point++) {
    color.toArray(values, point * size);
    if (opacity !== undefined) values[point * size + 3] = opacity;
  }
  geometry.setAttribute('color', new BufferAttribute(values, size));
}

function merged(list: readonly BufferGeometry[]): BufferGeometry {
  const flat = list.map((geometry) => (geometry.index === null ? geometry : geometry.toNonIndexed()));
  const result = new BufferGeometry();
  for (const name of ['position', 'normal', 'uv', 'color']) {
    if (!flat[0]!.hasAttribute(name)) continue;
    const size = flat[0]!.getAttribute(name).itemSize;
    let length = 0;
    for (const geometry of flat) length += geometry.getAttribute(name).array.length;
    const values = new Float32Array(length);
    let at = 0;
    for (const geometry of flat) {
      const part = geometry.getAttribute(name).array;
      values.set(part, at);
      at += part.length;
    }
    result.setAttribute(name, new BufferAttribute(values, size));
  }
  return result;
}

/** Frees the geometries of everything under an object; materials belong to their set. */
export function disposeGeometries(root: Object3D): void {
  root.traverse((object) => {
    if (object instanceof Mesh) object.geometry.dispose();
  });
}
