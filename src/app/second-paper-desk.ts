import type { Graph } from '../plot/graph.ts';
import { naturalFrequencyHz } from '../session/settings.ts';
import type { PageDoor } from './page-door.ts';

/** Draws the second paper while it is unrolled, anew whenever the element or the light changes. */
export class SecondPaperDesk {
  readonly #page: PageDoor;
  readonly #host: HTMLElement;
  #graphs: readonly [Graph, Graph] | undefined;
  #fetching = false;
  #key = '';

  constructor(page: PageDoor, host: HTMLElement) {
    this.#page = page;
    this.#host = host;
  }

  /** To be called after the page was rendered. */
  async draw(): Promise<void> {
    const { state, session } = this.#page;
    const { secondPaper, theme, stage } = state;
    if (secondPaper === undefined) {
      for (const graph of this.#graphs ?? []) graph.dispose();
      this.#graphs = undefined;
      this.#key = '';
      return;
    }
    const { massKg, stiffnessNM, dampingRatio } = session.settings;
    const key = [secondPaper, massKg, stiffnessNM, dampingRatio, theme, stage].join(' ');
    if (key === this.#key || this.#fetching) return;
    const fetched = await this.#fetch();
    if (fetched === undefined) return;
    const [{ Graph: Sheet }, { answerGraphs }] = fetched;
    const left = this.#host.querySelector<HTMLElement>('.graph-left');
    const right = this.#host.querySelector<HTMLElement>('.graph-right');
    if (!left || !right) return;
    this.#key = key;
    this.#graphs ??= [new Sheet(left), new Sheet(right)];
    const element = { frequencyHz: naturalFrequencyHz(massKg, stiffnessNM), dampingRatio };
    const answers = answerGraphs(secondPaper, element, theme, stage);
    this.#graphs[0].draw(answers.left);
    this.#graphs[1].draw(answers.right);
    this.#page.change({ paperFound: answers.found });
  }

  /** Out of the first load: not everybody unrolls it. */
  async #fetch(): Promise<[typeof import('../plot/graph.ts'), typeof import('./answer-graphs.ts')] | undefined> {
    this.#fetching = true;
    try {
      return await Promise.all([import('../plot/graph.ts'), import('./answer-graphs.ts')]);
    } catch (error) {
      this.#page.change({
        secondPaper: undefined,
        notice: `The second paper could not be fetched (${String(error)}).`,
      });
      return undefined;
    } finally {
      this.#fetching = false;
    }
  }
}
