/** The room's things as pen and wash. Places in metres, projected by the caller's camera. */
import type { Vector } from '../contract/geometry.ts';
import { turned } from './axis-frame.ts';
import type { DrawnKit } from './drawn-kit.ts';
import type { PadDent } from './pad-dent.ts';
import { type Furniture, type RoomCamera, roomPxPerM } from './room-layout.ts';

/** A place of some frame [m], in the picture [px]. */
export type Place3 = (x: number, y: number, z: number) => readonly [number, number];

const line = (...points: readonly (readonly [number, number])[]): number[] => points.flat() as number[];

export function drawBench(kit: DrawnKit, at: Place3, place: Furniture, benchY: number, view: RoomCamera): void {
  const { palette: p, pen } = kit;
  const back = at(0, benchY, place.wallZ)[1];
  const wall = pen.createLinearGradient(0, 0, 0, back);
  wall.addColorStop(0, p.bench);
  wall.addColorStop(1, p.wall);
  pen.fillStyle = wall;
  pen.fillRect(0, 0, kit.widthPx, kit.heightPx);
  // As far as it is seen; more would lie behind the eye.
  const middle = view.target[0];
  const far = (0.8 * view.viewHeightM * view.widthPx) / view.heightPx + 0.2;
  const front = 0.5;
  const across = (z: number): number[] => line(at(middle - far, benchY, z), at(middle + far, benchY, z));
  const near = across(front);
  kit.shape([...across(place.wallZ), near[2]!, near[3]!, near[0]!, near[1]!], p.beech, p.beechLine, 1);
  for (let plank = 1; plank < 7; plank++) {
    kit.stroke(across(place.wallZ + (plank / 7) * (front - place.wallZ)), p.beechLine, 0.9);
  }
}

export function drawRule(
  kit: DrawnKit,
  at: Place3,
  place: Furniture,
  benchY: number,
  view: RoomCamera,
  mark: number | undefined,
): void {
  const { palette: p, pen } = kit;
  const { ruleX: x, ruleZ: z } = place;
  const half = place.ruleWidth / 2;
  const top = view.viewHeightM > 0.9 ? 2.6 : 0.568;
  kit.shape(
    line(at(x - 0.033, benchY, z), at(x + 0.033, benchY, z), at(x + 0.033, -0.01, z), at(x - 0.033, -0.01, z)),
    p.wood,
    p.woodDark,
    1,
  );
  kit.shape(
    line(at(x - half, -0.012, z), at(x + half, -0.012, z), at(x + half, top, z), at(x - half, top, z)),
    p.boxwood,
    p.boxwoodLine,
    0.8,
  );
  const perM = roomPxPerM(view, x, 0.2, z);
  const step = perM > 330 ? 1 : perM > 150 ? 5 : 10;
  pen.fillStyle = p.boxwoodLine;
  pen.textAlign = 'right';
  pen.textBaseline = 'middle';
  pen.font = `600 ${Math.max(7, Math.min(15, 0.0125 * perM))}px "Atkinson Hyperlegible Next Variable", sans-serif`;
  for (let cm = 0; cm <= top * 100 - 1; cm += step) {
    const length = cm % 10 === 0 ? 0.44 : cm % 5 === 0 ? 0.36 : 0.24;
    kit.stroke(
      line(at(x - half, cm / 100, z), at(x - half + length * place.ruleWidth, cm / 100, z)),
      p.boxwoodLine,
      cm % 10 === 0 ? 1.1 : 0.7,
    );
    if (cm % 10 === 0 && perM > 200) pen.fillText(`${cm}`, ...at(x + half * 0.93, cm / 100, z));
  }
  if (mark === undefined) return;
  kit.stroke(line(at(x - half - 0.008, mark, z), at(x - half * 0.4, mark, z)), p.brassDark, 2.4);
  kit.shape(
    line(
      at(x - half - 0.014, mark - 0.009, z),
      at(x - half - 0.005, mark - 0.009, z),
      at(x - half - 0.005, mark + 0.009, z),
      at(x - half - 0.014, mark + 0.009, z),
    ),
    p.brass,
    p.brassDark,
    1,
  );
}

export function drawStand(kit: DrawnKit, at: Place3, place: Furniture, benchY: number, clampY: number): void {
  const { palette: p } = kit;
  const { columnX: x, columnZ: z } = place;
  kit.shape(
    line(
      at(x - 0.075, benchY, z - 0.05),
      at(x + 0.075, benchY, z - 0.05),
      at(x + 0.075, benchY, z + 0.06),
      at(x - 0.075, benchY, z + 0.06),
    ),
    p.iron,
    p.iron,
    2.5,
  );
  const top = clampY > 0.53 ? clampY + 0.16 : benchY + 0.62;
  const column = line(at(x, benchY, z), at(x, top, z));
  kit.stroke(column, p.leverEdge, 6.4);
  kit.stroke(column, p.rod, 4.4);
}

