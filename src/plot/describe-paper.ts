import { formatQuantity } from '../units/format.ts';
import { G_N } from '../units/standard-gravity.ts';
import { timeText } from './cursor-reading.ts';
import { firstEventAtOrAfter, markLook } from './event-marks.ts';
import type { LineLayer } from './line-layer.ts';
import type { PaperFrame } from './paper-frame.ts';
import type { PaperView } from './paper-view.ts';
import { LINE_NAMES } from './pen-style.ts';
import { type ReadingUnit, readingText, signed, sizeText, unitName } from './reading-format.ts';
import { traceExtent } from './trace.ts';

/** Events named in a description at most: the newest. */
const MOST_EVENTS = 8;

const extent = new Float64Array(2);

/** The sign convention in one sentence. */
export function signSentence(sign: 1 | -1, unit: ReadingUnit): string {
  const size = unit === 'g_n' ? '1\u202fg' : sizeText(G_N, unit);
  return `Standing still reads ${sign > 0 ? '+' : '−'}${size} upward.`;
}

/** The paper in words, for those who do not see it. */
export function describePaper(frame: PaperFrame, layers: readonly LineLayer[]): string {
  const { view } = frame;
  const parts = [
    `Tape from ${timeText(Math.max(0, frame.fromS))} to ${timeText(view.endS)}, scale ±${frame.range} ${unitName(view.unit)}.`,
    signSentence(view.sign, view.unit),
  ];
  for (const layer of layers) {
    const sentence = lineSentence(layer, frame);
    if (sentence !== undefined) parts.push(sentence);
  }
  if (view.samples !== undefined && view.reported !== 'none') parts.push(sampleSentence(view, frame));
  parts.push(eventSentence(view, frame));
  return parts.filter((part) => part !== '').join(' ');
}

function lineSentence(layer: LineLayer, frame: PaperFrame): string | undefined {
  const { view } = frame;
  const { trace, line } = layer;
  if (!traceExtent(trace, frame.fromS, view.endS, extent)) return undefined;
  const sign = layer.onPenScale ? view.sign : 1;
  const written = (value: number): string => {
    const shown = value * sign;
    if (line.kind === 'velocity') return signed(shown, formatQuantity(shown, 'speed'));
    if (line.kind === 'height') return formatQuantity(shown, 'length');
    return readingText(shown, view.unit);
  };
  const [low, high] = sign > 0 ? [extent[0]!, extent[1]!] : [extent[1]!, extent[0]!];
  return `${capital(LINE_NAMES[line.kind])}: ${written(trace.value[trace.count - 1]!)} at the end, between ${written(low)} and ${written(high)}.`;
}

function sampleSentence(view: PaperView, frame: PaperFrame): string {
  const { samples } = view;
  if (samples === undefined) return '';
  const count = samples.firstAtOrAfter(view.endS) - samples.firstAtOrAfter(frame.fromS);
  return `${capital(LINE_NAMES.reported)}: ${count} samples.`;
}

function eventSentence(view: PaperView, frame: PaperFrame): string {
  const named: string[] = [];
  for (let i = firstEventAtOrAfter(view.events, frame.fromS); i < view.events.length; i++) {
    const event = view.events[i]!;
    if (event.timeS > view.endS) break;
    const look = markLook(event);
    if (look !== undefined && look.form !== 'stop') named.push(`${look.name} at ${timeText(event.timeS)}`);
  }
  if (named.length === 0) return '';
  const left = named.length - MOST_EVENTS;
  return `Events: ${left > 0 ? `${left} earlier, then ` : ''}${named.slice(-MOST_EVENTS).join(', ')}.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
