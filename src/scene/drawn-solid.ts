/** Boxes as pen and wash: their dashed edges, or the faces that are seen. */
import type { DrawnKit } from './drawn-kit.ts';
import type { Place3 } from './drawn-room-things.ts';

/** The twelve edges of a box whose corners are at ±1, dashed. */
export function outline(kit: DrawnKit, at: Place3): void {
  for (const a of [-1, 1]) {
    for (const b of [-1, 1]) {
      for (const line of [
        [...at(-1, a, b), ...at(1, a, b)],
        [...at(a, -1, b), ...at(a, 1, b)],
        [...at(a, b, -1), ...at(a, b, 1)],
      ]) {
        kit.stroke(line, kit.palette.text, 1.1, [6, 4]);
      }
    }
  }
}

/** The faces of a box that look to the viewer, lit from the upper left. */
export function solid(
  kit: DrawnKit,
  at: Place3,
  x0: number,
  y0: number,
  z0: number,
  x1: number,
  y1: number,
  z1: number,
): void {
  const p = kit.palette;
  const faces: readonly (readonly [readonly (readonly [number, number, number])[], string])[] = [
    [
      [
        [x0, y1, z0],
        [x0, y1, z1],
        [x1, y1, z1],
        [x1, y1, z0],
      ],
      p.brassLight,
    ],
    [
      [
        [x0, y0, z1],
        [x0, y0, z0],
        [x1, y0, z0],
        [x1, y0, z1],
      ],
      p.brassDark,
    ],
    [
      [
        [x0, y0, z1],
        [x1, y0, z1],
        [x1, y1, z1],
        [x0, y1, z1],
      ],
      p.brass,
    ],
    [
      [
        [x1, y0, z0],
        [x0, y0, z0],
        [x0, y1, z0],
        [x1, y1, z0],
      ],
      p.brass,
    ],
    [
      [
        [x1, y0, z1],
        [x1, y0, z0],
        [x1, y1, z0],
        [x1, y1, z1],
      ],
      p.brassDark,
    ],
    [
      [
        [x0, y0, z0],
        [x0, y0, z1],
        [x0, y1, z1],
        [x0, y1, z0],
      ],
      p.brassDark,
    ],
  ];
  for (const [corners, wash] of faces) {
    const points = corners.map(([x, y, z]) => at(x, y, z));
    const [a, b, c] = [points[0]!, points[1]!, points[2]!];
    // Counter-clockwise as seen from outside; y points down in the picture.
    if ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) < 0)
      kit.shape(points.flat(), wash, p.brassDark, 0.8);
  }
}
