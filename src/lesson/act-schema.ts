/** The shapes of settings and of what can be done at the bench. */
import { isMap, isScalar, type Node } from 'yaml';
import type { PreparedAct } from '../contract/lesson.ts';
import {
  isLessonSetting,
  LESSON_SETTINGS,
  type LessonSetting,
  type LessonSettingName,
  type LessonSettings,
} from './bench-setup.ts';
import type { Action } from './lesson.ts';
import {
  dictionary,
  foundIn,
  into,
  may,
  need,
  oneOf,
  onlyThese,
  type Place,
  prose,
  quantity,
  record,
  refuse,
  type Shape,
  trueOrFalse,
  variant,
  wholeNumber,
  without,
} from './yaml-shapes.ts';

const LONGEST_S = 600;
const frequency = quantity('frequency', 0.05, 20_000);
const strength = quantity('acceleration', 0, 1000);

export const lessonSettings: Shape<LessonSettings> = (node, place) => {
  const read = dictionary((name) => (isLessonSetting(name) ? setting(name) : undefined), SETTINGS_ALLOWED)(node, place);
  return read as LessonSettings | undefined;
};

const SETTINGS_ALLOWED = `settings by name: ${Object.keys(LESSON_SETTINGS).join(', ')}`;

function setting(name: LessonSettingName): Shape<number> {
  const { quantity: of, isSwitch, low, high }: LessonSetting = LESSON_SETTINGS[name];
  return isSwitch ? into(trueOrFalse, Number) : quantity(of.kind, low, high);
}

/** What can be done at the bench, by the name in `act`; the fields are those of the page's handling sentence. */
const ACTS: Readonly<Record<ActName, Shape<PreparedAct>>> = {
  hold: into(record({ by: may(oneOf(['clamp', 'hand'])) }), ({ by }) =>
    handle('hold', { 'hold.by': by ?? 'clamp', 'hold.within': 0.2 }),
  ),
  drop: into(record({}), () => handle('drop', {})),
  throw: into(record({ speed: need(quantity('speed', 0.1, 6)) }), ({ speed }) =>
    handle('throw', { 'throw.speed': speed }),
  ),
  shake: into(record({ frequency: need(frequency), strength: need(strength) }), (read) =>
    handle('shake', {
      'shake.law': 'sine',
      'shake.direction': 'up and down',
      'shake.frequency': read.frequency,
      'shake.strength': read.strength,
    }),
  ),
  sweep: into(
    record({
      from: need(frequency),
      to: need(frequency),
      over: need(quantity('time', 0.1, LONGEST_S)),
      strength: need(strength),
    }),
    ({ from, to, over, strength }) =>
      handle('shake', {
        'shake.law': 'sweep',
        'shake.direction': 'up and down',
        'shake.sweepFrom': from,
        'shake.sweepTo': to,
        'shake.over': over,
        'shake.strength': strength,
      }),
  ),
  lift: into(
    record({ by: need(quantity('length', 0.001, 10)), over: need(quantity('time', 0.02, LONGEST_S)) }),
    ({ by, over }) => handle('move', { 'move.direction': 'up', 'move.distance': by, 'move.over': over }),
  ),
  tilt: into(
    record({ angle: need(quantity('angle', 0, Math.PI)), over: need(quantity('time', 0.05, LONGEST_S)) }),
    ({ angle, over }) => handle('tilt', { 'tilt.direction': 'right', 'tilt.angle': angle, 'tilt.over': over }),
  ),
  mark: into(record({}), () => ({ act: 'mark' })),
  'pull back': into(record({}), () => ({ act: 'pull back' })),
  slow: into(record({ to: need(wholeNumber(1, 10_000)) }), ({ to }) => ({ act: 'slow', factor: to })),
  set: into(record({ settings: need(wantedSettings) }), ({ settings }) => ({
    act: 'set',
    settings: Object.fromEntries(settings),
  })),
};

type ActName = 'hold' | 'drop' | 'throw' | 'shake' | 'sweep' | 'lift' | 'tilt' | 'mark' | 'pull back' | 'slow' | 'set';
type Handled = Extract<PreparedAct, { act: 'handle' }>;

function handle(handling: Handled['handling'], fields: Handled['fields']): PreparedAct {
  return { act: 'handle', handling, fields };
}

/** A setting's value, or `yours` where the learner chooses. */
function wantedSettings(node: Node | null, place: Place) {
  return dictionary<number | null>((name) => {
    if (!isLessonSetting(name)) return undefined;
    const given = setting(name);
    return (value, at) => (isScalar(value) && value.value === 'yours' ? null : given(value, at));
  }, SETTINGS_ALLOWED)(node, place);
}

export const prepared: Shape<PreparedAct> = variant('act', ACTS);

export const action: Shape<Action> = (node, place) => {
  if (!isMap(node)) return refuse(node, place, foundIn(node), 'act and words');
  const words = need(prose);
  const read = record({ words })(onlyThese(node, 'words'), place);
  const act = prepared(without(node, 'words'), place);
  return read && act && { words: read.words, prepared: act };
};
