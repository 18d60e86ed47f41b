/** Snapshots and frames made by hand: pictures are tested without an engine. */
import type { ElementSpec } from '../../src/contract/run.ts';
import type { ElementSnapshot, Snapshot } from '../../src/contract/snapshot.ts';
import type { ElementLook, PaperScale, RoomFrame } from '../../src/contract/view.ts';

export const G = 9.80665;
export const HOUSING = [0.15, 0.13, 0.11] as const;

export function spec(parts: Partial<ElementSpec> = {}): ElementSpec {
  return {
    name: 'z',
    axis: [0, 1, 0],
    at: [0, 0, 0],
    naturalFrequency: 8.1,
    dampingRatio: 0.12,
    staticRemainder: 0,
    restitution: 0.5,
    cubicStiffness: 0,
    thermalNoise: false,
    fieldAtMass: false,
    ...parts,
  };
}

/** An element at a deflection [m] whose reading is −x/S. */
export function elementAt(deflection: number, staticDeflection: number, of: ElementSpec = spec()): ElementSnapshot {
  return {
    spec: of,
    deflection,
    velocity: 0,
    specificForce: 0,
    reading: -deflection / staticDeflection,
    onStop: 0,
    reported: Number.NaN,
    sampleTimeS: Number.NaN,
  };
}

export function snapshot(parts: Partial<Snapshot['housing']> = {}): Snapshot {
  return {
    revision: 1,
    timeS: 0,
    gravity: G,
    housing: {
      position: [0, 0.465, 0],
      velocity: [0, 0, 0],
      acceleration: [0, 0, 0],
      attitude: [0, 0, 0, 1],
      angularVelocity: [0, 0, 0],
      specificForce: [0, G, 0],
      lowestM: 0.4,
      motion: 'held',
      inContact: false,
      ...parts,
    },
    elements: [elementAt(0, 1)],
    events: [],
  };
}

export const LOOKS: readonly ElementLook[] = [
  { form: 'arm', damper: 'oil', span: 0.62 },
  { form: 'arm', damper: 'none', span: 0.4 },
  { form: 'coil', damper: 'oil', span: 0.6 },
];

/** The canvases of the four page sizes: [width, height, nib]. */
export const CANVASES: readonly (readonly [number, number, number])[] = [
  [800, 740, 12],
  [560, 460, 10],
  [420, 380, 8],
  [150, 270, 8],
];

/** Paper as tall as the canvas but for a margin, its 0 line at a share of its height, ±`g` g_n on it. */
export function paper(heightPx: number, zeroShare = 0.5, spanG = 16): PaperScale {
  const topYPx = 0.04 * heightPx;
  const bottomYPx = 0.95 * heightPx;
  return {
    topYPx,
    bottomYPx,
    zeroYPx: topYPx + zeroShare * (bottomYPx - topYPx),
    pxPerMS2: (bottomYPx - topYPx) / (spanG * G),
  };
}

export function roomFrame(parts: Partial<RoomFrame> = {}): RoomFrame {
  return {
    releaseHeightM: 0.4,
    holder: 'none',
    pad: { thicknessM: 0.03 },
    look: LOOKS[0]!,
    housingSizeM: HOUSING,
    element: 0,
    enlargement: 1.5,
    arrows: new Set(),
    follow: false,
    ...parts,
  };
}

/** Evenly spread numbers in [0, 1) from a seed: a test's own generator. */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0; // Knuth, TAOCP 2, 3.3.4, table 1, line 16 (from memory)
    return state / 4294967296;
  };
}
