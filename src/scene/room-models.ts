/** The still things of the room: wall, bench, height rule, stand. */
import {
  type CanvasTexture,
  CylinderGeometry,
  Group,
  Mesh,
  MeshStandardMaterial,
  PlaneGeometry,
  SphereGeometry,
} from 'three';
import type { Theme } from '../contract/view.ts';
import type { Materials } from './materials.ts';
import { MeshKit } from './mesh-kit.ts';
import { paletteOf } from './palette.ts';
import type { Furniture } from './room-layout.ts';
import { beechPlanks, paintedTexture, repeating } from './textures.ts';

export interface RoomMaterials {
  readonly wall: MeshStandardMaterial;
  readonly beech: MeshStandardMaterial;
  readonly shortRule: MeshStandardMaterial;
  readonly longRule: MeshStandardMaterial;
  dispose(): void;
}

/** Lengths of the two height rules [m]; the long one stands when there is something to read above the short one. */
export const SHORT_RULE_M = 0.58;
export const LONG_RULE_M = 2.6;

export function createRoomMaterials(theme: Theme): RoomMaterials {
  const evening = theme === 'evening';
  const matt = (map: CanvasTexture, roughness: number) => new MeshStandardMaterial({ map, roughness, metalness: 0 });
  const beech = evening ? beechPlanks('#857560', '#998873', '#5f5242') : beechPlanks('#cdbfa6', '#dfd4bf', '#a8957a');
  const set = {
    wall: matt(wallLight(evening), 1),
    beech: matt(repeating(beech, 1.5, 1), 0.62),
    shortRule: matt(ruleFace(SHORT_RULE_M, 3200, theme), 0.5),
    longRule: matt(ruleFace(LONG_RULE_M, 1560, theme), 0.5),
  };
  return {
    ...set,
    dispose() {
      for (const material of Object.values(set)) {
        material.map?.dispose();
        material.dispose();
      }
    },
  };
}

/** Plaster with the light of a window on it, by day; a lamp's pool in the evening. */
function wallLight(evening: boolean): CanvasTexture {
  return paintedTexture(1024, 1024, (pen, width, height) => {
    pen.fillStyle = evening ? '#332f2a' : '#dcd6c9';
    pen.fillRect(0, 0, width, height);
    if (evening) {
      const pool = pen.createRadialGradient(width * 0.52, height * 0.66, 20, width * 0.52, height * 0.66, 250);
      pool.addColorStop(0, '#6b6154');
      pool.addColorStop(0.5, '#4b443b');
      pool.addColorStop(1, '#302c28');
      pen.fillStyle = pool;
      pen.fillRect(0, 0, width, height);
      return;
    }
    // Painted as the blurred shadow of shapes that lie outside the canvas.
    pen.shadowColor = 'rgba(255,250,240,0.6)';
    pen.shadowBlur = 15;
    pen.shadowOffsetX = 4000;
    const pane = 36;
    const fall = 58;
    for (let row = 0; row < 2; row++) {
      for (let column = 0; column < 2; column++) {
        const x = width * 0.474 + column * (pane + 9) + row * 14 - 4000;
        const y = height * 0.617 + row * (fall + 9);
        pen.beginPath();
        pen.moveTo(x, y);
        pen.lineTo(x + pane, y);
        pen.lineTo(x + pane + 13, y + fall);
        pen.lineTo(x + 13, y + fall);
        pen.fill();
      }
    }
  });
}

