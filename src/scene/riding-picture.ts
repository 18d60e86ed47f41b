/**
 * The riding view in depth: the camera rides with the housing, the shown element's axis upward.
 * Orthographic, one unit one CSS pixel; a shear about the plane z = 0 shows the depth and leaves heights
 * in that plane exact. What it reports is projected from the places of the drawn parts.
 */
import { Group, Mesh, MeshBasicMaterial, type Object3D, OrthographicCamera, PlaneGeometry, Vector3 } from 'three';
import type { Snapshot } from '../contract/snapshot.ts';
import type { RidingFrame, RidingGeometry, RidingPart, RidingPicture, Theme } from '../contract/view.ts';
import { ArrowModel } from './arrow-model.ts';
import { gravityInView, uprightTo } from './axis-frame.ts';
import { buildHousing } from './housing-model.ts';
import { MechanismModel } from './mechanism-model.ts';
import { disposeGeometries } from './mesh-kit.ts';
import { aimObliqueCamera } from './oblique-camera.ts';
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
import { softPatch } from './textures.ts';
import { type LightPlan, type PictureOptions, ThreeStage } from './three-stage.ts';
import { VeilModel } from './veil-model.ts';

const LIGHTS: Readonly<Record<Theme, LightPlan>> = {
  day: {
    toLight: [-0.5, 0.78, 1.05],
    color: '#fffcf6',
    strength: 2.15,
    sky: '#ffffff',
    ground: '#d6cfc2',
    ambient: 0.62,
    mirrored: 0.78,
  },
  evening: {
    toLight: [0.5, 0.8, 0.95],
    color: '#ffeed8',
    strength: 2.8,
    sky: '#8b93a6',
    ground: '#4a3a28',
    ambient: 0.55,
    mirrored: 0.85,
  },
};

/** Swept by less than this the mass is drawn where it is [px]. */
const VEIL_FROM_PX = 3;

export function createRidingPicture(canvas: HTMLCanvasElement, options: PictureOptions = {}): RidingPicture {
  return new Riding(canvas, options);
}

class Riding implements RidingPicture {
  readonly #stage: ThreeStage;
  readonly #camera = new OrthographicCamera();
  readonly #pose = newRidingPose();
  readonly #still = new Group();
  readonly #drawn = new Float64Array(10);
  readonly #next = new Float64Array(10);
  readonly #gravity = new Float64Array(3);
  readonly #point = new Vector3();
  #width = 1;
  #height = 1;
  #layout: RidingLayout | undefined;
  #mechanism: MechanismModel | undefined;
  #veil: VeilModel | undefined;
  #pull: ArrowModel | undefined;
  #weight: ArrowModel | undefined;
  #patch: MeshBasicMaterial | undefined;
  #geometry: RidingGeometry | undefined;

  constructor(canvas: HTMLCanvasElement, options: PictureOptions) {
    this.#stage = new ThreeStage(canvas, options, LIGHTS);
    this.#stage.scene.add(this.#still);
  }

