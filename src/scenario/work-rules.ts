/** Bounds of the work that a run may make: what a slip of unit or of a power of ten would turn into hours. */
import { pathTo, type Report } from './fault.ts';
import type { LooseScenario, MotionValue } from './keys.ts';
import type { Loose } from './schema.ts';

/** Most ticks, rows and samples of a run: minutes of work, and files that other programs still open. */
const MOST_TICKS = 1e8;
const MOST_ROWS = 1e7;
/** Most rows and samples in one tick, after which alone they are passed on. */
const MOST_ROWS_PER_TICK = 1e4;

/** Contact and turning are stepped more finely than the tick: largest product of a rate and the tick [–, rad]. */
const MOST_PAD_RATE = 100;
const MOST_TURN_PER_TICK = 20;

export function checkWork(scenario: LooseScenario, report: Report): void {
  const { duration, tick, record, elements } = scenario;
  if (duration !== undefined && tick !== undefined && duration / tick > MOST_TICKS) {
    report(
      'tick',
      `${tick}: ${Math.ceil(duration / tick)} ticks in ${duration} s`,
      `at most ${MOST_TICKS} ticks (duration/tick)`,
    );
  }
  checkRate('record.rate', 'rows', record?.rate, duration, tick, report);
  for (const [i, element] of (elements ?? []).entries()) {
    checkRate(`elements[${i}].readout.rate`, 'samples', element?.readout?.rate, duration, tick, report);
  }
  if (tick !== undefined) checkSteps(scenario, tick, report);
}

function checkRate(
  path: string,
  what: string,
  rate: number | undefined,
  duration: number | undefined,
  tick: number | undefined,
  report: Report,
): void {
  if (rate === undefined) return;
  if (duration !== undefined && duration * rate > MOST_ROWS) {
    report(
      path,
      `${rate}: ${Math.ceil(duration * rate)} ${what} in ${duration} s`,
      `at most ${MOST_ROWS} ${what} (duration·rate)`,
    );
  }
  if (tick !== undefined && tick * rate > MOST_ROWS_PER_TICK) {
    report(
      path,
      `${rate}: ${Math.ceil(tick * rate)} ${what} in a tick`,
      `at most ${MOST_ROWS_PER_TICK} ${what} in a tick (tick·rate)`,
    );
  }
}

function checkSteps({ housing, motions, changes }: LooseScenario, tick: number, report: Report): void {
  const mass = housing?.mass;
  for (const [i, motion] of (motions ?? []).entries()) {
    const path = pathTo('motions', i);
    if (motion?.kind === 'free') {
      checkPad(motion.pad, mass, tick, pathTo(path, 'pad'), report);
      for (const [axis, rate] of (motion.spin ?? []).entries())
        checkTurn(rate, tick, pathTo(pathTo(path, 'spin'), axis), report);
    } else if (motion?.kind === 'spin') checkTurn(motion.rate, tick, pathTo(path, 'rate'), report);
  }
  for (const [i, change] of (changes ?? []).entries()) {
    checkPad(change?.pad ?? undefined, mass, tick, pathTo(pathTo('changes', i), 'pad'), report);
  }
}

type LoosePad = Loose<NonNullable<Extract<MotionValue, { kind: 'free' }>['pad']>>;

function checkPad(
  pad: LoosePad | undefined,
  mass: number | undefined,
  tick: number,
  path: string,
  report: Report,
): void {
  if (pad === undefined || mass === undefined) return;
  const { stiffness, damping } = pad;
  const rate = MOST_PAD_RATE / tick;
  if (stiffness !== undefined && stiffness > mass * rate * rate) {
    report(
      `${path}.stiffness`,
      `${stiffness}`,
      `at most ${mass * rate * rate} N/m: √(stiffness/mass)·tick ≤ ${MOST_PAD_RATE}`,
    );
  }
  if (damping !== undefined && damping > mass * rate) {
    report(`${path}.damping`, `${damping}`, `at most ${mass * rate} N·s/m: damping/mass·tick ≤ ${MOST_PAD_RATE}`);
  }
}

function checkTurn(rate: number | undefined, tick: number, path: string, report: Report): void {
  if (rate === undefined || Math.abs(rate) * tick <= MOST_TURN_PER_TICK) return;
  report(path, `${rate}`, `at most ${MOST_TURN_PER_TICK / tick} rad/s: ${MOST_TURN_PER_TICK} rad in a tick`);
}
