/** What is shown in the pictures: each a run of the bench up to an instant, by what a visitor would press. */
import type { ScriptedBench } from '../browser/support/scripted-bench.ts';

export const SIZES = ['1440x900', '1366x768', '1024x768', '390x844'] as const;
export type Size = (typeof SIZES)[number];

export interface Scene {
  readonly name: string;
  /** Plays the run up to the instant that is shown. */
  readonly play: (bench: ScriptedBench) => Promise<void>;
  /** default all */
  readonly sizes?: readonly Size[];
  /** false: as on a machine without WebGL. */
  readonly webgl?: boolean;
  /** The page from top to bottom instead of what a screen holds of it. */
  readonly wholePage?: boolean;
}

/** Frames that are not drawn come this often; the run goes the same way at any rate. */
const PER_SECOND = 10;
/** Wall time [s]: ten times slower than life, as the bench opens, the tape is then written full. */
const HELD_S = 25;

/** Long enough after the frame before for figures to be written anew, short enough for the mass not to be drawn as a veil [ms]. */
const LAST_FRAME_MS = 130;

/** Runs on; of the frames the last two are drawn. */
async function on(bench: ScriptedBench, wallS: number): Promise<void> {
  await bench.runTo(bench.wallMs + wallS * 1000 - LAST_FRAME_MS, PER_SECOND);
  await bench.runTo(bench.wallMs + LAST_FRAME_MS);
}

async function hold(bench: ScriptedBench): Promise<void> {
  await on(bench, HELD_S);
}

/** 0.223 s into the fall from 0.4 m, which takes 0.286 s: as the ringing mass passes through its middle, for the fourth time. */
async function fall(bench: ScriptedBench): Promise<void> {
  await hold(bench);
  await bench.letter('d');
  await on(bench, 2.23);
}

/** A few milliseconds after the touch: the pad gives, the spike is written, the mass has swung down. */
async function landing(bench: ScriptedBench): Promise<void> {
  await fall(bench);
  await bench.runUntil('touch');
  await on(bench, 0.13);
}

async function tilt(bench: ScriptedBench): Promise<void> {
  await hold(bench);
  await bench.letter('t');
  await on(bench, 16);
}

async function shake(bench: ScriptedBench): Promise<void> {
  await hold(bench);
  await bench.letter('s');
  await on(bench, 14.2);
}

async function evening(bench: ScriptedBench): Promise<void> {
  await bench.tell('act', { what: 'theme', theme: 'evening' });
  await landing(bench);
}

/** Lesson and settings unfolded, as on a phone whose owner has scrolled and pressed. */
async function unfolded(bench: ScriptedBench): Promise<void> {
  await fall(bench);
  await bench.page.getByRole('button', { name: 'settings', exact: true }).click();
  await bench.page.locator('lesson-sheet').getByRole('button').first().click();
  await on(bench, 0.5);
}

async function lessonOnPhone(bench: ScriptedBench): Promise<void> {
  await unfolded(bench);
  await bench.page.locator('lesson-sheet').evaluate((sheet) => sheet.scrollIntoView());
}

export const SCENES: readonly Scene[] = [
  { name: 'hold', play: hold },
  { name: 'fall', play: fall },
  { name: 'landing', play: landing },
  { name: 'tilt', play: tilt },
  { name: 'shake', play: shake },
  { name: 'evening', play: evening },
  { name: 'fallback', play: landing, webgl: false },
  { name: 'phone', play: unfolded, sizes: ['390x844'], wholePage: true },
  { name: 'phone-lesson', play: lessonOnPhone, sizes: ['390x844'] },
];

/** Those that README.md shows. */
export const README_SCENES = ['hold', 'fall', 'landing'];
