/** A lesson with one of everything that a step can hold, small enough to be changed by hand in a test. */
import type { Lesson } from '../../../src/lesson/lesson.ts';
import { parseLesson } from '../../../src/lesson/parse-lesson.ts';

export const SMALL_LESSON = `---
lesson: small
format: 1
title: A small lesson
minutes: 5
summary: Drop it.
cautions: Mind your toes.
---

## Hold and drop

\`\`\`step
name: drop
bench: table-top
settings: { naturalFrequency: 8 Hz, dampingRatio: 0.7, dropHeight: 0.3 m }
seed: 7
slowed: 20
attempt: let go
\`\`\`

The box is held.

\`\`\`predict
name: guess
words: How long will it fall?
number: { kind: time, unit: ms }
after: touch
near: fallTime
within: 5 %
says: Yes, \`=fallTime\`.
slips:
  - name: noHalf
    if: abs(answer - sqrt(letGoHeight / gravity)) < 10 ms
    says: There is a two in it.
otherwise: It fell for \`=fallTime\`.
\`\`\`

\`\`\`do
- act: drop
  words: Drop it.
- act: mark
  words: Mark the touch.
- act: set
  settings: { dropHeight: yours }
  words: Set another height.
- act: slow
  to: 50
  words: Slow down.
- act: pull back
  words: Pull back.
\`\`\`

\`\`\`ask
name: seen
words: What did the pen do?
after: touch
choices:
  - name: zero
    words: It went to zero.
    right: true
    says: It did.
  - name: one
    words: It stayed.
    says: Look again.
\`\`\`

\`\`\`measure
- name: fallTime
  words: Fall
  take: duration
  from: let go
  to: touch
  unit: ms
- name: endReading
  words: Reading before the touch
  take: value
  of: reading
  at: touch - 10 ms
\`\`\`

\`\`\`check
- name: zeroAtEnd
  words: Zero at the end
  value: endReading
  near: 0 g
  within: 0.02 g
  provided: fallTime > 0.1 s
  says: Right, \`=endReading\`.
  slips:
    - name: ringing
      if: dampingRatio < 0.3
      says: It still rings.
    - name: noGravity
      if: gravity < 1 m/s²
      says: Gravity is off.
  otherwise: Not at zero.
\`\`\`

\`\`\`explain
words: Why?
model: Because nothing pushes it.
\`\`\`

\`\`\`hints
- Look at the pen.
- Look again.
\`\`\`

\`\`\`proof
model:
  - { act: type, question: guess, typed: 247 ms }
  - { act: drop }
  - { act: wait, until: touch + 5 ms }
  - { act: choose, question: seen, choice: zero }
  - { act: explain, written: Nothing pushes. }
wrong:
  - words: rings
    fails: zeroAtEnd
    as: ringing
    deeds:
      - { act: type, question: guess, typed: 247 ms }
      - { act: set, settings: { dampingRatio: 0.02 } }
      - { act: wait, for: 0.1 s }
      - { act: drop }
      - { act: wait, until: touch + 5 ms }
      - { act: choose, question: seen, choice: zero }
\`\`\`

## Look

\`\`\`step
name: look
bench: table-top
\`\`\`

Nothing to do here.
`;

export function smallLesson(changed: (text: string) => string = (text) => text): Lesson {
  const parsed = parseLesson(changed(SMALL_LESSON));
  if ('faults' in parsed) throw new Error(JSON.stringify(parsed.faults));
  return parsed.lesson;
}
