import { expect, it } from 'vitest';
import { type Fault, faultSentence } from '../../src/scenario/fault.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { type Chance, chance } from './support/chance.ts';
import { FILES, fullScenario } from './support/full-scenario.ts';
import { randomScenario } from './support/random-scenario.ts';

const JUNK: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  1e308,
  -1e-308,
  1.5,
  '',
  'x',
  'held',
  'constructor',
  [],
  {},
  [[]],
  [0, 0, 0],
  [1, 2, 3, 4],
  { kind: 'free' },
  { axis: 1 },
];
const KEYS = ['from', 'kind', 'axis', 'pad', 'gap', '__proto__', 'toString', 'rate', 'x', ''];

type Nodes = { readonly holder: Record<string, unknown>; readonly key: string }[];

/** Every place in the data that holds a value. */
function places(data: unknown, into: Nodes = []): Nodes {
  if (data === null || typeof data !== 'object') return into;
  for (const key of Object.keys(data)) {
    into.push({ holder: data as Record<string, unknown>, key });
    places((data as Record<string, unknown>)[key], into);
  }
  return into;
}

/** One to four wounds: values replaced, keys gone, renamed or added, lists reversed, and slips in the text. */
function broken(whole: object, random: Chance): string {
  const data = structuredClone(whole);
  for (let wounds = random.whole(1, 4); wounds > 0; wounds--) {
    const { holder, key } = random.pick(places(data));
    const value = holder[key];
    switch (random.whole(0, 5)) {
      case 0:
        holder[key] = structuredClone(random.pick(JUNK));
        break;
      case 1:
        if (!Array.isArray(holder)) delete holder[key];
        break;
      case 2:
        if (!Array.isArray(holder)) holder[random.pick(KEYS)] = structuredClone(value);
        break;
      case 3:
        if (Array.isArray(value)) value.reverse();
        break;
      case 4:
        if (typeof value === 'number') holder[key] = value * random.pick([-1, 1e-12, 1e12, 1e300, 0.5, 2]);
        break;
      default:
        if (Array.isArray(value)) value.push(structuredClone(value[0]));
    }
  }
  const text = JSON.stringify(data);
  if (random.unit() < 0.85) return text;
  const at = random.whole(0, text.length);
  return (
    text.slice(0, at) +
    random.pick(['', ',', '"', '}', ']', '1e999', '\u0000', '\\', ' ']) +
    text.slice(at + random.whole(0, 2))
  );
}

it('10 000 broken scenarios: each is a run or has faults in sentences of one line (seed 1)', () => {
  const random = chance(1);
  let sound = 0;
  for (let n = 0; n < 10_000; n++) {
    const text = broken(random.unit() < 0.3 ? fullScenario() : randomScenario(random), random);
    const { run, faults } = parseScenario(text, FILES);
    if (run !== undefined) sound += 1;
    else if (faults.length === 0 || !faults.every(isSound)) {
      throw new Error(`${faults.map(faultSentence).join('\n') || 'no run and no fault'}\n${text}`);
    }
  }
  // Both ways are taken often: the wounds neither always kill nor always miss.
  expect(sound).toBeGreaterThan(1000);
  expect(sound).toBeLessThan(9000);
}, 120_000);

/** All three parts are there, on one line, and nothing of the program shows through. */
function isSound(fault: Fault): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are looked for
  const broken = /[\u0000-\u001f]|undefined|\[object/.test(faultSentence(fault));
  return fault.path !== '' && fault.found !== '' && fault.allowed !== '' && !broken;
}
