import type { MotionSpec, PadSpec } from '../../src/contract/motion.ts';
import type { ElementSpec, RunSpec } from '../../src/contract/run.ts';

/** A run for tests: uneven numbers throughout, so that nothing hides behind round ones. */
export function runSpec(changed: Partial<RunSpec> = {}): RunSpec {
  return {
    seed: 1,
    gravity: 9.80665,
    duration: 1,
    tick: 1 / 7300,
    temperature: 293.15,
    record: { rate: 997 },
    housing: { mass: 0.5, size: [0.12, 0.06, 0.2] },
    elements: [elementSpec()],
    motions: [held(0)],
    changes: [],
    ...changed,
  };
}

export function elementSpec(changed: Partial<ElementSpec> = {}): ElementSpec {
  return {
    name: 'z',
    axis: [0, 1, 0],
    at: [0, 0, 0],
    naturalFrequency: 10,
    dampingRatio: 0.05,
    staticRemainder: 0,
    restitution: 0.5,
    cubicStiffness: 0,
    thermalNoise: false,
    fieldAtMass: false,
    ...changed,
  };
}

export const held = (from: number): MotionSpec => ({ kind: 'held', from, within: 0.2 });

export const PAD: PadSpec = { stiffness: 20_000, damping: 10, friction: 0.5 };

export const free = (from: number, height?: number, pad: PadSpec | undefined = PAD): MotionSpec => ({
  kind: 'free',
  from,
  height,
  pad,
});
