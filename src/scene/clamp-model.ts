/**
 * The stand's clamp: two padded fingers that hug the housing's sides from behind, on an arm that slides
 * on the stand's column. Opened, the fingers spring wide apart.
 */
import { CylinderGeometry, Group, type Mesh, Object3D, Vector3 } from 'three';
import type { Vector } from '../contract/geometry.ts';
import type { Materials } from './materials.ts';
import { MeshKit, stretchableRod } from './mesh-kit.ts';

/** How far a finger opens [rad]. */
const OPEN_TURN = 0.62;

const UP = new Vector3(0, 1, 0);

export class ClampModel {
  /** In the housing's frame: fingers and their bridge. */
  readonly head = new Group();
  /** Where the arm ends on the column. */
  readonly boss = new Group();
  readonly mark = new Object3D();
  readonly #arm: Mesh;
  readonly #left = new Group();
  readonly #right = new Group();
  readonly #joint = new Object3D();
  readonly #from = new Vector3();
  readonly #to = new Vector3();

  constructor(size: Vector, materials: Materials) {
    const [sx, sy, sz] = size;
    const back = -sz / 2;
    const height = sy * 0.2;
    const hinge = sx / 2 + 0.013;
    const bridge = new MeshKit();
    bridge.box(
      materials.brass,
      -hinge - 0.005,
      height - 0.005,
      back - 0.024,
      hinge + 0.005,
      height + 0.005,
      back - 0.016,
      0.0015,
    );
    bridge.upright(materials.brass, 0, height - 0.011, height + 0.011, back - 0.024, 0.009);
    for (const side of [-1, 1]) {
      bridge.upright(materials.brass, side * hinge, height - 0.009, height + 0.009, back - 0.02, 0.0058);
      bridge.upright(materials.screw, side * hinge, height + 0.009, height + 0.011, back - 0.02, 0.0036);
    }
    bridge.build(this.head);
    for (const [finger, side] of [
      [this.#left, -1],
      [this.#right, 1],
    ] as const) {
      const kit = new MeshKit();
      const reach = 0.02 + Math.min(sz * 0.55, 0.07);
      const x = side * 0.004;
      kit.box(materials.brass, x - 0.003, -0.0065, -0.002, x + 0.003, 0.0065, reach, 0.0016);
      const pad = -side * 0.0062;
      kit.box(materials.rubber, pad - 0.0066, -0.0095, reach - 0.03, pad + 0.0066, 0.0095, reach + 0.002, 0.002);
      kit.build(finger);
      finger.position.set(side * hinge, height, back - 0.02);
      this.head.add(finger);
    }
    this.#joint.position.set(0, height, back - 0.034);
    this.mark.position.set(hinge, height, back);
    this.head.add(this.#joint, this.mark);

    this.#arm = stretchableRod(0.0036, materials.rod);
    const boss = new MeshKit();
    boss.box(materials.brass, -0.015, -0.018, -0.013, 0.015, 0.018, 0.013, 0.004);
    boss.upright(materials.screw, 0, 0.018, 0.02, 0, 0.006);
    boss.add(
      materials.wood,
      new CylinderGeometry(0.008, 0.0095, 0.022, 20).rotateZ(Math.PI / 2).translate(0.026, 0, 0),
    );
    boss.build(this.boss);
  }

  get parts(): readonly Object3D[] {
    return [this.head, this.boss, this.#arm];
  }

  set visible(shown: boolean) {
    for (const part of this.parts) part.visible = shown;
  }

  /** After the head has been put to its place. `open` 0 … 1. */
  reach(columnX: number, columnZ: number, open: number): void {
    this.#left.rotation.y = -open * OPEN_TURN;
    this.#right.rotation.y = open * OPEN_TURN;
    this.head.updateMatrixWorld();
    this.#from.setFromMatrixPosition(this.#joint.matrixWorld);
    this.#to.set(columnX, this.#from.y, columnZ);
    this.boss.position.copy(this.#to);
    this.#arm.position.copy(this.#from);
    this.#to.sub(this.#from);
    const length = this.#to.length();
    this.#arm.scale.y = Math.max(length, 1e-6);
    this.#arm.quaternion.setFromUnitVectors(UP, this.#to.divideScalar(Math.max(length, 1e-6)));
  }
}
