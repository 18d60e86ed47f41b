import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { runScenario } from '../../src/scenario/simulate.ts';
import { World } from '../../src/world/world.ts';
import { accessibilityFaults } from './support/accessibility.ts';
import { type Measured, ScriptedBench } from './support/scripted-bench.ts';

const SMALL = { width: 1024, height: 768 };

/** Pen, mass and newest ink of a frame, as drawn, against the numbers of the same instant. */
function disagreement(frame: Measured): number {
  const penShould = frame.zeroYPx - frame.reading * frame.pxPerMS2;
  const offset = frame.massYPx - frame.unbentYPx;
  const pen = frame.offPaper ? 0 : Math.abs(frame.penYPx - penShould);
  // The lever: pen offset = −(b/a)·mass offset, whatever the scale.
  const lever = Math.abs(frame.penYPx - frame.zeroYPx + frame.leverRatio * offset);
  return Math.max(pen, lever);
}

describe('what is seen agrees with what is computed', () => {
  it('over 300 frames of hold, drop, landing and tilt: mass, pen and pad within a pixel', async () => {
    const bench = await ScriptedBench.open(SMALL);
    const held = await bench.measure(500, 40);
    await bench.letter('d');
    const fall = await bench.measure(5500, 40);
    await bench.letter('t');
    const tilt = await bench.measure(7500, 40);
    const frames = [...held, ...fall, ...tilt];
    expect(frames.length).toBe(300);
    expect(Math.max(...frames.map(disagreement))).toBeLessThan(1);
    // Sagging (x < 0) it stands below where it is unbent; y counts downward.
    for (const frame of frames.filter(({ deflection }) => deflection < -1e-4))
      expect(frame.massYPx).toBeGreaterThan(frame.unbentYPx);
    const pressed = frames.filter(({ inContact, lowestM }) => inContact && lowestM < 0);
    expect(pressed.length).toBeGreaterThan(4);
    for (const frame of pressed) expect(Math.abs(frame.padTopYPx - frame.lowestYPx)).toBeLessThan(1);
  });

  it('with the sign turned round, pen and mass agree as well', async () => {
    const bench = await ScriptedBench.open(SMALL);
    await bench.tell('act', { what: 'turn sign' });
    await bench.letter('d');
    const frames = await bench.measure(3000, 20);
    for (const frame of frames) {
      const should = frame.zeroYPx - frame.reading * frame.pxPerMS2;
      if (!frame.offPaper) expect(Math.abs(frame.penYPx - should)).toBeLessThan(1);
    }
  });

  it('falling, the well damped model reads zero and its mass stands in the middle', async () => {
    const bench = await ScriptedBench.open(SMALL);
    await bench.tell('act', { what: 'starting bench', bench: 'stiff' });
    await bench.frames(200, 20);
    await bench.letter('d');
    const frames = await bench.measure(3000, 20);
    const late = frames.filter(({ lowestM, inContact }) => !inContact && lowestM < 0.1 && lowestM > 0.01);
    expect(late.length).toBeGreaterThan(2);
    for (const { reading } of late) expect(Math.abs(reading)).toBeLessThan(0.01 * 9.80665);
  });
});

describe('the same bits', () => {
  it('the log of a handled run, exported and run headless, gives the page’s hash', async () => {
    const bench = await ScriptedBench.open(SMALL);
    await bench.grabAndThrow(30);
    await bench.frames(4000, 30);
    const { text, hash } = await bench.exported();
    const { run } = parseScenario(text, { readFile: () => '' });
    const world = new World(run!);
    world.runTo(run!.duration);
    expect(world.hash).toBe(hash);
    let rows = 0;
    const count = (): void => {
      rows += 1;
    };
    expect(runScenario(text, { readFile: () => '' }, { row: count })).toEqual([]);
    expect(rows).toBe(world.rowCount);
  });
});

describe('without graphics', () => {
  it('the flat drawing takes over from the start: the main job works', async () => {
    const bench = await ScriptedBench.open({ ...SMALL, webgl: false });
    await bench.frames(500, 20);
    await bench.letter('d');
    const frames = await bench.measure(6000, 20);
    expect(Math.max(...frames.map(disagreement))).toBeLessThan(1);
    expect(frames.some(({ inContact }) => inContact)).toBe(true);
  });

  it('a context lost in mid-fall is replaced by the flat drawing at the same instant', async () => {
    const bench = await ScriptedBench.open(SMALL);
    await bench.letter('d');
    await bench.frames(1200, 20);
    await bench.page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('.riding-canvas')!;
      canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext();
      return new Promise<void>((done) => setTimeout(done, 100));
    });
    const frames = await bench.measure(6000, 20);
    expect(Math.max(...frames.map(disagreement))).toBeLessThan(1);
    expect(frames.some(({ inContact }) => inContact)).toBe(true);
  });
});

describe('access', () => {
  it.each([
    ['the bench', {}],
    ['the evening bench', { theme: true }],
  ])('axe-core finds nothing in %s', async (_, { theme }: { theme?: boolean }) => {
    const bench = await ScriptedBench.open(SMALL);
    if (theme) await bench.tell('act', { what: 'theme', theme: 'evening' });
    await bench.frames(300, 20);
    expect(await accessibilityFaults(bench.page)).toEqual([]);
  });

  it.each([
    [1440, 900],
    [1366, 768],
    [1024, 768],
  ])('at %i × %i nothing scrolls and nothing leaves the screen', async (width, height) => {
    const bench = await ScriptedBench.open({ width, height });
    await bench.frames(300, 20);
    const beyond = await bench.page.evaluate(() => {
      const { scrollWidth, scrollHeight } = document.documentElement;
      return [scrollWidth - window.innerWidth, scrollHeight - window.innerHeight];
    });
    expect(Math.max(...beyond)).toBeLessThanOrEqual(0);
  });

  it('on a phone nothing is wider than the screen and at least 96 px of the inside show beside the tape', async () => {
    const bench = await ScriptedBench.open({ width: 390, height: 844 });
    await bench.frames(300, 20);
    const [beyond, inside] = await bench.page.evaluate(() => {
      const layout = document.querySelector('bench-layout')!;
      const rule = layout.box('rule');
      return [document.documentElement.scrollWidth - window.innerWidth, window.innerWidth - rule.left];
    });
    expect(beyond).toBeLessThanOrEqual(0);
    expect(inside).toBeGreaterThanOrEqual(96);
  });
});

it('the second paper says what the element answers, and follows the slider', async () => {
  const bench = await ScriptedBench.open({ width: 1440, height: 900 });
  await bench.tell('act', { what: 'second paper', subject: 'step' });
  await bench.frames(200, 20);
  const found = () => bench.page.evaluate(() => window.benchScript!.page.state.paperFound);
  await bench.page.waitForFunction(() => window.benchScript!.page.state.paperFound !== '');
  // Overshoot exp(−πζ/√(1 − ζ²)) of ζ = 0.12: 68.4 %; of ζ = 0.5: 16.3 % (K. Ogata, Modern Control Engineering, from memory).
  expect(await found()).toMatch(/^Shoots over by 68\.4 %/);
  await bench.tell('setting', { name: 'damping', value: 0.5, final: false });
  await bench.frames(400, 20);
  await bench.page.waitForFunction(() => !window.benchScript!.page.state.paperFound.includes('68.4'));
  expect(await found()).toMatch(/^Shoots over by 16\.3 %/);
});
