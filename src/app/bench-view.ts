/** The page as a template: everything that changes with a state, nothing that changes with a frame. */
import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import '../ui/bench-head.ts';
import '../ui/bench-layout.ts';
import '../ui/caution-note.ts';
import '../ui/cover-sheet.ts';
import '../ui/element-sheet.ts';
import '../ui/folder-sheets.ts';
import '../ui/handling-keys.ts';
import '../ui/help-note.ts';
import '../ui/handling-words.ts';
import '../ui/line-legend.ts';
import '../ui/pause-keys.ts';
import '../ui/pen-rule.ts';
import '../ui/place-sheet.ts';
import '../ui/plain-words.ts';
import '../ui/quantity-slider.ts';
import '../ui/read-out-sheet.ts';
import '../ui/reading-figure.ts';
import '../ui/records-sheet.ts';
import '../ui/run-keys.ts';
import '../ui/second-paper.ts';
import '../ui/run-sentence.ts';
import '../ui/scene-labels.ts';
import '../ui/short-way-in.ts';
import '../ui/sign-line.ts';
import '../ui/span-figures.ts';
import '../ui/speed-lever.ts';
import { GLOSSARY } from '../lesson/glossary.ts';
import type { BenchRun } from '../session/bench-run.ts';
import { elementFigures, SETTLING_BAND } from '../session/figures.ts';
import { runSentence } from '../session/sentence.ts';
import type { Session } from '../session/session.ts';
import { type BenchSettings, naturalFrequencyHz } from '../session/settings.ts';
import { STARTING_BENCHES } from '../session/starting-benches.ts';
import type { CautionName } from '../ui/caution-note.ts';
import type { LessonSheetView } from '../ui/lesson-sheet.ts';
import type { PlainFigures } from '../ui/plain-words.ts';
import type { SpanFigures } from '../ui/span-figures.ts';
import type { HandlingName } from '../ui/ui-events.ts';
import { quantityText } from '../units/quantity-text.ts';
import type { PageState } from './page-state.ts';
import { PLACES, shortName } from './places.ts';
import { sliders } from './slider-specs.ts';

/** What the template needs beside the state. */
export interface ViewContext {
  readonly session: Session;
  readonly slowed: number;
  readonly paused: boolean;
  readonly active: HandlingName | undefined;
  readonly span: SpanFigures | undefined;
  readonly undoWhat: string;
  readonly redoWhat: string;
  readonly sentence: string;
  /** Undefined until the lessons have been fetched. */
  readonly lessons: LessonSheetView | undefined;
  /** Mass and pen are covered until a prediction is stored. */
  readonly covered: boolean;
}

/** The short way in stands where the lessons stand later: two tabs less to choose from. */
const WAY_IN = { id: 'start', name: 'Start', hasTab: true };
const LESSONS = { id: 'lesson', name: 'Lesson', hasTab: true };
const SHEETS = [
  { id: 'element', name: 'Element', hasTab: true },
  { id: 'read-out', name: 'Read-out', hasTab: true },
  { id: 'place', name: 'Place', hasTab: true },
  { id: 'records', name: 'Runs', hasTab: true },
  { id: 'words', name: 'Words', hasTab: false },
];

const SUBJECTS = {
  'table-top': 'spring arm in a falling case',
  stiff: 'stiff coil in a falling case',
  chip: 'chip, drawn very large',
} as const;

export function benchView(state: PageState, context: ViewContext): TemplateResult {
  const { session } = context;
  const { settings, bench } = session;
  return html`<bench-layout ?second=${state.secondPaper !== undefined} ?folded=${state.folded} ?stage=${state.stage}>
    <bench-head
      slot="head"
      .subject=${SUBJECTS[settings.bench]}
      .gravity=${quantityText(settings.gravityMS2, 'acceleration', 'm/s²')}
      .place=${shortName(state.place)}
      .theme=${state.theme}
      ?stage=${state.stage}
    ></bench-head>
    <run-keys slot="run" .undoWhat=${context.undoWhat} .redoWhat=${context.redoWhat}></run-keys>
    ${folder(state, context)}
    <line-legend
      slot="legend"
      .lines=${state.lines}
      .unit=${state.unit}
      .range=${state.range}
      ?marks=${state.drag === 'mark'}
    ></line-legend>
    <div slot="paper" class="paper-host"></div>
    <pen-rule slot="rule" .unit=${state.unit === 'g_n' ? 'g' : 'm/s²'}></pen-rule>
    <reading-figure slot="reading" ?hidden=${context.covered}></reading-figure>
    <canvas slot="riding" class="riding-canvas" aria-label="Inside the housing" role="img"></canvas>
    <scene-labels slot="riding" class="riding-labels"></scene-labels>
    ${context.covered ? html`<cover-sheet slot="riding" words="Covered until your prediction is stored."></cover-sheet>` : nothing}
    <canvas slot="room" class="room-canvas" aria-label="The room" role="img"></canvas>
    <scene-labels slot="room" class="room-labels"></scene-labels>
    <sign-line slot="sign" ?turned=${state.signTurned} ?across=${settings.senses !== 'up and down'} ?hidden=${context.covered}></sign-line>
    ${slip(state, context)} ${secondPaper(state)}
    ${caution(cautionFor(state.handling))}
    <handling-keys slot="handling" .active=${context.active} ?letters=${state.letters}></handling-keys>
    <handling-words
      slot="how"
      .handling=${state.handling}
      .values=${{ ...state.fields, 'drop.height': settings.dropHeightM }}
      .recordName=${state.record?.motion ? state.record.choice.fileName : ''}
    ></handling-words>
    <run-sentence slot="sentence" .sentence=${state.notice || context.sentence}></run-sentence>
    <speed-lever slot="speed" .slowdown=${context.slowed}></speed-lever>
    <pause-keys slot="pace" ?paused=${context.paused} ?letters=${state.letters}></pause-keys>
    ${sliders(bench, settings, ['mass', 'frequency', 'damping']).map(
      (spec) => html`<quantity-slider
        slot="settings"
        .name=${spec.name}
        .label=${spec.name === 'frequency' ? 'swings at' : spec.name === 'damping' ? 'damping' : spec.label}
        .kind=${spec.kind}
        .unit=${spec.unit}
        .value=${live(spec.value)}
        .low=${spec.low}
        .high=${spec.high}
        .spacing=${spec.spacing}
      ></quantity-slider>`,
    )}
    <plain-words slot="words" .figures=${plainFigures(settings)}></plain-words>
    <p slot="stage">${bench.line}</p>
    <help-note slot="help"></help-note>
  </bench-layout>`;
}

