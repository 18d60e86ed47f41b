import { describe, expect, it } from 'vitest';
import { ScriptedBench } from './support/scripted-bench.ts';
import { textFaults } from './support/text-faults.ts';

const SIZES = [
  [1440, 900],
  [1366, 768],
  [1024, 768],
  [390, 844],
] as const;
const SHEETS = ['start', 'element', 'read-out', 'place', 'records', 'words', 'lesson'];

/** Frames until what was told shows: a changed size is measured between two frames of the browser's own. */
async function shown(bench: ScriptedBench): Promise<void> {
  for (let k = 0; k < 2; k += 1) {
    await bench.frames(bench.wallMs + 300, 20);
    await bench.page.evaluate(
      () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
    );
  }
  await bench.frames(bench.wallMs + 300, 20);
}

const HANDLINGS = ['hold', 'drop', 'shake', 'tilt', 'throw', 'move', 'push', 'spin', 'recorded'];

describe.each(SIZES)('at %i × %i no words are cut, outside or over others', (width, height) => {
  it('on any sheet', async () => {
    const bench = await ScriptedBench.open({ width, height });
    const faults: string[] = [];
    for (const sheet of SHEETS) {
      await bench.tell('act', { what: 'open sheet', sheet });
      await shown(bench);
      faults.push(...(await textFaults(bench.page)).map((fault) => `${sheet}: ${fault}`));
    }
    for (const subject of ['frequency', 'step', 'landing']) {
      await bench.tell('act', { what: 'second paper', subject });
      await shown(bench);
      faults.push(...(await textFaults(bench.page)).map((fault) => `second paper, ${subject}: ${fault}`));
    }
    expect(faults).toEqual([]);
  });

  it('in any handling, in the fall, after the landing, with a marked span and the trigger armed', async () => {
    const bench = await ScriptedBench.open({ width, height });
    const faults: string[] = [];
    const look = async (where: string): Promise<void> => {
      await shown(bench);
      faults.push(...(await textFaults(bench.page)).map((fault) => `${where}: ${fault}`));
    };
    for (const handling of HANDLINGS) {
      await bench.tell('act', { what: 'show handling', handling });
      await look(handling);
    }
    await bench.letter('d');
    await bench.frames(bench.wallMs + 1500, 20);
    await look('fall');
    await bench.frames(bench.wallMs + 4000, 10);
    await look('landed');
    await bench.tell('act', { what: 'arm trigger', on: true });
    await look('trigger');
    await bench.page.evaluate(() => window.benchScript!.page.change({ marked: { fromS: 0.1, toS: 0.3 } }));
    await look('marked');
    expect(faults).toEqual([]);
  });
});
