/** Housing and mechanism as pen and wash, shared by the flat riding and room views. y downward, lengths in px. */
import { cantileverShape } from './cantilever.ts';
import type { DrawnKit } from './drawn-kit.ts';
import { type MechanismLayout, STOP_PLATE } from './mechanism-layout.ts';
import {
  CAP,
  type HousingBox,
  PLINTH,
  POST,
  type RidingPose,
  SHEAR_X,
  SHEAR_Y,
  type StopPose,
} from './riding-layout.ts';

/** What lies behind the parts: shadow, back, floor, cap's and plinth's upper faces, the two rear posts. */
export function drawHousingBack(kit: DrawnKit, box: HousingBox, shadow: boolean): void {
  const { palette: p, pen } = kit;
  const { left, right, top, bottom, depth, k } = box;
  const dx = (SHEAR_X * depth) / 2;
  const dy = (SHEAR_Y * depth) / 2;
  if (shadow) {
    pen.save();
    pen.shadowColor = 'rgba(40,30,15,0.45)';
    pen.shadowBlur = 22 * k;
    pen.shadowOffsetY = 8 * k;
    kit.box(left + dx, top, right, bottom, p.back[0]);
    pen.restore();
  }
  const ceiling = top + (CAP.slab + CAP.moulding) * k;
  const floor = bottom - (PLINTH.slab + PLINTH.moulding) * k;
  const inset = POST.inset * k;
  const wash = pen.createLinearGradient(0, top, 0, bottom);
  wash.addColorStop(0, p.back[0]);
  wash.addColorStop(1, p.back[1]);
  pen.fillStyle = wash;
  pen.fillRect(left - dx + inset, ceiling - dy, right - left - 2 * inset, floor - ceiling);
  const ledge = bottom - PLINTH.slab * k;
  kit.shape(
    [left - dx, ledge - dy, right - dx, ledge - dy, right + dx, ledge + dy, left + dx, ledge + dy],
    p.brass,
    p.brassDark,
    0.8,
  );
  kit.shape(
    [
      left - dx + inset,
      floor - dy,
      right - dx - inset,
      floor - dy,
      right + dx - inset,
      floor + dy,
      left + dx + inset,
      floor + dy,
    ],
    p.floor,
    p.brassDark,
    0.8,
  );
  for (const x of [left + inset, right - inset - POST.width * k]) post(kit, x - dx, ceiling - dy, floor - dy, k);
}

/** What lies in front: cap and plinth, the front posts, the pane's streaks. */
export function drawHousingFront(kit: DrawnKit, box: HousingBox): void {
  const { palette: p, pen } = kit;
  const { left, right, top, bottom, depth, k } = box;
  const dx = (SHEAR_X * depth) / 2;
  const dy = (SHEAR_Y * depth) / 2;
  const ceiling = top + (CAP.slab + CAP.moulding) * k + dy;
  const floor = bottom - (PLINTH.slab + PLINTH.moulding) * k + dy;
  pen.save();
  pen.beginPath();
  pen.rect(left + dx, ceiling, right - left, floor - ceiling);
  pen.clip();
  const width = right - left;
  for (const [from, span, strength] of [
    [0.6, 0.13, 0.22],
    [0.79, 0.045, 0.18],
  ] as const) {
    const fade = pen.createLinearGradient(0, ceiling, 0, floor);
    fade.addColorStop(0, `rgba(255,255,255,${kit.theme === 'day' ? strength * 1.6 : strength * 0.35})`);
    fade.addColorStop(0.85, 'rgba(255,255,255,0)');
    pen.fillStyle = fade;
    const x = left + from * width;
    const slip = 0.5 * (floor - ceiling);
    pen.beginPath();
    pen.moveTo(x, ceiling);
    pen.lineTo(x + span * width, ceiling);
    pen.lineTo(x + span * width - slip, floor);
    pen.lineTo(x - slip, floor);
    pen.fill();
  }
  pen.restore();
  const inset = POST.inset * k;
  for (const x of [left + inset, right - inset - POST.width * k]) post(kit, x + dx, ceiling, floor, k);
  const moulding = 4 * k;
  kit.shape(
    [left - dx, top - dy, right - dx, top - dy, right + dx, top + dy, left + dx, top + dy],
    p.brassLight,
    p.brassDark,
    1,
  );
  slab(kit, left + dx + moulding, top + dy + CAP.slab * k, right + dx - moulding, ceiling);
  slab(kit, left + dx, top + dy, right + dx, top + dy + CAP.slab * k);
  slab(kit, left + dx + moulding, floor, right + dx - moulding, floor + PLINTH.moulding * k);
  kit.shape(
    [
      left + dx,
      bottom + dy - PLINTH.slab * k,
      left - dx,
      bottom - dy - PLINTH.slab * k,
      left - dx,
      bottom - dy,
      left + dx,
      bottom + dy,
    ],
    p.brassDark,
    p.brassDark,
    1,
  );
  slab(kit, left + dx, bottom + dy - PLINTH.slab * k, right + dx, bottom + dy);
}

