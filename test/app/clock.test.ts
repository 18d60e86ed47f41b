import { expect, it } from 'vitest';
import { Clock } from '../../src/app/clock.ts';

it('goes slowed, but as in life up to an instant, whenever it is looked at', () => {
  const clock = new Clock(10);
  clock.set(1, 0);
  clock.start(0);
  expect(clock.runTimeOf(500)).toBeCloseTo(1.05, 12);
  clock.hurryTo(3.05, 500);
  // 2 s as in life, then a tenth of what is left.
  expect(clock.runTimeOf(1500)).toBeCloseTo(2.05, 12);
  expect(clock.runTimeOf(2500)).toBeCloseTo(3.05, 12);
  expect(clock.runTimeOf(3500)).toBeCloseTo(3.15, 12);
  // Stopped and started on the way it goes on likewise.
  clock.stop(1500);
  clock.start(9000);
  expect(clock.runTimeOf(10_500)).toBeCloseTo(3.1, 12);
});

it('a new run knows nothing of the hurry of the last', () => {
  const clock = new Clock(10);
  clock.set(0, 0);
  clock.start(0);
  clock.hurryTo(5, 0);
  clock.set(0, 100);
  expect(clock.runTimeOf(1100)).toBeCloseTo(0.1, 12);
});
