import type { ElementSnapshot, Snapshot } from '../contract/snapshot.ts';
import type { Anchor, RidingGeometry, RoomGeometry } from '../contract/view.ts';
import type { SceneLabel } from '../ui/scene-labels.ts';
import { quantityText } from '../units/quantity-text.ts';

type Placing = Pick<SceneLabel, 'side' | 'distancePx' | 'leader' | 'quiet'>;

const BESIDE: Placing = { side: 'right', distancePx: 12, leader: false, quiet: true };

/** Nearer to level the lever itself stands where the word would [px]. */
const CLEAR_OF_LEVER_PX = 26;

/** Labels of the riding view: what each thing is, with its figure from the model. */
export function ridingLabels(
  geometry: RidingGeometry,
  element: ElementSnapshot,
  gravity: number,
  springWords: string,
): readonly SceneLabel[] {
  const { spec, reading } = element;
  const upright = spec.axis[1] === 1;
  const texts: Readonly<Record<string, Placing & { text: string; under?: string }>> = {
    'arm pulls': {
      ...BESIDE,
      quiet: false,
      side: 'above',
      distancePx: 10,
      text: 'spring pulls',
      // Sideways the arrow alone says where to: the view stands on its side.
      under: `${inG(Math.abs(reading))}${upright ? (reading >= 0 ? ' up' : ' down') : ''}`,
    },
    'gravity on the mass': {
      ...BESIDE,
      side: 'left',
      quiet: false,
      text: 'gravity',
      under: `${inG(gravity)} down`,
    },
    unbent: { ...BESIDE, side: 'left', distancePx: 4, text: 'unbent' },
    'stop above': { ...BESIDE, text: spec.gap === undefined ? 'stop' : `stop, +${quantityText(spec.gap, 'length')}` },
    'stop below': { ...BESIDE, side: 'left', text: 'stop' },
    oil: { ...BESIDE, text: 'oil' },
    'proof mass': { ...BESIDE, side: 'below', text: 'proof mass' },
    arm: { ...BESIDE, side: 'above', distancePx: 54, leader: true, text: springWords },
    coil: { ...BESIDE, text: springWords, leader: true, distancePx: 24 },
  };
  const bent = Math.abs(geometry.massYPx - geometry.unbentYPx) > CLEAR_OF_LEVER_PX;
  return placed(
    geometry.anchors.filter(({ name }) => bent || name !== 'unbent'),
    texts,
  );
}

/** Labels of the room: heights and what gave. */
export function roomLabels(
  geometry: RoomGeometry,
  snapshot: Snapshot,
  releaseHeightM: number | undefined,
): readonly SceneLabel[] {
  const gave = -snapshot.housing.lowestM;
  const texts: Record<string, Placing & { text: string; under?: string }> = {};
  if (releaseHeightM !== undefined)
    texts['rule'] = {
      ...BESIDE,
      side: 'left',
      distancePx: 16,
      text: 'let go at',
      under: quantityText(releaseHeightM, 'length'),
    };
  if (gave > 1e-5)
    texts['pad top'] = { ...BESIDE, side: 'below', distancePx: 26, text: `felt gave ${quantityText(gave, 'length')}` };
  return placed(geometry.anchors, texts);
}

function placed(
  anchors: readonly Anchor[],
  texts: Readonly<Record<string, Placing & { text: string; under?: string }>>,
): readonly SceneLabel[] {
  const labels: SceneLabel[] = [];
  for (const { name, xPx, yPx, visible } of anchors) {
    const words = texts[name];
    if (visible && words) labels.push({ ...words, name, anchorXPx: xPx, anchorYPx: yPx });
  }
  return labels;
}

function inG(valueMS2: number): string {
  return quantityText(valueMS2, 'acceleration', 'g');
}
