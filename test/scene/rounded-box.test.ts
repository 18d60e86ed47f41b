import { describe, expect, it } from 'vitest';
import { roundedBox } from '../../src/scene/rounded-box.ts';

describe('a box with rounded edges', () => {
  const geometry = roundedBox(6, 4, 2, 0.5);
  const position = geometry.getAttribute('position');
  const normal = geometry.getAttribute('normal');

  it('fills its edge lengths, with unit normals pointing outward', () => {
    geometry.computeBoundingBox();
    expect(geometry.boundingBox!.max.toArray()).toEqual([3, 2, 1]);
    expect(geometry.boundingBox!.min.toArray()).toEqual([-3, -2, -1]);
    for (let point = 0; point < position.count; point++) {
      const n = [normal.getX(point), normal.getY(point), normal.getZ(point)] as const;
      expect(Math.hypot(...n)).toBeCloseTo(1, 6);
      expect(n[0] * position.getX(point) + n[1] * position.getY(point) + n[2] * position.getZ(point)).toBeGreaterThan(
        0,
      );
    }
  });

  it('turns every triangle’s front outward', () => {
    for (let at = 0; at < position.count; at += 3) {
      const [a, b, c] = [0, 1, 2].map((corner) => [
        position.getX(at + corner),
        position.getY(at + corner),
        position.getZ(at + corner),
      ]);
      const u = b!.map((value, axis) => value - a![axis]!);
      const v = c!.map((value, axis) => value - a![axis]!);
      const face = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
      expect(face[0]! * a![0]! + face[1]! * a![1]! + face[2]! * a![2]!).toBeGreaterThan(0);
    }
  });
});
