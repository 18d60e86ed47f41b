import type { PenStyle } from './pen-style.ts';

/** Writing over lines: the paper shows round the letters. Font and alignment are the context's. */
export function haloText(
  ctx: CanvasRenderingContext2D,
  style: PenStyle,
  text: string,
  x: number,
  y: number,
  colour: string,
): void {
  ctx.lineJoin = 'round';
  ctx.lineWidth = 4 * style.size;
  ctx.strokeStyle = style.paper;
  ctx.globalAlpha = 0.85;
  ctx.strokeText(text, x, y);
  ctx.globalAlpha = 1;
  ctx.fillStyle = colour;
  ctx.fillText(text, x, y);
}