function slab(kit: DrawnKit, x0: number, y0: number, x1: number, y1: number): void {
  const { pen, palette: p } = kit;
  const wash = pen.createLinearGradient(0, y0, 0, y1);
  wash.addColorStop(0, p.brassLight);
  wash.addColorStop(0.45, p.brass);
  wash.addColorStop(1, p.brassDark);
  pen.fillStyle = wash;
  pen.fillRect(x0, y0, x1 - x0, y1 - y0);
  kit.box(x0, y0, x1, y1, undefined, p.brassDark, 0.9, 1.5);
}

function post(kit: DrawnKit, x: number, top: number, bottom: number, k: number): void {
  const { pen, palette: p } = kit;
  const width = POST.width * k;
  const wash = pen.createLinearGradient(x, 0, x + width, 0);
  wash.addColorStop(0, p.brassDark);
  wash.addColorStop(0.25, p.brassLight);
  wash.addColorStop(0.5, p.brassDark);
  wash.addColorStop(0.7, p.brassLight);
  wash.addColorStop(1, p.brassDark);
  pen.fillStyle = wash;
  pen.fillRect(x + 1, top, width - 2, bottom - top);
  for (const y of [top, bottom - 6 * k]) kit.box(x - 0.5, y, x + width + 0.5, y + 6 * k, p.brass, p.brassDark, 0.8, 1);
}

/** The mechanism at a pose; while a veil stands for what moves, only what stands still. */
export function drawMechanism(
  kit: DrawnKit,
  m: MechanismLayout,
  pose: RidingPose,
  what: 'all' | 'still parts',
  nibX: number | undefined,
): void {
  const { palette: p } = kit;
  const { k, zeroY } = m;
  const moving = what === 'all';
  if (pose.stopAbove.present) stop(kit, m, m.stopAboveX, pose.stopAbove, -1);
  if (pose.stopBelow.present) stop(kit, m, m.stopBelowX, pose.stopBelow, 1);
  if (m.look.form === 'arm') {
    if (moving) arm(kit, m, pose.massUp);
    for (const side of [-1, 1]) {
      const near = zeroY + side * 4.2 * k;
      const far = zeroY + side * 36 * k;
      kit.box(m.armRootX, Math.min(near, far), m.right + 8 * k, Math.max(near, far), p.brass, p.brassDark, 1, 2 * k);
      kit.screw(m.armRootX + 16 * k, zeroY + side * 20 * k, 5.6 * k);
    }
    kit.box(m.armRootX + 4 * k, zeroY - 4.2 * k, m.right + 8 * k, zeroY + 4.2 * k, p.brassDark);
  } else if (moving) coil(kit, m, pose.massUp);
  if (m.beaker !== undefined) damper(kit, m, pose.massUp, moving);
  kit.box(m.left - 3 * k, zeroY - 30 * k, m.left + 2 * k, zeroY + 30 * k, p.brass, p.brassDark, 0.8, 1);
  kit.box(m.left, zeroY - 4 * k, m.pivotX, zeroY + 4 * k, p.brass, p.brassDark, 0.8, 2);
  kit.disc(m.pivotX, zeroY, 10.5 * k, p.brass, p.brassDark);
  if (m.reversed) wheels(kit, m, pose.massUp);
  if (moving) {
    mass(kit, m, pose);
    leaf(kit, m.massX, zeroY - pose.massUp, m.pivotX, zeroY, k);
    if (nibX !== undefined) carriage(kit, m, pose.penUp, nibX);
    leaf(kit, m.penPinX, zeroY - pose.penUp, m.penPivotX, zeroY, k);
    kit.screw(m.massX, zeroY - pose.massUp, 4.6 * k);
    if (nibX !== undefined) kit.screw(m.penPinX, zeroY - pose.penUp, 4.6 * k);
  }
  kit.screw(m.pivotX, zeroY, 5 * k);
  if (m.reversed) kit.screw(m.penPivotX, zeroY, 5 * k);
}

