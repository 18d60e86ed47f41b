import type { Theme } from '../contract/view.ts';
import type { Span } from '../plot/paper-view.ts';
import type { ReadingUnit } from '../plot/reading-format.ts';
import type { FieldValues } from '../session/handling-values.ts';
import type { SoughtTerm } from '../ui/glossary-sheet.ts';
import { startingHandlingValues } from '../ui/handling-fields.ts';
import type { LineStroke } from '../ui/line-legend.ts';
import type { FirstStep } from '../ui/short-way-in.ts';
import type { HandlingName, PaperSubject } from '../ui/ui-events.ts';
import type { RecordInHand } from './record-in-hand.ts';

export type LineId = 'felt' | 'mass' | 'reported' | 'acceleration' | 'velocity' | 'height';

export interface LineState {
  readonly id: LineId;
  readonly name: string;
  readonly shortName: string;
  readonly stroke: LineStroke;
  readonly further: boolean;
  readonly shown: boolean;
}

export interface TriggerState {
  readonly armed: boolean;
  readonly line: 'felt' | 'mass';
  readonly rising: boolean;
  readonly levelMS2: number;
  readonly beforeS: number;
  readonly afterS: number;
}

/** How the page stands, apart from the session: what is open, shown, marked. */
export interface PageState {
  readonly theme: Theme;
  readonly stage: boolean;
  readonly folded: boolean;
  readonly sheet: string;
  readonly handling: HandlingName;
  readonly fields: FieldValues;
  readonly letters: boolean;
  readonly signTurned: boolean;
  readonly unit: ReadingUnit;
  /** A drag over the tape pulls the paper, or marks a span. */
  readonly drag: 'pull' | 'mark';
  /** Up to where the paper is ruled [m/s²]. */
  readonly range: 'automatic' | number;
  readonly lines: readonly LineState[];
  readonly spanS: number;
  readonly marked: Span | undefined;
  readonly looping: boolean;
  readonly trigger: TriggerState;
  readonly springBy: 'frequency' | 'stiffness';
  readonly place: string;
  readonly latitude: number;
  readonly placeHeightM: number;
  readonly record: RecordInHand | undefined;
  readonly firstSteps: ReadonlySet<FirstStep>;
  readonly wayInSkipped: boolean;
  /** The term of the glossary that was asked for. */
  readonly sought: SoughtTerm | undefined;
  /** What came of saving, linking or opening a run. */
  readonly runNote: string;
  /** What the second paper shows; undefined: it is rolled away. */
  readonly secondPaper: PaperSubject | undefined;
  readonly paperFound: string;
  /** Something to be said once: what was refused, left out, found. */
  readonly notice: string;
}

const LINES: readonly LineState[] = [
  { id: 'felt', name: 'what happened', shortName: 'happened', stroke: 'dash', further: false, shown: true },
  { id: 'mass', name: 'what the mass did', shortName: 'mass', stroke: 'solid', further: false, shown: true },
  { id: 'reported', name: 'what the sensor reports', shortName: 'sensor', stroke: 'dots', further: false, shown: true },
  {
    id: 'acceleration',
    name: 'acceleration in the room',
    shortName: 'acceleration',
    stroke: 'dash-dot',
    further: true,
    shown: false,
  },
  { id: 'velocity', name: 'velocity', shortName: 'velocity', stroke: 'long-dash', further: true, shown: false },
  { id: 'height', name: 'height', shortName: 'height', stroke: 'fine-dash', further: true, shown: false },
];

export function startingState(spanS: number): PageState {
  return {
    theme: 'day',
    stage: false,
    folded: false,
    sheet: 'start',
    handling: 'drop',
    fields: startingHandlingValues(),
    letters: true,
    signTurned: false,
    unit: 'g_n',
    drag: 'pull',
    range: 'automatic',
    lines: LINES,
    spanS,
    marked: undefined,
    looping: false,
    trigger: { armed: false, line: 'felt', rising: true, levelMS2: 5 * 9.80665, beforeS: 0.4, afterS: 0.4 },
    springBy: 'frequency',
    place: 'standard',
    latitude: Number.NaN,
    placeHeightM: Number.NaN,
    record: undefined,
    firstSteps: new Set(),
    wayInSkipped: false,
    sought: undefined,
    runNote: '',
    secondPaper: undefined,
    paperFound: '',
    notice: '',
  };
}
