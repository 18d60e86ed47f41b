/** The shapes of figures: what is taken from the tape, and what kind of number comes out. */

import { isMap } from 'yaml';
import type { QuantityKind } from '../units/unit-table.ts';
import { findUnit } from '../units/unit-table.ts';
import { quoted } from './fault.ts';
import type { Figure, LineName, Take } from './lesson.ts';
import { LINES } from './lesson.ts';
import { type Quantity, usual } from './quantity.ts';
import { line, moment, printedQuantity } from './schema.ts';
import {
  expression,
  foundIn,
  identifier,
  into,
  may,
  need,
  prose,
  record,
  refuse,
  type Shape,
  text,
  variant,
  without,
} from './yaml-shapes.ts';

const STRETCH = { of: need(line), from: need(moment), to: need(moment), minus: may(expression) } as const;

/** A figure's rule and the kind of number that it gives; undefined: one that has no unit here. */
interface ReadTake {
  readonly take: Take;
  readonly kind: QuantityKind | undefined;
  readonly quantity?: Quantity;
}

const AREA: Readonly<Record<string, QuantityKind>> = { acceleration: 'speed', speed: 'length' };
const SLOPE: Readonly<Record<string, QuantityKind>> = { speed: 'acceleration', length: 'speed' };

const kindOf = (name: LineName): QuantityKind => LINES[name].kind;

function onStretch(
  take:
    | 'mean'
    | 'rms'
    | 'area'
    | 'slope'
    | 'highest'
    | 'lowest'
    | 'whenHighest'
    | 'ringFrequency'
    | 'decrement'
    | 'damping',
  kind: (of: LineName) => QuantityKind | undefined,
): Shape<ReadTake> {
  return into(record(STRETCH), (read) => ({ take: { take, ...read }, kind: kind(read.of) }));
}

const level = { ...STRETCH, level: need(expression) } as const;
const sine = { ...STRETCH, frequency: need(expression) } as const;

const TAKES: Readonly<Record<Take['take'], Shape<ReadTake>>> = {
  value: into(record({ of: need(line), at: need(moment), minus: may(expression) }), (read) => ({
    take: { take: 'value', ...read },
    kind: kindOf(read.of),
  })),
  mean: onStretch('mean', kindOf),
  rms: onStretch('rms', kindOf),
  highest: onStretch('highest', kindOf),
  lowest: onStretch('lowest', kindOf),
  area: onStretch('area', (of) => AREA[kindOf(of)]),
  slope: onStretch('slope', (of) => SLOPE[kindOf(of)]),
  whenHighest: onStretch('whenHighest', () => 'time'),
  duration: into(record({ from: need(moment), to: need(moment) }), (read) => ({
    take: { take: 'duration', ...read },
    kind: 'time',
  })),
  swings: into(record(level), (read) => ({ take: { take: 'swings', ...read }, kind: 'dimensionless' })),
  crossing: into(record(level), (read) => ({ take: { take: 'crossing', ...read }, kind: 'time' })),
  settling: into(record({ ...level, band: need(expression) }), (read) => ({
    take: { take: 'settling', ...read },
    kind: 'time',
  })),
  ringFrequency: onStretch('ringFrequency', () => 'frequency'),
  decrement: onStretch('decrement', () => 'dimensionless'),
  damping: onStretch('damping', () => 'dimensionless'),
  amplitude: into(record(sine), (read) => ({ take: { take: 'amplitude', ...read }, kind: kindOf(read.of) })),
  gain: into(record({ ...sine, against: need(line) }), (read) => ({
    take: { take: 'gain', ...read },
    kind: 'dimensionless',
  })),
  phase: into(record({ ...sine, against: need(line) }), (read) => ({
    take: { take: 'phase', ...read },
    kind: 'angle',
  })),
  formula: into(record({ value: need(expression), as: need(printedQuantity) }), ({ value, as }) => ({
    take: { take: 'formula', value },
    kind: as.kind,
    quantity: as,
  })),
};

const common = record({ name: need(identifier), words: need(prose), unit: may(text) });
const rule = variant('take', TAKES);

export const figure: Shape<Figure> = (node, place) => {
  if (!isMap(node)) return refuse(node, place, foundIn(node), 'name, words, take and what it needs');
  const ruleKeys = node.items.map(({ key }) => String(key)).filter((key) => !['name', 'words', 'unit'].includes(key));
  const read = common(without(node, ...ruleKeys), place);
  const taken = rule(without(node, 'name', 'words', 'unit'), place);
  if (!read || !taken) return undefined;
  const { take, kind } = taken;
  if (!kind) return refuse(node, place, `the ${take.take} of a line whose unit has no name here`, 'another line');
  if (read.unit !== undefined && !findUnit(kind, read.unit))
    return refuse(node, place, quoted(read.unit), `a unit of ${kind}`);
  return { name: read.name, words: read.words, take, quantity: taken.quantity ?? usual(kind, read.unit) };
};
