import { describe, expect, it } from 'vitest';
import type { ElementLook, PaperScale } from '../../src/contract/view.ts';
import { cantileverShape, cantileverSlope, shareWithShape, TIP_SLOPE } from '../../src/scene/cantilever.ts';
import { stopClearance } from '../../src/scene/mechanism-layout.ts';
import {
  insideOf,
  layoutDiffers,
  newRidingPose,
  type RidingLayout,
  ridingLayout,
  ridingPose,
  rulePlace,
  STOP_HEIGHT,
  staticDeflection,
} from '../../src/scene/riding-layout.ts';
import { CANVASES, elementAt, G, LOOKS, paper, spec } from './snapshots.ts';

const S = staticDeflection(spec());

function layoutOf(canvas: readonly [number, number, number], scale: PaperScale, look: ElementLook): RidingLayout {
  return ridingLayout({ widthPx: canvas[0], heightPx: canvas[1], nibXPx: canvas[2], scale, look });
}

/** Every canvas, look, sense of the sign and place of the 0 line. */
function everyCase(check: (layout: RidingLayout, scale: PaperScale, name: string) => void): void {
  for (const canvas of CANVASES) {
    for (const look of LOOKS) {
      for (const sense of [1, -1]) {
        for (const zero of [0.3, 0.5, 0.7]) {
          const upright = paper(canvas[1], zero);
          const scale = { ...upright, pxPerMS2: sense * upright.pxPerMS2 };
          check(layoutOf(canvas, scale, look), scale, `${canvas} ${look.form} ${sense} ${zero}`);
        }
      }
    }
  }
}

describe('the cantilever under a load at its tip', () => {
  it('bends to 5/16 of the tip half-way, with slope 9/8 there and 3/2 at the tip (beam table: Fx²(3L − x)/6EI, from memory)', () => {
    expect(cantileverShape(0.5)).toBe(5 / 16);
    expect(cantileverShape(1)).toBe(1);
    expect(cantileverSlope(0)).toBe(0);
    expect(cantileverSlope(0.5)).toBe(9 / 8);
    expect(cantileverSlope(1)).toBe(TIP_SLOPE);
  });

  it('is found again from its shape, to 1e-4', () => {
    for (const share of [0.1, 0.37, 0.8])
      expect(Math.abs(shareWithShape(cantileverShape(share)) - share)).toBeLessThan(1e-4);
  });
});

describe('static deflection per specific force', () => {
  it('is 1 mm per g at 15.76 Hz (common practice: f = 15.76 Hz/√(sag in mm), so sag in mm is (15.76/f)²)', () => {
    expect(Math.abs(staticDeflection(spec({ naturalFrequency: 15.76 })) * G * 1e3 - 1)).toBeLessThan(5e-4);
  });

  it('adds up the modes and the remainder', () => {
    const mode = { naturalFrequency: 10, dampingRatio: 0.1, participation: 1.2, shape: 1.5, modalMass: 1 };
    const two = spec({ modes: [mode, { ...mode, naturalFrequency: 20 }], staticRemainder: 1e-5 });
    expect(staticDeflection(two)).toBeCloseTo(1.8 / (20 * Math.PI) ** 2 + 1.8 / (40 * Math.PI) ** 2 + 1e-5, 15);
  });
});

