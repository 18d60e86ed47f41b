/** What moves too fast to see: the room swept by mass, arm and lever, as a still veil between the two ends. */
import { BufferAttribute, BufferGeometry, Group, type Material, Mesh } from 'three';
import { cantileverShape } from './cantilever.ts';
import type { Materials } from './materials.ts';
import type { MechanismLayout } from './mechanism-layout.ts';

const STATIONS = 20;

/** A band between an upper and a lower edge. */
class Band {
  readonly mesh: Mesh;
  readonly #points: Float32Array;
  readonly #geometry = new BufferGeometry();

  constructor(material: Material, pairs: number, order: number) {
    this.#points = new Float32Array(pairs * 6);
    const index: number[] = [];
    for (let pair = 0; pair + 1 < pairs; pair++) {
      const a = pair * 2;
      index.push(a, a + 1, a + 2, a + 1, a + 3, a + 2);
    }
    this.#geometry.setAttribute('position', new BufferAttribute(this.#points, 3));
    this.#geometry.setIndex(index);
    this.mesh = new Mesh(this.#geometry, material);
    this.mesh.renderOrder = order;
    this.mesh.frustumCulled = false;
  }

  edge(pair: number, x: number, upper: number, lower: number): void {
    const at = pair * 6;
    this.#points[at] = this.#points[at + 3] = x;
    this.#points[at + 1] = upper;
    this.#points[at + 4] = lower;
  }

  done(): void {
    this.#geometry.getAttribute('position').needsUpdate = true;
  }
}

export class VeilModel {
  readonly group = new Group();
  readonly #layout: MechanismLayout;
  readonly #mass: Band;
  readonly #spring: Band;
  readonly #penHalf: Band;
  readonly #massHalf: Band;
  readonly #carriage: Band;

  constructor(layout: MechanismLayout, materials: Materials) {
    this.#layout = layout;
    this.#mass = new Band(materials.veilMass, 2, 2.1);
    this.#spring = new Band(materials.veilArm, STATIONS + 1, 2);
    this.#penHalf = new Band(materials.veilLever, 3, 2.2);
    this.#massHalf = new Band(materials.veilLever, 3, 2.2);
    this.#carriage = new Band(materials.veilMass, 2, 2.1);
    for (const band of [this.#mass, this.#spring, this.#penHalf, this.#massHalf, this.#carriage])
      this.group.add(band.mesh);
    this.group.visible = false;
  }

  /** Offsets of the mass, upward, at the two ends. */
  span(low: number, high: number): void {
    const layout = this.#layout;
    const { k, massX, massWidth, massHeight, penPinX, pivotX, penPivotX } = layout;
    for (const [pair, side] of [
      [0, -1],
      [1, 1],
    ] as const) {
      this.#mass.edge(pair, massX + (side * massWidth) / 2, high + massHeight / 2, low - massHeight / 2);
    }
    const half = 4 * k;
    for (let station = 0; station <= STATIONS; station++) {
      const share = station / STATIONS;
      if (layout.look.form === 'arm') {
        const shape = cantileverShape(share);
        this.#spring.edge(station, layout.armRootX - share * layout.armLength, high * shape + half, low * shape - half);
      } else {
        const x = layout.coilX + (2 * share - 1) * 15 * k;
        this.#spring.edge(station, x, layout.zeroY - layout.top, low + massHeight / 2);
      }
    }
    const ratio = ((layout.reversed ? 1 : -1) * layout.penArm) / layout.massArm;
    const penA = low * ratio;
    const penB = high * ratio;
    fan(this.#massHalf, massX, pivotX, low, high, 6 * k);
    fan(this.#penHalf, penPinX, penPivotX, Math.min(penA, penB), Math.max(penA, penB), 6 * k);
    for (const [pair, side] of [
      [0, -1],
      [1, 1],
    ] as const) {
      this.#carriage.edge(pair, penPinX + side * 17 * k, Math.max(penA, penB) + 8 * k, Math.min(penA, penB) - 8 * k);
    }
    this.#mass.done();
    this.#spring.done();
    this.#carriage.done();
  }
}

/** The fan that a half of the lever sweeps between its pin's two ends and the pivot. */
function fan(band: Band, pinX: number, pivotX: number, low: number, high: number, half: number): void {
  for (const [pair, share] of [
    [0, 1],
    [1, 0.5],
    [2, 0],
  ] as const) {
    band.edge(pair, pivotX + share * (pinX - pivotX), high * share + half, low * share - half);
  }
  band.done();
}