function arm(kit: DrawnKit, m: MechanismLayout, massUp: number): void {
  const { palette: p } = kit;
  const points: number[] = [];
  for (let station = 0; station <= 24; station++) {
    const share = station / 24;
    points.push(m.armRootX + 4 * m.k - share * (m.armLength + 4 * m.k), m.zeroY - massUp * cantileverShape(share));
  }
  kit.pen.lineCap = 'butt';
  kit.stroke(points, p.leverEdge, 9.4 * m.k);
  kit.stroke(points, p.steel, 7.6 * m.k);
  kit.pen.translate(0, -1.6 * m.k);
  kit.stroke(points, p.steelLight, 2.2 * m.k);
  kit.pen.translate(0, 1.6 * m.k);
  kit.pen.lineCap = 'round';
}

function coil(kit: DrawnKit, m: MechanismLayout, massUp: number): void {
  const { palette: p } = kit;
  const top = m.top + 5 * m.k;
  const end = m.zeroY - massUp - m.massHeight / 2;
  const points: number[] = [m.coilX, m.top];
  const turns = 8;
  for (let step = 0; step <= turns * 16; step++) {
    const share = step / (turns * 16);
    const edge = Math.min(1, Math.min(share, 1 - share) * turns * 2);
    points.push(m.coilX + 15 * m.k * edge * Math.sin(share * turns * 2 * Math.PI), top + (end - top) * share);
  }
  kit.stroke(points, p.leverEdge, 4.6 * m.k);
  kit.stroke(points, p.steel, 3.2 * m.k);
}

function mass(kit: DrawnKit, m: MechanismLayout, pose: RidingPose): void {
  const { palette: p, pen } = kit;
  const [w, h] = [m.massWidth / 2, m.massHeight / 2];
  pen.save();
  pen.translate(m.massX, m.zeroY - pose.massUp);
  pen.rotate(-pose.massTurn);
  kit.box(-w, -h, w, h, p.massFace, p.brassDark, 1.2, 3 * m.k);
  kit.box(-w, -h, w, -h + 5 * m.k, p.brassLight, undefined, 1, 2 * m.k);
  for (const x of [-0.8, 0.66]) kit.box(x * w, -h - m.k, x * w + 5 * m.k, h + m.k, p.brass, p.brassDark, 0.8, 1);
  pen.restore();
}

