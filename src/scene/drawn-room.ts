/** The room view as a flat drawing, with the same camera and the same places as the one in depth. */
import type { Vector } from '../contract/geometry.ts';
import type { Snapshot } from '../contract/snapshot.ts';
import type { RoomFrame, RoomGeometry, RoomPart, RoomPicture, Theme } from '../contract/view.ts';
import { turned } from './axis-frame.ts';
import { DrawnKit, type FlatOptions } from './drawn-kit.ts';
import { drawMechanism } from './drawn-mechanism.ts';
import { drawBench, drawCarrier, drawClamp, drawPad, drawRule, drawStand, type Place3 } from './drawn-room-things.ts';
import { outline, solid } from './drawn-solid.ts';
import { PadDent } from './pad-dent.ts';
import { CAP, newRidingPose, PLINTH, placeMass, placeStops } from './riding-layout.ts';
import { type RoomForce, roomForces } from './room-forces.ts';
import {
  type Furniture,
  furniture,
  housingCorners,
  lowestCorner,
  placeInRoom,
  projectRoom,
  type RoomCamera,
  roomCamera,
  roomPxPerM,
  USUAL_PAD_M,
} from './room-layout.ts';
import { fallShown, ghostShown, LEAST_FALL_M, roomGeometry } from './room-measure.ts';
import { type RoomMechanism, roomMechanism } from './room-mechanism.ts';
import { roomPart } from './room-parts.ts';
import { RoomState } from './room-state.ts';
import { fadeEdges } from './vignette.ts';

/** Swept by less than this the housing is drawn where it is [px]. */
const VEIL_FROM_PX = 4;
/** Nodes of the drawn pad: coarser than in depth, exact under the lowest corner all the same. */
const PAD_COLUMNS = 25;
const PAD_ROWS = 15;

export function createDrawnRoomPicture(canvas: HTMLCanvasElement, options: FlatOptions = {}): RoomPicture {
  return new DrawnRoom(canvas, options);
}

class DrawnRoom implements RoomPicture {
  /** A drawing by hand has nothing to refine. */
  readonly settled = true;
  readonly #kit: DrawnKit;
  readonly #state = new RoomState();
  readonly #corners = new Float64Array(24);
  readonly #local = new Float64Array(24);
  readonly #pose = newRidingPose();
  readonly #forces: RoomForce[] = [];
  readonly #axisPoint = new Float64Array(3);
  #view: RoomCamera | undefined;
  #furniture: Furniture | undefined;
  #inside: RoomMechanism | undefined;
  #insideOf = '';
  #dent: PadDent | undefined;
  #size: Vector = [0, 0, 0];
  #padThicknessM: number | undefined;
  #shaken = false;

  constructor(canvas: HTMLCanvasElement, options: FlatOptions) {
    this.#kit = new DrawnKit(canvas, options);
    fadeEdges(canvas);
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.#kit.resize(widthPx, heightPx, pixelRatio);
  }

  setTheme(theme: Theme): void {
    this.#kit.setTheme(theme);
  }

