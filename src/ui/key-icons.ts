import { type SVGTemplateResult, svg } from 'lit';
import type { HandlingName } from './ui-events.ts';

/** Drawn in a 36 × 28 field with strokes of the key's own text colour. */
export const keyIcons: Readonly<Record<HandlingName, SVGTemplateResult>> = {
  // A box between two jaws.
  hold: svg`<path d="M11 9v12h14V9M3 14h8M25 14h8M11 9h3M25 9h-3M14 5v4M22 5v4" />`,
  // A box above a pad that gives.
  drop: svg`<path d="M13 3h10v9H13zM18 13v9M15 19l3 3 3-3M8 25q10 3 20 0" />`,
  // A box and what its shaking leaves in the air.
  shake: svg`<path d="M12 9h12v10H12zM8 10q-2 4 0 8M28 10q2 4 0 8M4.5 7q-3.5 7 0 14M31.5 7q3.5 7 0 14" />`,
  // A box stood on an edge.
  tilt: svg`<path d="M7 12l14-6 5 11-14 6zM5 25h22M27 8q4 4 3 10M27.5 15.5l2.6 3 3.4-2.5" />`,
  // A box that goes up and comes down.
  throw: svg`<path d="M4 25q3-20 13-20t13 20M27 22l3 3 3-3M14 1h7v7h-7z" />`,
  // A box from here to there.
  move: svg`<path d="M4 9h9v10H4zM16 14h15M27 10l4 4-4 4" />`,
  // A steady push.
  push: svg`<path d="M19 8h11v12H19zM4 14h13M13 10l4 4-4 4M4 9v10" />`,
  // A box turning about an axis.
  spin: svg`<path d="M13 9h10v10H13zM18 2v4M18 22v4M6 11q-4 3 0 6 4 3 9 3.5M30 17q4-3 0-6-4-3-9-3.5M12 17.5l3.3 3-3.3 2.800" />`,
  // A written line.
  recorded: svg`<path d="M3 5h30v18H3zM6 14h4l2-6 3 12 3-9 3 6 2-3h7" />`,
};

/** Icons of the smaller keys, in a 16 × 16 field. */
export const smallIcons = {
  pause: svg`<path d="M5 3v10M11 3v10" />`,
  goOn: svg`<path d="M4.5 2.5l8 5.5-8 5.5z" />`,
  tick: svg`<path d="M4 3l6 5-6 5zM12.5 3v10" />`,
  fold: svg`<path d="M10 3L5 8l5 5" />`,
  unfold: svg`<path d="M6 3l5 5-5 5" />`,
  more: svg`<path d="M3 8h.01M8 8h.01M13 8h.01" />`,
  done: svg`<path d="M2.5 8.5l4 4 7-9" />`,
  next: svg`<path d="M4.5 2.5l8 5.5-8 5.5z" />`,
  caution: svg`<path d="M8 1.800L15 14.200H1zM8 6.200v4M8 12.200h.01" />`,
};
