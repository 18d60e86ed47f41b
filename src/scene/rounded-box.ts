/** A box with rounded edges: each face a flat middle with a rim that bends half-way over to its neighbours. */
import { BufferAttribute, BufferGeometry } from 'three';

/** Rim, middle, rim: shares of a face at which its lines of points stand, before they are drawn in by the radius. */
const LINES = 4;

/** About the origin; edges along x, y, z. */
export function roundedBox(width: number, height: number, depth: number, radius: number): BufferGeometry {
  const half = [width / 2, height / 2, depth / 2] as const;
  const points = 6 * (LINES - 1) * (LINES - 1) * 6;
  const position = new Float32Array(points * 3);
  const normal = new Float32Array(points * 3);
  const uv = new Float32Array(points * 2);
  let at = 0;
  const put = (axis: number, side: number, u: number, v: number): void => {
    const across = (axis + 1) % 3;
    const along = (axis + 2) % 3;
    POINT[axis] = side * half[axis]!;
    POINT[across] = lineAt(u, half[across]!, radius);
    POINT[along] = lineAt(v, half[along]!, radius);
    let length = 0;
    for (let part = 0; part < 3; part++) {
      const core = Math.max(-half[part]! + radius, Math.min(half[part]! - radius, POINT[part]!));
      CORE[part] = core;
      OUT[part] = POINT[part]! - core;
      length += OUT[part]! * OUT[part]!;
    }
    length = Math.sqrt(length);
    for (let part = 0; part < 3; part++) {
      normal[at * 3 + part] = OUT[part]! / length;
      position[at * 3 + part] = CORE[part]! + (OUT[part]! / length) * radius;
    }
    // Textures run along x on the faces that have an x, along z on the two that have none.
    const acrossFace = axis === 0 ? 2 : 0;
    const upFace = axis === 1 ? 2 : 1;
    uv[at * 2] = POINT[acrossFace]! / (2 * half[acrossFace]!) + 0.5;
    uv[at * 2 + 1] = POINT[upFace]! / (2 * half[upFace]!) + 0.5;
    at++;
  };
  for (let axis = 0; axis < 3; axis++) {
    for (const side of [-1, 1]) {
      for (let u = 0; u + 1 < LINES; u++) {
        for (let v = 0; v + 1 < LINES; v++) {
          const [u1, v1] = [u + 1, v + 1];
          const corners =
            side > 0 ? [u, v, u1, v, u1, v1, u, v, u1, v1, u, v1] : [u, v, u1, v1, u1, v, u, v, u, v1, u1, v1];
          for (let corner = 0; corner < 12; corner += 2) put(axis, side, corners[corner]!, corners[corner + 1]!);
        }
      }
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('normal', new BufferAttribute(normal, 3));
  geometry.setAttribute('uv', new BufferAttribute(uv, 2));
  return geometry;
}

const POINT = [0, 0, 0];
const CORE = [0, 0, 0];
const OUT = [0, 0, 0];

const lineAt = (line: number, half: number, radius: number): number =>
  line === 0 ? -half : line === 1 ? radius - half : line === 2 ? half - radius : half;
