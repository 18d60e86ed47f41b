/**
 * Times as ratios. Two things are run in turn, in alternating order, in one process, and each pair gives one ratio: what slows the
 * machine down slows both. The same thing against itself shows the noise. Nothing is asserted here.
 */

/** Median and the span that holds the middle 80 %. */
export interface Spread {
  readonly median: number;
  readonly low: number;
  readonly high: number;
}

/** Keeps the results of what is timed from being optimised away. */
let sink = 0;

/** Time on the processor [ms]: other processes do not count. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Time of one run [ms]. */
export function timeOf(work: () => number): number {
  const start = processorMs();
  sink += work();
  return processorMs() - start;
}

export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))]!;
  return { median: at(0.5), low: at(0.1), high: at(0.9) };
}

/** Time of `a` over time of `b`. Each should take some 10 ms. */
export function ratioOf(a: () => number, b: () => number, pairs = 21): Spread {
  timeOf(a);
  timeOf(b);
  const ratios: number[] = [];
  for (let pair = 0; pair < pairs; pair += 1) {
    if (pair % 2 === 0) {
      const timeA = timeOf(a);
      ratios.push(timeA / timeOf(b));
    } else {
      const timeB = timeOf(b);
      ratios.push(timeOf(a) / timeB);
    }
  }
  return spreadOf(ratios);
}

/** Times of `work` [ms]. */
export function timesOf(work: () => number, runs = 11): Spread {
  timeOf(work);
  return spreadOf(Array.from({ length: runs }, () => timeOf(work)));
}

export function scaled({ median, low, high }: Spread, factor: number): Spread {
  return { median: median * factor, low: low * factor, high: high * factor };
}

/** `unit`/x: of the times a thing takes, how often it fits into a unit. */
export function inverse({ median, low, high }: Spread, unit: number): Spread {
  return { median: unit / median, low: unit / high, high: unit / low };
}

function short(value: number): string {
  return value >= 1000 ? value.toFixed(0) : value.toPrecision(3);
}

export function line(words: string, spread: Spread, unit: string): string {
  return `  ${words.padEnd(70)} ${short(spread.median).padStart(8)} ${unit}  (${short(spread.low)} … ${short(spread.high)})`;
}

/** What all the timed work has come to; printed, so that none of it can be left out. */
export function checksum(): string {
  return sink.toPrecision(6);
}
