import { describe, expect, it } from 'vitest';
import { HANDLINGS, handlingNamed, startingHandlingValues } from '../../src/ui/handling-fields.ts';

const LAWS = ['sine', 'sweep', 'random'];

describe('the ways of handling', () => {
  it('have different letters', () => {
    const letters = HANDLINGS.flatMap(({ letter }) => letter ?? []);
    expect(new Set(letters).size).toBe(letters.length);
  });

  it('start inside their own limits, whatever the kind of shaking', () => {
    for (const handling of HANDLINGS) {
      for (const law of LAWS) {
        for (const piece of handling.sentence({ 'shake.law': law })) {
          if (piece.piece === 'quantity') {
            expect(piece.start, piece.name).toBeGreaterThanOrEqual(piece.low);
            expect(piece.start, piece.name).toBeLessThanOrEqual(piece.high);
          }
          if (piece.piece === 'choice') expect(piece.choices.map(({ value }) => value)).toContain(piece.start);
        }
      }
    }
  });

  it('name every field after its handling, once in a sentence', () => {
    for (const { name, sentence } of HANDLINGS) {
      for (const law of LAWS) {
        const names = sentence({ 'shake.law': law }).flatMap((piece) => ('name' in piece ? [piece.name] : []));
        expect(names.every((field) => field.startsWith(`${name}.`))).toBe(true);
        expect(new Set(names).size).toBe(names.length);
      }
    }
  });

  it('give a starting value to every field of every sentence', () => {
    const values = startingHandlingValues();
    for (const { sentence } of HANDLINGS) {
      for (const law of LAWS) {
        for (const piece of sentence({ ...values, 'shake.law': law })) {
          if ('name' in piece) expect(values).toHaveProperty([piece.name]);
        }
      }
    }
  });

  it('are refused by a name that is none of theirs', () => {
    expect(() => handlingNamed('kick' as never)).toThrow(/kick/);
  });
});
