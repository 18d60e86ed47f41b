/**
 * The parts inside the housing in depth: lever, pivot, mass, arm or coil, stops, damper. The group's
 * origin lies on the 0 line; x as in the layout, y upward, z = 0 the plane of pen, pivot and mass pin.
 * Still parts are made once a layout, moving ones only moved.
 */
import { ConeGeometry, CylinderGeometry, Group, Object3D, TorusGeometry } from 'three';
import { ArmModel } from './arm-model.ts';
import { cantileverShape } from './cantilever.ts';
import { CoilModel } from './coil-model.ts';
import type { Materials } from './materials.ts';
import type { BeakerLayout, MechanismLayout } from './mechanism-layout.ts';
import { disposeGeometries, MeshKit } from './mesh-kit.ts';
import { type RidingPose, SHEAR_Y } from './riding-layout.ts';
import { slottedLeaf, toothedWheel } from './shapes.ts';
import { StopModel } from './stop-model.ts';

const WHEEL_TEETH = 18;

export interface MechanismOptions {
  /** Tip of the nib; undefined: no carriage and no nib, the lever's end is free. */
  readonly nibX: number | undefined;
  /** Dashed line of the unbent level and dotted line of the 0 line up to the pivot. */
  readonly lines: boolean;
}

export class MechanismModel {
  readonly group = new Group();
  /** Marks whose projected places are reported. */
  readonly penTip = new Object3D();
  readonly massPin = new Object3D();
  readonly unbent = new Object3D();
  /** Half-way along the arm, or the coil's middle. */
  readonly spring = new Object3D();
  readonly stopAbove: StopModel;
  readonly stopBelow: StopModel;
  readonly oil = new Object3D();
  /** What a veil takes the place of. */
  readonly movers = new Group();
  readonly layout: MechanismLayout;
  readonly #penLeaf: Object3D;
  readonly #massLeaf: Object3D;
  readonly #penLeafLength: number;
  readonly #massLeafLength: number;
  readonly #carriage = new Group();
  readonly #mass = new Group();
  readonly #arm: ArmModel | undefined;
  readonly #coil: CoilModel | undefined;
  readonly #paddle = new Group();
  readonly #penWheel = new Group();
  readonly #massWheel = new Group();

  constructor(layout: MechanismLayout, materials: Materials, options: MechanismOptions) {
    this.layout = layout;
    const { k } = layout;
    const group = this.group;
    group.add(this.movers, this.unbent, this.oil);
    this.movers.add(this.#carriage, this.#mass, this.#paddle, this.#penWheel, this.#massWheel, this.spring);

    const fixed = new MeshKit();
    this.#addPivot(fixed, materials);
    const half = 7.2 * k;
    this.#penLeafLength = leafLength(
      layout.penArm,
      Math.max(layout.penUpMost, layout.penDownMost),
      layout.massArm,
      layout.reversed,
      k,
    );
    this.#massLeafLength = leafLength(
      layout.massArm,
      Math.max(layout.massUpMost, layout.massDownMost),
      layout.penArm,
      layout.reversed,
      k,
    );
    this.#penLeaf = leaf(materials, this.#penLeafLength, half, layout.penArm - 5 * k, 4 * k, 3.2 * k);
    this.#massLeaf = leaf(materials, this.#massLeafLength, half, layout.massArm - 5 * k, 0.4 * k, 3.2 * k);
    this.movers.add(this.#penLeaf, this.#massLeaf);
    if (options.nibX !== undefined) this.#buildCarriage(materials, options.nibX);
    this.#carriage.add(this.penTip);

    this.#buildMass(materials);
    const massZ = this.#massZ;
    if (layout.look.form === 'arm') {
      const wide = layout.massDepth * 0.42;
      this.#arm = new ArmModel(
        materials.blued,
        layout.armRootX + 4 * k,
        layout.armLength + 4 * k,
        8 * k,
        massZ + wide,
        massZ - wide,
      );
      this.movers.add(this.#arm.mesh);
      this.#addClamp(fixed, materials);
    } else {
      const ceiling = this.#ceiling;
      this.#coil = new CoilModel(materials.blued, layout.coilX, massZ, ceiling - 6 * k, 15 * k, 2.3 * k);
      this.movers.add(this.#coil.mesh);
      fixed.box(
        materials.brass,
        layout.coilX - 9 * k,
        ceiling - 7 * k,
        massZ - 9 * k,
        layout.coilX + 9 * k,
        ceiling,
        massZ + 9 * k,
        1.5 * k,
      );
    }
    fixed.build(group);
    if (layout.beaker !== undefined) this.#buildDamper(materials, layout.beaker);
    this.stopAbove = new StopModel(materials, layout, layout.stopAboveX, massZ, this.#ceiling, 1);
    this.stopBelow = new StopModel(materials, layout, layout.stopBelowX, massZ, this.#floor, -1);
    group.add(this.stopAbove.group, this.stopBelow.group);
    this.unbent.position.set(layout.massX, 0, 0);
    if (options.lines) this.#buildLines(materials);
  }

  get #massZ(): number {
    return -(this.layout.massDepth / 2 + 5 * this.layout.k);
  }

  /** Underside of the cap: higher than what is seen of it in the plane z = 0. */
  get #ceiling(): number {
    return this.layout.zeroY - this.layout.top + (SHEAR_Y * this.layout.depth) / 2;
  }

  get #floor(): number {
    return this.layout.zeroY - this.layout.bottom;
  }

