/** The riding view as a flat drawing: where there is no graphics card to draw it in depth. Same layout, same numbers. */
import type { Snapshot } from '../contract/snapshot.ts';
import type { RidingFrame, RidingGeometry, RidingPart, RidingPicture, Theme } from '../contract/view.ts';
import { gravityInView, uprightTo } from './axis-frame.ts';
import { cantileverShape } from './cantilever.ts';
import { DrawnKit, type FlatOptions } from './drawn-kit.ts';
import { drawHousingBack, drawHousingFront, drawMechanism, drawVeil } from './drawn-mechanism.ts';
import { ARROW_WIDTH, arrowStarts, pullUpPx } from './riding-arrows.ts';
import {
  layoutDiffers,
  newRidingPose,
  type RidingInput,
  type RidingLayout,
  ridingLayout,
  ridingPose,
} from './riding-layout.ts';
import { ridingGeometry } from './riding-measure.ts';
import { ridingPart } from './riding-parts.ts';

/** Swept by less than this the mass is drawn where it is [px]. */
const VEIL_FROM_PX = 3;

export function createDrawnRidingPicture(canvas: HTMLCanvasElement, options: FlatOptions = {}): RidingPicture {
  return new DrawnRiding(canvas, options);
}

class DrawnRiding implements RidingPicture {
  /** A drawing by hand has nothing to refine. */
  readonly settled = true;
  readonly #kit: DrawnKit;
  readonly #pose = newRidingPose();
  readonly #gravity = new Float64Array(3);
  #layout: RidingLayout | undefined;

  constructor(canvas: HTMLCanvasElement, options: FlatOptions) {
    this.#kit = new DrawnKit(canvas, options);
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.#kit.resize(widthPx, heightPx, pixelRatio);
  }

  setTheme(theme: Theme): void {
    this.#kit.setTheme(theme);
  }

  draw(snapshot: Snapshot, frame: RidingFrame): RidingGeometry {
    const kit = this.#kit;
    const input: RidingInput = {
      widthPx: kit.widthPx,
      heightPx: kit.heightPx,
      nibXPx: frame.nibXPx,
      scale: frame.scale,
      look: frame.look,
    };
    if (this.#layout === undefined || layoutDiffers(this.#layout.input, input)) this.#layout = ridingLayout(input);
    const layout = this.#layout;
    const { mechanism: m, box } = layout;
    const pose = this.#pose;
    const element = snapshot.elements[frame.element]!;
    ridingPose(m, element, frame.scale, pose);
    gravityInView(snapshot.housing.attitude, uprightTo(element.spec.axis), snapshot.gravity, this.#gravity);

    kit.begin();
    drawHousingBack(kit, box, true);
    const levelEnd = m.look.form === 'arm' ? m.armRootX : m.massX + m.massWidth;
    kit.stroke([m.massX - m.massWidth / 2 - 14 * m.k, m.zeroY, levelEnd, m.zeroY], kit.palette.soft, 1.1, [3, 3.5]);
    kit.stroke([m.penPinX + 22 * m.k, m.zeroY, m.left - 8 * m.k, m.zeroY], kit.palette.soft, 1, [2, 4]);
    const swept = frame.swept;
    const low = swept === undefined ? 0 : Math.max(-m.massDownMost, swept.low * pose.pxPerDeflection);
    const high = swept === undefined ? 0 : Math.min(m.massUpMost, swept.high * pose.pxPerDeflection);
    const veiled = high - low > VEIL_FROM_PX;
    drawMechanism(kit, m, pose, veiled ? 'still parts' : 'all', frame.nibXPx);
    if (veiled) drawVeil(kit, m, low, high);
    drawHousingFront(kit, box);

    const starts = arrowStarts(layout);
    const massY = m.zeroY - pose.massUp;
    if (frame.arrows.has('arm pulls'))
      kit.arrow(m.massX + starts.pull, massY, 0, -pullUpPx(pose), ARROW_WIDTH * m.k, false, pose.offPaper);
    if (frame.arrows.has('gravity on the mass')) {
      const perMS2 = Math.abs(frame.scale.pxPerMS2);
      kit.arrow(
        m.massX + starts.weight,
        massY,
        this.#gravity[0]! * perMS2,
        -this.#gravity[1]! * perMS2,
        ARROW_WIDTH * m.k,
        true,
        false,
      );
    }
    return this.#measure(layout, frame);
  }

  part(xPx: number, yPx: number): RidingPart | undefined {
    return this.#layout === undefined ? undefined : ridingPart(this.#layout, this.#pose, xPx, yPx);
  }

  dispose(): void {
    this.#layout = undefined;
  }

  #measure(layout: RidingLayout, frame: RidingFrame): RidingGeometry {
    const { mechanism: m } = layout;
    const pose = this.#pose;
    const massYPx = m.zeroY - pose.massUp;
    const arm = m.look.form === 'arm';
    return ridingGeometry(layout, pose, frame, this.#gravity, {
      penXPx: frame.nibXPx,
      penYPx: m.zeroY - pose.penUp,
      massXPx: m.massX,
      massYPx,
      unbentYPx: m.zeroY,
      stopAbove: [m.stopAboveX, pose.stopAbove.yPx],
      stopBelow: [m.stopBelowX, pose.stopBelow.yPx],
      spring: arm
        ? [m.armRootX - 0.42 * m.armLength, m.zeroY - pose.massUp * cantileverShape(0.42)]
        : [m.coilX + 15 * m.k, (massYPx - m.massHeight / 2 + m.top) / 2],
      oil: m.beaker === undefined ? [0, 0] : [m.beaker.x + m.beaker.radius, (m.beaker.oilTop + m.beaker.bottom) / 2],
    });
  }
}
