/**
 * The room view in depth, true to scale in metres: what happens to the housing. Perspective from a little
 * to the left and above; the camera draws back for great heights, or follows the housing.
 */
import { type Object3D, PerspectiveCamera, Quaternion, Vector3 } from 'three';
import type { Snapshot } from '../contract/snapshot.ts';
import type { ForceArrow, RoomFrame, RoomGeometry, RoomPart, RoomPicture, Theme } from '../contract/view.ts';
import { newRidingPose, placeMass, placeStops } from './riding-layout.ts';
import { FIELD_DEG, housingCorners, lowestCorner, placeInRoom, type RoomCamera, roomCamera } from './room-layout.ts';
import { roomGeometry } from './room-measure.ts';
import { createRoomMaterials, type RoomMaterials } from './room-models.ts';
import { roomPart } from './room-parts.ts';
import { RoomState } from './room-state.ts';
import { RoomThings } from './room-things.ts';
import { type LightPlan, type PictureOptions, ThreeStage } from './three-stage.ts';
import { fadeEdges } from './vignette.ts';

const LIGHTS: Readonly<Record<Theme, LightPlan>> = {
  day: {
    toLight: [-0.78, 0.95, 0.86],
    color: '#fffefa',
    strength: 2.75,
    sky: '#ffffff',
    ground: '#d6cfc2',
    ambient: 0.34,
    mirrored: 0.46,
  },
  evening: {
    toLight: [0.6, 0.9, 0.62],
    color: '#ffecd4',
    strength: 2.7,
    sky: '#7d8798',
    ground: '#3a2e22',
    ambient: 0.5,
    mirrored: 0.7,
  },
};

export function createRoomPicture(canvas: HTMLCanvasElement, options: PictureOptions = {}): RoomPicture {
  return new Room(canvas, options);
}

class Room implements RoomPicture {
  readonly #stage: ThreeStage;
  readonly #camera = new PerspectiveCamera(FIELD_DEG, 1, 0.1, 40);
  readonly #state = new RoomState();
  readonly #corners = new Float64Array(24);
  readonly #pose = newRidingPose();
  readonly #point = new Vector3();
  readonly #turn = new Quaternion();
  readonly #drawn = new Float64Array(40);
  #room: RoomMaterials;
  #parts: RoomThings | undefined;
  #view: RoomCamera | undefined;
  #shaken = false;
  #width = 1;
  #height = 1;
  #geometry: RoomGeometry | undefined;

  constructor(canvas: HTMLCanvasElement, options: PictureOptions) {
    this.#stage = new ThreeStage(canvas, options, LIGHTS);
    this.#room = createRoomMaterials(this.#stage.theme);
    fadeEdges(canvas);
  }

  get settled(): boolean {
    return this.#stage.refiner.settled;
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.#width = widthPx;
    this.#height = heightPx;
    this.#stage.resize(widthPx, heightPx, pixelRatio);
    this.#camera.aspect = widthPx / heightPx;
    this.#camera.updateProjectionMatrix();
    this.#drawn.fill(Number.NaN);
  }

