/** Everything that stands in the room view, for one size of housing, one look and one thickness of pad. */
import {
  BoxGeometry,
  BufferGeometry,
  EdgesGeometry,
  Float32BufferAttribute,
  Group,
  LineDashedMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
  Quaternion,
  Vector3,
} from 'three';
import type { Vector } from '../contract/geometry.ts';
import type { Snapshot } from '../contract/snapshot.ts';
import type { RoomFrame, Theme } from '../contract/view.ts';
import { ArrowModel } from './arrow-model.ts';
import { buildTongs, ShakerModel } from './carrier-models.ts';
import { ClampModel } from './clamp-model.ts';
import { buildHousing } from './housing-model.ts';
import type { Materials } from './materials.ts';
import { MechanismModel } from './mechanism-model.ts';
import { disposeGeometries } from './mesh-kit.ts';
import { PadModel } from './pad-model.ts';
import { paletteOf } from './palette.ts';
import { type RoomForce, roomForces } from './room-forces.ts';
import { type Furniture, furniture, type RoomCamera, roomPxPerM, USUAL_PAD_M } from './room-layout.ts';
import { fallShown, ghostShown, LEAST_FALL_M } from './room-measure.ts';
import { type RoomMechanism, roomMechanism } from './room-mechanism.ts';
import { buildBackground, buildMarker, buildRule, buildStand, type RoomMaterials } from './room-models.ts';
import type { RoomState } from './room-state.ts';

/** Swept by less than this the housing is drawn where it is [px]. */
const VEIL_FROM_PX = 4;

export class RoomThings {
  readonly size: Vector;
  readonly furniture: Furniture;
  readonly inside: RoomMechanism;
  readonly mechanism: MechanismModel;
  readonly housing = new Group();
  readonly corners: readonly Object3D[];
  readonly clamp: ClampModel;
  readonly pad: PadModel | undefined;
  readonly padThicknessM: number | undefined;
  readonly fall: LineSegments;
  readonly forces: RoomForce[] = [];
  /** All of it, to be put into a scene. */
  readonly all = new Group();
  readonly #tongs: Group;
  readonly #shaker: ShakerModel;
  readonly #shortRule: Group;
  readonly #longRule: Group;
  readonly #shortStand: Group;
  readonly #longStand: Group;
  readonly #marker: Group;
  readonly #ghost: LineSegments;
  readonly #veil: Mesh;
  readonly #veilEdges: readonly [LineSegments, LineSegments];
  readonly #veilFill: MeshBasicMaterial;
  readonly #dashed: LineDashedMaterial;
  readonly #dotted: LineDashedMaterial;
  readonly #arrows: readonly ArrowModel[];
  readonly #tips: readonly Vector3[] = [new Vector3(), new Vector3(), new Vector3()];
  readonly #form: string;
  readonly #axis: Vector;