function leaf(kit: DrawnKit, pinX: number, pinY: number, pivotX: number, pivotY: number, k: number): void {
  const { palette: p } = kit;
  const length = Math.hypot(pivotX - pinX, pivotY - pinY);
  const ux = (pivotX - pinX) / length;
  const uy = (pivotY - pinY) / length;
  const points = [pinX - 5 * k * ux, pinY - 5 * k * uy, pivotX + 8 * k * ux, pivotY + 8 * k * uy];
  kit.stroke(points, p.leverEdge, 13.6 * k);
  kit.stroke(points, p.lever, 11.6 * k);
  const slots = Math.max(1, Math.floor((length - 24 * k) / (44 * k)));
  const pitch = (length - 24 * k) / slots;
  for (let slot = 0; slot < slots; slot++) {
    const from = 14 * k + slot * pitch;
    const to = from + pitch - 14 * k;
    if (to > from)
      kit.stroke([pinX + from * ux, pinY + from * uy, pinX + to * ux, pinY + to * uy], p.leverEdge, 3.4 * k);
  }
}

function carriage(kit: DrawnKit, m: MechanismLayout, penUp: number, nibX: number): void {
  const { palette: p } = kit;
  const { k, penPinX: x } = m;
  const y = m.zeroY - penUp;
  kit.shape([x - 17 * k, y - 6 * k, nibX, y, x - 17 * k, y + 6 * k], p.nib, p.nib, 0.6);
  kit.box(x - 19 * k, y - 8.5 * k, x + 19 * k, y + 8.5 * k, p.brass, p.brassDark, 1, 2 * k);
  for (const side of [-15, 12])
    kit.box(x + side * k, y - 10.5 * k, x + (side + 3) * k, y + 10.5 * k, p.brassLight, p.brassDark, 0.8, 1);
}

function wheels(kit: DrawnKit, m: MechanismLayout, massUp: number): void {
  const { palette: p, pen } = kit;
  const turn = Math.atan2(massUp, m.massArm);
  for (const [x, sign, phase] of [
    [m.pivotX, -1, 0],
    [m.penPivotX, 1, 0.5],
  ] as const) {
    pen.save();
    pen.translate(x, m.zeroY);
    pen.rotate(sign * turn);
    const points: number[] = [];
    for (let tooth = 0; tooth < 18; tooth++) {
      for (const [at, r] of [
        [-0.32, 0.87],
        [-0.16, 1.11],
        [0.16, 1.11],
        [0.32, 0.87],
      ] as const) {
        const angle = ((tooth + phase + at) / 18) * 2 * Math.PI;
        points.push(m.wheelRadius * r * Math.cos(angle), m.wheelRadius * r * Math.sin(angle));
      }
    }
    kit.shape(points, p.brass, p.brassDark, 0.8);
    pen.restore();
  }
}

function damper(kit: DrawnKit, m: MechanismLayout, massUp: number, moving: boolean): void {
  const { palette: p, pen } = kit;
  const b = m.beaker!;
  const { k } = m;
  const dip = SHEAR_Y * b.radius;
  kit.oval(b.x, b.top, b.radius, dip, undefined, p.glass, 1.4);
  if (moving) {
    const y = m.zeroY - massUp * b.motion;
    const paddle = b.paddleY - massUp * b.motion;
    kit.stroke([b.x, y, b.x, paddle], p.leverEdge, 4 * k);
    kit.stroke([b.x, y, b.x, paddle], p.rod, 2.6 * k);
    kit.oval(b.x, paddle, b.radius * 0.62, dip * 0.62, p.brass, p.brassDark, 0.9);
    kit.box(b.x - 6 * k, y - 8 * k, b.x + 6 * k, y + 8 * k, p.brassLight, p.brassDark, 1, 1.5 * k);
  }
  pen.globalAlpha = 0.42;
  pen.beginPath();
  pen.ellipse(b.x, b.oilTop, b.radius - 2, dip, 0, Math.PI, 0, true);
  pen.lineTo(b.x + b.radius - 2, b.bottom);
  pen.ellipse(b.x, b.bottom, b.radius - 2, dip, 0, 0, Math.PI);
  pen.closePath();
  pen.fillStyle = p.oil;
  pen.fill();
  pen.globalAlpha = 1;
  kit.oval(b.x, b.oilTop, b.radius - 2, dip, undefined, p.oil, 1);
  kit.stroke([b.x - b.radius, b.top, b.x - b.radius, b.bottom], p.glass, 1.4);
  kit.stroke([b.x + b.radius, b.top, b.x + b.radius, b.bottom], p.glass, 1.4);
  pen.beginPath();
  pen.ellipse(b.x, b.bottom, b.radius, dip, 0, 0, Math.PI);
  pen.strokeStyle = p.glass;
  pen.lineWidth = 1.4;
  pen.stroke();
}

