import type { RidingPicture, RoomPicture, Theme } from '../contract/view.ts';
import { createDrawnRidingPicture } from '../scene/drawn-riding.ts';
import { createDrawnRoomPicture } from '../scene/drawn-room.ts';
import { createRidingPicture } from '../scene/riding-picture.ts';
import { createRoomPicture } from '../scene/room-picture.ts';

/** The two pictures of the bench, in depth where the browser can, else drawn flat; both obey the same numbers. */
export class Pictures {
  riding: RidingPicture;
  room: RoomPicture;
  /** Drawn flat: no graphics context was to be had, or it was lost. */
  flat = false;
  readonly #theme: Theme;
  readonly #onChange: () => void;
  #ridingCanvas: HTMLCanvasElement;
  #roomCanvas: HTMLCanvasElement;

  constructor(ridingCanvas: HTMLCanvasElement, roomCanvas: HTMLCanvasElement, theme: Theme, onChange: () => void) {
    this.#ridingCanvas = ridingCanvas;
    this.#roomCanvas = roomCanvas;
    this.#theme = theme;
    this.#onChange = onChange;
    const options = { theme, onLost: () => this.#fallBack() };
    try {
      this.riding = createRidingPicture(ridingCanvas, options);
      this.room = createRoomPicture(roomCanvas, options);
    } catch {
      // No WebGL: a canvas that was asked for one context cannot give another.
      this.flat = true;
      this.#renewCanvases();
      this.riding = createDrawnRidingPicture(this.#ridingCanvas, { theme });
      this.room = createDrawnRoomPicture(this.#roomCanvas, { theme });
    }
  }

  get ridingCanvas(): HTMLCanvasElement {
    return this.#ridingCanvas;
  }

  get roomCanvas(): HTMLCanvasElement {
    return this.#roomCanvas;
  }

  setTheme(theme: Theme): void {
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
