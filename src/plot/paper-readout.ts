import { cursorText, timeText } from './cursor-reading.ts';
import { markLook } from './event-marks.ts';
import { type PaperFrame, xOf } from './paper-frame.ts';
import type { CursorReading, CursorValue } from './paper-view.ts';

interface Row {
  readonly row: HTMLElement;
  readonly swatch: HTMLElement;
  readonly value: HTMLElement;
}

/** The slip beside the cursor: time, event, and each line's value. Seen only; the cursor's handle speaks the same. */
export class PaperReadout {
  readonly element: HTMLElement;
  readonly #time: HTMLElement;
  readonly #rows: Row[] = [];
  #shown = '';

  constructor() {
    this.element = document.createElement('div');
    this.element.className = 'tape-paper-readout';
    this.element.setAttribute('aria-hidden', 'true');
    this.element.hidden = true;
    this.#time = document.createElement('div');
    this.#time.className = 'tape-paper-readout-time';
    this.element.append(this.#time);
  }

  show(reading: CursorReading | undefined, frame: PaperFrame, scaleOf: (kind: CursorValue['kind']) => number): void {
    if (!reading) {
      if (!this.element.hidden) this.element.hidden = true;
      return;
    }
    if (this.element.hidden) this.element.hidden = false;
    const name = reading.event ? (markLook(reading.event)?.name ?? '') : '';
    const head = name ? `${timeText(reading.timeS)} · ${name}` : timeText(reading.timeS);
    const texts = reading.values.map((value) => cursorText(value, frame.view, scaleOf(value.kind)));
    const key = `${head}|${reading.values.map(({ kind }) => kind).join()}|${texts.join('|')}`;
    if (key !== this.#shown) this.#write(head, reading, texts);
    this.#shown = key;
    this.#place(xOf(frame, reading.timeS), frame);
  }

  #write(head: string, reading: CursorReading, texts: readonly string[]): void {
    this.#time.textContent = head;
    texts.forEach((text, i) => {
      const slip = this.#rows[i] ?? this.#addRow();
      this.#rows[i] = slip;
      const { row, swatch, value } = slip;
      const { kind } = reading.values[i]!;
      row.hidden = false;
      if (swatch.dataset.line !== kind) swatch.dataset.line = kind;
      value.textContent = text;
    });
    for (let i = texts.length; i < this.#rows.length; i++) this.#rows[i]!.row.hidden = true;
  }

  #addRow(): Row {
    const row = document.createElement('div');
    row.className = 'tape-paper-readout-row';
    const swatch = document.createElement('i');
    const value = document.createElement('span');
    row.append(swatch, value);
    this.element.append(row);
    return { row, swatch, value };
  }

  /** Right of the cursor while there is room, else left. */
  #place(x: number, frame: PaperFrame): void {
    const { offsetWidth } = this.element;
    const right = x + 10 + offsetWidth <= frame.nibXPx - 6;
    const left = right ? x + 10 : Math.max(2, x - 10 - offsetWidth);
    const top = frame.bottomPx - this.element.offsetHeight - 8;
    this.element.style.transform = `translate(${Math.round(left)}px, ${Math.round(top)}px)`;
  }
}
