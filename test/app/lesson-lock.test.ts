import { describe, expect, it } from 'vitest';
import { settingTouchesBench, touchesBench } from '../../src/app/lesson-lock.ts';

describe('until a prediction is stored', () => {
  it.each(['go on', 'one tick on', 'fresh run', 'clear', 'undo', 'redo'] as const)('%s waits', (what) => {
    expect(touchesBench({ what })).toBe(true);
  });

  it('handling waits, looking around does not', () => {
    expect(touchesBench({ what: 'handle', handling: 'drop' })).toBe(true);
    expect(touchesBench({ what: 'starting bench', bench: 'chip' })).toBe(true);
    expect(touchesBench({ what: 'open sheet', sheet: 'words' })).toBe(false);
    expect(touchesBench({ what: 'show handling', handling: 'drop' })).toBe(false);
    expect(touchesBench({ what: 'pause' })).toBe(false);
    expect(touchesBench({ what: 'lesson', wish: { wish: 'leave' } })).toBe(false);
  });

  it('what stands on the bench stays as it was laid; how it is looked at does not matter', () => {
    for (const name of ['mass', 'damping', 'gravity', 'drop.height', 'pad.stiffness', 'place', 'air', 'readout.bits'])
      expect(settingTouchesBench(name), name).toBe(true);
    for (const name of ['slowdown', 'throw.speed', 'readout.on', 'springBy', 'trigger.level'])
      expect(settingTouchesBench(name), name).toBe(false);
  });
});
