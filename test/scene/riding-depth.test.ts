import { Mesh, MeshBasicMaterial, type Object3D, OrthographicCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import type { Materials } from '../../src/scene/materials.ts';
import { MechanismModel } from '../../src/scene/mechanism-model.ts';
import { aimObliqueCamera } from '../../src/scene/oblique-camera.ts';
import { newRidingPose, ridingLayout, ridingPose, staticDeflection } from '../../src/scene/riding-layout.ts';
import { ridingPart } from '../../src/scene/riding-parts.ts';
import { CANVASES, elementAt, G, LOOKS, paper, spec } from './snapshots.ts';

const S = staticDeflection(spec());
/** Geometry needs no paint: one plain material stands for all. */
const PLAIN = new Proxy({}, { get: () => new MeshBasicMaterial() }) as unknown as Materials;

/** The mechanism's parts in depth, to be posed at a reading [g_n], and where the oblique camera shows them. */
function drawn(canvas: (typeof CANVASES)[number], look: (typeof LOOKS)[number], sense: 1 | -1) {
  const upright = paper(canvas[1]);
  const scale = { ...upright, pxPerMS2: sense * upright.pxPerMS2 };
  const layout = ridingLayout({ widthPx: canvas[0], heightPx: canvas[1], nibXPx: canvas[2], scale, look });
  const pose = newRidingPose();
  const model = new MechanismModel(layout.mechanism, PLAIN, { nibX: canvas[2], lines: true });
  model.group.position.y = -scale.zeroYPx;
  const camera = new OrthographicCamera();
  aimObliqueCamera(camera, canvas[0], canvas[1]);
  const at = (point: Vector3): [number, number] => {
    point.project(camera);
    return [((point.x + 1) / 2) * canvas[0], ((1 - point.y) / 2) * canvas[1]];
  };
  const place = (object: Object3D) => at(new Vector3().setFromMatrixPosition(object.matrixWorld));
  const read = (readingG: number) => {
    const element = elementAt(-readingG * G * S, S, spec({ gap: 5 * G * S }));
    ridingPose(layout.mechanism, element, scale, pose);
    model.pose(pose);
    model.group.updateMatrixWorld();
    return element;
  };
  return { layout, scale, pose, model, place, read };
}

describe('the riding view in depth', () => {
  it('shows pen, mass and unbent level where the reading, E·x and the 0 line are, to 1e-6 px', () => {
    for (const canvas of CANVASES) {
      for (const look of LOOKS) {
        for (const sense of [1, -1] as const) {
          const { scale, pose, model, place, read } = drawn(canvas, look, sense);
          for (const readingG of [-2, 0, 1, 2.42]) {
            const element = read(readingG);
            const pen = place(model.penTip);
            const mass = place(model.massPin);
            expect(Math.abs(pen[0] - canvas[2])).toBeLessThan(1e-6);
            expect(Math.abs(pen[1] - (scale.zeroYPx - element.reading * scale.pxPerMS2))).toBeLessThan(1e-6);
            expect(Math.abs(mass[1] - (scale.zeroYPx - element.deflection * pose.pxPerDeflection))).toBeLessThan(1e-6);
            expect(Math.abs(place(model.unbent)[1] - scale.zeroYPx)).toBeLessThan(1e-6);
          }
        }
      }
    }
  });

  it('bends the arm so that its end stays within the mass’s height of the pin, and lets the coil end on the mass', () => {
    for (const look of LOOKS) {
      const { layout, pose, model, read } = drawn(CANVASES[1]!, look, 1);
      const m = layout.mechanism;
      for (const readingG of [-2, 2.42]) {
        read(readingG);
        const box = { low: Number.POSITIVE_INFINITY, left: Number.POSITIVE_INFINITY, leftY: 0 };
        const spring = model.movers.children.find((child) => child instanceof Mesh) as Mesh;
        const position = spring.geometry.getAttribute('position');
        for (let point = 0; point < position.count; point++) {
          box.low = Math.min(box.low, position.getY(point));
          if (position.getX(point) < box.left) {
            box.left = position.getX(point);
            box.leftY = position.getY(point);
          }
        }
        if (look.form === 'arm') expect(Math.abs(box.leftY - pose.massUp)).toBeLessThan(m.massHeight / 4);
        else expect(Math.abs(box.low - (pose.massUp + m.massHeight / 2))).toBeLessThan(4 * m.k);
      }
    }
  });

  it('names what lies under pen, mass, arm, stop, damper, clamp and housing, and nothing on the paper', () => {
    const { layout, pose, read } = drawn(CANVASES[1]!, LOOKS[0]!, 1);
    read(1);
    const { mechanism: m, box } = layout;
    const under = (x: number, y: number) => ridingPart(layout, pose, x, y);
    expect(under(m.massX, m.zeroY - pose.massUp)).toBe('mass');
    expect(under(m.penPinX, m.zeroY - pose.penUp)).toBe('pen');
    expect(under(m.pivotX, m.zeroY)).toBe('pen');
    expect(under(m.armRootX - 0.2 * m.armLength, m.zeroY)).toBe('arm');
    expect(under(m.armRootX + 10, m.zeroY + 15)).toBe('clamp');
    expect(under(m.stopAboveX, pose.stopAbove.yPx - 3)).toBe('stop');
    expect(under(m.stopBelowX, pose.stopBelow.yPx + 3)).toBe('stop');
    expect(under(m.beaker!.x, m.beaker!.bottom - 10)).toBe('damper');
    expect(under(box.right - 5, box.top + 40)).toBe('housing');
    expect(under(2, m.zeroY + 80)).toBeUndefined();
  });
});