export function drawClamp(
  kit: DrawnKit,
  at: Place3,
  place: Furniture,
  size: Vector,
  position: ArrayLike<number>,
  attitude: ArrayLike<number>,
  open: number,
): void {
  const { palette: p } = kit;
  const scratch = new Float64Array(3);
  const held: Place3 = (x, y, z) => {
    turned(attitude, x, y, z, scratch);
    return at(position[0]! + scratch[0]!, position[1]! + scratch[1]!, position[2]! + scratch[2]!);
  };
  const y = size[1] * 0.2;
  const back = -size[2] / 2 - 0.02;
  const hinge = size[0] / 2 + 0.013;
  turned(attitude, 0, y, back - 0.014, scratch);
  const jointY = position[1]! + scratch[1]!;
  const arm = line(held(0, y, back - 0.014), at(place.columnX, jointY, place.columnZ));
  kit.stroke(arm, p.leverEdge, 5);
  kit.stroke(arm, p.rod, 3.2);
  const boss = at(place.columnX, jointY, place.columnZ);
  const w = kit.weight;
  kit.box(boss[0] - 8 * w, boss[1] - 9 * w, boss[0] + 8 * w, boss[1] + 9 * w, p.brass, p.brassDark, 1, 2.5 * w);
  kit.box(boss[0] + 8 * w, boss[1] - 5 * w, boss[0] + 19 * w, boss[1] + 5 * w, p.wood, p.woodDark, 1, 2.5 * w);
  kit.stroke(line(held(-hinge, y, back), held(hinge, y, back)), p.brassDark, 5);
  kit.stroke(line(held(-hinge, y, back), held(hinge, y, back)), p.brass, 3);
  const reach = 0.02 + Math.min(size[2] * 0.55, 0.07);
  const turn = open * 0.62;
  for (const side of [-1, 1]) {
    const endX = side * (hinge + Math.sin(turn) * reach);
    const endZ = back + Math.cos(turn) * reach;
    const finger = line(held(side * hinge, y, back), held(endX, y, endZ));
    kit.stroke(finger, p.brassDark, 6);
    kit.stroke(finger, p.brass, 3.6);
    const pad = line(
      held(side * hinge + 0.6 * (endX - side * hinge) - side * 0.005, y, back + 0.6 * (endZ - back)),
      held(endX - side * 0.005, y, endZ),
    );
    kit.stroke(pad, p.rubber, 8.5);
  }
}

/** Tongs over the housing, or the shaker's table under it, on its springs and column. */
export function drawCarrier(
  kit: DrawnKit,
  at: Place3,
  what: 'tongs' | 'shaker',
  size: Vector,
  position: ArrayLike<number>,
  attitude: ArrayLike<number>,
  benchY: number,
): void {
  const { palette: p } = kit;
  const scratch = new Float64Array(3);
  const held: Place3 = (x, y, z) => {
    turned(attitude, x, y, z, scratch);
    return at(position[0]! + scratch[0]!, position[1]! + scratch[1]!, position[2]! + scratch[2]!);
  };
  const hx = size[0] / 2;
  const hy = size[1] / 2;
  if (what === 'tongs') {
    const crown = hy + 0.036;
    const bow = line(
      held(-hx - 0.0055, hy - 0.02, 0),
      held(-hx - 0.0055, crown, 0),
      held(hx + 0.0055, crown, 0),
      held(hx + 0.0055, hy - 0.02, 0),
    );
    kit.stroke(bow, p.brassDark, 5);
    kit.stroke(bow, p.brass, 3);
    kit.stroke(line(held(0, crown, 0), held(0, crown + 0.018, 0)), p.brass, 9);
    kit.stroke(line(held(0, crown + 0.03, 0), held(0, crown + 0.11, 0)), p.woodDark, 14);
    kit.stroke(line(held(0, crown + 0.03, 0), held(0, crown + 0.11, 0)), p.wood, 11.5);
    return;
  }
  const foot = at(position[0]!, benchY + 0.007, position[2]!);
  const carriageY = position[1]! - hy - 0.057;
  const x = position[0]!;
  const z = position[2]!;
  kit.pen.lineCap = 'butt';
  kit.stroke(line(foot, at(x, carriageY, z)), p.leverEdge, 15);
  kit.stroke(line(foot, at(x, carriageY, z)), p.rod, 12.5);
  kit.stroke(line(foot, at(x, benchY + 0.5 * (carriageY - benchY), z)), p.brassDark, 19);
  kit.pen.lineCap = 'round';
  const w = kit.weight;
  kit.box(foot[0] - 42 * w, foot[1] - 8 * w, foot[0] + 42 * w, foot[1] + 5 * w, p.iron, p.iron, 1, 3 * w);
  const wide = hx + 0.014;
  kit.stroke(line(at(x - wide, carriageY, z), at(x + wide, carriageY, z)), p.iron, 9);
  for (const side of [-1, -0.86, 0.86, 1]) {
    kit.stroke(
      line(at(x + side * (wide - 0.008), carriageY, z), held(side * (wide - 0.008), -hy - 0.012, 0)),
      p.steel,
      2.4,
    );
  }
  kit.stroke(line(at(x - wide - 0.03, carriageY + 0.04, z), held(-wide, -hy - 0.006, 0)), p.rod, 3.4);
  const drum = at(x - wide - 0.052, carriageY + 0.036, z);
  kit.box(drum[0] - 12 * w, drum[1] - 15 * w, drum[0] + 12 * w, drum[1] + 15 * w, p.brass, p.iron, 2.5, 3);
  kit.stroke(line(held(-hx - 0.018, -hy - 0.006, 0), held(hx + 0.018, -hy - 0.006, 0)), p.iron, 8);
}

