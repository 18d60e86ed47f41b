/** A sketched line while it is drawn: points that rise in time, changed by strokes and by single points. Time [s], value SI. */
import type { SketchPoint } from '../contract/lesson.ts';

/** Points closer in time than this share of the sketch are one point: a line has one value at an instant. */
const NEAREST_SHARE = 1 / 400;

type Line = readonly SketchPoint[];

/** Sets a point; one that stands at the same instant gives way. */
export function withPoint(line: Line, point: SketchPoint, spanS: number): Line {
  return inOrder([...line.filter(([timeS]) => Math.abs(timeS - point[0]) > spanS * NEAREST_SHARE), point]);
}

/** One stretch of a stroke, from where the pencil was to where it is: it replaces what was drawn in between. */
export function withStroke(line: Line, from: SketchPoint, to: SketchPoint, spanS: number): Line {
  const [firstS, lastS] = from[0] < to[0] ? [from[0], to[0]] : [to[0], from[0]];
  const outside = line.filter(([timeS]) => timeS <= firstS || timeS >= lastS);
  return withPoint(outside, to, spanS);
}

/** Takes away the point that stands nearest in time. */
export function withoutNearest(line: Line, timeS: number): Line {
  const distance = (index: number) => Math.abs(line[index]![0] - timeS);
  let nearest = 0;
  for (let k = 1; k < line.length; k += 1) if (distance(k) < distance(nearest)) nearest = k;
  return line.filter((_, index) => index !== nearest);
}

/** The line's value at an instant; beyond its ends that of the end; undefined: nothing is drawn. */
export function valueAt(line: Line, timeS: number): number | undefined {
  const after = line.findIndex(([at]) => at >= timeS);
  if (after === -1) return line.at(-1)?.[1];
  const [afterS, value] = line[after]!;
  const [beforeS, before] = line[after - 1] ?? [afterS, value];
  return afterS === beforeS ? value : before + ((value - before) * (timeS - beforeS)) / (afterS - beforeS);
}

function inOrder(line: Line): Line {
  return [...line].sort(([a], [b]) => a - b);
}
