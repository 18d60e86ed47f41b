/**
 * The half dial of the speed lever: ×1 at the left end (180°), one ten-thousandth at the right (0°), equal angles for
 * equal ratios: 45° a decade. A *slowdown* is how many times slower than true the bench is shown [–].
 */
export const LARGEST_SLOWDOWN = 10_000;

const DEGREES_PER_DECADE = 45;

/** Angle of the lever [°], counted from the right, counter-clockwise. */
export function dialAngle(slowdown: number): number {
  return 180 - DEGREES_PER_DECADE * Math.log10(slowdown);
}

/** Slowdown at an angle [°], to two significant digits: a hand on a dial points no finer. Beyond an end: that end. */
export function slowdownAtAngle(degrees: number): number {
  const exact = 10 ** ((180 - Math.min(180, Math.max(0, degrees))) / DEGREES_PER_DECADE);
  return Number(exact.toPrecision(2));
}

/**
 * Angle [°] of a point seen from the hub, y downward. Below the hub the nearer end of the dial counts, so that the
 * lever does not jump across when the pointer slips under it.
 */
export function pointerAngle(dx: number, dy: number): number {
  if (dy >= 0) return dx < 0 ? 180 : 0;
  return (Math.atan2(-dy, dx) * 180) / Math.PI;
}

const STEPS = [1, 2, 5] as const;

/** The next of 1, 2, 5, 10, 20 … in a direction; from between two of them, the nearer one on that side. */
export function steppedSlowdown(slowdown: number, direction: 1 | -1): number {
  const ladder: number[] = [];
  for (let decade = 1; decade <= LARGEST_SLOWDOWN; decade *= 10) {
    for (const step of STEPS) if (step * decade <= LARGEST_SLOWDOWN) ladder.push(step * decade);
  }
  const beyond = direction > 0 ? ladder.find((rung) => rung > slowdown) : ladder.findLast((rung) => rung < slowdown);
  return beyond ?? (direction > 0 ? LARGEST_SLOWDOWN : 1);
}

/**
 * Slowdown that was typed: "20", "20 times", "×20", "1/20", "10 000 times". Returns the reason when it cannot be used.
 */
export function parseSlowdown(text: string): { readonly slowdown: number } | { readonly reason: string } {
  const bare = text
    .replace(/slowed|times|[×x]/gi, '')
    .replace(/\s/g, '')
    .replace(/^1\//, '')
    .replace(',', '.');
  const slowdown = Number(bare);
  if (bare === '' || !Number.isFinite(slowdown)) {
    return { reason: 'That is not a number. Write how many times slower, such as “20 times”.' };
  }
  if (slowdown < 1) return { reason: 'It cannot run faster than true: 1 time is as fast as it happens.' };
  if (slowdown > LARGEST_SLOWDOWN) return { reason: 'No slower than 10 000 times.' };
  return { slowdown };
}

/** "20", "1 000": whole thousands set apart by a narrow space, as standards on writing numbers ask (ISO 80000-1). */
export function slowdownText(slowdown: number): string {
  const rounded = Number(slowdown.toPrecision(3));
  const text = String(rounded);
  return rounded >= 1000 ? text.replace(/\B(?=(\d{3})+$)/, '\u202f') : text;
}