describe('the riding view', () => {
  it('puts the pen where the reading stands on the paper and the mass at E·x, on every canvas, both signs', () => {
    everyCase((layout, scale, name) => {
      const pose = newRidingPose();
      for (const readingG of [-2.5, -1, 0, 0.4, 1, 2.42]) {
        const element = elementAt(-readingG * G * S, S);
        ridingPose(layout.mechanism, element, scale, pose);
        if (pose.offPaper) continue;
        expect(pose.penUp, name).toBeCloseTo(element.reading * scale.pxPerMS2, 9);
        expect(pose.massUp, name).toBeCloseTo(element.deflection * pose.pxPerDeflection, 9);
        if (readingG > 0) expect(pose.massUp, name).toBeLessThan(0);
      }
    });
  });

  it('has a level lever and a straight arm at x = 0', () => {
    everyCase((layout, scale) => {
      const pose = newRidingPose();
      ridingPose(layout.mechanism, elementAt(0, S), scale, pose);
      expect([Math.abs(pose.penUp), Math.abs(pose.massUp), Math.abs(pose.massTurn)]).toEqual([0, 0, 0]);
    });
  });

  it('keeps the three pins in one line, or mirrored by the wheels when the sign is turned round', () => {
    everyCase((layout, scale, name) => {
      const m = layout.mechanism;
      const pose = newRidingPose();
      ridingPose(m, elementAt(-1.3 * G * S, S), scale, pose);
      const penSlope = pose.penUp / m.penArm;
      const massSlope = pose.massUp / m.massArm;
      expect(m.penPivotX - m.penPinX, name).toBeCloseTo(m.penArm, 9);
      expect(m.massX - m.pivotX, name).toBeCloseTo(m.massArm, 9);
      expect(penSlope, name).toBeCloseTo(m.reversed ? massSlope : -massSlope, 12);
      expect(m.pivotX - m.penPivotX, name).toBeCloseTo(m.reversed ? 2 * m.wheelRadius : 0, 9);
    });
  });

  it('holds pen and mass alike at the paper’s edge', () => {
    everyCase((layout, scale, name) => {
      const m = layout.mechanism;
      const pose = newRidingPose();
      for (const readingG of [-400, 400]) {
        ridingPose(m, elementAt(-readingG * G * S, S), scale, pose);
        expect(pose.offPaper, name).toBe(true);
        const penY = scale.zeroYPx - pose.penUp;
        expect(Math.min(Math.abs(penY - scale.topYPx), Math.abs(penY - scale.bottomYPx)), name).toBeLessThan(1e-9);
        expect(pose.penUp / pose.massUp, name).toBeCloseTo((m.reversed ? 1 : -1) * (m.penArm / m.massArm), 9);
      }
    });
  });

  it('keeps the mass between what is seen of cap and floor wherever the pen may go', () => {
    everyCase((layout, scale, name) => {
      const m = layout.mechanism;
      const inside = insideOf(layout.box);
      // The corner of the mass that reaches farthest, however it is turned.
      const reach = m.look.form === 'coil' ? m.massHeight / 2 : Math.hypot(m.massWidth, m.massHeight) / 2;
      if (m.massArm / m.penArm <= 0.1401) return; // as small as a lever is drawn
      expect(scale.zeroYPx - m.massUpMost - reach, name).toBeGreaterThan(inside.top);
      expect(scale.zeroYPx + m.massDownMost + reach, name).toBeLessThan(inside.bottom);
    });
  });

  it('shows rule, pen, lever and mass inside the canvas, from left to right, with the mass clear of the wall', () => {
    everyCase((layout, scale, name) => {
      const { mechanism: m, rule, input } = layout;
      expect(rule, name).toEqual(rulePlace(input.widthPx, input.heightPx, input.nibXPx));
      const order = [input.nibXPx, rule.xPx, m.penPinX, rule.xPx + rule.widthPx, m.left, m.pivotX, m.massX];
      expect(order, name).toEqual([...order].sort((a, b) => a - b));
      expect(m.massX - m.massWidth / 2, name).toBeGreaterThan(m.left);
      const centred = Math.abs(scale.zeroYPx / input.heightPx - 0.495) < 0.01;
      if (centred) expect(m.massX + m.massWidth / 4, name).toBeLessThan(input.widthPx);
      if (!layout.strip) expect(m.armRootX, name).toBeGreaterThan(m.massX + m.massWidth / 2);
    });
  });

  it('sets the stops so that the turned mass just touches them at x = ±gap', () => {
    for (const look of LOOKS) {
      const scale = paper(460);
      const { mechanism: m } = layoutOf([560, 460, 10], scale, look);
      const of = spec({ gap: 4 * G * S });
      const pose = newRidingPose();
      ridingPose(m, elementAt(4 * G * S, S, of), scale, pose);
      expect(pose.stopAbove).toMatchObject({ present: true, broken: false });
      // Highest point of the mass's upper face over the stop's width: the face is turned about the pin.
      const turn = Math.abs(pose.massTurn);
      const top = m.massHeight / 2 / Math.cos(turn) + (look.form === 'coil' ? 0 : (m.stopWidth / 2) * Math.tan(turn));
      expect(Math.abs(scale.zeroYPx - pose.massUp - top - pose.stopAbove.yPx)).toBeLessThan(1e-9);
      expect(stopClearance(m, pose.massUp)).toBeCloseTo(top, 9);
    }
  });

  it('draws stops beyond the picture at its edge, broken, and none where there is none', () => {
    const scale = paper(460);
    const { mechanism: m } = layoutOf([560, 460, 10], scale, LOOKS[0]!);
    const pose = newRidingPose();
    ridingPose(m, elementAt(0, S, spec({ gap: 1 })), scale, pose);
    expect(pose.stopAbove).toEqual({ present: true, broken: true, yPx: m.top + STOP_HEIGHT * m.k });
    expect(pose.stopBelow).toEqual({ present: true, broken: true, yPx: m.bottom - STOP_HEIGHT * m.k });
    ridingPose(m, elementAt(0, S), scale, pose);
    expect(pose.stopAbove.present || pose.stopBelow.present).toBe(false);
  });

  it('keeps the paddle in the oil all along the mass’s way', () => {
    everyCase((layout, scale, name) => {
      const m = layout.mechanism;
      const b = m.beaker;
      if (b === undefined) return;
      expect(b.paddleY - m.massUpMost * b.motion, name).toBeGreaterThan(b.oilTop);
      expect(b.paddleY + m.massDownMost * b.motion, name).toBeLessThan(b.bottom);
      expect(b.top, name).toBeGreaterThan(scale.zeroYPx - m.massUpMost);
    });
  });

  it('is laid out anew when something moves, but not when only the paper’s px per m/s² changes', () => {
    const scale = paper(460);
    const { input } = layoutOf([560, 460, 10], scale, LOOKS[0]!);
    expect(layoutDiffers(input, { ...input, scale: { ...scale, pxPerMS2: 3 * scale.pxPerMS2 } })).toBe(false);
    expect(layoutDiffers(input, { ...input, scale: { ...scale, pxPerMS2: -scale.pxPerMS2 } })).toBe(true);
    expect(layoutDiffers(input, { ...input, scale: { ...scale, zeroYPx: scale.zeroYPx + 1 } })).toBe(true);
    expect(layoutDiffers(input, { ...input, widthPx: 561 })).toBe(true);
    expect(layoutDiffers(input, { ...input, look: LOOKS[1]! })).toBe(true);
  });
});
