import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import {
  FIELD_DEG,
  furniture,
  housingCorners,
  lowestCorner,
  placeInRoom,
  projectRoom,
  type RoomCamera,
  roomCamera,
  roomPxPerM,
} from '../../src/scene/room-layout.ts';
import { roomPart } from '../../src/scene/room-parts.ts';
import { HOUSING, numbers } from './snapshots.ts';

const SIZES = [
  [520, 370],
  [300, 330],
  [390, 190],
  [330, 500],
] as const;

function cameraAt(
  size: readonly [number, number],
  y: number,
  releaseHeightM: number | undefined,
  follow = false,
  x = 0,
): RoomCamera {
  return roomCamera({
    widthPx: size[0],
    heightPx: size[1],
    position: [x, y, 0],
    housingSizeM: HOUSING,
    releaseHeightM,
    follow,
  });
}

describe('the room view’s camera', () => {
  it('shows places where a three.js perspective camera of the same eye shows them, to 1e-9 px', () => {
    const random = numbers(9);
    const out = new Float64Array(3);
    for (const size of SIZES) {
      const view = cameraAt(size, 0.3, 0.4);
      const camera = new PerspectiveCamera(FIELD_DEG, size[0] / size[1], 0.1, 40);
      camera.position.fromArray(view.eye);
      camera.lookAt(...view.target);
      camera.updateMatrixWorld();
      for (let run = 0; run < 50; run++) {
        const [x, y, z] = [random() - 0.5, random(), random() - 0.5];
        projectRoom(view, x, y, z, out);
        const point = new Vector3(x, y, z).project(camera);
        expect(Math.abs(out[0]! - ((point.x + 1) / 2) * size[0])).toBeLessThan(1e-9);
        expect(Math.abs(out[1]! - ((1 - point.y) / 2) * size[1])).toBeLessThan(1e-9);
      }
    }
  });

  it('finds the place in the plane z = 0 under a point again', () => {
    const random = numbers(3);
    const out = new Float64Array(3);
    for (const size of SIZES) {
      const view = cameraAt(size, 0.8, 1);
      for (let run = 0; run < 50; run++) {
        const [x, y] = [random() - 0.5, random()];
        projectRoom(view, x, y, 0, out);
        const place = placeInRoom(view, out[0]!, out[1]!);
        expect(Math.hypot(place[0] - x, place[1] - y, place[2])).toBeLessThan(1e-12);
      }
    }
  });

  it('turns a drag into metres: one pixel’s step upward is 1/px-per-metre, to the view’s slant', () => {
    const view = cameraAt([520, 370], 0.3, 0.4);
    const perM = roomPxPerM(view, 0, 0.3, 0);
    const out = new Float64Array(3);
    const [x, y] = projectRoom(view, 0, 0.3, 0, out).slice(0, 2);
    // The line of sight is 7.2° down, so an upright metre shows as cos 7.2° = 0.992 of one across the view.
    expect((placeInRoom(view, x!, y! - 1)[1] - 0.3) * perM).toBeCloseTo(1 / 0.992, 2);
  });

  it('keeps housing, outline, rule and stand in the picture for heights of 0.05 to 2 m, at four sizes', () => {
    const out = new Float64Array(3);
    const place = furniture(HOUSING);
    for (const size of SIZES) {
      for (const height of [0.05, 0.4, 1, 2]) {
        for (const lowest of [-0.01, height / 2, height]) {
          const view = cameraAt(size, lowest + HOUSING[1] / 2, height);
          for (const y of [lowest, lowest + HOUSING[1], height, height + HOUSING[1], -0.03]) {
            for (const x of [-HOUSING[0] / 2, HOUSING[0] / 2]) {
              projectRoom(view, x, y, 0, out);
              expect(out[0]! > 0 && out[0]! < size[0] && out[1]! > 0 && out[1]! < size[1]).toBe(true);
            }
          }
          for (const x of [place.ruleX, place.columnX]) {
            projectRoom(view, x, height, 0, out);
            expect(out[0]! > 0 && out[0]! < size[0]).toBe(true);
          }
        }
      }
    }
  });

  it('goes after a housing that is carried or shaken far to a side', () => {
    const out = new Float64Array(3);
    for (const x of [-1.5, 0.9]) {
      projectRoom(cameraAt([520, 370], 0.4, 0.4, false, x), x, 0.4, 0, out);
      expect(out[0]! > 60 && out[0]! < 460).toBe(true);
    }
  });

  it('stands at least 1.6 times closer when it follows the housing', () => {
    expect(roomPxPerM(cameraAt([520, 370], 0.3, 0.4, true), 0, 0.3, 0)).toBeGreaterThan(
      1.6 * roomPxPerM(cameraAt([520, 370], 0.3, 0.4), 0, 0.3, 0),
    );
  });
});

describe('the housing’s corners', () => {
  it('turn with it: a quarter turn about z puts the right-hand side on top', () => {
    const half = Math.SQRT1_2;
    const corners = housingCorners([1, 2, 3], [0, 0, half, half], HOUSING, new Float64Array(24));
    // corner 1: +x −y −z becomes +y of x, +x of y
    expect(corners[3]).toBeCloseTo(1 + HOUSING[1] / 2, 12);
    expect(corners[4]).toBeCloseTo(2 + HOUSING[0] / 2, 12);
    expect(corners[5]).toBeCloseTo(3 - HOUSING[2] / 2, 12);
    expect(corners[lowestCorner(corners) * 3 + 1]).toBeCloseTo(2 - HOUSING[0] / 2, 12);
  });
});

describe('what lies under a point of the room view', () => {
  const view = cameraAt([520, 370], 0.2, 0.4);
  const place = furniture(HOUSING);
  const scene = {
    camera: view,
    furniture: place,
    housing: housingCorners([0, 0.2, 0], [0, 0, 0, 1], HOUSING, new Float64Array(24)),
    housingSizeM: HOUSING,
    clamp: [0, 0.465, 0],
    shaker: false,
    padX: 0,
    padThicknessM: 0.03,
  };
  const under = (x: number, y: number, z: number, of = scene): string | undefined => {
    const out = projectRoom(view, x, y, z, new Float64Array(3));
    return roomPart(of, out[0]!, out[1]!);
  };

  it('is the thing that is drawn there', () => {
    expect(under(0, 0.2, 0)).toBe('housing');
    expect(under(0.05, -0.015, 0.085)).toBe('pad');
    expect(under(place.columnX, 0.465 + 0.2 * HOUSING[1], place.columnZ)).toBe('clamp');
    expect(under(place.ruleX, 0.1, place.ruleZ)).toBe('rule');
    expect(under(0.1, 0.35, 0)).toBeUndefined();
  });

  it('is the shaker under the housing when that carries it, and no clamp then', () => {
    const shaken = { ...scene, shaker: true, clamp: undefined as unknown as number[] };
    expect(under(0, 0.2 - HOUSING[1] / 2 - 0.03, 0, shaken)).toBe('shaker');
    expect(under(place.columnX, 0.465 + 0.2 * HOUSING[1], place.columnZ, shaken)).toBeUndefined();
  });
});