  get settled(): boolean {
    return this.#stage.refiner.settled;
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.#width = widthPx;
    this.#height = heightPx;
    this.#stage.resize(widthPx, heightPx, pixelRatio);
    aimObliqueCamera(this.#camera, widthPx, heightPx);
    this.#layout = undefined;
  }

  setTheme(theme: Theme): void {
    if (theme === this.#stage.theme) return;
    this.#stage.setTheme(theme);
    this.#layout = undefined;
  }

  draw(snapshot: Snapshot, frame: RidingFrame): RidingGeometry {
    const layout = this.#layoutFor(frame);
    const element = snapshot.elements[frame.element]!;
    const mechanism = this.#mechanism!;
    const pose = this.#pose;
    ridingPose(layout.mechanism, element, frame.scale, pose);
    gravityInView(snapshot.housing.attitude, uprightTo(element.spec.axis), snapshot.gravity, this.#gravity);
    const veiled = this.#placeVeil(layout, frame);
    if (!this.#changed(frame, veiled)) {
      this.#stage.refiner.refine(
        this.#stage.scene,
        this.#camera,
        this.#stage.lamp,
        this.#stage.toLight,
        this.#stage.lightDistance,
      );
      return this.#geometry!;
    }
    mechanism.pose(pose);
    mechanism.movers.visible = !veiled;
    this.#placeArrows(layout, frame);
    this.#stage.refiner.draw(
      this.#stage.scene,
      this.#camera,
      this.#stage.lamp,
      this.#stage.toLight,
      this.#stage.lightDistance,
    );
    this.#geometry = this.#measure(layout, frame);
    return this.#geometry;
  }

  part(xPx: number, yPx: number): RidingPart | undefined {
    return this.#layout === undefined ? undefined : ridingPart(this.#layout, this.#pose, xPx, yPx);
  }

  dispose(): void {
    this.#clear();
    this.#stage.dispose();
  }

  #layoutFor(frame: RidingFrame): RidingLayout {
    const input: RidingInput = {
      widthPx: this.#width,
      heightPx: this.#height,
      nibXPx: frame.nibXPx,
      scale: frame.scale,
      look: frame.look,
    };
    const old = this.#layout;
    if (old !== undefined && !layoutDiffers(old.input, input)) return old;
    const layout = ridingLayout(input);
    this.#layout = layout;
    this.#build(layout);
    this.#drawn.fill(Number.NaN);
    return layout;
  }

