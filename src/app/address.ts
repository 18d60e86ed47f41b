import type { Linked } from '../exchange/link.ts';

/** Where the state stands in the address. */
const MARK = '#run=';
/** Written anew this often at most [ms]. */
const EVERY_MS = 1000;

/** Keeps the page's address up to date, so that a reload or a sent link brings the same run back. */
export class Address {
  #atMs = Number.NEGATIVE_INFINITY;
  #busy = false;
  #last = '';
  /** Why the run is not in the address; '' when it is. */
  refusal = '';

  /** What the present address holds; undefined: nothing of ours. */
  static async read(): Promise<{ linked: Linked } | { refused: string } | undefined> {
    const { hash } = window.location;
    if (!hash.startsWith(MARK)) return undefined;
    const { readLink } = await import('../exchange/link.ts');
    return readLink(hash.slice(MARK.length));
  }

  /** The whole address of a state. */
  static of(text: string): string {
    const { origin, pathname } = window.location;
    return origin + pathname + MARK + text;
  }

  /** Writes the state, unless it was written a moment ago or is being written. */
  async keep(wallMs: number, state: () => Linked): Promise<void> {
    if (this.#busy || wallMs - this.#atMs < EVERY_MS) return;
    this.#atMs = wallMs;
    this.#busy = true;
    try {
      const linked = state();
      // With the scenario's door it is a good part of the page's script: after the first frames is early enough.
      const { writeLink } = await import('../exchange/link.ts');
      const written = await writeLink(linked);
      this.refusal = 'refused' in written ? written.refused : '';
      const hash = 'text' in written ? MARK + written.text : '';
      if (hash === this.#last) return;
      this.#last = hash;
      window.history.replaceState(null, '', hash || window.location.pathname + window.location.search);
    } finally {
      this.#busy = false;
    }
  }
}