/** `side` +1: it stands on the floor, −1: it hangs from the cap. */
function stop(kit: DrawnKit, m: MechanismLayout, x: number, pose: StopPose, side: 1 | -1): void {
  const { palette: p } = kit;
  const { k, stopWidth } = m;
  const wall = side === 1 ? m.bottom : m.top;
  const half = stopWidth / 2;
  const y = (away: number): number => pose.yPx + side * away;
  kit.stroke([x, y(11 * k), x, wall], p.leverEdge, 10 * k);
  kit.stroke([x, y(11 * k), x, wall], p.rod, 8.4 * k);
  if (pose.broken) {
    const middle = (y(11 * k) + wall) / 2;
    for (const lift of [-2.5, 2.5]) kit.stroke([x - half, middle + lift + 3, x + half, middle + lift - 3], p.text, 1.2);
  }
  kit.box(
    x - half * STOP_PLATE,
    Math.min(y(6.5 * k), y(11 * k)),
    x + half * STOP_PLATE,
    Math.max(y(6.5 * k), y(11 * k)),
    p.brass,
    p.brassDark,
    0.9,
    1,
  );
  kit.box(
    x - half,
    Math.min(y(0), y(6.5 * k)),
    x + half,
    Math.max(y(0), y(6.5 * k)),
    p.rubber,
    p.leverEdge,
    0.8,
    2 * k,
  );
}

/** The room that mass, spring and lever sweep between two offsets. */
export function drawVeil(kit: DrawnKit, m: MechanismLayout, low: number, high: number): void {
  const { palette: p, pen } = kit;
  const { zeroY, k } = m;
  const ratio = ((m.reversed ? 1 : -1) * m.penArm) / m.massArm;
  const penLow = Math.min(low * ratio, high * ratio);
  const penHigh = Math.max(low * ratio, high * ratio);
  const h = m.massHeight / 2;
  pen.globalAlpha = 0.34;
  if (m.look.form === 'arm') {
    const points: number[] = [];
    for (let station = 0; station <= 20; station++) {
      const shape = cantileverShape(station / 20);
      points.push(m.armRootX - (station / 20) * m.armLength, zeroY - high * shape - 4 * k);
    }
    for (let station = 20; station >= 0; station--) {
      const shape = cantileverShape(station / 20);
      points.push(m.armRootX - (station / 20) * m.armLength, zeroY - low * shape + 4 * k);
    }
    kit.shape(points, p.steel);
  } else kit.box(m.coilX - 15 * k, m.top, m.coilX + 15 * k, zeroY - low - h, p.steel);
  kit.box(m.massX - m.massWidth / 2, zeroY - high - h, m.massX + m.massWidth / 2, zeroY - low + h, p.massFace);
  for (const [pinX, pivotX, from, to] of [
    [m.massX, m.pivotX, low, high],
    [m.penPinX, m.penPivotX, penLow, penHigh],
  ] as const) {
    kit.shape(
      [pinX, zeroY - to - 6 * k, pinX, zeroY - from + 6 * k, pivotX, zeroY + 6 * k, pivotX, zeroY - 6 * k],
      p.lever,
    );
  }
  kit.box(m.penPinX - 17 * k, zeroY - penHigh - 8 * k, m.penPinX + 17 * k, zeroY - penLow + 8 * k, p.massFace);
  pen.globalAlpha = 1;
}
