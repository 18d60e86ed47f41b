/** Pulling and zooming, as arithmetic on the time under the nib and the time across the paper. */
import type { PaperView } from './paper-view.ts';

export interface WindowLimits {
  readonly shortestSpanS: number;
  readonly longestSpanS: number;
}

export interface PaperWindow {
  readonly endS: number;
  readonly spanS: number;
}

type Held = Pick<PaperView, 'endS' | 'spanS' | 'nowS' | 'tape'>;

/** Below this share of the span the paper counts as not pulled back [–]: a pixel on any screen is more. */
const FOLLOWING = 1e-4;

export function isFollowing(view: Held): boolean {
  return view.nowS - view.endS <= FOLLOWING * view.spanS;
}

/** The instant for the nib, kept between the oldest row and now. */
export function pulledTo(view: Held, endS: number): number {
  const oldest = view.tape.firstRow / view.tape.rateHz;
  return Math.min(Math.max(endS, Math.min(oldest, view.nowS)), view.nowS);
}

/**
 * Zoomed by a factor of the span (< 1: closer) about an instant that stays where it is on the paper. A paper that
 * follows the run stays under the pen: there the newest instant is what stays.
 */
export function zoomed(view: Held, factor: number, aboutS: number, limits: WindowLimits): PaperWindow {
  const spanS = Math.min(Math.max(view.spanS * factor, limits.shortestSpanS), limits.longestSpanS);
  if (isFollowing(view)) return { endS: view.nowS, spanS };
  const share = (view.endS - aboutS) / view.spanS;
  return { endS: pulledTo(view, aboutS + share * spanS), spanS };
}
