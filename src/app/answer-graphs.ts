/** The second paper's graphs: what the element answers, computed from its settings. */
import type { Theme } from '../contract/view.ts';
import { flatUpTo, frequencies, halfPowerAt, Response } from '../design/response.ts';
import { exp } from '../numerics/transcendental.ts';
import type { GraphAxis, GraphBand, GraphLine, GraphMarker, GraphView } from '../plot/graph-view.ts';
import { settlingTime } from '../session/figures.ts';
import type { PaperSubject } from '../ui/ui-events.ts';
import { quantityText } from '../units/quantity-text.ts';

/** The element as it is set. */
export interface Answering {
  readonly frequencyHz: number;
  readonly dampingRatio: number;
}

export interface AnswerGraphs {
  readonly left: GraphView;
  readonly right: GraphView;
  /** What they come to, in a sentence. */
  readonly found: string;
}

const POINTS = 600;
/** Shown to this share of the natural frequency and this multiple of it. */
const LOW = 0.02;
const HIGH = 20;
/** Looked for bands from here on, as a share of the natural frequency. */
const BAND_FROM = 1e-3;
/** Shown until it has settled, but not more nor less than these periods. */
const LEAST_PERIODS = 2;
const MOST_PERIODS = 25;

export function answerGraphs(subject: PaperSubject, element: Answering, theme: Theme, stage: boolean): AnswerGraphs {
  const view = (title: string, x: GraphAxis, y: GraphAxis, more: Partial<GraphView>): GraphView => ({
    title,
    x,
    y,
    lines: [],
    points: [],
    bands: [],
    markers: [],
    theme,
    stage,
    ...more,
  });
  switch (subject) {
    case 'frequency':
      return overFrequency(element, view);
    case 'step':
      return afterStep(element, view);
    case 'landing':
      return toLandings(element, view);
  }
}

type MakeView = (title: string, x: GraphAxis, y: GraphAxis, more: Partial<GraphView>) => GraphView;

function responseOf({ frequencyHz, dampingRatio }: Answering): Response {
  return new Response({ naturalFrequency: frequencyHz, dampingRatio, modes: undefined, staticRemainder: 0 });
}

function overFrequency(element: Answering, view: MakeView): AnswerGraphs {
  const { frequencyHz: f0 } = element;
  const response = responseOf(element);
  const x = frequencies(LOW * f0, HIGH * f0, POINTS);
  const points = Array.from(x, (f) => response.atFrequency(f));
  const axis: GraphAxis = { label: 'frequency, Hz', law: 'logarithmic', range: [LOW * f0, HIGH * f0] };
  const onePercent = flatUpTo(response, 0.01, BAND_FROM * f0, HIGH * f0);
  const fivePercent = flatUpTo(response, 0.05, BAND_FROM * f0, HIGH * f0);
  const halfPower = halfPowerAt(response, BAND_FROM * f0, HIGH * f0);
  const markers: GraphMarker[] = [
    { name: '1 %', axis: 'x', at: onePercent },
    { name: '−3 dB', axis: 'x', at: halfPower },
  ];
  const bands: GraphBand[] = [{ name: '5 %', axis: 'x', from: LOW * f0, to: fivePercent }];
  const line = (y: ArrayLike<number>): GraphLine => ({ name: '', x, y, look: 'ink' });
  const hz = (f: number): string => quantityText(f, 'frequency');
  return {
    left: view(
      'amplitude',
      axis,
      { label: 'read over felt', law: 'logarithmic', range: 'automatic' },
      {
        lines: [line(Float64Array.from(points, ({ gain }) => gain))],
        markers,
        bands,
      },
    ),
    right: view(
      'phase',
      axis,
      { label: 'phase, degrees', law: 'linear', range: [-180, 0] },
      {
        lines: [line(Float64Array.from(points, ({ phaseRad }) => (phaseRad * 180) / Math.PI))],
      },
    ),
    found: `True within 1 % up to ${hz(onePercent)}, 5 % up to ${hz(fivePercent)}; 3 dB too little at ${hz(halfPower)}.`,
  };
}