function folder(state: PageState, { session, sentence, lessons }: ViewContext): TemplateResult {
  const { settings, bench } = session;
  const { readout } = settings;
  const stops = settings.gapM === null ? [] : (['gap', 'restitution'] as const);
  const element = ['mass', state.springBy, 'damping', ...stops] as const;
  return html`<folder-sheets
    slot="folder"
    .sheets=${[state.wayInSkipped ? LESSONS : WAY_IN, ...SHEETS]}
    .open=${state.sheet}
    ?folded=${state.folded}
    ?letters=${state.letters}
  >
    <lesson-sheet slot="lesson" .view=${lessons}>The lessons are being fetched.</lesson-sheet>
    <short-way-in slot="start" .done=${state.firstSteps} .found=${sentence}></short-way-in>
    <element-sheet
      slot="element"
      .benches=${Object.values(STARTING_BENCHES).map((each) => ({
        id: each.name,
        name: capital(each.title),
        figures: plainFigures(each.settings),
      }))}
      .bench=${settings.bench}
      .springBy=${state.springBy}
      .senses=${settings.senses}
      ?stops=${settings.gapM !== null}
      .sliders=${sliders(bench, settings, element)}
    ></element-sheet>
    <read-out-sheet
      slot="read-out"
      ?sampling=${true}
      .sliders=${sliders(bench, settings, ['readout.rate', 'readout.range'])}
      .bits=${readout.bits}
      .stepMS2=${readout.bits && readout.range ? (2 * readout.range) / 2 ** readout.bits : undefined}
    ></read-out-sheet>
    <place-sheet
      slot="place"
      .places=${PLACES}
      .place=${state.place}
      .gravity=${settings.gravityMS2}
      .latitude=${state.latitude}
      .height=${state.placeHeightM}
      ?air=${settings.air !== null}
      .drop=${sliders(bench, settings, ['drop.height'])}
      .pad=${sliders(bench, settings, ['pad.stiffness', 'pad.damping', 'pad.friction'])}
    ></place-sheet>
    <records-sheet
      slot="records"
      .record=${state.record?.choice}
      .kept=${session.keptRuns.map(keptRunWords)}
      .note=${state.runNote}
    ></records-sheet>
    <div slot="words" class="two-sheets">
      <glossary-sheet .terms=${GLOSSARY} .sought=${state.sought}></glossary-sheet>
      <physics-sheet></physics-sheet>
    </div>
  </folder-sheets>`;
}

/** The second paper, over the room while it is unrolled. */
function secondPaper({ secondPaper: subject, paperFound }: PageState): TemplateResult | typeof nothing {
  if (subject === undefined) return nothing;
  return html`<second-paper slot="second" .subject=${subject} .found=${paperFound}>
    <div slot="left" class="graph-left"></div>
    <div slot="right" class="graph-right"></div>
  </second-paper>`;
}

/** The slip under the tape: there when something is marked or waited for. */
function slip({ trigger, looping, marked }: PageState, { span }: ViewContext): TemplateResult | typeof nothing {
  if (!marked && !trigger.armed) return nothing;
  return html`<span-figures
    slot="slip"
    .span=${span}
    ?looping=${looping}
    .trigger=${{
      ...trigger,
      lines: [
        { id: 'felt', name: 'what happened' },
        { id: 'mass', name: 'what the mass did' },
      ],
    }}
  ></span-figures>`;
}

export function plainFigures(settings: BenchSettings): PlainFigures {
  const { massKg, stiffnessNM, dampingRatio, gapM } = settings;
  const figures = elementFigures(naturalFrequencyHz(massKg, stiffnessNM), dampingRatio, gapM);
  return {
    ringsHz: figures.ringsAtHz,
    sagM: figures.sagPerGM,
    settlesS: figures.settlesS,
    settleBand: SETTLING_BAND,
    rangeMS2: figures.reachesStopMS2,
  };
}

/** What a kept run was, for the list: "12.3 s. Fell 0.286 s, …" */
function keptRunWords(run: BenchRun): string {
  const { world } = run;
  const sentence = runSentence(world.events.all, (timeS) => run.readingAt(timeS));
  return `${quantityText(world.timeS, 'time')}. ${sentence || 'Nothing was let go.'}`;
}

function caution(about: CautionName | undefined): TemplateResult | typeof nothing {
  return about === undefined ? nothing : html`<caution-note slot="caution" .about=${about}></caution-note>`;
}

function cautionFor(handling: HandlingName): CautionName | undefined {
  if (handling === 'shake' || handling === 'recorded') return 'shake';
  if (handling === 'throw' || handling === 'spin') return handling;
  // Nobody was ever hurt by carrying or tilting it.
  return handling === 'tilt' || handling === 'move' ? undefined : 'drop';
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
