import type { RidingPicture, RoomPicture } from '../contract/view.ts';
import type { Session } from '../session/session.ts';

/** What the hand needs of the page. */
export interface HandDoor {
  readonly session: () => Session;
  readonly room: () => RoomPicture;
  readonly riding: () => RidingPicture;
  /** Wall time of an event [ms]. */
  readonly wallOf: (event: Event) => number;
  /** Run time of a wall time [ms]. */
  readonly runTimeOf: (wallMs: number) => number;
  readonly position: () => readonly number[];
  /** Pixels of the room picture for a metre at the housing, as last drawn. */
  readonly roomPxPerM: () => number;
  /** The bench may be touched; says why when it may not. */
  readonly mayHold: () => boolean;
  /** The hand takes hold, or lets go. */
  readonly onHold: (holds: boolean, wallMs: number) => void;
}

/** How far a hand reaches [m]. */
const REACH = { side: 0.45, top: 2.4 } as const;
/** Height of the riding view that a drag across it stands for [m], and turn for a drag across its width [rad]. */
const RIDING_DRAG_M = 0.3;
const RIDING_DRAG_RAD = Math.PI;
/** A drag that tilts: turn for each pixel [rad]. */
const TILT_RAD_PER_PX = Math.PI / 360;
/** One press of an arrow key [m]. */
const KEY_STEP_M = 0.01;
/** A key's step is run to within this time [s]. */
const KEY_OVER_S = 0.05;

/** Pointer, touch and arrow keys on the two pictures, turned into a hand that holds the housing. */
export class PointerHand {
  readonly #door: HandDoor;
  readonly #abort = new AbortController();
  #pointer: number | undefined;
  #lastMs = 0;
  #startX = 0;
  #startY = 0;
  #pxPerM = 1;
  #from: readonly number[] = [0, 0, 0];
  #position: [number, number, number] = [0, 0, 0];
  #turn = 0;
  #byKeys = false;

  constructor(door: HandDoor) {
    this.#door = door;
  }

  get holds(): boolean {
    return this.#pointer !== undefined || this.#byKeys;
  }

  attach(canvas: HTMLCanvasElement, view: 'room' | 'riding'): void {
    const options = { signal: this.#abort.signal };
    canvas.tabIndex = 0;
    canvas.style.touchAction = view === 'room' ? 'none' : 'pan-y';
    canvas.addEventListener('pointerdown', (event) => this.#down(event, canvas, view), options);
    canvas.addEventListener('pointermove', (event) => this.#move(event, canvas, view), options);
    canvas.addEventListener('pointerup', (event) => this.#up(event), options);
    canvas.addEventListener('pointercancel', (event) => this.#up(event), options);
    canvas.addEventListener('keydown', (event) => this.#key(event), options);
    canvas.addEventListener(
      'blur',
      (event) => this.#byKeys && this.#finish(this.#door.wallOf(event), 'clamp'),
      options,
    );
  }

  /** A hand that goes away gives the housing to the clamp. */
  dispose(): void {
    if (this.holds) {
      this.#pointer = undefined;
      this.#finish(this.#lastMs, 'clamp');
    }
    this.#abort.abort();
  }

  #down(event: PointerEvent, canvas: HTMLCanvasElement, view: 'room' | 'riding'): void {
    if (this.#pointer !== undefined || event.button !== 0) return;
    const picture = view === 'room' ? this.#door.room() : this.#door.riding();
    const part = picture.part(event.offsetX, event.offsetY);
    if (view === 'room' ? part !== 'housing' : part === undefined) return;
    if (!this.#door.mayHold()) return;
    event.preventDefault();
    canvas.focus({ preventScroll: true });
    canvas.setPointerCapture(event.pointerId);
    this.#pointer = event.pointerId;
    this.#startX = event.offsetX;
    this.#startY = event.offsetY;
    this.#take(this.#door.wallOf(event));
    // As the room is drawn at the grip: a picture that zooms under the hand must not move it.
    this.#pxPerM = this.#door.roomPxPerM();
  }

  #move(event: PointerEvent, canvas: HTMLCanvasElement, view: 'room' | 'riding'): void {
    if (event.pointerId !== this.#pointer) return;
    const dx = event.offsetX - this.#startX;
    const dy = event.offsetY - this.#startY;
    if (view === 'riding') {
      this.#turn = (-dx / canvas.clientWidth) * RIDING_DRAG_RAD;
      this.#position = [this.#from[0]!, this.#from[1]! - (dy / canvas.clientHeight) * RIDING_DRAG_M, 0];
    } else if (event.shiftKey) {
      this.#turn = -dx * TILT_RAD_PER_PX;
    } else {
      this.#position = [this.#from[0]! + dx / this.#pxPerM, this.#from[1]! - dy / this.#pxPerM, 0];
    }
    this.#lead(this.#door.wallOf(event), Math.max(0, this.#runS(this.#door.wallOf(event)) - this.#runS(this.#lastMs)));
  }

  #up(event: PointerEvent): void {
    if (event.pointerId !== this.#pointer) return;
    this.#pointer = undefined;
    this.#finish(this.#door.wallOf(event), 'let go');
  }

  #key(event: KeyboardEvent): void {
    const step = { ArrowUp: [0, 1], ArrowDown: [0, -1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] }[event.key];
    if (step) {
      event.preventDefault();
      if (!this.holds) {
        if (!this.#door.mayHold()) return;
        this.#take(this.#door.wallOf(event));
        this.#byKeys = true;
      }
      const [x, y] = this.#position;
      this.#position = [x + step[0]! * KEY_STEP_M, y + step[1]! * KEY_STEP_M, 0];
      this.#lead(this.#door.wallOf(event), KEY_OVER_S);
    } else if (this.#byKeys && (event.key === 'Enter' || event.key === ' ')) {
      event.preventDefault();
      this.#finish(this.#door.wallOf(event), 'let go');
    } else if (this.#byKeys && event.key === 'Escape') {
      event.preventDefault();
      this.#finish(this.#door.wallOf(event), 'clamp');
    }
  }

  #take(wallMs: number): void {
    this.#door.onHold(true, wallMs);
    const [x = 0, y = 0] = this.#door.position();
    this.#from = [x, y, 0];
    this.#position = [x, y, 0];
    this.#turn = 0;
    this.#lastMs = wallMs;
    this.#door.session().grab(this.#runS(wallMs));
    this.#lead(wallMs, 0);
  }

  #lead(wallMs: number, over: number): void {
    const [x, y, z] = this.#position;
    const half = this.#door.session().bench.housing.size[1] / 2;
    this.#position = [Math.min(REACH.side, Math.max(-REACH.side, x)), Math.min(REACH.top, Math.max(half, y)), z];
    this.#door.session().lead(
      {
        position: this.#position,
        attitude: [0, 0, Math.sin(this.#turn / 2), Math.cos(this.#turn / 2)],
        over,
      },
      this.#runS(wallMs),
    );
    this.#lastMs = wallMs;
  }

  #finish(wallMs: number, how: 'let go' | 'clamp'): void {
    this.#byKeys = false;
    const session = this.#door.session();
    if (how === 'let go') session.letGo(this.#runS(wallMs));
    else session.clampHere(this.#runS(wallMs));
    this.#door.onHold(false, wallMs);
  }

  #runS(wallMs: number): number {
    return this.#door.runTimeOf(wallMs);
  }
}
