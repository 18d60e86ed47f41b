import type { Plugin } from 'vite';

/** A deliberate fault: in `file`, `find` (which must stand there exactly once) becomes `put`. */
export interface Mutant {
  readonly name: string;
  readonly file: string;
  readonly find: string;
  readonly put: string;
  /** The test file, and part of the test's name, that rests on an outside source and must fail. */
  readonly killedBy: string;
  readonly test: string;
}

/** Plants the fault that the environment variable MUTANT holds as JSON; does nothing without one. */
export function plantMutant(): Plugin {
  const planted = process.env['MUTANT'];
  const mutant = planted ? (JSON.parse(planted) as Mutant) : undefined;
  return {
    name: 'plant-mutant',
    enforce: 'pre',
    transform(code, id) {
      if (!mutant || !id.split('?')[0]!.endsWith(mutant.file)) return undefined;
      const parts = code.split(mutant.find);
      if (parts.length !== 2)
        throw new Error(`${mutant.file} holds "${mutant.find}" ${parts.length - 1} times, not once`);
      return { code: parts.join(mutant.put), map: null };
    },
  };
}
