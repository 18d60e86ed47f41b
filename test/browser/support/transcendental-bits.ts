import * as transcendental from '../../../src/numerics/transcendental.ts';

/** Arguments tried with each function; the generator below fixes them. */
const ARGUMENT_COUNT = 20_000;

/**
 * For every transcendental function a hash over the bits of its values: arguments over the whole range that a
 * bench meets, from a linear congruential generator (multiplier and increment from memory of common practice).
 */
export function transcendentalBits(): Record<string, string> {
  return Object.fromEntries(Object.entries(transcendental).map(([name, evaluate]) => [name, hashOver(evaluate)]));
}

function hashOver(evaluate: (first: number, second: number) => number): string {
  const value = new DataView(new ArrayBuffer(8));
  let state = 20_260_101;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  let hash = 0x811c9dc5; // FNV-1a, 32 bits: G. Fowler, L. C. Noll, K.-P. Vo
  for (let i = 0; i < ARGUMENT_COUNT; i++) {
    // Every other pair lies in ±1, where the inverse functions are defined.
    const reach = i % 2 === 0 ? 1 : 40;
    const first = (2 * next() - 1) * reach;
    const second = (2 * next() - 1) * reach;
    value.setFloat64(0, evaluate(first, second));
    for (let byte = 0; byte < 8; byte++) hash = Math.imul(hash ^ value.getUint8(byte), 0x01000193);
  }
  return (hash >>> 0).toString(16);
}