  pose(pose: RidingPose): void {
    const layout = this.layout;
    this.#carriage.position.set(layout.penPinX, pose.penUp, 0);
    lay(this.#penLeaf, layout.penPinX, pose.penUp, layout.penPivotX, this.#penLeafLength, layout.k);
    lay(this.#massLeaf, layout.massX, pose.massUp, layout.pivotX, this.#massLeafLength, layout.k);
    this.#mass.position.set(layout.massX, pose.massUp, 0);
    this.#mass.rotation.z = pose.massTurn;
    if (layout.reversed) {
      const turn = Math.atan2(pose.massUp, layout.massArm);
      this.#massWheel.rotation.z = turn;
      this.#penWheel.rotation.z = -turn;
    }
    if (this.#arm !== undefined) {
      this.#arm.bend(pose.massUp);
      this.spring.position.set(layout.armRootX - 0.42 * layout.armLength, pose.massUp * cantileverShape(0.42), 0);
    }
    if (this.#coil !== undefined) {
      const end = pose.massUp + layout.massHeight / 2;
      this.#coil.stretch(end);
      this.spring.position.set(layout.coilX + 15 * layout.k, (end + this.#ceiling) / 2, 0);
    }
    if (layout.beaker !== undefined) this.#paddle.position.y = pose.massUp * layout.beaker.motion;
    this.stopAbove.place(pose.stopAbove, layout.zeroY);
    this.stopBelow.place(pose.stopBelow, layout.zeroY);
  }

  dispose(): void {
    disposeGeometries(this.group);
    this.group.removeFromParent();
  }

  #addPivot(kit: MeshKit, materials: Materials): void {
    const { k, left, pivotX, penPivotX, wheelRadius, reversed } = this.layout;
    kit.box(materials.brass, left - 3 * k, -30 * k, -16 * k, left + 2 * k, 30 * k, 12 * k, 1.5 * k);
    kit.box(materials.brass, left, -5 * k, -11 * k, pivotX + (reversed ? 0 : 4 * k), 5 * k, -4 * k, 2 * k);
    for (const x of reversed ? [pivotX, penPivotX] : [pivotX]) {
      const disc = new CylinderGeometry(10.5 * k, 11 * k, 8 * k, 28).rotateX(Math.PI / 2);
      kit.add(materials.brass, disc.translate(x, 0, -6.5 * k));
      kit.dome(materials.screw, x, 0, 4.6 * k, 5.4 * k);
    }
    if (!reversed) return;
    for (const [wheel, x, phase] of [
      [this.#massWheel, pivotX, 0],
      [this.#penWheel, penPivotX, Math.PI / WHEEL_TEETH],
    ] as const) {
      const wheels = new MeshKit();
      wheels.sheet(materials.brass, toothedWheel(wheelRadius, WHEEL_TEETH, phase), -2.6 * k, 4 * k, 0.4 * k);
      wheels.build(wheel);
      wheel.position.set(x, 0, 0);
    }
  }

  #buildCarriage(materials: Materials, nibX: number): void {
    const { k, penPinX } = this.layout;
    const kit = new MeshKit();
    kit.box(materials.brass, -19 * k, -8.5 * k, -9 * k, 19 * k, 8.5 * k, 0, 2 * k);
    kit.box(materials.brass, -15 * k, -10.5 * k, -8 * k, -12 * k, 10.5 * k, 1.5 * k, 1 * k);
    kit.box(materials.brass, 12 * k, -10.5 * k, -8 * k, 15 * k, 10.5 * k, 1.5 * k, 1 * k);
    kit.dome(materials.screw, 0, 0, 4.6 * k, 5 * k);
    const from = -18 * k;
    const length = from - (nibX - penPinX);
    const cone = new ConeGeometry(6 * k, length, 18).rotateZ(Math.PI / 2);
    kit.add(materials.nib, cone.scale(1, 1, 0.7).translate(from - length / 2, 0, 0));
    kit.build(this.#carriage);
    this.penTip.position.x = nibX - penPinX;
  }

  #buildMass(materials: Materials): void {
    const { k, massWidth, massHeight, massDepth } = this.layout;
    const [w, h] = [massWidth / 2, massHeight / 2];
    const front = this.#massZ + massDepth / 2;
    const back = this.#massZ - massDepth / 2;
    const kit = new MeshKit();
    kit.box(materials.mass, -w, -h, back, w, h, front, 3.4 * k);
    // Two raised bands make its turning plain to see.
    for (const x of [-0.8, 0.66]) {
      kit.box(
        materials.brass,
        x * w,
        -h - 1.1 * k,
        back - 1.1 * k,
        x * w + 5 * k,
        h + 1.1 * k,
        front + 1.1 * k,
        1.4 * k,
      );
    }
    kit.dome(materials.screw, 0, 0, 4.6 * k, 5.2 * k);
    const pin = new CylinderGeometry(2.4 * k, 2.4 * k, 10 * k, 12).rotateX(Math.PI / 2);
    kit.add(materials.rod, pin.translate(0, 0, -k));
    kit.build(this.#mass);
    this.#mass.add(this.massPin);
  }

  /** Two jaws bolted to the right-hand posts hold the arm's root at the unbent level. */
  #addClamp(kit: MeshKit, materials: Materials): void {
    const { k, armRootX, right } = this.layout;
    const half = this.layout.massDepth * 0.5 + 3 * k;
    const z = this.#massZ;
    for (const side of [-1, 1]) {
      const near = side * 4.2 * k;
      const far = side * 36 * k;
      kit.box(
        materials.brass,
        armRootX,
        Math.min(near, far),
        z - half,
        right + 8 * k,
        Math.max(near, far),
        z + half,
        2.6 * k,
      );
      kit.dome(materials.screw, armRootX + 16 * k, side * 20 * k, z + half, 6 * k);
    }
    kit.box(
      materials.brassDark,
      armRootX + 5 * k,
      -6 * k,
      z - half + 2 * k,
      right + 8 * k,
      6 * k,
      z + half - 2 * k,
      1 * k,
    );
  }

  #buildDamper(materials: Materials, beaker: BeakerLayout): void {
    const { k, zeroY, massDepth } = this.layout;
    const hung = beaker.from === 'arm' ? this.#massZ : 0;
    const z = -3 * k;
    const { x, radius } = beaker;
    const bottom = zeroY - beaker.bottom;
    const top = zeroY - beaker.top;
    const oilTop = zeroY - beaker.oilTop;
    const glass = new MeshKit();
    const inner = radius - 2 * k;
    glass.add(
      materials.oil,
      new CylinderGeometry(inner, inner, oilTop - bottom - 4 * k, 40, 1, true).translate(
        x,
        (oilTop + bottom + 4 * k) / 2,
        z,
      ),
    );
    glass.add(materials.oil, new CylinderGeometry(inner, inner, 0.5 * k, 40).translate(x, oilTop, z));
    glass.add(
      materials.beaker,
      new CylinderGeometry(radius, radius, top - bottom, 40, 1, true).translate(x, (top + bottom) / 2, z),
    );
    for (const y of [top, bottom + 2 * k]) {
      glass.add(materials.beakerRim, new TorusGeometry(radius, 1.7 * k, 8, 44).rotateX(Math.PI / 2).translate(x, y, z));
    }
    const ware = glass.single();
    ware.castShadow = ware.receiveShadow = false;
    ware.renderOrder = 1;
    this.group.add(ware);
    this.oil.position.set(x + radius, (oilTop + bottom) / 2, z);

    const kit = new MeshKit();
    const paddle = zeroY - beaker.paddleY;
    const back = beaker.from === 'arm' ? hung - massDepth * 0.46 : -9 * k;
    kit.box(materials.brass, x - 6 * k, -8 * k, back, x + 6 * k, 8 * k, z + 5 * k, 1.5 * k);
    kit.upright(materials.rod, x, paddle, -6 * k, z, 2.1 * k, 14);
    kit.upright(materials.brass, x, paddle - 1.5 * k, paddle + 1.5 * k, z, radius * 0.62, 30);
    kit.build(this.#paddle);
  }

  /** Level lines lie behind the parts; each is lowered by what the oblique view lifts it, so that it shows at the 0 line. */
  #buildLines(materials: Materials): void {
    const { k, massX, massWidth, massDepth, armRootX, pivotX, penPinX, left } = this.layout;
    const kit = new MeshKit();
    const z = -(massDepth + 3 * k);
    const y = SHEAR_Y * z;
    const from = massX - massWidth / 2 - 14 * k;
    const to = this.layout.look.form === 'arm' ? armRootX : massX + massWidth;
    const thick = Math.max(0.55, 0.55 * k);
    for (let x = from; x + 3 < to; x += 6.5) kit.pane(materials.line, x, y - thick, x + 3, y + thick, z);
    const sheet = -13 * k;
    for (let x = penPinX + 22 * k; x < Math.min(pivotX - 14 * k, left - 8 * k); x += 6) {
      kit.pane(materials.line, x, SHEAR_Y * sheet - 0.5, x + 2, SHEAR_Y * sheet + 0.5, sheet);
    }
    kit.build(this.group, { casts: false, receives: false });
  }
}

/** Long enough to reach the pivot from the pin's farthest place, but not past the other pin when level. */
function leafLength(arm: number, most: number, otherArm: number, reversed: boolean, k: number): number {
  const needed = Math.sqrt(arm * arm + most * most) + 16 * k;
  return Math.min(needed, reversed ? arm * 1.3 + 14 * k : arm + 0.8 * otherArm);
}

function leaf(
  materials: Materials,
  length: number,
  half: number,
  slotFrom: number,
  z: number,
  thickness: number,
): Object3D {
  const group = new Group();
  const kit = new MeshKit();
  kit.sheet(materials.lever, slottedLeaf(length, half, slotFrom), z, thickness, thickness * 0.2);
  kit.build(group);
  return group;
}

/** Lays a leaf from its pin over its pivot; drawn longer where it would not reach. */
function lay(object: Object3D, pinX: number, pinUp: number, pivotX: number, length: number, k: number): void {
  const dx = pivotX - pinX;
  const distance = Math.sqrt(dx * dx + pinUp * pinUp);
  object.position.set(pinX, pinUp, 0);
  object.rotation.z = Math.atan2(-pinUp, dx);
  object.scale.x = Math.max(1, (distance + 11 * k) / length);
}
