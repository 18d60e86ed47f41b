import type { Linked } from '../exchange/link.ts';
import { faultSentence } from '../scenario/fault.ts';
import { scenarioText } from '../scenario/scenario-text.ts';
import { Address } from './address.ts';
import type { PageDoor } from './page-door.ts';

/** Larger files are no runs of this bench [bytes]. */
const LARGEST_RUN = 4e6;

export interface RunErrands {
  /** What goes into a link. */
  readonly linked: () => Linked;
  /** A run has been taken up: it is to be replayed to this run time [s]. */
  readonly taken: (reachedS: number) => void;
}

/** The run as a file or a link: out, and in again. */
export class RunFiles {
  readonly #page: PageDoor;
  readonly #errands: RunErrands;

  constructor(page: PageDoor, errands: RunErrands) {
    this.#page = page;
    this.#errands = errands;
  }

  /** The run so far as a scenario that the headless run replays to the same hash. */
  get scenario(): string {
    return scenarioText(this.#page.session.asRun());
  }

  /** Gives the run to the browser to keep as a file. */
  save(): void {
    const { session } = this.#page;
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([this.scenario], { type: 'application/json' }));
    link.download = `run-${session.run.world.hash.slice(0, 8)}.json`;
    link.click();
    // The browser has taken hold of it by the next task.
    setTimeout(() => URL.revokeObjectURL(link.href));
    const { record } = this.#page.state;
    const played = session.asRun().motions.some(({ kind }) => kind === 'recorded');
    const beside = played ? ` Keep ${record?.choice.fileName ?? 'the recorded file'} with it.` : '';
    this.#say(`Saved as ${link.download}.${beside}`);
  }

  async copyLink(): Promise<void> {
    const linked = this.#errands.linked();
    const { writeLink } = await import('../exchange/link.ts');
    const written = await writeLink(linked);
    if ('refused' in written) {
      this.#say(written.refused);
      return;
    }
    const address = Address.of(written.text);
    try {
      await navigator.clipboard.writeText(address);
      this.#say(`Copied a link of ${address.length} characters: whoever opens it finds this run.`);
    } catch {
      this.#say('The browser let nothing be copied. The same link stands in the address bar.');
    }
  }

  /** Takes up a saved run; what is wrong with it is said, and the present run stays. */
  async open(file: File): Promise<void> {
    if (file.size > LARGEST_RUN) {
      this.#say(`${file.name} has ${Math.ceil(file.size / 1e6)} MB; a saved run has at most ${LARGEST_RUN / 1e6} MB.`);
      return;
    }
    const { record } = this.#page.state;
    const [{ parseScenario }, { settingsOfRun }] = await Promise.all([
      import('../scenario/parse-scenario.ts'),
      import('../session/settings-of-run.ts'),
    ]);
    const { run, faults } = parseScenario(await file.text(), {
      readFile(name) {
        if (record?.choice.fileName === name) return record.text;
        throw new Error(`first choose ${name} above: the run plays it`);
      },
    });
    if (!run) {
      const more = faults.length > 1 ? ` (and ${faults.length - 1} more)` : '';
      this.#say(`${file.name} cannot be played: ${faultSentence(faults[0]!)}${more}`);
      return;
    }
    const found = settingsOfRun(run);
    if ('fault' in found) {
      this.#say(`${file.name} cannot be taken up by hand: ${found.fault}. The command line can run it.`);
      return;
    }
    this.#page.session.take(run, found.settings);
    this.#say(`${file.name}: ${run.duration.toPrecision(3)} s, being replayed.`);
    this.#errands.taken(run.duration);
  }

  #say(runNote: string): void {
    this.#page.change({ runNote });
  }
}
