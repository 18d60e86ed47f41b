import { normalGravity } from '../units/normal-gravity.ts';
import { G_N } from '../units/standard-gravity.ts';

/** A place on the Earth's ellipsoid, or a body whose gravity is given outright. */
export interface Place {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly heightM: number;
  /** [m/s²]; undefined: normal gravity of the latitude and height. */
  readonly gravityMS2?: number;
}

const DEGREE = Math.PI / 180;

/**
 * Heights and latitudes are round figures of our own. Gravity on the Moon and on Mars: mean surface values from
 * memory, to three figures.
 */
export const PLACES: readonly Place[] = [
  {
    id: 'standard',
    name: 'standard, 9.80665 m/s²',
    latitude: Number.NaN,
    heightM: Number.NaN,
    gravityMS2: G_N,
  },
  { id: 'equator', name: 'on the equator, by the sea', latitude: 0, heightM: 0 },
  { id: 'middle', name: 'half way to the pole, by the sea', latitude: 45 * DEGREE, heightM: 0 },
  { id: 'pole', name: 'at a pole', latitude: 90 * DEGREE, heightM: 0 },
  { id: 'mountain', name: 'on a mountain, 5000 m up, at 30°', latitude: 30 * DEGREE, heightM: 5000 },
  { id: 'moon', name: 'on the Moon', latitude: Number.NaN, heightM: Number.NaN, gravityMS2: 1.62 },
  { id: 'mars', name: 'on Mars', latitude: Number.NaN, heightM: Number.NaN, gravityMS2: 3.71 },
  { id: 'space', name: 'far out, no gravity', latitude: Number.NaN, heightM: Number.NaN, gravityMS2: 0 },
];

export function gravityAt({ latitude, heightM, gravityMS2 }: Place): number {
  return gravityMS2 ?? normalGravity(latitude, heightM);
}

/** Id of the place with a gravity [m/s²]; '' when it has none of its own. */
export function placeOf(gravity: number): string {
  return PLACES.find((place) => gravityAt(place) === gravity)?.id ?? '';
}

/** In a few words, for the head of the page. */
export function shortName(place: string): string {
  return (
    {
      standard: 'standard',
      equator: 'equator',
      middle: 'at 45°',
      pole: 'pole',
      mountain: 'mountain',
      moon: 'Moon',
      mars: 'Mars',
      space: 'far out',
    }[place] ?? 'here'
  );
}