  constructor(materials: Materials, theme: Theme, room: RoomMaterials, frame: RoomFrame, axis: Vector) {
    const palette = paletteOf(theme);
    const size = frame.housingSizeM;
    this.size = size;
    this.#axis = axis;
    this.#form = formOf(frame);
    this.furniture = furniture(size);
    this.padThicknessM = frame.pad?.thicknessM;
    const place = this.furniture;
    const benchY = -((frame.pad?.thicknessM ?? USUAL_PAD_M) + place.boardThickness);
    const all = this.all;

    this.#shortRule = buildRule(place, benchY, false, room, materials);
    this.#longRule = buildRule(place, benchY, true, room, materials);
    this.#shortStand = buildStand(place, benchY, 0.62, materials);
    this.#longStand = buildStand(place, benchY, 2.6, materials);
    this.#marker = buildMarker(place, materials);
    all.add(
      buildBackground(place, benchY, room),
      this.#shortRule,
      this.#longRule,
      this.#shortStand,
      this.#longStand,
      this.#marker,
    );

    this.inside = roomMechanism(size, axis, frame.look);
    const { perM, k, upright, zeroUp } = this.inside;
    const drawn = new Group();
    drawn.scale.setScalar(1 / perM);
    const half = size.map((edge) => (edge * perM) / 2) as unknown as Vector;
    drawn.add(
      buildHousing(
        { x0: -half[0], x1: half[0], y0: -half[1], y1: half[1], depth: 2 * half[2], k, back: true },
        materials,
      ),
    );
    this.mechanism = new MechanismModel(this.inside.layout, materials, { nibX: undefined, lines: false });
    const turnedGroup = new Group();
    turnedGroup.quaternion.fromArray(upright);
    this.mechanism.group.position.y = zeroUp;
    turnedGroup.add(this.mechanism.group);
    drawn.add(turnedGroup);
    this.housing.add(drawn);
    this.corners = Array.from({ length: 8 }, (_, corner) => {
      const mark = new Group();
      mark.position.set(
        ((corner & 1 ? 1 : -1) * size[0]) / 2,
        ((corner & 2 ? 1 : -1) * size[1]) / 2,
        ((corner & 4 ? 1 : -1) * size[2]) / 2,
      );
      return mark;
    });
    this.#tongs = buildTongs(size, materials);
    this.housing.add(...this.corners, this.#tongs);
    all.add(this.housing);

    this.clamp = new ClampModel(size, materials);
    this.#shaker = new ShakerModel(size, benchY, materials);
    all.add(...this.clamp.parts, this.#shaker.group);
    if (frame.pad !== undefined) {
      this.pad = new PadModel(place.padWidth, place.padDepth, frame.pad.thicknessM, place.boardThickness, materials);
      all.add(this.pad.group);
    } else this.pad = undefined;

    this.#dashed = new LineDashedMaterial({
      color: palette.text,
      dashSize: 0.0075,
      gapSize: 0.0045,
      transparent: true,
      opacity: 0.85,
    });
    this.#dotted = new LineDashedMaterial({
      color: palette.text,
      dashSize: 0.0018,
      gapSize: 0.004,
      transparent: true,
      opacity: 0.85,
    });
    const box = new BoxGeometry(size[0], size[1], size[2]);
    this.#ghost = new LineSegments(new EdgesGeometry(box), this.#dashed);
    this.#ghost.computeLineDistances();
    this.fall = new LineSegments(new BufferGeometry(), this.#dotted);
    this.fall.geometry.setAttribute('position', new Float32BufferAttribute([0, 0, 0, 0, 1, 0], 3));
    this.fall.geometry.setAttribute('lineDistance', new Float32BufferAttribute([0, 1], 1));
    this.fall.frustumCulled = false;
    this.#veilFill = new MeshBasicMaterial({
      color: palette.brass,
      transparent: true,
      opacity: 0.3,
      depthWrite: false,
    });
    this.#veil = new Mesh(box, this.#veilFill);
    this.#veilEdges = [
      new LineSegments(new EdgesGeometry(box), this.#dashed),
      new LineSegments(new EdgesGeometry(box), this.#dashed),
    ];
    for (const edges of this.#veilEdges) edges.computeLineDistances();
    all.add(this.#ghost, this.fall, this.#veil, ...this.#veilEdges);

    this.#arrows = [0, 1, 2].map((arrow) =>
      arrow === 1
        ? new ArrowModel(materials.arrowPaper, materials.arrowLine, 1.7, 22)
        : new ArrowModel(materials.arrowInk, materials.arrowPaper, 1.2, 20),
    );
    for (const arrow of this.#arrows) all.add(arrow.group);
  }

  fits(frame: RoomFrame, axis: Vector): boolean {
    const { size } = this;
    const next = frame.housingSizeM;
    return (
      next[0] === size[0] &&
      next[1] === size[1] &&
      next[2] === size[2] &&
      axis[0] === this.#axis[0] &&
      axis[1] === this.#axis[1] &&
      axis[2] === this.#axis[2] &&
      frame.pad?.thicknessM === this.padThicknessM &&
      formOf(frame) === this.#form
    );
  }

  place(
    snapshot: Snapshot,
    frame: RoomFrame,
    state: RoomState,
    corners: Float64Array,
    view: RoomCamera,
    facing: Quaternion,
  ): void {
    const { position, attitude } = snapshot.housing;
    this.housing.position.set(position[0]!, position[1]!, position[2]!);
    this.housing.quaternion.set(attitude[0]!, attitude[1]!, attitude[2]!, attitude[3]!);
    this.#tongs.visible = frame.holder === 'hand';
    this.#placeCarriers(frame, state);
    this.#placeMarks(snapshot, frame, view);
    this.#placeVeil(frame, view, position, attitude);
    if (this.pad !== undefined) {
      this.pad.group.position.set(state.padX, 0, state.padZ);
      const pressed = this.pad.group.visible ? corners : FAR_ABOVE;
      LOCAL.set(pressed);
      for (let corner = 0; corner < 8; corner++) {
        LOCAL[corner * 3] = pressed[corner * 3]! - state.padX;
        LOCAL[corner * 3 + 2] = pressed[corner * 3 + 2]! - state.padZ;
      }
      const about: Vector = [position[0]! - state.padX, position[1]!, position[2]! - state.padZ];
      if (this.pad.dent.press(LOCAL, about, attitude as ArrayLike<number>, this.size)) this.pad.update();
    }
    this.#placeArrows(snapshot, frame, corners, view, facing);
  }

  /** Where a force arrow ends in the room. */
  arrowTip(force: RoomForce): Vector3 {
    return this.#tips[force.slot]!;
  }

  dispose(): void {
    disposeGeometries(this.all);
    for (const lines of [this.#ghost, this.fall, ...this.#veilEdges]) lines.geometry.dispose();
    this.#veilFill.dispose();
    this.#dashed.dispose();
    this.#dotted.dispose();
    this.all.removeFromParent();
  }

  #placeCarriers(frame: RoomFrame, state: RoomState): void {
    const shaken = frame.holder === 'shaker';
    const long = state.clampPosition[1]! > 0.53;
    this.#shortStand.visible = !shaken && !long;
    this.#longStand.visible = !shaken && long;
    this.clamp.visible = !shaken;
    const { clampPosition: at, clampAttitude: turn } = state;
    this.clamp.head.position.set(at[0]!, at[1]!, at[2]!);
    this.clamp.head.quaternion.set(turn[0]!, turn[1]!, turn[2]!, turn[3]!);
    this.clamp.reach(this.furniture.columnX, this.furniture.columnZ, state.clampOpen);
    this.#shaker.group.visible = shaken;
    if (this.pad !== undefined) this.pad.group.visible = !shaken;
    if (!shaken) {
      this.#shaker.forget();
      return;
    }
    const { table } = this.#shaker;
    table.quaternion.copy(this.housing.quaternion);
    table.position
      .set(0, -this.size[1] / 2, 0)
      .applyQuaternion(table.quaternion)
      .add(this.housing.position);
    this.#shaker.follow();
  }

  #placeMarks(snapshot: Snapshot, frame: RoomFrame, view: RoomCamera): void {
    const { position } = snapshot.housing;
    const release = frame.releaseHeightM;
    const high = Math.max(release ?? 0, position[1]!) > 0.54 || view.viewHeightM > 0.9;
    this.#shortRule.visible = !high;
    this.#longRule.visible = high;
    this.#marker.visible = release !== undefined;
    this.#marker.position.y = release ?? 0;
    this.#ghost.visible = ghostShown(snapshot, frame);
    this.#ghost.position.set(0, (release ?? 0) + this.size[1] / 2, 0);
    const drop = fallShown(snapshot, frame);
    this.fall.visible = drop > LEAST_FALL_M;
    this.fall.position.set(0, position[1]! + this.size[1] / 2, 0);
    this.fall.scale.y = Math.max(drop, 1e-6);
    this.#dotted.scale = Math.max(drop, 1e-6);
  }

  #placeVeil(frame: RoomFrame, view: RoomCamera, position: ArrayLike<number>, attitude: ArrayLike<number>): void {
    const swept = frame.swept;
    let most = 0;
    if (swept !== undefined)
      for (let axis = 0; axis < 3; axis++) most = Math.max(most, swept.high[axis]! - swept.low[axis]!);
    const veiled = most * roomPxPerM(view, position[0]!, position[1]!, position[2]!) > VEIL_FROM_PX;
    this.housing.visible = !veiled;
    this.#veil.visible = this.#veilEdges[0].visible = this.#veilEdges[1].visible = veiled;
    if (!veiled || swept === undefined) return;
    const { low, high } = swept;
    this.#veil.position.set((low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2);
    this.#veil.quaternion.set(attitude[0]!, attitude[1]!, attitude[2]!, attitude[3]!);
    // The hull of a box swept along the room's axes, taken along its own: exact while it is level.
    this.#veil.scale.set(
      1 + (high[0]! - low[0]!) / this.size[0],
      1 + (high[1]! - low[1]!) / this.size[1],
      1 + (high[2]! - low[2]!) / this.size[2],
    );
    this.#veilEdges[0].position.set(low[0]!, low[1]!, low[2]!);
    this.#veilEdges[1].position.set(high[0]!, high[1]!, high[2]!);
    for (const edges of this.#veilEdges) edges.quaternion.copy(this.#veil.quaternion);
  }

  #placeArrows(
    snapshot: Snapshot,
    frame: RoomFrame,
    corners: Float64Array,
    view: RoomCamera,
    facing: Quaternion,
  ): void {
    for (const arrow of this.#arrows) arrow.group.visible = false;
    roomForces(snapshot, frame, corners, view, this.forces);
    for (const force of this.forces) {
      const arrow = this.#arrows[force.slot]!;
      const unit = 1 / roomPxPerM(view, force.x, force.y, force.z);
      // Drawn in the picture's plane, as long as the force's share in it says.
      ALONG.set(force.dx, force.dy, force.dz).applyQuaternion(UNFACING.copy(facing).invert());
      arrow.place(force.x, force.y, force.z, ALONG.x * unit, ALONG.y * unit, 10 * unit, unit, force.cut);
      PLAIN.setFromAxisAngle(FORWARD, arrow.group.rotation.z);
      arrow.group.quaternion.copy(facing).multiply(PLAIN);
      this.#tips[force.slot]!.set(ALONG.x * unit, ALONG.y * unit, 0)
        .applyQuaternion(facing)
        .add(arrow.group.position);
    }
  }
}

const LOCAL = new Float64Array(24);
const FAR_ABOVE = new Float64Array(24).fill(1);
const ALONG = new Vector3();
const UNFACING = new Quaternion();
const PLAIN = new Quaternion();
const FORWARD = new Vector3(0, 0, 1);

const formOf = (frame: RoomFrame): string => `${frame.look.form} ${frame.look.damper} ${frame.look.span}`;