  draw(snapshot: Snapshot, frame: RoomFrame): RoomGeometry {
    const kit = this.#kit;
    const { position, attitude } = snapshot.housing;
    const size = frame.housingSizeM;
    this.#size = size;
    this.#shaken = frame.holder === 'shaker';
    this.#padThicknessM = frame.pad?.thicknessM;
    this.#state.follow(snapshot, frame);
    housingCorners(position, attitude, size, this.#corners);
    const place = furniture(size);
    this.#furniture = place;
    const view = roomCamera({
      widthPx: kit.widthPx,
      heightPx: kit.heightPx,
      position,
      housingSizeM: size,
      releaseHeightM: frame.releaseHeightM,
      follow: frame.follow,
    });
    this.#view = view;
    const project = this.#project;
    const benchY = -((frame.pad?.thicknessM ?? USUAL_PAD_M) + place.boardThickness);
    const dent = this.#press(snapshot, frame, place);

    kit.begin();
    kit.weight = Math.max(0.4, Math.min(1.6, roomPxPerM(view, 0, 0.2, 0) / 530));
    drawBench(kit, project, place, benchY, view);
    drawRule(kit, project, place, benchY, view, frame.releaseHeightM);
    const { clampPosition, clampAttitude, clampOpen, padX, padZ } = this.#state;
    if (!this.#shaken) {
      drawStand(kit, project, place, benchY, clampPosition[1]!);
      drawClamp(kit, project, place, size, clampPosition, clampAttitude, clampOpen);
    }
    // The pad's part in front of the housing hides its foot.
    const foot = this.#corners.reduce((most, value, at) => (at % 3 === 2 ? Math.max(most, value) : most), -1);
    const thickness = frame.pad?.thicknessM;
    const padShown = thickness !== undefined && !this.#shaken;
    if (padShown) drawPad(kit, project, dent, padX, padZ, thickness, place.boardThickness, 'behind', foot);
    if (ghostShown(snapshot, frame)) this.#ghost(snapshot, frame);
    const veiled = this.#veil(frame, view, position);
    if (!veiled) {
      if (frame.holder === 'hand' || this.#shaken) {
        drawCarrier(kit, project, frame.holder === 'hand' ? 'tongs' : 'shaker', size, position, attitude, benchY);
      }
      this.#housing(snapshot, frame);
    } else if (this.#shaken) drawCarrier(kit, project, 'shaker', size, position, attitude, benchY);
    if (padShown) drawPad(kit, project, dent, padX, padZ, thickness, place.boardThickness, 'before', foot);

    roomForces(snapshot, frame, this.#corners, view, this.#forces);
    const tips = this.#forces.map((force) => this.#arrow(force, view));
    const lowest = lowestCorner(this.#corners) * 3;
    const lowX = this.#corners[lowest]!;
    const lowZ = this.#corners[lowest + 2]!;
    const hinge = turned(clampAttitude, size[0] / 2, size[1] * 0.2, -size[2] / 2, this.#axisPoint);
    return roomGeometry(snapshot, frame, this.#state, view, place, this.#forces, project, {
      housing: project(position[0]!, position[1]!, position[2]!),
      lowestYPx: project(lowX, this.#corners[lowest + 1]!, lowZ)[1],
      padTopYPx: project(lowX, dent.heightAt(lowX - padX, lowZ - padZ), lowZ)[1],
      clamp: project(clampPosition[0]! + hinge[0]!, clampPosition[1]! + hinge[1]!, clampPosition[2]! + hinge[2]!),
      tips,
    });
  }

  part(xPx: number, yPx: number): RoomPart | undefined {
    if (this.#view === undefined || this.#furniture === undefined) return undefined;
    return roomPart(
      {
        camera: this.#view,
        furniture: this.#furniture,
        housing: this.#corners,
        housingSizeM: this.#size,
        clamp: this.#shaken ? undefined : this.#state.clampPosition,
        shaker: this.#shaken,
        padX: this.#state.padX,
        padThicknessM: this.#padThicknessM,
      },
      xPx,
      yPx,
    );
  }

  place(xPx: number, yPx: number): readonly [number, number, number] {
    return this.#view === undefined ? [0, 0, 0] : placeInRoom(this.#view, xPx, yPx);
  }

  dispose(): void {
    this.#view = undefined;
    this.#dent = undefined;
  }

  readonly #projected = new Float64Array(3);
  readonly #project = (x: number, y: number, z: number): readonly [number, number] => {
    projectRoom(this.#view!, x, y, z, this.#projected);
    return [this.#projected[0]!, this.#projected[1]!];
  };

  #press(snapshot: Snapshot, frame: RoomFrame, place: Furniture): PadDent {
    const old = this.#dent;
    const fits = old !== undefined && old.width === place.padWidth && old.depth === place.padDepth;
    const dent = fits ? old : new PadDent(place.padWidth, place.padDepth, PAD_COLUMNS, PAD_ROWS);
    this.#dent = dent;
    const { padX, padZ } = this.#state;
    const pressed = frame.pad !== undefined && frame.holder !== 'shaker';
    for (let corner = 0; corner < 8; corner++) {
      this.#local[corner * 3] = this.#corners[corner * 3]! - padX;
      this.#local[corner * 3 + 1] = pressed ? this.#corners[corner * 3 + 1]! : 1;
      this.#local[corner * 3 + 2] = this.#corners[corner * 3 + 2]! - padZ;
    }
    const { position, attitude } = snapshot.housing;
    dent.press(this.#local, [position[0]! - padX, position[1]!, position[2]! - padZ], attitude, frame.housingSizeM);
    return dent;
  }

  /** A point of the housing's own frame [m], in the picture. */
  #inHousing(snapshot: Snapshot): Place3 {
    const { position, attitude } = snapshot.housing;
    return (x, y, z) => {
      const at = turned(attitude, x, y, z, this.#axisPoint);
      return this.#project(position[0]! + at[0]!, position[1]! + at[1]!, position[2]! + at[2]!);
    };
  }

  #housing(snapshot: Snapshot, frame: RoomFrame): void {
    const kit = this.#kit;
    const { palette: p } = kit;
    const element = snapshot.elements[frame.element]!;
    const size = frame.housingSizeM;
    const key = `${size} ${element.spec.axis} ${frame.look.form} ${frame.look.damper} ${frame.look.span}`;
    if (this.#inside === undefined || this.#insideOf !== key) {
      this.#inside = roomMechanism(size, element.spec.axis, frame.look);
      this.#insideOf = key;
    }
    const inside = this.#inside;
    const at = this.#inHousing(snapshot);
    const [hx, hy, hz] = [size[0] / 2, size[1] / 2, size[2] / 2];
    const unit = inside.k / inside.perM;
    const cap = hy - (CAP.slab + CAP.moulding) * unit;
    const plinth = -hy + (PLINTH.slab + PLINTH.moulding) * unit;
    const edge = 9 * unit;
    const quad = (...points: readonly (readonly [number, number])[]): number[] => points.flat() as number[];
    const slab = (y0: number, y1: number): void => solid(kit, at, -hx, y0, -hz, hx, y1, hz);
    const post = (x: number, z: number): void => {
      const line = quad(at(x, plinth, z), at(x, cap, z));
      kit.stroke(line, p.brassDark, 4.2);
      kit.stroke(line, p.brassLight, 1.8);
    };
    // The farther of cap and plinth first.
    const upright = this.#depthAt(snapshot, hy) < this.#depthAt(snapshot, -hy);
    if (upright) slab(-hy, plinth);
    else slab(cap, hy);
    kit.shape(
      quad(
        at(-hx + edge, plinth, -hz + edge),
        at(hx - edge, plinth, -hz + edge),
        at(hx - edge, cap, -hz + edge),
        at(-hx + edge, cap, -hz + edge),
      ),
      p.back[1],
      p.brassDark,
      0.8,
    );
    post(-hx + edge, -hz + edge);
    post(hx - edge, -hz + edge);

    const { layout, perM } = inside;
    placeMass(layout, element.deflection * frame.enlargement * perM, this.#pose);
    const gap = element.spec.gap;
    placeStops(layout, gap === undefined ? undefined : gap * frame.enlargement * perM, this.#pose);
    const { weight } = kit;
    kit.weight = 1; // the mechanism's lines are scaled with its own units
    this.#inPlane(at, inside, () => drawMechanism(kit, layout, this.#pose, 'all', undefined));
    kit.weight = weight;

    post(-hx + edge, hz - edge);
    post(hx - edge, hz - edge);
    if (upright) slab(cap, hy);
    else slab(-hy, plinth);
  }

  /** How far from the eye a point on the housing's own upright axis is [m]. */
  #depthAt(snapshot: Snapshot, up: number): number {
    const { position, attitude } = snapshot.housing;
    const at = turned(attitude, 0, up, 0, this.#axisPoint);
    return projectRoom(
      this.#view!,
      position[0]! + at[0]!,
      position[1]! + at[1]!,
      position[2]! + at[2]!,
      this.#projected,
    )[2]!;
  }

  /** Draws in the plane through the housing's middle that the element moves in, as the camera shows it there. */
  #inPlane(at: Place3, inside: RoomMechanism, draw: () => void): void {
    const { pen } = this.#kit;
    const { perM, upright } = inside;
    const corner = new Float64Array(3);
    const shown = (x: number, up: number): readonly [number, number] => {
      turned(upright, x / perM, up / perM, 0, corner);
      return at(corner[0]!, corner[1]!, corner[2]!);
    };
    const origin = shown(0, 0);
    const right = shown(100, 0);
    const up = shown(0, 100);
    pen.save();
    // Drawing units: x to the right, y downward, about the housing's centre.
    pen.transform(
      (right[0] - origin[0]) / 100,
      (right[1] - origin[1]) / 100,
      -(up[0] - origin[0]) / 100,
      -(up[1] - origin[1]) / 100,
      origin[0],
      origin[1],
    );
    draw();
    pen.restore();
  }

  #ghost(snapshot: Snapshot, frame: RoomFrame): void {
    const kit = this.#kit;
    const [hx, hy, hz] = [frame.housingSizeM[0] / 2, frame.housingSizeM[1] / 2, frame.housingSizeM[2] / 2];
    const y = frame.releaseHeightM! + hy;
    outline(kit, (x, up, z) => this.#project(x * hx, y + up * hy, z * hz));
    const drop = fallShown(snapshot, frame);
    if (drop <= LEAST_FALL_M) return;
    const top = snapshot.housing.position[1]! + hy;
    kit.stroke([...this.#project(0, top + drop, 0), ...this.#project(0, top, 0)], kit.palette.text, 1.2, [1.5, 3.5]);
  }

  #veil(frame: RoomFrame, view: RoomCamera, position: ArrayLike<number>): boolean {
    const swept = frame.swept;
    if (swept === undefined) return false;
    let most = 0;
    for (let axis = 0; axis < 3; axis++) most = Math.max(most, swept.high[axis]! - swept.low[axis]!);
    if (most * roomPxPerM(view, position[0]!, position[1]!, position[2]!) <= VEIL_FROM_PX) return false;
    const kit = this.#kit;
    const [hx, hy, hz] = [frame.housingSizeM[0] / 2, frame.housingSizeM[1] / 2, frame.housingSizeM[2] / 2];
    const { low, high } = swept;
    kit.pen.globalAlpha = 0.3;
    solid(kit, this.#project, low[0]! - hx, low[1]! - hy, low[2]! - hz, high[0]! + hx, high[1]! + hy, high[2]! + hz);
    kit.pen.globalAlpha = 1;
    for (const end of [low, high]) {
      outline(kit, (x, up, z) => this.#project(end[0]! + x * hx, end[1]! + up * hy, end[2]! + z * hz));
    }
    return true;
  }

  /** The arrow as the camera shows it; returns its tip. */
  #arrow(force: RoomForce, view: RoomCamera): readonly [number, number] {
    const perM = roomPxPerM(view, force.x, force.y, force.z);
    const from = this.#project(force.x, force.y, force.z);
    const to = this.#project(force.x + force.dx / perM, force.y + force.dy / perM, force.z + force.dz / perM);
    this.#kit.arrow(
      from[0],
      from[1],
      to[0] - from[0],
      to[1] - from[1],
      10,
      force.name === 'gravity on the housing',
      force.cut,
    );
    return to;
  }
}
