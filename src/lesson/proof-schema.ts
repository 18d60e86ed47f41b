/** The shapes of a step's proof: scripts of a scripted learner. */

import { isMap, isSeq, type Node } from 'yaml';
import type { SketchPoint } from '../contract/lesson.ts';
import { parseQuantity } from '../units/parse.ts';
import { lessonSettings, prepared } from './act-schema.ts';
import type { Deed, Proof, WrongTurn } from './lesson.ts';
import { moment } from './schema.ts';
import {
  expression,
  foundIn,
  identifier,
  into,
  list,
  may,
  need,
  quantity,
  record,
  refuse,
  type Shape,
  text,
  variant,
  yes,
} from './yaml-shapes.ts';

/** At the bench, as in a `do` block. */
const BENCH_ACTS = ['hold', 'drop', 'throw', 'shake', 'sweep', 'lift', 'tilt', 'slow', 'pull back'] as const;

const benchAct: Shape<Deed> = into(prepared, (act) => ({ deed: 'act', act }));

/** A time and a value: `[100 ms, 0 g]`. */
const point: Shape<SketchPoint> = (node, place) => {
  if (!isSeq(node) || node.items.length !== 2)
    return refuse(node, place, foundIn(node), 'a time and a value: [100 ms, 0 g]');
  const timeS = quantity('time')(node.items[0] as Node, place);
  const value = expression(node.items[1] as Node, place)?.value(() => Number.NaN);
  return timeS === undefined || value === undefined ? undefined : [timeS, value];
};

const DEEDS: Readonly<Record<string, Shape<Deed>>> = {
  set: into(record({ settings: need(lessonSettings) }), ({ settings }) => ({ deed: 'set', settings })),
  wait: (node, place) => {
    const read = record({ for: may(quantity('time', 0, 600)), until: may(moment) })(node, place);
    if (!read) return undefined;
    if (read.until) return { deed: 'wait until', moment: read.until };
    return read.for === undefined
      ? refuse(node, place, 'a wait without an end', 'for or until')
      : { deed: 'wait', forS: read.for };
  },
  mark: into(record({ at: need(moment) }), ({ at }) => ({ deed: 'mark', at })),
  choose: into(record({ question: need(identifier), choice: need(identifier) }), (read) => ({
    deed: 'choose',
    ...read,
  })),
  type: into(record({ question: need(identifier), typed: need(text) }), (read) => ({ deed: 'type', ...read })),
  sketch: into(record({ question: need(identifier), points: need(list(point, 2)) }), (read) => ({
    deed: 'sketch',
    ...read,
  })),
  explain: into(record({ written: need(text) }), (read) => ({ deed: 'explain', ...read })),
};

/** Deeds of the learner's own first; what the bench does is read as in a `do` block, its `act` kept. */
const own = variant('act', DEEDS);

const deed: Shape<Deed> = (node, place) => {
  const act = isMap(node) ? node.get('act') : undefined;
  if (BENCH_ACTS.some((each) => each === act)) return benchAct(node, place);
  if (typeof act === 'string' && Object.hasOwn(DEEDS, act)) return own(node, place);
  return refuse(node, place, foundIn(node), `act: ${[...BENCH_ACTS, ...Object.keys(DEEDS)].join(', ')}`);
};

const wrongTurn: Shape<WrongTurn> = into(
  record({
    words: need(text),
    fails: need(identifier),
    as: need(identifier),
    stops: may(yes),
    deeds: need(list(deed)),
  }),
  (read) => ({ ...read, stops: read.stops ?? false }),
);

export const proof: Shape<Proof> = into(
  record({ model: need(list(deed)), wrong: may(list(wrongTurn)) }),
  ({ model, wrong }) => ({ model, wrong: wrong ?? [] }),
);

/** A number as a scripted learner types it must be one that a learner could type. */
export function typedFault(typed: string, kind: Parameters<typeof parseQuantity>[1]): string | undefined {
  const parsed = parseQuantity(typed, kind);
  return 'error' in parsed ? parsed.error : undefined;
}
