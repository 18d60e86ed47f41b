import type { PreparedAct } from '../contract/lesson.ts';

const HANDLE_WORDS: Readonly<Record<Extract<PreparedAct, { act: 'handle' }>['handling'], string>> = {
  hold: 'hold it',
  drop: 'drop it',
  throw: 'throw it',
  shake: 'shake it',
  tilt: 'tilt it',
  move: 'move it',
};

/** On the button that does a prepared act for the learner, or leads to where it is done. */
export function preparedWords(act: PreparedAct): string {
  switch (act.act) {
    case 'handle':
      return HANDLE_WORDS[act.handling];
    case 'mark':
      return 'set a mark under the pen';
    case 'pull back':
      return 'pull it back';
    case 'slow':
      return `slow to 1/${act.factor}`;
    case 'set':
      return Object.values(act.settings).every((value) => value === null) ? 'show me where' : 'set it';
  }
}
