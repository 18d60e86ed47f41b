import type { BenchPage } from './bench-page.ts';

/**
 * The page driven by a script instead of the screen: `?script` in the address; `?script=light` draws next to
 * nothing, for where only numbers are looked at. Frames and events happen at the
 * wall times that the script states, so that a run can be made again exactly, at any frame rate.
 */
export interface ScriptDoor {
  /** Runs and draws up to a wall time [ms], never falling. */
  frame(wallMs: number): void;
  /** Runs up to a wall time [ms] without drawing. */
  run(wallMs: number): void;
  /** Does something (press a key, send a pointer) as if at a wall time [ms]. */
  at(wallMs: number, doIt: () => void): void;
  readonly page: BenchPage;
}

declare global {
  interface Window {
    benchScript?: ScriptDoor;
  }
}

export function openScriptDoor(page: BenchPage): void {
  let nowMs = 0;
  page.wallOf = () => nowMs;
  window.benchScript = {
    page,
    frame(wallMs) {
      nowMs = wallMs;
      page.frame(wallMs);
    },
    run(wallMs) {
      nowMs = wallMs;
      page.run(wallMs);
    },
    at(wallMs, doIt) {
      nowMs = wallMs;
      doIt();
    },
  };
}
