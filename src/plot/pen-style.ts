import type { Theme } from '../contract/view.ts';
import type { LineKind } from './paper-view.ts';

/**
 * Colours of pen and paper. Ink: P. Tol's high-contrast blue by day and light-set blue in the evening; dots:
 * vibrant red and light-set orange (Colour Schemes, SRON technical note SRON/EPS/TN/09-002; hex values from memory).
 * Lines keep ≥ 3 : 1 and writing ≥ 4.5 : 1 to the paper by WCAG 2.2's formula; grid and grain carry no meaning.
 */
interface Colours {
  readonly paper: string;
  readonly text: string;
  readonly soft: string;
  readonly ink: string;
  readonly pencil: string;
  readonly dot: string;
  readonly brass: string;
  readonly gridFine: string;
  readonly gridMain: string;
  readonly zero: string;
  readonly grain: string;
}

const DAY: Colours = {
  paper: '#FBF7EC',
  text: '#2B2722',
  soft: '#5A5247',
  ink: '#004488',
  pencil: '#645E56',
  dot: '#CC3311',
  brass: '#7A5718',
  gridFine: 'rgba(72,122,122,.13)',
  gridMain: 'rgba(60,112,114,.30)',
  zero: 'rgba(43,39,34,.62)',
  grain: '126,104,66',
};

const EVENING: Colours = {
  paper: '#23211F',
  text: '#F0E6D3',
  soft: '#C2B49C',
  ink: '#99DDFF',
  pencil: '#B3AB9E',
  dot: '#EE8866',
  brass: '#E3BE77',
  gridFine: 'rgba(214,196,160,.07)',
  gridMain: 'rgba(214,196,160,.17)',
  zero: 'rgba(240,230,211,.62)',
  grain: '226,206,170',
};

/** How thick and how large things are drawn [px], and in what type. */
export interface PenStyle extends Colours {
  /** 1, or larger on a stage [–]. */
  readonly size: number;
  /** Ink from slow to fast: a pen that hurries leaves less. */
  readonly inkWidths: readonly number[];
  readonly pencilWidth: number;
  readonly pencilDash: readonly number[];
  readonly dotRadius: number;
  readonly fontPx: number;
  /** Marks and ranges; names of events (`strong`); notes in the book face (`note`). */
  readonly label: string;
  readonly strong: string;
  readonly note: string;
}

/** Larger on a stage by this factor [–]. */
const STAGE = 1.62;

/** Families as the page's style sheet names them, `--font-label` and `--font-book`. */
export interface Families {
  readonly label: string;
  readonly book: string;
}

export function penStyle(theme: Theme, stage: boolean, families: Families): PenStyle {
  const size = stage ? STAGE : 1;
  const px = (length: number): number => Math.round(length * size); // uPlot understands whole pixels only
  const thick = stage ? 1.76 : 1;
  return {
    ...(theme === 'day' ? DAY : EVENING),
    size,
    inkWidths: [2.5, 2.2, 1.9, 1.6].map((width) => width * thick),
    pencilWidth: 1.9 * (stage ? 1.58 : 1),
    pencilDash: [7 * size, 3.5 * size],
    dotRadius: 2.05 * size,
    fontPx: px(13),
    label: `450 ${px(13)}px ${families.label}`,
    strong: `650 ${px(13)}px ${families.label}`,
    note: `italic 500 ${13.5 * size}px ${families.book}`,
  };
}

/** Further lines: told apart by their dashes and the name at their end. */
export interface FurtherStyle {
  readonly dash: readonly number[];
  readonly widthPx: number;
  readonly name: string;
  /** Of its scale. */
  readonly unit: string;
}

export const FURTHER: Readonly<Record<Exclude<LineKind, 'felt' | 'mass'>, FurtherStyle>> = {
  acceleration: { dash: [10, 3, 2, 3], widthPx: 1.6, name: 'acceleration', unit: 'm/s²' },
  velocity: { dash: [14, 5], widthPx: 1.3, name: 'velocity', unit: 'm/s' },
  height: { dash: [2, 3], widthPx: 2, name: 'height', unit: 'm' },
};

/** Names of all lines, as the page's key and the spoken description use them. */
export const LINE_NAMES: Readonly<Record<LineKind | 'reported', string>> = {
  felt: 'what happened',
  mass: 'what the mass did',
  reported: 'what the sensor reports',
  acceleration: 'acceleration in the room',
  velocity: 'velocity',
  height: 'height',
};
