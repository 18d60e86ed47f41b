/** What else carries the housing: tongs in somebody's hand, and the shaker's table. */
import { CylinderGeometry, Group, type Mesh, TorusGeometry, Vector3 } from 'three';
import type { Vector } from '../contract/geometry.ts';
import type { Materials } from './materials.ts';
import { MeshKit, stretchableRod } from './mesh-kit.ts';

/** Carrying tongs: a turned wooden grip over a brass bow whose pads take the cap by its ends. In the housing's frame. */
export function buildTongs(size: Vector, materials: Materials): Group {
  const [sx, sy] = size;
  const group = new Group();
  const kit = new MeshKit();
  const half = sx / 2;
  const top = sy / 2;
  const crown = top + 0.036;
  for (const side of [-1, 1]) {
    const x = side * (half + 0.0055);
    kit.box(
      materials.rubber,
      Math.min(x, x - side * 0.006),
      top - 0.017,
      -0.011,
      Math.max(x, x - side * 0.006),
      top - 0.003,
      0.011,
      0.002,
    );
    kit.box(materials.brass, x - 0.0032, top - 0.02, -0.007, x + 0.0032, crown, 0.007, 0.0022);
    kit.upright(materials.screw, x, crown + 0.003, crown + 0.0045, 0, 0.0035);
  }
  kit.box(materials.brass, -half - 0.0087, crown - 0.003, -0.007, half + 0.0087, crown + 0.003, 0.007, 0.0026);
  kit.turned(materials.brass, 0, crown, 0, [
    [0.001, 0],
    [0.012, 0],
    [0.0125, 0.006],
    [0.0075, 0.011],
    [0.0075, 0.018],
  ]);
  kit.turned(materials.wood, 0, crown + 0.016, 0, [
    [0.001, 0],
    [0.008, 0],
    [0.0105, 0.01],
    [0.0135, 0.034],
    [0.0125, 0.062],
    [0.0095, 0.078],
    [0.0128, 0.092],
    [0.0108, 0.103],
    [0.001, 0.107],
  ]);
  kit.add(
    materials.brass,
    new TorusGeometry(0.0095, 0.0016, 8, 24).rotateX(Math.PI / 2).translate(0, crown + 0.094, 0),
  );
  kit.build(group);
  return group;
}

/** Farthest the table goes from the carriage before the carriage follows on its column and rail [m]. */
const CARRIAGE_PLAY: Vector = [0.05, 0.02, 0.05];
/** Length of the leaf springs between carriage and table [m]. */
const LEAF_M = 0.045;

/** A table on four leaf springs over a carriage, driven by a pusher; the carriage stands on a drawn-out column. */
export class ShakerModel {
  readonly group = new Group();
  readonly table = new Group();
  readonly #carriage = new Group();
  readonly #base = new Group();
  readonly #column: Mesh;
  readonly #sleeve: Mesh;
  readonly #rod: Mesh;
  readonly #leaves: readonly Mesh[];
  readonly #half: Vector;
  readonly #rest = new Vector3();
  #placed = false;
  readonly #foot = new Vector3();
  readonly #head = new Vector3();