  setTheme(theme: Theme): void {
    if (theme === this.#stage.theme) return;
    this.#clear();
    this.#stage.setTheme(theme);
    this.#room.dispose();
    this.#room = createRoomMaterials(theme);
  }

  draw(snapshot: Snapshot, frame: RoomFrame): RoomGeometry {
    const things = this.#thingsFor(snapshot, frame);
    this.#state.follow(snapshot, frame);
    housingCorners(snapshot.housing.position, snapshot.housing.attitude, frame.housingSizeM, this.#corners);
    const view = roomCamera({
      widthPx: this.#width,
      heightPx: this.#height,
      position: snapshot.housing.position,
      housingSizeM: frame.housingSizeM,
      releaseHeightM: frame.releaseHeightM,
      follow: frame.follow,
    });
    this.#view = view;
    this.#shaken = frame.holder === 'shaker';
    if (!this.#changed(snapshot, frame, view)) {
      const { refiner, scene, lamp, toLight, lightDistance } = this.#stage;
      refiner.refine(scene, this.#camera, lamp, toLight, lightDistance);
      return this.#geometry!;
    }
    this.#aim(view);
    things.place(snapshot, frame, this.#state, this.#corners, view, this.#turn.copy(this.#camera.quaternion));
    this.#placeElement(things, snapshot, frame);
    this.#light(view);
    const { refiner, scene, lamp, toLight, lightDistance } = this.#stage;
    refiner.draw(scene, this.#camera, lamp, toLight, lightDistance);
    this.#geometry = this.#measure(things, snapshot, frame, view);
    return this.#geometry;
  }

  part(xPx: number, yPx: number): RoomPart | undefined {
    const things = this.#parts;
    const view = this.#view;
    if (things === undefined || view === undefined) return undefined;
    return roomPart(
      {
        camera: view,
        furniture: things.furniture,
        housing: this.#corners,
        housingSizeM: things.size,
        clamp: this.#shaken ? undefined : this.#state.clampPosition,
        shaker: this.#shaken,
        padX: this.#state.padX,
        padThicknessM: things.padThicknessM,
      },
      xPx,
      yPx,
    );
  }

  place(xPx: number, yPx: number): readonly [number, number, number] {
    return this.#view === undefined ? [0, 0, 0] : placeInRoom(this.#view, xPx, yPx);
  }

  dispose(): void {
    this.#clear();
    this.#room.dispose();
    this.#stage.dispose();
  }

  #clear(): void {
    this.#parts?.dispose();
    this.#parts = undefined;
    this.#drawn.fill(Number.NaN);
  }

  #thingsFor(snapshot: Snapshot, frame: RoomFrame): RoomThings {
    const axis = snapshot.elements[frame.element]!.spec.axis;
    const old = this.#parts;
    if (old?.fits(frame, axis)) return old;
    this.#clear();
    const { materials, theme, scene } = this.#stage;
    const things = new RoomThings(materials, theme, this.#room, frame, axis);
    scene.add(things.all);
    this.#parts = things;
    return things;
  }

  #aim(view: RoomCamera): void {
    const camera = this.#camera;
    camera.position.fromArray(view.eye);
    camera.lookAt(view.target[0], view.target[1], view.target[2]);
    camera.updateMatrixWorld();
  }

  #light(view: RoomCamera): void {
    const { lamp } = this.#stage;
    const radius = 0.62 * Math.max(view.viewHeightM, (view.viewHeightM * this.#width) / this.#height);
    lamp.target.position.set(view.target[0], view.target[1] - 0.08 * view.viewHeightM, -0.05);
    lamp.target.updateMatrixWorld();
    this.#stage.lightDistance = radius * 2;
    const shadow = lamp.shadow;
    const camera = shadow.camera;
    camera.left = camera.bottom = -radius;
    camera.right = camera.top = radius;
    camera.near = radius * 0.3;
    camera.far = radius * 4;
    camera.updateProjectionMatrix();
    shadow.bias = -0.0004;
    shadow.normalBias = (1.6 * radius) / shadow.mapSize.x;
    shadow.radius = 2;
  }

  #placeElement(things: RoomThings, snapshot: Snapshot, frame: RoomFrame): void {
    const element = snapshot.elements[frame.element]!;
    const { layout, perM } = things.inside;
    const pose = this.#pose;
    placeMass(layout, element.deflection * frame.enlargement * perM, pose);
    const gap = element.spec.gap;
    placeStops(layout, gap === undefined ? undefined : gap * frame.enlargement * perM, pose);
    things.mechanism.pose(pose);
  }

  /** Notes what is about to be drawn; false when it is what was drawn last. */
  #changed(snapshot: Snapshot, frame: RoomFrame, view: RoomCamera): boolean {
    let at = 0;
    let changed = false;
    const note = (value: number): void => {
      if (this.#drawn[at] !== value) changed = true;
      this.#drawn[at++] = value;
    };
    const { position, attitude, specificForce } = snapshot.housing;
    for (let part = 0; part < 3; part++) note(position[part]!);
    for (let part = 0; part < 4; part++) note(attitude[part]!);
    const arrows = frame.arrows.size > 0;
    for (let part = 0; part < 3; part++) note(arrows ? specificForce[part]! : 0);
    note(snapshot.elements[frame.element]!.deflection * frame.enlargement);
    note((snapshot.elements[frame.element]!.spec.gap ?? -1) * frame.enlargement);
    note(frame.releaseHeightM ?? -1);
    note(HOLDERS.indexOf(frame.holder));
    for (const value of view.target) note(value);
    note(view.viewHeightM);
    note(this.#state.padX);
    note(this.#state.padZ);
    note(this.#state.clampPosition[1]!);
    for (const arrow of ROOM_ARROWS) note(frame.arrows.has(arrow) ? snapshot.gravity : -1);
    for (let part = 0; part < 3; part++) {
      note(frame.swept?.low[part] ?? 0);
      note(frame.swept?.high[part] ?? 0);
    }
    return changed;
  }

  #measure(things: RoomThings, snapshot: Snapshot, frame: RoomFrame, view: RoomCamera): RoomGeometry {
    const { padX, padZ } = this.#state;
    const lowest = lowestCorner(this.#corners);
    const lowX = this.#corners[lowest * 3]!;
    const lowZ = this.#corners[lowest * 3 + 2]!;
    const top = things.pad === undefined ? 0 : things.pad.dent.heightAt(lowX - padX, lowZ - padZ);
    return roomGeometry(snapshot, frame, this.#state, view, things.furniture, things.forces, this.#project, {
      housing: this.#place(things.housing),
      lowestYPx: this.#place(things.corners[lowest]!)[1],
      padTopYPx: this.#project(lowX, top, lowZ)[1],
      clamp: this.#place(things.clamp.mark),
      tips: things.forces.map((force) => {
        const tip = things.arrowTip(force);
        return this.#project(tip.x, tip.y, tip.z);
      }),
    });
  }

  /** Where the camera shows a part [px]. */
  #place(object: Object3D): readonly [number, number] {
    const { elements } = object.matrixWorld;
    return this.#project(elements[12]!, elements[13]!, elements[14]!);
  }

  readonly #project = (x: number, y: number, z: number): readonly [number, number] => {
    const point = this.#point.set(x, y, z).project(this.#camera);
    return [((point.x + 1) / 2) * this.#width, ((1 - point.y) / 2) * this.#height];
  };
}

const HOLDERS: readonly RoomFrame['holder'][] = ['none', 'clamp', 'hand', 'shaker'];
const ROOM_ARROWS: readonly ForceArrow[] = ['clamp holds', 'gravity on the housing', 'pad pushes'];