/** The pad: what lies behind the housing's foot, or what lies before it. */
export function drawPad(
  kit: DrawnKit,
  at: Place3,
  dent: PadDent,
  padX: number,
  padZ: number,
  thickness: number,
  board: number,
  what: 'behind' | 'before',
  footZ: number,
): void {
  const { palette: p } = kit;
  const halfX = dent.width / 2;
  const halfZ = dent.depth / 2;
  const low = -thickness - board;
  const rim = 0.016;
  const put: Place3 = (x, y, z) => at(padX + x, y, padZ + z);
  if (what === 'behind') {
    kit.shape(
      line(
        put(-halfX - rim, -thickness, -halfZ - rim),
        put(halfX + rim, -thickness, -halfZ - rim),
        put(halfX + rim, -thickness, halfZ + rim),
        put(-halfX - rim, -thickness, halfZ + rim),
      ),
      p.wood,
      p.woodDark,
      1,
    );
    kit.shape(
      line(
        put(-halfX - rim, -thickness, halfZ + rim),
        put(halfX + rim, -thickness, halfZ + rim),
        put(halfX + rim, low, halfZ + rim),
        put(-halfX - rim, low, halfZ + rim),
      ),
      p.woodDark,
      p.woodDark,
      1,
    );
    kit.shape(
      line(put(halfX, 0, -halfZ), put(halfX, 0, halfZ), put(halfX, -thickness, halfZ), put(halfX, -thickness, -halfZ)),
      p.feltDark,
      p.feltDark,
      0.6,
    );
  }
  for (let row = 0; row + 1 < dent.rows; row++) {
    const z0 = dent.nodeZ(row);
    const z1 = dent.nodeZ(row + 1);
    if (padZ + z0 >= footZ !== (what === 'before')) continue;
    strip(kit, put, dent, row, z0, z1);
  }
  if (what === 'before') {
    const points: number[] = [];
    for (let column = 0; column < dent.columns; column++) {
      points.push(...put(dent.nodeX(column), dent.heights[(dent.rows - 1) * dent.columns + column]!, halfZ));
    }
    points.push(...put(halfX, -thickness, halfZ), ...put(-halfX, -thickness, halfZ));
    kit.shape(points, p.feltDark, p.feltDark, 0.6);
  }
}

/** One row of the pad's top: in one wash where it is level, else cell by cell, darker where it falls away. */
function strip(kit: DrawnKit, put: Place3, dent: PadDent, row: number, z0: number, z1: number): void {
  const { palette: p, pen } = kit;
  const { columns, heights } = dent;
  const upper: number[] = [];
  const lower: number[] = [];
  for (let column = 0; column < columns; column++) {
    upper.push(...put(dent.nodeX(column), heights[row * columns + column]!, z0));
    lower.push(...put(dent.nodeX(columns - 1 - column), heights[(row + 1) * columns + columns - 1 - column]!, z1));
  }
  kit.shape([...upper, ...lower], p.felt, p.felt, 0.8);
  for (let column = 0; column + 1 < columns; column++) {
    const a = row * columns + column;
    const fall = (heights[a]! - heights[a + 1]!) * 26 + (heights[a]! - heights[a + columns]!) * 40;
    if (Math.abs(fall) < 0.01) continue;
    pen.globalAlpha = Math.min(0.4, Math.abs(fall));
    const x0 = dent.nodeX(column);
    const x1 = dent.nodeX(column + 1);
    kit.shape(
      line(
        put(x0, heights[a]!, z0),
        put(x1, heights[a + 1]!, z0),
        put(x1, heights[a + columns + 1]!, z1),
        put(x0, heights[a + columns]!, z1),
      ),
      fall > 0 ? '#0a1410' : '#dff2e4',
    );
    pen.globalAlpha = 1;
  }
}