  constructor(size: Vector, benchY: number, materials: Materials) {
    const [sx, , sz] = size;
    const half: Vector = [sx / 2 + 0.018, 0.005, sz / 2 + 0.014];
    this.#half = half;
    const table = new MeshKit();
    table.box(materials.iron, -half[0], -0.012, -half[2], half[0], 0, half[2], 0.003);
    for (const x of [-1, 1]) {
      for (const z of [-1, 1]) {
        table.upright(materials.brass, x * (half[0] - 0.007), 0, 0.003, z * (half[2] - 0.007), 0.0045);
      }
    }
    for (const side of [-1, 1]) {
      const x = side * (sx / 2 + 0.004);
      table.box(materials.brass, x - 0.003, 0, -0.014, x + 0.003, 0.013, 0.014, 0.0015);
    }
    table.build(this.table);

    const carriage = new MeshKit();
    carriage.box(
      materials.iron,
      -half[0] + 0.004,
      -0.014,
      -half[2] + 0.006,
      half[0] - 0.004,
      0,
      half[2] - 0.006,
      0.003,
    );
    const drum = new CylinderGeometry(0.027, 0.027, 0.034, 36).rotateZ(Math.PI / 2);
    const drumX = -half[0] - 0.052;
    carriage.add(materials.brass, drum.translate(drumX, LEAF_M - 0.004, 0));
    for (const x of [-0.018, 0.018]) {
      carriage.add(
        materials.iron,
        new CylinderGeometry(0.029, 0.029, 0.005, 36).rotateZ(Math.PI / 2).translate(drumX + x, LEAF_M - 0.004, 0),
      );
    }
    carriage.box(materials.iron, drumX - 0.018, -0.012, -0.014, -half[0] + 0.02, -0.002, 0.014, 0.002);
    carriage.box(materials.iron, drumX - 0.012, -0.006, -0.01, drumX + 0.012, LEAF_M - 0.024, 0.01, 0.002);
    carriage.build(this.#carriage);

    const base = new MeshKit();
    base.box(materials.iron, -half[0], 0, -half[2], half[0], 0.014, half[2], 0.004);
    base.turned(materials.iron, 0, 0.014, 0, [
      [0.046, 0],
      [0.032, 0.006],
      [0.024, 0.016],
      [0.001, 0.016],
    ]);
    base.build(this.#base);
    this.#column = stretchableRod(0.014, materials.rod);
    this.#sleeve = stretchableRod(0.0185, materials.brass);
    this.#rod = stretchableRod(0.0032, materials.rod);
    this.#leaves = [0, 1, 2, 3].map(() => stretchableRod(0.0022, materials.screw));
    this.#foot.y = benchY + 0.014;
    this.group.add(this.table, this.#carriage, this.#base, this.#column, this.#sleeve, this.#rod, ...this.#leaves);
  }

  /** After the table has been put under the housing. */
  follow(): void {
    const at = this.table.position;
    const rest = this.#rest;
    if (!this.#placed) rest.copy(at);
    this.#placed = true;
    rest.x += beyond(at.x - rest.x, CARRIAGE_PLAY[0]);
    rest.y += beyond(at.y - rest.y, CARRIAGE_PLAY[1]);
    rest.z += beyond(at.z - rest.z, CARRIAGE_PLAY[2]);
    const carriageY = Math.max(rest.y - 0.012 - LEAF_M, this.#foot.y + 0.02);
    this.#carriage.position.set(rest.x, carriageY, rest.z);
    const height = carriageY - 0.014 - this.#foot.y;
    this.#column.position.set(rest.x, this.#foot.y, rest.z);
    this.#column.scale.y = Math.max(height, 0.001);
    this.#sleeve.position.copy(this.#column.position);
    this.#sleeve.scale.y = Math.max(height * 0.55, 0.001);
    this.#base.position.set(rest.x, this.#foot.y - 0.014, rest.z);
    let leaf = 0;
    for (const x of [-1, 1]) {
      for (const z of [-1, 1]) {
        const dx = x * (this.#half[0] - 0.012);
        const dz = z * (this.#half[2] - 0.014);
        this.#between(this.#leaves[leaf]!, rest.x + dx, carriageY, rest.z + dz, dx, -0.012, dz);
        leaf++;
      }
    }
    this.#between(
      this.#rod,
      rest.x - this.#half[0] - 0.036,
      carriageY + LEAF_M - 0.004,
      rest.z,
      -this.#half[0],
      -0.006,
      0,
    );
  }

  forget(): void {
    this.#placed = false;
  }

  /** Stretches a rod of length 1 from a place in the room to one on the table. */
  #between(rod: Mesh, x: number, y: number, z: number, tableX: number, tableY: number, tableZ: number): void {
    this.#head.set(tableX, tableY, tableZ).applyQuaternion(this.table.quaternion).add(this.table.position);
    rod.position.set(x, y, z);
    this.#head.sub(rod.position);
    const length = Math.max(this.#head.length(), 1e-6);
    rod.scale.y = length;
    rod.quaternion.setFromUnitVectors(UPWARD, this.#head.divideScalar(length));
  }
}

const UPWARD = new Vector3(0, 1, 0);

const beyond = (offset: number, play: number): number =>
  offset > play ? offset - play : offset < -play ? offset + play : 0;
