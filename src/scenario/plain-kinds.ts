/** Numbers, words and short lists of numbers. */
import { pathTo, type Report } from './fault.ts';
import type { JsonNode } from './json.ts';
import { found, type Kind } from './kind.ts';

export interface Limits {
  readonly unit?: string;
  readonly min?: number;
  /** Exclusive lower limit, instead of `min`. */
  readonly above?: number;
  readonly max: number;
}

export function number(limits: Limits): Kind<number> {
  return numeric('a number', limits, () => true);
}

export function wholeNumber(limits: Limits): Kind<number> {
  return numeric('a whole number', limits, Number.isInteger);
}

function numeric(what: string, limits: Limits, fits: (value: number) => boolean): Kind<number> {
  const allowed = `${what} ${range(limits)}`;
  const least = limits.above ?? limits.min ?? -limits.max;
  return {
    allowed,
    read(node, path, report) {
      if (node.type === 'number') {
        const value = node.value + 0; // −0 becomes 0: it is no other setting
        const high = limits.above === undefined ? value >= least : value > least;
        if (high && value <= limits.max && fits(value)) return value;
      }
      report(path, found(node), allowed);
      return undefined;
    },
  };
}

function range({ unit, min, above, max }: Limits): string {
  const ends =
    above === undefined
      ? `from ${plain(min ?? -max)} to ${plain(max)}`
      : `above ${plain(above)}, at most ${plain(max)}`;
  return unit === undefined ? ends : `${ends}, in ${unit}`;
}

/** 10000 as it is, 10000000 as 1e7. */
function plain(value: number): string {
  const size = Math.abs(value);
  const scientific = value.toExponential().replace('e+', 'e');
  const even = size === 0 || (size >= 1e-3 && size < 1e5);
  return even || scientific.length > String(value).length ? String(value) : scientific;
}

export const boolean: Kind<boolean> = {
  allowed: 'true or false',
  read(node, path, report) {
    if (node.type === 'boolean') return node.value;
    report(path, found(node), this.allowed);
    return undefined;
  },
};

export function text(pattern: RegExp, allowed: string): Kind<string> {
  return {
    allowed,
    read(node, path, report) {
      if (node.type === 'string' && pattern.test(node.value)) return node.value;
      report(path, found(node), allowed);
      return undefined;
    },
  };
}

export function choice<const T extends string>(options: readonly T[]): Kind<T> {
  const allowed = options.map((option) => JSON.stringify(option)).join(' or ');
  return {
    allowed,
    read(node, path, report) {
      const chosen = options.find((option) => node.type === 'string' && node.value === option);
      if (chosen === undefined) report(path, found(node), allowed);
      return chosen;
    },
  };
}

/** Three numbers with the same limits. */
export function triple(limits: Limits): Kind<readonly [number, number, number]> {
  const each = number(limits);
  const allowed = `[x, y, z], each ${each.allowed}`;
  return {
    allowed,
    read(node, path, report) {
      const [x, y, z] = components(node, 3, each, path, allowed, report);
      return x === undefined || y === undefined || z === undefined ? undefined : [x, y, z];
    },
  };
}

/** The numbers of a list of `count`; short when there was a fault. */
export function components(
  node: JsonNode,
  count: number,
  each: Kind<number>,
  path: string,
  allowed: string,
  report: Report,
): (number | undefined)[] {
  if (node.type !== 'list' || node.items.length !== count) {
    report(path, found(node), allowed);
    return [];
  }
  return node.items.map((item, i) => each.read(item, pathTo(path, i), report));
}

/** null, or what `kind` allows. */
export function orNull<T>(kind: Kind<T>): Kind<T | null> {
  return {
    allowed: `${kind.allowed}, or null`,
    below: kind.below,
    read(node, path, report) {
      if (node.type === 'null') return null;
      if (node.type === 'object' || kind.below === undefined) return kind.read(node, path, report);
      report(path, found(node), this.allowed);
      return undefined;
    },
  };
}

/** 0, or what `kind` allows: a time that may be none but not so short that it overflows what is divided by it. */
export function orZero(kind: Kind<number>): Kind<number> {
  return {
    allowed: `0, or ${kind.allowed}`,
    read(node, path, report) {
      if (node.type === 'number' && node.value === 0) return 0;
      return kind.read(node, path, (where, what) => report(where, what, this.allowed));
    },
  };
}
