import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import './caution-note.ts';
import { help } from './help.ts';
import { type Choice, settingChoice } from './setting-choice.ts';
import { baseStyles, linkStyles, selectStyles, sheetStyles, slipKeyStyles } from './shared-styles.ts';
import { sendAct } from './ui-events.ts';

/** A file as far as it has been read: its columns, and what each choice stands at. */
export interface RecordChoice {
  readonly fileName: string;
  /** Header names, in order. */
  readonly columns: readonly string[];
  readonly time: string;
  /** One column along `axis`, or three for x, y, z. */
  readonly values: readonly string[];
  readonly unit: 'm/s2' | 'g' | 'mg';
  readonly is: 'acceleration' | 'specificForce';
  readonly axis: 'up and down' | 'sideways' | 'to and fro';
  /** "4000 rows, 53.7 s, up to 0.319 g" once it can be played. */
  readonly summary: string;
  /** Why it cannot be played; '' when it can. */
  readonly fault: string;
}

/** Runs and records: this run as a file or a link, the runs kept, and a record from a file as the shaker's motion. */
@customElement('records-sheet')
export class RecordsSheet extends LitElement {
  static override styles = [
    baseStyles,
    sheetStyles,
    selectStyles,
    linkStyles,
    slipKeyStyles,
    css`
      .drop {
        display: grid;
        place-items: center;
        gap: 8px;
        padding: 18px 12px;
        border: 1.5px dashed var(--edge);
        border-radius: var(--radius-button);
        text-align: center;
      }
      .drop.over {
        border-color: var(--ink);
        background: color-mix(in srgb, var(--ink) 8%, transparent);
      }
      .row {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
        min-height: 32px;
      }
      .row label {
        font-weight: 540;
      }
      select {
        max-width: 165px;
      }
      ol {
        margin: 0 0 var(--space-4);
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
        padding: 4px 0;
        border-top: 1px solid var(--edge);
      }
      li button {
        flex: none;
      }
      .fault {
        color: var(--refusal);
      }
      .end {
        display: flex;
        justify-content: flex-end;
        margin: var(--space-4) 0;
      }
    `,
  ];

  @property({ attribute: false }) record: RecordChoice | undefined;
  /** The runs kept, newest first, each in a few words. */
  @property({ attribute: false }) kept: readonly string[] = [];
  /** What came of saving, linking or opening. */
  @property() note = '';
  @state() private over = false;

  override render() {
    return html`
      <h2>This run</h2>
      <p>Settings, seed and all that was done, each with its time: enough to make every number of it again.</p>
      <div class="row">
        <button class="slip" ${help('save run')} @click=${() => sendAct(this, { what: 'save run' })}>Save it</button>
        <button class="slip" ${help('copy link')} @click=${() => sendAct(this, { what: 'copy link' })}>Copy a link</button>
        <button class="slip" ${help('open run')} @click=${() => this.#pick('.run')}>Open one</button>
        <input class="run" type="file" accept=".json,application/json" hidden aria-label="saved run" @change=${this.#opened} />
      </div>
      <p class="note" role="status">${this.note}</p>
      ${this.kept.length === 0 ? nothing : this.#keptRuns()}
      <h2>A record on the shaker</h2>
      <p>A file of numbers with commas between them and a line of names on top: one column the time in seconds.</p>
      <div
        class="drop ${this.over ? 'over' : ''}"
        @dragover=${this.#dragOver}
        @dragleave=${this.#dragLeave}
        @drop=${this.#dropped}
      >
        <button class="main" ${help('record')} @click=${() => this.#pick('.record')}>
          ${this.record === undefined ? 'Choose a file' : 'Choose another file'}
        </button>
        <span class="note">${this.record === undefined ? 'or drop it here' : this.record.fileName}</span>
        <input class="record" type="file" accept=".csv,.txt,text/csv,text/plain" hidden aria-label="file" @change=${this.#chosen} />
      </div>
      ${this.record === undefined ? nothing : this.#columns(this.record)}
    `;
  }

  #keptRuns() {
    return html`<h3>Kept</h3>
      <ol>
        ${this.kept.map(
          (words, index) => html`<li>
            <span class="note">${words}</span>
            <button
              class="link"
              ${help('bring back')}
              aria-label="bring back: ${words}"
              @click=${() => sendAct(this, { what: 'bring back', index })}
            >
              bring back
            </button>
          </li>`,
        )}
      </ol>`;
  }

  #columns(record: RecordChoice) {
    const columns = record.columns.map((column) => ({ value: column, words: column }));
    const three = record.values.length === 3;
    return html`
      <h3>What it says</h3>
      ${this.#choice('record.time', 'time', record.time, columns)}
      ${this.#choice('record.value', three ? 'x' : 'value', record.values[0] ?? '', columns)}
      ${
        three
          ? html`${this.#choice('record.valueY', 'y', record.values[1] ?? '', columns)}
            ${this.#choice('record.valueZ', 'z', record.values[2] ?? '', columns)}`
          : this.#choice('record.axis', 'along', record.axis, [
              { value: 'sideways', words: 'sideways' },
              { value: 'up and down', words: 'up and down' },
              { value: 'to and fro', words: 'to and fro' },
            ])
      }
      ${this.#choice('record.count', 'columns', three ? 'three' : 'one', [
        { value: 'one', words: 'one direction' },
        { value: 'three', words: 'x, y and z' },
      ])}
      ${this.#choice('record.unit', 'in', record.unit, [
        { value: 'm/s2', words: 'm/s²' },
        { value: 'g', words: 'g' },
        { value: 'mg', words: 'mg' },
      ])}
      ${this.#choice('record.is', 'it is', record.is, [
        { value: 'acceleration', words: 'motion in the room' },
        { value: 'specificForce', words: 'what a sensor felt' },
      ])}
      <p class="note ${record.fault === '' ? '' : 'fault'}" role="status">
        ${record.fault === '' ? record.summary : record.fault}
      </p>
      <div class="end">
        <button
          class="main"
          ${help('play record')}
          ?disabled=${record.fault !== ''}
          @click=${() => sendAct(this, { what: 'handle', handling: 'recorded' })}
        >
          Put it on the shaker
        </button>
      </div>
      <caution-note about="shake"></caution-note>
    `;
  }

  #choice(name: string, label: string, chosen: string, choices: readonly Choice[]) {
    return html`<div class="row">
      <label for=${name}>${label}</label>
      ${settingChoice(this, name, chosen, choices)}
    </div>`;
  }

  #send(file: File | null | undefined): void {
    if (file) sendAct(this, { what: 'file', file });
  }

  #pick(input: string): void {
    this.renderRoot.querySelector<HTMLInputElement>(input)?.click();
  }

  readonly #opened = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.item(0);
    if (file) sendAct(this, { what: 'open run', file });
    input.value = '';
  };

  readonly #chosen = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    this.#send(input.files?.item(0));
    // The same file can be chosen again after it was changed on disk.
    input.value = '';
  };

  readonly #dragOver = (event: DragEvent): void => {
    event.preventDefault();
    this.over = true;
  };

  readonly #dragLeave = (): void => {
    this.over = false;
  };

  readonly #dropped = (event: DragEvent): void => {
    event.preventDefault();
    this.over = false;
    this.#send(event.dataTransfer?.files.item(0));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'records-sheet': RecordsSheet;
  }
}
