/**
 * Takes a lesson as a learner would, on its sheet in the built page: what is done, answered and marked comes from the
 * lesson's own proof, so that no text is written twice.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { projectRoot } from '../../../src/command/install.mjs';
import type { PreparedAct } from '../../../src/contract/lesson.ts';
import { Attempt, type Moment } from '../../../src/lesson/evidence.ts';
import type { Deed, Lesson, LessonStep, SketchQuestion } from '../../../src/lesson/lesson.ts';
import { questionsOf } from '../../../src/lesson/lesson.ts';
import { parseLesson } from '../../../src/lesson/parse-lesson.ts';
import { preparedWords } from '../../../src/ui/prepared-words.ts';
import { keyStep, timeUnit } from '../../../src/ui/sketch-frame.ts';
import type { QuantityKind } from '../../../src/units/unit-table.ts';
import type { Hands } from './hands.ts';
import type { ScriptedBench } from './scripted-bench.ts';

/** Nothing that a lesson waits for comes later than this [s of wall time]: 100 times slower than life, a few seconds. */
const LONGEST_WAIT_S = 1200;
/** Wall time between two looks at the run [ms]. */
const LOOK_EVERY_MS = 1500;
/** Presses of “+” after which an arrow key moves the tape by a few milliseconds. */
const ZOOM_STEPS = 10;
const STEPS_OF_A_PAGE = 10;
/** How a value is typed into the field of a setting, by the setting's name in a lesson; SI. */
const TYPED: Readonly<Record<string, (value: number) => string>> = {
  dampingRatio: String,
  naturalFrequency: (hz) => `${hz} Hz`,
  dropHeight: (m) => `${m} m`,
};

export function readLesson(name: string): Lesson {
  const parsed = parseLesson(readFileSync(join(projectRoot, 'lessons', `${name}.md`), 'utf8'));
  if ('faults' in parsed) throw new Error(JSON.stringify(parsed.faults));
  return parsed.lesson;
}

export class LessonWalk {
  readonly #bench: ScriptedBench;
  readonly #hands: Hands;

  constructor(bench: ScriptedBench, hands: Hands) {
    this.#bench = bench;
    this.#hands = hands;
  }

  /** Every step by its model answer; each must end with its tick and the way on. */
  async take(lesson: Lesson): Promise<void> {
    for (const [index, step] of lesson.steps.entries()) {
      for (const deed of step.proof?.model ?? []) await this.#do(deed, step);
      const next = lesson.steps[index + 1];
      await this.#settle();
      if (next) await this.#hands.press(`Next: ${next.title}`);
      await this.#settle();
    }
  }

