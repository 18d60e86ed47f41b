import type { RidingPicture, RoomPicture, Theme } from '../contract/view.ts';
import { createDrawnRidingPicture } from '../scene/drawn-riding.ts';
import { createDrawnRoomPicture } from '../scene/drawn-room.ts';
import { createRidingPicture } from '../scene/riding-picture.ts';
import { createRoomPicture } from '../scene/room-picture.ts';
import { graphicsAvailable } from '../scene/three-stage.ts';

/** How much drawing is worth: all of it on the screen, next to nothing where only numbers are looked at. */
export type Drawing = 'full' | 'light';

/** Pixels of the drawing buffer for each CSS pixel where next to nothing is drawn. */
const LIGHT_RATIO = 0.05;

/** The two pictures of the bench, in depth where the browser can, else drawn flat; both obey the same numbers. */
export class Pictures {
  riding: RidingPicture;
  room: RoomPicture;
  /** Drawn flat: no graphics context was to be had, or it was lost. */
  flat: boolean;
  #theme: Theme;
  readonly #onChange: () => void;
  /** Pixels of the drawing buffers for each CSS pixel. */
  readonly pixelRatio: number;
  #ridingCanvas: HTMLCanvasElement;
  #roomCanvas: HTMLCanvasElement;

  constructor(
    ridingCanvas: HTMLCanvasElement,
    roomCanvas: HTMLCanvasElement,
    theme: Theme,
    drawing: Drawing,
    onChange: () => void,
  ) {
    this.#ridingCanvas = ridingCanvas;
    this.#roomCanvas = roomCanvas;
    this.#theme = theme;
    this.#onChange = onChange;
    const light = drawing === 'light';
    this.pixelRatio = light ? LIGHT_RATIO : Math.min(window.devicePixelRatio, 2);
    const options = { theme, shadows: !light, antialias: !light, mirror: !light, onLost: () => this.#fallBack() };
    this.flat = !graphicsAvailable();
    this.riding = this.flat
      ? createDrawnRidingPicture(ridingCanvas, { theme })
      : createRidingPicture(ridingCanvas, options);
    this.room = this.flat ? createDrawnRoomPicture(roomCanvas, { theme }) : createRoomPicture(roomCanvas, options);
  }

  get ridingCanvas(): HTMLCanvasElement {
    return this.#ridingCanvas;
  }

  get roomCanvas(): HTMLCanvasElement {
    return this.#roomCanvas;
  }

  /** Drawing the same again would change nothing. */
  get settled(): boolean {
    return this.riding.settled && this.room.settled;
  }

  setTheme(theme: Theme): void {
    if (theme === this.#theme) return;
    this.#theme = theme;
    this.riding.setTheme(theme);
    this.room.setTheme(theme);
  }

  dispose(): void {
    this.riding.dispose();
    this.room.dispose();
  }

  /** The graphics context went away, in mid-fall perhaps: the flat bench goes on at the same instant. */
  #fallBack(): void {
    if (this.flat) return;
    this.flat = true;
    this.dispose();
    this.#renewCanvases();
    this.riding = createDrawnRidingPicture(this.#ridingCanvas, { theme: this.#theme });
    this.room = createDrawnRoomPicture(this.#roomCanvas, { theme: this.#theme });
    this.#onChange();
  }

  #renewCanvases(): void {
    this.#ridingCanvas = renewed(this.#ridingCanvas);
    this.#roomCanvas = renewed(this.#roomCanvas);
  }
}

function renewed(canvas: HTMLCanvasElement): HTMLCanvasElement {
  const next = canvas.cloneNode(false) as HTMLCanvasElement;
  canvas.replaceWith(next);
  return next;
}