  #build(layout: RidingLayout): void {
    this.#clear();
    const { materials, theme } = this.#stage;
    const { box, k, mechanism, input, rule } = layout;
    this.#still.add(
      buildHousing(
        { x0: box.left, x1: box.right, y0: -box.bottom, y1: -box.top, depth: box.depth, k, back: true },
        materials,
      ),
    );

    // The housing's shape never changes, so its shadow on the page is a painted patch; the lever's is cast.
    this.#patch = new MeshBasicMaterial({
      map: softPatch(theme === 'day' ? 'rgba(66,50,28,0.55)' : 'rgba(0,0,0,0.8)', 40),
      transparent: true,
      depthWrite: false,
      toneMapped: false,
    });
    const grown = 26 * k;
    const patch = new Mesh(
      new PlaneGeometry(box.right - box.left + 2 * grown, box.bottom - box.top + 2 * grown),
      this.#patch,
    );
    const slip = theme === 'day' ? 1 : -1;
    patch.position.set(
      (box.left + box.right) / 2 + slip * 12 * k,
      -(box.top + box.bottom) / 2 - 18 * k,
      -box.depth / 2 - 10,
    );
    patch.renderOrder = -2;
    // By the evening lamp, upper right, the housing's own shadow would reach farther than that.
    const sheetEnd = box.left - (theme === 'day' ? 0 : 50 * k);
    const sheetWidth = sheetEnd - input.nibXPx + 40;
    const sheet = new Mesh(new PlaneGeometry(sheetWidth, this.#height * 2), materials.shadow);
    sheet.position.set(sheetEnd - sheetWidth / 2, -this.#height / 2, -14 * k);
    sheet.receiveShadow = true;
    sheet.renderOrder = -1;
    this.#still.add(patch, sheet);

    this.#mechanism = new MechanismModel(mechanism, materials, { nibX: input.nibXPx, lines: true });
    this.#mechanism.group.position.y = -mechanism.zeroY;
    this.#veil = new VeilModel(mechanism, materials);
    this.#pull = new ArrowModel(materials.arrowInk, materials.arrowPaper, 1.2, 20);
    this.#weight = new ArrowModel(materials.arrowPaper, materials.arrowLine, 1.7, 22);
    this.#mechanism.group.add(this.#veil.group, this.#pull.group, this.#weight.group);
    this.#still.add(this.#mechanism.group);
    this.#fitShadow(rule.xPx - 30, box.right + 10, -box.bottom - 30, -box.top + 20, box.depth);
  }

  #fitShadow(x0: number, x1: number, y0: number, y1: number, depth: number): void {
    const { lamp } = this.#stage;
    lamp.target.position.set((x0 + x1) / 2, (y0 + y1) / 2, 0);
    lamp.target.updateMatrixWorld();
    const radius = Math.hypot(x1 - x0, y1 - y0, depth) / 2;
    this.#stage.lightDistance = radius * 2;
    const camera = lamp.shadow.camera;
    camera.left = -radius;
    camera.right = radius;
    camera.bottom = -radius;
    camera.top = radius;
    camera.near = radius * 0.5;
    camera.far = radius * 3.5;
    camera.updateProjectionMatrix();
    lamp.shadow.bias = -0.0006;
    lamp.shadow.normalBias = 0.9;
    lamp.shadow.radius = 2.2;
  }

  #clear(): void {
    disposeGeometries(this.#still);
    this.#patch?.map?.dispose();
    this.#patch?.dispose();
    this.#still.clear();
  }

  #placeVeil(layout: RidingLayout, frame: RidingFrame): boolean {
    const swept = frame.swept;
    const veil = this.#veil!.group;
    veil.visible = false;
    if (swept === undefined) return false;
    const m = layout.mechanism;
    const low = Math.max(-m.massDownMost, swept.low * this.#pose.pxPerDeflection);
    const high = Math.min(m.massUpMost, swept.high * this.#pose.pxPerDeflection);
    if (!(high - low > VEIL_FROM_PX)) return false;
    this.#veil!.span(low, high);
    veil.visible = true;
    return true;
  }

  #placeArrows(layout: RidingLayout, frame: RidingFrame): void {
    const { mechanism: m, k } = layout;
    const pose = this.#pose;
    const width = ARROW_WIDTH * k;
    const starts = arrowStarts(layout);
    const pull = frame.arrows.has('arm pulls') ? pullUpPx(pose) : 0;
    this.#pull!.place(m.massX + starts.pull, pose.massUp, 0, 0, pull, width, 1, pose.offPaper);
    const perMS2 = frame.arrows.has('gravity on the mass') ? Math.abs(frame.scale.pxPerMS2) : 0;
    const gx = this.#gravity[0]! * perMS2;
    const gy = this.#gravity[1]! * perMS2;
    this.#weight!.place(m.massX + starts.weight, pose.massUp, 0, gx, gy, width, 1, false);
  }

  /** Notes what is about to be drawn; false when it is what was drawn last. */
  #changed(frame: RidingFrame, veiled: boolean): boolean {
    const next = this.#next;
    const pose = this.#pose;
    next[0] = pose.massUp;
    next[1] = pose.stopAbove.present ? pose.stopAbove.yPx : -1;
    next[2] = pose.stopBelow.present ? pose.stopBelow.yPx : -1;
    next[3] = veiled ? frame.swept!.low : 0;
    next[4] = veiled ? frame.swept!.high : 0;
    next[5] = frame.arrows.has('arm pulls') ? 1 : 0;
    next[6] = frame.arrows.has('gravity on the mass') ? frame.scale.pxPerMS2 : 0;
    next[7] = this.#gravity[0]!;
    next[8] = this.#gravity[1]!;
    next[9] = pose.pxPerDeflection;
    let changed = false;
    for (let at = 0; at < next.length; at++) {
      if (next[at] !== this.#drawn[at]) changed = true;
      this.#drawn[at] = next[at]!;
    }
    return changed;
  }

  #measure(layout: RidingLayout, frame: RidingFrame): RidingGeometry {
    const { penTip, massPin, unbent, stopAbove, stopBelow, spring, oil } = this.#mechanism!;
    const [penXPx, penYPx] = this.#place(penTip);
    const [massXPx, massYPx] = this.#place(massPin);
    return ridingGeometry(layout, this.#pose, frame, this.#gravity, {
      penXPx,
      penYPx,
      massXPx,
      massYPx,
      unbentYPx: this.#place(unbent)[1],
      stopAbove: this.#place(stopAbove.mark),
      stopBelow: this.#place(stopBelow.mark),
      spring: this.#place(spring),
      oil: this.#place(oil),
    });
  }

  /** Where the camera shows a part [px]. */
  #place(object: Object3D): readonly [number, number] {
    const point = this.#point.setFromMatrixPosition(object.matrixWorld).project(this.#camera);
    return [((point.x + 1) / 2) * this.#width, ((1 - point.y) / 2) * this.#height];
  }
}
