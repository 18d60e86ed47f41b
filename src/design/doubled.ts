/** "What if I double it": for each number of a design, what each figure is multiplied by. All computed, none from rules. */
import type { DesignConditions, DesignFigures, DesignSpec } from '../contract/design.ts';
import { designed } from './design.ts';

export type Figure = {
  [K in keyof DesignFigures]: DesignFigures[K] extends number | undefined ? K : never;
}[keyof DesignFigures];

export interface Doubling {
  /** Of the number, as in a fault: `suspension.length`; `gap` is that of the stops. */
  readonly path: string;
  readonly from: number;
  /** The figure with the number doubled over the figure now; NaN where the figure is 0. */
  readonly factors: Partial<Readonly<Record<Figure, number>>> | undefined;
  /** Why it could not be built, else undefined. */
  readonly fault: string | undefined;
}

/** `factor` other than 2 asks for another change. The design itself must be one that can be built. */
export function doublings(spec: DesignSpec, conditions: DesignConditions, factor = 2): Doubling[] {
  const { design } = designed(spec, conditions);
  if (design === undefined) return [];
  return numbersOf({ ...spec, gap: conditions.gap }).map(({ path, keys, value }): Doubling => {
    const { gap, ...changed } = replaced({ ...spec, gap: conditions.gap }, keys, value * factor);
    const after = designed(changed, { ...conditions, gap });
    const from = { path, from: value };
    if (after.design === undefined) {
      const [fault] = after.faults;
      return { ...from, factors: undefined, fault: `${fault!.path}: ${fault!.found}; allowed: ${fault!.allowed}` };
    }
    return { ...from, factors: ratios(after.design.figures, design.figures), fault: undefined };
  });
}

function ratios(after: DesignFigures, before: DesignFigures): Partial<Record<Figure, number>> {
  return Object.fromEntries(
    Object.entries(after).flatMap(([key, value]) => {
      const old: unknown = before[key as keyof DesignFigures];
      return typeof value === 'number' && typeof old === 'number' ? [[key, value / old]] : [];
    }),
  );
}

interface Place {
  readonly path: string;
  readonly keys: readonly string[];
  readonly value: number;
}

/** Every number above 0, with the keys that lead to it; of named materials none, for they come as they are. */
function numbersOf(value: unknown, keys: readonly string[] = []): Place[] {
  if (typeof value === 'number') return value > 0 ? [{ path: keys.map(step).join('').slice(1), keys, value }] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) => numbersOf(inside, [...keys, key]));
}

function step(key: string): string {
  return /^\d+$/.test(key) ? `[${key}]` : `.${key}`;
}

function replaced<T>(value: T, [key, ...rest]: readonly string[], number: number): T {
  if (key === undefined) return number as T;
  const inside = (value as Readonly<Record<string, unknown>>)[key];
  const changed = replaced(inside, rest, number);
  if (Array.isArray(value)) return value.map((item: unknown, i) => (String(i) === key ? changed : item)) as T;
  return { ...value, [key]: changed };
}
