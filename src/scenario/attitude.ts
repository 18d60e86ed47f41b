/** Directions and attitudes as a scenario may write them, brought to unit length. */
import type { AxisAngle, Quaternion, Vector } from '../contract/geometry.ts';
import { cos, sin } from '../numerics/transcendental.ts';
import { found, type Kind } from './kind.ts';
import { components, number } from './plain-kinds.ts';
import { object, required } from './schema.ts';

/** Largest component read [–]; directions are scaled to unit length anyway. */
const COMPONENT = number({ max: 1e6 });

/**
 * |v|² this near 1 counts as unit length and is kept bit for bit [–], so that a scenario written out and read
 * again is the same: dividing by a rounded length leaves |v|² − 1 below 16 rounding errors of 2⁻⁵³.
 */
const UNIT_SLACK = 16 / 9007199254740992;

/** A direction; any length but 0. */
export const direction: Kind<Vector> = unit(
  3,
  '[x, y, z], not all 0, of any length (scaled to 1)',
  ([x = 0, y = 0, z = 0]) => [x, y, z],
);

const quaternion: Kind<Quaternion> = unit(
  4,
  'a quaternion [x, y, z, w], not all 0 (scaled to length 1), or { axis, angle }',
  ([x = 0, y = 0, z = 0, w = 0]) => [x, y, z, w],
);

const axisAngle = object({
  axis: required(direction, 'axis of the turn, room frame'),
  angle: required(number({ unit: 'rad', max: 6.283186 }), 'angle of the turn'),
});

/** A quaternion, or an axis and an angle [rad]. */
export const attitude: Kind<Quaternion | AxisAngle> = {
  allowed: `${quaternion.allowed}, angle ${axisAngle.below?.angle?.kind.allowed ?? ''}`,
  read(node, path, report) {
    return node.type === 'object' ? axisAngle.read(node, path, report) : quaternion.read(node, path, report);
  },
};

/** Attitude as a unit quaternion: [axis·sin(angle/2), cos(angle/2)]. */
export function toQuaternion(given: Quaternion | AxisAngle): Quaternion {
  if (!('axis' in given)) return given;
  const s = sin(given.angle / 2);
  const [x = 0, y = 0, z = 0, w = 1] = toUnitLength([...given.axis.map((c) => c * s), cos(given.angle / 2)]) ?? [];
  return [x, y, z, w];
}

function unit<T>(count: number, allowed: string, shape: (scaled: readonly number[]) => T): Kind<T> {
  return {
    allowed,
    read(node, path, report) {
      const given = components(node, count, COMPONENT, path, allowed, report);
      if (given.length < count || given.includes(undefined)) return undefined;
      const scaled = toUnitLength(given.map((c) => c ?? 0));
      if (scaled === undefined) report(path, `${found(node)} zeros`, allowed);
      return scaled && shape(scaled);
    },
  };
}

/** Undefined for all zeros. Divided by the largest component first, so that nothing under- or overflows. */
function toUnitLength(given: readonly number[]): readonly number[] | undefined {
  if (Math.abs(squared(given) - 1) <= UNIT_SLACK) return given.map((c) => c + 0);
  const largest = given.reduce((most, c) => Math.max(most, Math.abs(c)), 0);
  if (largest === 0) return undefined;
  const near = given.map((c) => c / largest);
  const length = Math.sqrt(squared(near));
  return near.map((c) => c / length + 0); // + 0: no −0, which JSON would not keep
}

function squared(v: readonly number[]): number {
  return v.reduce((sum, c) => sum + c * c, 0);
}
