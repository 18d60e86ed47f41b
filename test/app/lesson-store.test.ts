import { describe, expect, it } from 'vitest';
import { lessonLeftOpen } from '../../src/app/device-storage.ts';
import { type KeptLesson, LessonStore } from '../../src/app/lesson-store.ts';
import { NOTHING_DONE } from '../../src/lesson/progress.ts';

/** A storage in memory that takes so many characters in all. */
function storage(room = Number.POSITIVE_INFINITY): Storage {
  const entries = new Map<string, string>();
  return {
    get length() {
      return entries.size;
    },
    key: (index) => [...entries.keys()][index] ?? null,
    getItem: (key) => entries.get(key) ?? null,
    setItem: (key, text) => {
      if (text.length > room) throw new DOMException('full', 'QuotaExceededError');
      entries.set(key, text);
    },
    removeItem: (key) => void entries.delete(key),
    clear: () => entries.clear(),
  };
}

const INK = Array.from({ length: 201 }, (_, k) => (k < 3 ? null : k / 7));
const KEPT: KeptLesson = {
  progress: {
    format: 1,
    lesson: 'falling',
    open: 'drop',
    steps: {
      drop: {
        ...NOTHING_DONE,
        answers: { seen: { kind: 'number', typed: '1 g', value: 9.80665 } },
        values: { settling: Number.POSITIVE_INFINITY },
        written: 'Ärm „bent“ \u2028 </script>',
      },
    },
  },
  inks: { drop: { trace: INK } },
  drafts: {
    drop: {
      explanation: { kind: 'words', written: 'It is “so” \u2028 because' },
      seen: { kind: 'number', typed: '1.' },
      which: { kind: 'choice', choice: 'zero' },
      trace: {
        kind: 'sketch',
        points: [
          [0, 9.8],
          [0.1, -1.5],
        ],
      },
    },
  },
};

describe('what is kept of a lesson', () => {
  it('comes back as it was, an infinity and odd signs included', () => {
    const store = new LessonStore(storage());
    store.write(KEPT);
    expect(store.read('falling')).toEqual(KEPT);
    expect(store.trouble).toBe('');
  });

  it('is forgotten when asked, and none of another lesson’s', () => {
    const store = new LessonStore(storage());
    store.write(KEPT);
    store.write({ ...KEPT, progress: { ...KEPT.progress, lesson: 'other' } });
    store.forget('falling');
    expect(store.read('falling')).toBeUndefined();
    expect(store.read('other')).toBeDefined();
  });

  it.each([
    ['no JSON', '{'],
    ['null', 'null'],
    ['another format', '{"format":2,"progress":{"format":1,"lesson":"falling","open":"drop","steps":{}},"inks":{}}'],
    ['another lesson', '{"format":1,"progress":{"format":1,"lesson":"x","open":"drop","steps":{}},"inks":{}}'],
    ['no progress', '{"format":1}'],
  ])('%s is not taken, and that is said', (_, text) => {
    const device = storage();
    device.setItem('proof-mass-bench/lesson/falling', text);
    const store = new LessonStore(device);
    expect(store.read('falling')).toBeUndefined();
    expect(store.trouble).toContain('cannot be read');
  });

  it('a line of the pen that cannot be read is left out, the answers are not', () => {
    const device = storage();
    const store = new LessonStore(device);
    store.write({ ...KEPT, inks: { drop: { trace: INK.slice(1) } } });
    expect(store.read('falling')).toEqual({ ...KEPT, inks: { drop: {} } });
  });

  it.each([
    ['there are none', null, {}],
    ['they are no list of names', 7, {}],
    ['one cannot be read', { drop: { a: { kind: 'number', typed: 4 }, b: { kind: 'words' }, c: null } }, { drop: {} }],
    ['a point is none', { drop: { a: { kind: 'sketch', points: [[0]] } } }, { drop: {} }],
  ])('drafts are left out where %s, the answers are not', (_, drafts, read) => {
    const device = storage();
    const store = new LessonStore(device);
    store.write({ ...KEPT, drafts: drafts as unknown as KeptLesson['drafts'] });
    expect(store.read('falling')).toEqual({ ...KEPT, drafts: read });
  });
});

describe('what cannot be kept', () => {
  it('is said when the storage is full, and no more once there is room again', () => {
    const store = new LessonStore(storage(5000));
    store.write({ ...KEPT, inks: { drop: Object.fromEntries(Array.from({ length: 9 }, (_, k) => [`t${k}`, INK])) } });
    expect(store.trouble).toContain('cannot be kept');
    store.write({ ...KEPT, inks: {} });
    expect(store.trouble).toBe('');
  });

  it('is said at once when there is no storage', () => {
    const store = new LessonStore(undefined);
    expect(store.trouble).toContain('cannot be kept');
    store.write(KEPT);
    expect(store.read('falling')).toBeUndefined();
  });
});

it('the lesson that lies open is noted until it is put away', () => {
  const device = storage();
  const store = new LessonStore(device);
  expect(lessonLeftOpen(device)).toBeUndefined();
  store.noteOpen('falling');
  expect(lessonLeftOpen(device)).toBe('falling');
  store.noteOpen(undefined);
  expect(lessonLeftOpen(device)).toBeUndefined();
});
