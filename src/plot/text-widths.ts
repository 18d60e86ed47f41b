/** Widths of texts on a canvas, measured once each: measuring costs more than drawing. */
export class TextWidths {
  readonly #byFont = new Map<string, Map<string, number>>();

  /** Width [px] of a text in a font. Leaves the context's font as it likes: setting one costs more than looking up. */
  of(ctx: CanvasRenderingContext2D, font: string, text: string): number {
    let known = this.#byFont.get(font);
    if (known === undefined) {
      known = new Map();
      this.#byFont.set(font, known);
    }
    let width = known.get(text);
    if (width === undefined) {
      if (known.size > 2000) known.clear(); // values change for hours
      ctx.font = font;
      width = ctx.measureText(text).width;
      known.set(text, width);
    }
    return width;
  }

  /** After fonts have come in. */
  forget(): void {
    this.#byFont.clear();
  }
}
