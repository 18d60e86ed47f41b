/** The sheet to print at the end: the prediction stands under what came out, with settings, seed and figures. */
import type { Answer, AnsweredQuestion, LessonResults, LessonStepResults, Prose } from '../contract/lesson.ts';
import { LESSON_SETTINGS, type LessonSettingName, settingText } from './bench-setup.ts';
import {
  checksOf,
  figuresOf,
  judgedNames,
  type Lesson,
  type LessonStep,
  type Question,
  questionsOf,
} from './lesson.ts';
import { StepWords } from './lesson-view.ts';
import { type LessonProgress, NOTHING_DONE, type StepProgress } from './progress.ts';
import { plainText } from './prose.ts';

export function lessonResults(lesson: Lesson, progress: LessonProgress): LessonResults {
  const of = (step: LessonStep) => progress.steps[step.name] ?? NOTHING_DONE;
  const judged = lesson.steps.flatMap((step) => judgedNames(step).map((name) => of(step).judged[name]?.outcome));
  return {
    lesson: lesson.name,
    title: lesson.title,
    passed: judged.filter((outcome) => outcome === 'passed').length,
    checks: judged.length,
    steps: lesson.steps.map((step) => stepResults(step, of(step))),
  };
}

function stepResults(step: LessonStep, progress: StepProgress): LessonStepResults {
  const words = new StepWords(step, progress, new Map());
  const explain = step.parts.find((part) => part.part === 'explain');
  const answered = (wanted: 'predict' | 'ask') =>
    questionsOf(step).flatMap(({ part, question }) => {
      const answer = progress.answers[question.name];
      return part === wanted && answer ? [answeredQuestion(part, question, answer, words)] : [];
    });
  return {
    title: step.title,
    predictions: answered('predict'),
    answers: answered('ask'),
    figures: figuresOf(step).map(({ name }) => words.figure(name)),
    checks: checksOf(step).map((check) => words.check(check)),
    explanation: explain && { words: words.fill(explain.words), written: progress.written },
    hints: progress.hints,
    settings: settingsOf(progress),
  };
}

function answeredQuestion(
  part: 'predict' | 'ask',
  question: Question,
  answer: Answer,
  words: StepWords,
): AnsweredQuestion {
  const { outcome, says, words: asked } = words.question(part, question);
  const sketch =
    question.kind === 'sketch' && answer.kind === 'sketch' ? { axes: question.axes, points: answer.points } : undefined;
  return { words: asked, answer: answerText(question, answer), sketch, outcome, says };
}

function answerText(question: Question, answer: Answer): string {
  if (answer.kind === 'number') return answer.typed;
  if (answer.kind === 'sketch' || question.kind !== 'choice') return '';
  const chosen: Prose = question.choices.find(({ name }) => name === answer.choice)?.words ?? [];
  return plainText(chosen);
}

/** Settings and seed of the attempt whose figures are kept. */
function settingsOf({ values }: StepProgress): { readonly words: string; readonly text: string }[] {
  const names = Object.keys(LESSON_SETTINGS) as LessonSettingName[];
  const settings = names.flatMap((name) => {
    const value = values[name];
    return value === undefined ? [] : [{ words: LESSON_SETTINGS[name].words, text: settingText(name, value) }];
  });
  const { seed } = values;
  return seed === undefined ? settings : [...settings, { words: 'seed', text: String(seed) }];
}
