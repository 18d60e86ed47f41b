/** Pen and wash: the few strokes that the flat drawings are made of. Lengths in CSS pixels. */
import type { Theme } from '../contract/view.ts';
import { arrowCorners, CUT_LIFTS, CUT_SHARE } from './arrow-corners.ts';
import { type Palette, paletteOf } from './palette.ts';

export interface FlatOptions {
  readonly theme?: Theme;
}

export class DrawnKit {
  readonly pen: CanvasRenderingContext2D;
  palette: Palette;
  theme: Theme;
  widthPx = 1;
  heightPx = 1;
  /** All lines and strokes are drawn this many times as wide: small pictures want thinner ones. */
  weight = 1;
  readonly #canvas: HTMLCanvasElement;
  readonly #corners = new Float32Array(21);

  constructor(canvas: HTMLCanvasElement, options: FlatOptions) {
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('no 2D canvas to draw on: it needs one that never held another context');
    this.pen = pen;
    this.#canvas = canvas;
    this.theme = options.theme ?? 'day';
    this.palette = paletteOf(this.theme);
  }

  setTheme(theme: Theme): void {
    this.theme = theme;
    this.palette = paletteOf(theme);
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.#canvas.width = Math.max(1, Math.round(widthPx * pixelRatio));
    this.#canvas.height = Math.max(1, Math.round(heightPx * pixelRatio));
  }

  /** A clean sheet, one unit one CSS pixel. */
  begin(): void {
    const { pen } = this;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, this.#canvas.width, this.#canvas.height);
    pen.scale(this.#canvas.width / this.widthPx, this.#canvas.height / this.heightPx);
    pen.lineJoin = 'round';
    pen.lineCap = 'round';
  }

  /** Closed outline through points x, y, x, y …; a wash, then a line round it. */
  shape(points: readonly number[], wash: string | undefined, line?: string, width = 1): void {
    const { pen } = this;
    pen.beginPath();
    for (let at = 0; at + 1 < points.length; at += 2) pen.lineTo(points[at]!, points[at + 1]!);
    pen.closePath();
    this.#ink(wash, line, width);
  }

  box(
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    wash: string | undefined,
    line?: string,
    width = 1,
    radius = 0,
  ): void {
    const { pen } = this;
    pen.beginPath();
    if (radius > 0) pen.roundRect(x0, y0, x1 - x0, y1 - y0, radius);
    else pen.rect(x0, y0, x1 - x0, y1 - y0);
    this.#ink(wash, line, width);
  }

  disc(x: number, y: number, radius: number, wash: string | undefined, line?: string, width = 1): void {
    const { pen } = this;
    pen.beginPath();
    pen.arc(x, y, radius, 0, 2 * Math.PI);
    this.#ink(wash, line, width);
  }

  oval(x: number, y: number, rx: number, ry: number, wash: string | undefined, line?: string, width = 1): void {
    const { pen } = this;
    pen.beginPath();
    pen.ellipse(x, y, rx, ry, 0, 0, 2 * Math.PI);
    this.#ink(wash, line, width);
  }

  stroke(points: readonly number[], line: string, width: number, dash: readonly number[] = []): void {
    const { pen } = this;
    pen.beginPath();
    for (let at = 0; at + 1 < points.length; at += 2) pen.lineTo(points[at]!, points[at + 1]!);
    pen.setLineDash([...dash]);
    pen.strokeStyle = line;
    pen.lineWidth = width * this.weight;
    pen.stroke();
    pen.setLineDash([]);
  }

  /** A pin's or screw's domed head. */
  screw(x: number, y: number, radius: number): void {
    this.disc(x, y, radius, this.palette.screw, this.palette.leverEdge, 0.8);
    this.disc(x - radius * 0.3, y - radius * 0.35, radius * 0.28, 'rgba(255,255,255,0.55)');
  }

  /** A force arrow from (x, y) by (dx, dy), y downward; hollow for gravity; `cut`: longer in truth. */
  arrow(x: number, y: number, dx: number, dy: number, width: number, hollow: boolean, cut: boolean): void {
    const length = Math.hypot(dx, dy);
    if (length < 3) return;
    const { pen, palette } = this;
    arrowCorners(this.#corners, length, width, 0);
    pen.save();
    pen.translate(x, y);
    pen.rotate(Math.atan2(dx, -dy));
    pen.beginPath();
    for (let corner = 0; corner < 7; corner++) pen.lineTo(this.#corners[corner * 3]!, -this.#corners[corner * 3 + 1]!);
    pen.closePath();
    this.#ink(hollow ? palette.paper : palette.ink, hollow ? palette.text : palette.paper, hollow ? 1.7 : 1.2);
    if (cut) {
      for (const lift of CUT_LIFTS) {
        const up = -(length * CUT_SHARE + lift * width);
        this.stroke(
          [-width * 0.8, up + width * 0.3, width * 0.8, up - width * 0.3],
          hollow ? palette.text : palette.paper,
          width * 0.22,
        );
      }
    }
    pen.restore();
  }

  #ink(wash: string | undefined, line: string | undefined, width: number): void {
    const { pen } = this;
    if (wash !== undefined) {
      pen.fillStyle = wash;
      pen.fill();
    }
    if (line !== undefined) {
      pen.strokeStyle = line;
      pen.lineWidth = width;
      pen.stroke();
    }
  }
}