  /** Frames in which what was done takes effect and is shown. */
  async #settle(): Promise<void> {
    await this.#bench.runTo(this.#bench.wallMs + 400, 10);
  }

  async #do(deed: Deed, step: LessonStep): Promise<void> {
    const { keyboard } = this.#bench.page;
    switch (deed.deed) {
      case 'act':
        await this.#act(deed.act, step);
        break;
      case 'set':
        for (const [name, value] of deed.settings) {
          if (offersSetting(step, name, value)) {
            await this.#hands.press('set it');
            continue;
          }
          await this.#hands.press('show me where');
          await this.#settle();
          await keyboard.type(TYPED[name]!(value));
          await keyboard.press('Enter');
        }
        break;
      case 'wait': {
        const untilS = (await this.#runS()) + deed.forS;
        await this.#until(async () => (await this.#runS()) >= untilS);
        break;
      }
      case 'wait until':
        await this.#until(async () => {
          const { atS, nowS } = await this.#moment(deed.moment, step);
          return atS !== undefined && atS <= nowS;
        });
        break;
      case 'mark':
        await this.#mark((await this.#moment(deed.at, step)).atS!);
        break;
      case 'choose':
        await this.#hands.choose(deed.choice);
        await this.#keep(step, deed.question);
        break;
      case 'type':
        await this.#hands.intoField('typed');
        await keyboard.type(deed.typed);
        await keyboard.press('Enter');
        break;
      case 'sketch':
        await this.#sketch(step, deed.question, deed.points);
        await this.#keep(step, deed.question);
        break;
      case 'explain':
        await this.#hands.intoField('own-words');
        await keyboard.type(deed.written);
        await this.#hands.press('Keep my words');
        break;
    }
    await this.#settle();
  }

  async #act(act: PreparedAct, step: LessonStep): Promise<void> {
    const offered = preparedIn(step).some((prepared) => JSON.stringify(prepared) === JSON.stringify(act));
    if (offered) await this.#hands.press(preparedWords(act));
    else if (act.act === 'handle') await this.#bench.page.keyboard.press(act.handling[0]!);
    else throw new Error(`the step offers no button for ${act.act}`);
  }

  async #keep(step: LessonStep, question: string): Promise<void> {
    const asked = questionsOf(step).find((each) => each.question.name === question)!;
    await this.#hands.press(asked.part === 'predict' ? 'Keep my prediction' : 'Keep my answer');
  }

  /** By keys: every point that a lesson's model answer states stands on a step of the cursor. */
  async #sketch(step: LessonStep, name: string, points: readonly (readonly [number, number])[]): Promise<void> {
    const { axes } = questionsOf(step).find(({ question }) => question.name === name)!.question as SketchQuestion;
    const across = keyStep(axes.fromS, axes.toS, 'time', timeUnit(axes));
    const up = keyStep(axes.low, axes.high, axes.quantity as QuantityKind, axes.unit);
    await this.#hands.ontoSketch();
    const { keyboard } = this.#bench.page;
    await keyboard.press('Home');
    let [atS, at] = [axes.fromS, 0];
    for (const [timeS, value] of points) {
      const steps = [Math.round((timeS - atS) / across), Math.round((value - at) / up)];
      for (let k = 0; k < Math.abs(steps[0]!); k += 1) await keyboard.press(steps[0]! > 0 ? 'ArrowRight' : 'ArrowLeft');
      for (let k = 0; k < Math.abs(steps[1]!); k += 1) await keyboard.press(steps[1]! > 0 ? 'ArrowUp' : 'ArrowDown');
      await keyboard.press('Enter');
      [atS, at] = [timeS, value];
    }
  }

  /** The paper has been pulled back to before it: closer in, and on along the tape until the pen stands there. */
  async #mark(timeS: number): Promise<void> {
    await this.#hands.ontoTape();
    // The cursor may still stand where it was last wanted.
    await this.#onTape('End');
    for (let k = 0; k < ZOOM_STEPS; k += 1) await this.#onTape('+');
    const fromS = await this.#shownS();
    const stepS = (await this.#onTape('ArrowRight')) - fromS;
    expect(stepS, 'an arrow key moves the paper on').toBeGreaterThan(0);
    let atS = fromS + stepS;
    while (atS + STEPS_OF_A_PAGE * stepS < timeS) atS = await this.#onTape('PageUp');
    while (atS + stepS / 2 < timeS) atS = await this.#onTape('ArrowRight');
    expect(Math.abs(atS - timeS)).toBeLessThan(stepS);
    await this.#hands.press('set a mark under the pen');
  }

  /** Presses a key on the tape; the run time under the pen then [s]. */
  async #onTape(key: string): Promise<number> {
    await this.#bench.page.keyboard.press(key);
    await this.#frame();
    return this.#shownS();
  }

  #frame(): Promise<void> {
    return this.#bench.frames(this.#bench.wallMs + 40, 25);
  }

  #runS(): Promise<number> {
    return this.#bench.page.evaluate(() => window.benchScript!.page.session.run.world.timeS);
  }

  #shownS(): Promise<number> {
    return this.#bench.page.evaluate(() => {
      const { session, nowS } = window.benchScript!.page;
      return session.shownS(nowS);
    });
  }

  /** Run time of a moment of the present attempt, from the page's own run. */
  async #moment(
    moment: Moment,
    step: LessonStep,
  ): Promise<{ readonly atS: number | undefined; readonly nowS: number }> {
    const { run, events, nowS } = await this.#bench.page.evaluate(() => {
      const { session } = window.benchScript!.page;
      return { run: session.asRun(), events: session.run.world.events.all, nowS: session.run.world.timeS };
    });
    // No moment of a model answer is looked up on the tape itself.
    const tape = {
      rateHz: 1,
      channels: [],
      firstRow: 0,
      endRow: 0,
      revision: 0,
      value: () => 0,
      envelope: () => undefined,
    };
    return { atS: new Attempt({ run, events, nowS, marks: [], tape }, step.attempt).at(moment), nowS };
  }

  async #until(come: () => Promise<boolean>): Promise<void> {
    const lastMs = this.#bench.wallMs + LONGEST_WAIT_S * 1000;
    while (!(await come())) {
      expect(this.#bench.wallMs).toBeLessThan(lastMs);
      await this.#bench.runTo(this.#bench.wallMs + LOOK_EVERY_MS, 10);
    }
  }
}

function preparedIn(step: LessonStep): readonly PreparedAct[] {
  return step.parts.flatMap((part) => (part.part === 'do' ? part.actions.map(({ prepared }) => prepared) : []));
}

/** The step has a button that makes the setting, rather than leaving it to the learner. */
function offersSetting(step: LessonStep, name: string, value: number): boolean {
  return preparedIn(step).some((prepared) => prepared.act === 'set' && prepared.settings[name] === value);
}
