/** Bounds of the work that a run may make: what a slip of unit or of a power of ten would turn into hours. */
import { pathTo, type Report } from './fault.ts';
import type { ElementValue, LooseScenario, MotionValue } from './keys.ts';
import type { Loose } from './schema.ts';

/** Most ticks, rows and samples of a run: minutes of work, and files that other programs still open. */
const MOST_TICKS = 1e8;
const MOST_ROWS = 1e7;
/** Most rows and samples in one tick, after which alone they are passed on. */
const MOST_ROWS_PER_TICK = 1e4;

/** Springs that are searched for stops or stepped: most of their own phase in a tick [rad]. */
const MOST_PHASE_PER_TICK = 3000;
/** Specific force that a cubic spring without stops is taken to bear [m/s²]: some 1000 g. */
const LARGEST_FELT = 1e4;

/** Contact and turning are stepped more finely than the tick: largest product of a rate and the tick [–, rad]. */
const MOST_PAD_RATE = 100;
/** Speed at which the drag of the air is judged [m/s]: that after a fall of 5 m. */
const DRAG_SPEED = 10;
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

function checkSteps({ housing, elements, motions, changes }: LooseScenario, tick: number, report: Report): void {
  for (const [i, element] of (elements ?? []).entries()) {
    if (element !== undefined) checkPhase(element, tick, pathTo('elements', i), report);
  }
  const mass = housing?.mass;
  for (const [i, motion] of (motions ?? []).entries()) {
    const path = pathTo('motions', i);
    if (motion?.kind === 'free') {
      checkPad(motion.pad, mass, tick, pathTo(path, 'pad'), report);
      checkDrag(motion.airDrag, mass, tick, pathTo(path, 'airDrag'), report);
      for (const [axis, rate] of (motion.spin ?? []).entries())
        checkTurn(rate, tick, pathTo(pathTo(path, 'spin'), axis), report);
    } else if (motion?.kind === 'spin') checkTurn(motion.rate, tick, pathTo(path, 'rate'), report);
  }
  const current = new Map((elements ?? []).map((element) => [element?.name, element]));
  for (const [i, change] of (changes ?? []).entries()) {
    const path = pathTo('changes', i);
    checkPad(change?.pad ?? undefined, mass, tick, pathTo(path, 'pad'), report);
    const element = current.get(change?.element);
    if (change?.set === undefined || element === undefined) continue;
    const given = Object.entries(change.set).filter(([, value]) => value !== undefined);
    const changed: typeof element = {
      ...element,
      ...Object.fromEntries(given.map(([key, value]) => [key, value ?? undefined])),
    };
    current.set(change.element, changed);
    checkPhase(changed, tick, pathTo(path, 'set'), report);
  }
}

/**
 * A single linear spring without stops is exact over any tick; others are looked at in steps of their own time. The
 * cubic spring's rate is √(3κ)·x at most, with x the gap, or without one where κx³ bears the largest force.
 */
function checkPhase(element: Loose<ElementValue>, tick: number, path: string, report: Report): void {
  const { naturalFrequency, gap, cubicStiffness = 0, modes, mount } = element;
  const stepped = gap !== undefined || cubicStiffness > 0;
  const fastest = Math.max(
    naturalFrequency ?? 0,
    mount?.naturalFrequency ?? 0,
    ...(modes ?? []).map((mode) => mode?.naturalFrequency ?? 0),
  );
  const most = MOST_PHASE_PER_TICK / tick;
  if (stepped && 2 * Math.PI * fastest > most) {
    const limit = most / (2 * Math.PI);
    report(
      `${path}.naturalFrequency`,
      `${fastest} Hz as the highest`,
      `at most ${limit} Hz with stops or a cubic spring: ${MOST_PHASE_PER_TICK} rad in a tick`,
    );
  }
  const largest = gap === undefined ? mostWithoutStops(most) : (most * most) / (3 * gap * gap);
  if (cubicStiffness > largest) {
    report(
      `${path}.cubicStiffness`,
      `${cubicStiffness}`,
      `at most ${largest} 1/(m²·s²) for this gap and tick: ${MOST_PHASE_PER_TICK} rad in a tick`,
    );
  }
}

/** κ whose √(3κ)·x is `rate` where κx³ = F: x² = rate²/3κ, so κ²·(rate²/3κ)³ = F² and κ = rate⁶/(27F²). */
function mostWithoutStops(rate: number): number {
  const square = rate * rate;
  return (square * square * square) / (27 * LARGEST_FELT * LARGEST_FELT);
}

type LooseFree = Loose<Extract<MotionValue, { kind: 'free' }>>;

/** The drag ½ρcAv² brakes at the rate ρcAv/m. */
function checkDrag(
  drag: LooseFree['airDrag'],
  mass: number | undefined,
  tick: number,
  path: string,
  report: Report,
): void {
  if (drag?.area === undefined || drag.coefficient === undefined || drag.airDensity === undefined || !mass) return;
  const loss = drag.area * drag.coefficient * drag.airDensity;
  const most = (mass * MOST_PAD_RATE) / (tick * DRAG_SPEED);
  if (loss > most) {
    const limit = `at most ${most} kg/m for this mass and tick`;
    report(path, `area·coefficient·airDensity of ${loss} kg/m`, limit);
  }
}

function checkPad(pad: LooseFree['pad'], mass: number | undefined, tick: number, path: string, report: Report): void {
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