function afterStep(element: Answering, view: MakeView): AnswerGraphs {
  const { frequencyHz: f0, dampingRatio: zeta } = element;
  const response = responseOf(element);
  const omega = 2 * Math.PI * f0;
  const settledS = zeta > 0 ? settlingTime(omega, zeta, 0.02) : Number.POSITIVE_INFINITY;
  const lastS = Math.min(MOST_PERIODS / f0, Math.max(LEAST_PERIODS / f0, 1.25 * settledS));
  const x = Float64Array.from({ length: POINTS }, (_, k) => (k / (POINTS - 1)) * lastS);
  const step = Float64Array.from(x, (t) => response.afterStep(t));
  const axis: GraphAxis = { label: 'time, s', law: 'linear', range: [0, lastS] };
  const lines: GraphLine[] = [{ name: 'release', x, y: step.map((value) => 1 - value), look: 'ink' }];
  if (zeta < 1) {
    // Envelope of the ringing: e^(−ζωt)/√(1 − ζ²).
    const envelope = Float64Array.from(x, (t) => exp(-zeta * omega * t) / Math.sqrt(1 - zeta * zeta));
    lines.push({ name: 'envelope', x, y: envelope, look: 'pencil' });
    lines.push({ name: '', x, y: envelope.map((value) => -value), look: 'pencil' });
  }
  const over = step.reduce((most, value) => Math.max(most, value), 0) - 1;
  const settles = zeta > 0 ? `settles to 2 % in ${quantityText(settledS, 'time')}` : 'never settles';
  return {
    left: view(
      'a step of 1 g',
      axis,
      { label: 'reading, g', law: 'linear', range: 'automatic' },
      { lines: [{ name: '', x, y: step, look: 'ink' }], markers: [{ name: '1 g', axis: 'y', at: 1 }] },
    ),
    right: view('let go from 1 g', axis, { label: 'reading, g', law: 'linear', range: 'automatic' }, { lines }),
    found: `${over > 5e-4 ? `Shoots over by ${(100 * over).toPrecision(3)} %` : 'Does not shoot over'}; ${settles}.`,
  };
}

/** Lengths of the pulses drawn, in periods. */
const PULSES = [0.2, 0.8, 3] as const;

function toLandings(element: Answering, view: MakeView): AnswerGraphs {
  const { frequencyHz: f0 } = element;
  const response = responseOf(element);
  const lengths = frequencies(0.05 / f0, 10 / f0, 120);
  const peak = (durationS: number): number => {
    let most = 0;
    const lastS = durationS + 1 / f0;
    for (let k = 1; k <= 400; k += 1)
      most = Math.max(most, Math.abs(response.afterHalfSine(durationS, (k / 400) * lastS)));
    return most;
  };
  const peaks = Float64Array.from(lengths, peak);
  const lastS = 5 / f0;
  const x = Float64Array.from({ length: POINTS }, (_, k) => (k / (POINTS - 1)) * lastS);
  const lines = PULSES.map((periods): GraphLine => {
    const durationS = periods / f0;
    return {
      name: quantityText(durationS, 'time'),
      x,
      y: Float64Array.from(x, (t) => response.afterHalfSine(durationS, t)),
      look: periods === 0.8 ? 'ink' : 'pencil',
    };
  });
  const most = peaks.indexOf(peaks.reduce((a, b) => Math.max(a, b)));
  return {
    left: view(
      'highest reading of a half-sine landing',
      { label: 'length of the landing, s', law: 'logarithmic', range: [lengths[0]!, lengths[lengths.length - 1]!] },
      { label: 'read over felt', law: 'linear', range: 'automatic' },
      {
        lines: [{ name: '', x: lengths, y: peaks, look: 'ink' }],
        markers: [{ name: 'one swing', axis: 'x', at: 1 / f0 }],
      },
    ),
    right: view(
      'three landings of 1 g',
      { label: 'time, s', law: 'linear', range: [0, lastS] },
      { label: 'reading, g', law: 'linear', range: 'automatic' },
      { lines },
    ),
    found: `Much shorter than a swing it is missed; one of about ${quantityText(Number(lengths[most]!.toPrecision(2)), 'time')} reads some ${peaks[most]!.toPrecision(2)} times what is felt.`,
  };
}