/** Boxwood with a line each centimetre, a longer one each five, a number each ten. */
function ruleFace(lengthM: number, pxPerM: number, theme: Theme): CanvasTexture {
  const palette = paletteOf(theme);
  return paintedTexture(Math.round(0.03 * pxPerM), Math.round(lengthM * pxPerM), (pen, width, height) => {
    const ramp = pen.createLinearGradient(0, 0, width, 0);
    ramp.addColorStop(0, '#d9c8a0');
    ramp.addColorStop(0.12, '#eee3c8');
    ramp.addColorStop(0.75, '#e6d8b4');
    ramp.addColorStop(1, '#cdb98a');
    pen.fillStyle = ramp;
    pen.fillRect(0, 0, width, height);
    pen.fillStyle = theme === 'day' ? palette.boxwoodLine : '#2b2212';
    pen.textBaseline = 'middle';
    pen.textAlign = 'right';
    pen.font = `600 ${Math.round(width * 0.4)}px "Atkinson Hyperlegible Next Variable", "Atkinson Hyperlegible Next", sans-serif`;
    const thick = Math.max(1.5, width * 0.03);
    for (let cm = 0; cm <= lengthM * 100 - 1; cm++) {
      const y = height - (cm / 100) * pxPerM - RULE_FOOT_M * pxPerM;
      if (y < 4) break;
      const length = cm % 10 === 0 ? 0.44 : cm % 5 === 0 ? 0.36 : 0.24;
      pen.fillRect(0, y - thick / 2, width * length, thick);
      if (cm % 10 === 0) pen.fillText(`${cm}`, width * 0.95, y);
    }
  });
}

/** The rule's zero stands this far above its lower end [m]. */
const RULE_FOOT_M = 0.012;

export function buildBackground(place: Furniture, benchY: number, materials: RoomMaterials): Group {
  const group = new Group();
  const wall = new Mesh(new PlaneGeometry(6, 6), materials.wall);
  wall.position.set(0, 1.3, place.wallZ);
  const length = place.benchFrontZ - place.wallZ;
  const bench = new Mesh(new PlaneGeometry(4, length), materials.beech);
  bench.rotation.x = -Math.PI / 2;
  bench.position.set(0, benchY, (place.benchFrontZ + place.wallZ) / 2);
  bench.receiveShadow = true;
  group.add(wall, bench);
  return group;
}

/** A rule with its wooden foot; `long` chooses which of the two. */
export function buildRule(
  place: Furniture,
  benchY: number,
  long: boolean,
  room: RoomMaterials,
  materials: Materials,
): Group {
  const group = new Group();
  const length = long ? LONG_RULE_M : SHORT_RULE_M;
  const half = place.ruleWidth / 2;
  const kit = new MeshKit();
  kit.box(materials.boxwood, -half, -RULE_FOOT_M, -0.003, half, length - RULE_FOOT_M, 0.0018, 0);
  kit.pane(long ? room.longRule : room.shortRule, -half, -RULE_FOOT_M, half, length - RULE_FOOT_M, 0.002);
  kit.box(materials.wood, -0.033, benchY, -0.026, 0.033, Math.max(benchY + 0.012, -RULE_FOOT_M + 0.002), 0.024, 0.003);
  kit.build(group);
  group.position.set(place.ruleX, 0, place.ruleZ);
  return group;
}

/** A brass slide on the rule, its pointer at the release height. */
export function buildMarker(place: Furniture, materials: Materials): Group {
  const group = new Group();
  const kit = new MeshKit();
  const half = place.ruleWidth / 2;
  kit.box(materials.brass, -half - 0.014, -0.009, -0.005, -half - 0.005, 0.009, 0.006, 0.0015);
  kit.box(materials.brass, -half - 0.006, -0.0012, 0.0022, -half * 0.4, 0.0012, 0.005, 0.0006);
  kit.build(group);
  group.position.set(place.ruleX, 0, place.ruleZ);
  return group;
}

/** Iron foot and steel column; `height` above the bench [m]. */
export function buildStand(place: Furniture, benchY: number, height: number, materials: Materials): Group {
  const group = new Group();
  const kit = new MeshKit();
  kit.box(materials.iron, -0.075, benchY, -0.05, 0.075, benchY + 0.011, 0.06, 0.0035);
  kit.turned(materials.iron, 0, benchY + 0.011, 0, [
    [0.021, 0],
    [0.014, 0.012],
    [0.009, 0.017],
    [0.001, 0.017],
  ]);
  kit.add(materials.rod, new CylinderGeometry(0.0062, 0.0062, height, 22).translate(0, benchY + height / 2, 0));
  kit.add(materials.rod, new SphereGeometry(0.0074, 18, 12).translate(0, benchY + height + 0.001, 0));
  kit.build(group);
  group.position.set(place.columnX, 0, place.columnZ);
  return group;
}
