/** A stop: rubber in a brass cup on a stem from floor or ceiling; far away, its stem is drawn with a break. */
import { Group, Object3D } from 'three';
import type { Materials } from './materials.ts';
import { type MechanismLayout, STOP_PLATE } from './mechanism-layout.ts';
import { MeshKit } from './mesh-kit.ts';
import type { StopPose } from './riding-layout.ts';

export class StopModel {
  readonly group = new Group();
  readonly mark = new Object3D();
  readonly #stem = new Group();
  readonly #break = new Group();
  readonly #wall: number;
  readonly #side: 1 | -1;
  readonly #cup: number;

  constructor(materials: Materials, layout: MechanismLayout, x: number, z: number, wall: number, side: 1 | -1) {
    const { k } = layout;
    this.#wall = wall;
    this.#side = side;
    this.#cup = 11 * k;
    const radius = layout.stopWidth / 2;
    const head = new MeshKit();
    const up = (near: number, far: number): [number, number] => [
      Math.min(side * near, side * far),
      Math.max(side * near, side * far),
    ];
    head.turned(materials.rubber, 0, 0, 0, rubberProfile(radius, 6.5 * k, side));
    head.upright(materials.brass, 0, ...up(6.5 * k, 10 * k), 0, radius * STOP_PLATE, 26);
    head.upright(materials.brass, 0, ...up(10 * k, 12.5 * k), 0, radius * 0.6, 22);
    head.build(this.group);
    const stem = new MeshKit();
    stem.upright(materials.rod, 0, ...up(0, 1), 0, radius * 0.42, 16);
    stem.build(this.#stem);
    const gap = new MeshKit();
    for (const lift of [0, 4.6 * k]) {
      gap.box(materials.rubber, -radius, -1.3 * k + lift, radius * 0.44, radius, 1.3 * k + lift, radius * 0.5);
      gap.box(materials.iron, -radius, 1.1 * k + lift, radius * 0.5, radius, 1.9 * k + lift, radius * 0.54);
    }
    gap.build(this.#break, { casts: false });
    this.#break.rotation.z = 0.35;
    this.group.add(this.#stem, this.#break, this.mark);
    this.group.position.set(x, 0, z);
    this.#stem.position.y = side * this.#cup;
  }

  place(pose: StopPose, zeroY: number): void {
    this.group.visible = pose.present;
    const y = zeroY - pose.yPx;
    this.group.position.y = y;
    const length = Math.max(0.01, this.#side * (this.#wall - y) - this.#cup);
    this.#stem.scale.y = length;
    this.#break.visible = pose.broken;
    this.#break.position.y = this.#side * (this.#cup + 1 + length * 0.4) - (this.#side === 1 ? 0 : 3);
  }
}

/** Half outline of a rubber pad with a rounded face at height 0 and its back at `height` to the given side. */
function rubberProfile(radius: number, height: number, side: 1 | -1): readonly (readonly [number, number])[] {
  const profile: (readonly [number, number])[] = [
    [0.001, 0],
    [radius * 0.86, 0],
    [radius, side * height * 0.22],
    [radius, side * height],
  ];
  return side === 1 ? profile : profile.reverse();
}
