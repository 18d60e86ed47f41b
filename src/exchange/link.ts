/**
 * The state of a sitting in the page's address: the run as a scenario (settings, seed, timed commands: replayed
 * bit for bit), the present settings and how the page stands. Deflated, then base64 for addresses (RFC 1951,
 * RFC 4648 §5). What comes in is untrusted: it passes the scenario's door and the bench's limits or is refused.
 */
import type { RunSpec } from '../contract/run.ts';
import { parseScenario } from '../scenario/parse-scenario.ts';
import { scenarioText } from '../scenario/scenario-text.ts';
import { type BenchSettings, ELEMENT_NAME, LONGEST_RUN_S } from '../session/settings.ts';
import { settingsFault } from '../session/settings-fault.ts';

/** How the page stands, as far as it goes along. */
export interface LinkedPage {
  readonly theme: 'day' | 'evening';
  readonly slowed: number;
  readonly spanS: number;
  readonly unit: 'g_n' | 'm/s2';
  readonly signTurned: boolean;
  readonly lines: readonly string[];
  /** Where the paper was pulled back to [s]; null: at the newest ink. */
  readonly shownS: number | null;
}

export interface Linked {
  readonly run: RunSpec;
  readonly settings: BenchSettings;
  /** Run time reached [s]. */
  readonly reachedS: number;
  readonly page: LinkedPage;
}

export type Opened = { readonly linked: Linked } | { readonly refused: string };

/** Longer addresses are cut or refused by mail programs and servers [characters]; common practice. */
export const LONGEST_LINK = 30_000;

const VERSION = 2;

/** The text for the address, or why there is none. */
export async function writeLink(linked: Linked): Promise<{ readonly text: string } | { readonly refused: string }> {
  if (linked.run.motions.some(({ kind }) => kind === 'recorded'))
    return { refused: 'A recorded file was played: it is too large for a link. Save the run instead.' };
  const { settings, reachedS, page } = linked;
  const json = JSON.stringify({
    version: VERSION,
    settings,
    reachedS,
    page,
    run: JSON.parse(scenarioText(linked.run)),
  });
  const text = toAddress(await through(new TextEncoder().encode(json), new CompressionStream('deflate-raw')));
  if (text.length > LONGEST_LINK)
    return { refused: `The run is too long for a link (${text.length} characters). Save the run instead.` };
  return { text };
}

/** Reads an address. */
export async function readLink(text: string): Promise<Opened> {
  if (text.length > LONGEST_LINK)
    return { refused: `The link has ${text.length} characters; at most ${LONGEST_LINK} are read.` };
  let value: unknown;
  try {
    const bytes = await through(fromAddress(text), new DecompressionStream('deflate-raw'), LARGEST_JSON);
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return { refused: 'The link is damaged: nothing could be read from it.' };
  }
  return check(value);
}

/** A small address must not unfold into a large text [bytes]. */
const LARGEST_JSON = 4e6;

function check(value: unknown): Opened {
  if (!isObject(value) || value['version'] !== VERSION)
    return { refused: `The link is of a version that this bench does not know; it knows ${VERSION}.` };
  const { settings, reachedS, page, run: written } = value;
  const parsed = parseScenario(JSON.stringify(written ?? null), {
    readFile() {
      throw new Error('a link holds no files');
    },
  });
  if (!parsed.run) {
    const fault = parsed.faults[0]!;
    return { refused: `The link's run cannot be played: ${fault.path}: ${fault.found}; allowed: ${fault.allowed}.` };
  }
  const { run } = parsed;
  if (run.elements.length !== 1 || run.elements[0]!.name !== ELEMENT_NAME || !run.elements[0]!.readout)
    return { refused: 'The link holds a run of other elements than this bench has.' };
  const faulty = settingsFault(settings);
  if (faulty) return { refused: `The link's settings are refused: ${faulty}.` };
  if (!(typeof reachedS === 'number' && reachedS >= 0 && reachedS <= LONGEST_RUN_S))
    return { refused: `The link's run time is ${String(reachedS)}; allowed: 0 to ${LONGEST_RUN_S} s.` };
  return { linked: { run, settings: settings as BenchSettings, reachedS, page: pageFrom(page) } };
}

function pageFrom(value: unknown): LinkedPage {
  const page = isObject(value) ? value : {};
  const number = (name: string, low: number, high: number, otherwise: number): number => {
    const found = page[name];
    return typeof found === 'number' && found >= low && found <= high ? found : otherwise;
  };
  const lines = Array.isArray(page['lines'])
    ? page['lines'].filter((line) => typeof line === 'string').slice(0, 12)
    : [];
  const shownS = number('shownS', 0, LONGEST_RUN_S, Number.NaN);
  return {
    theme: page['theme'] === 'evening' ? 'evening' : 'day',
    slowed: number('slowed', 1, 10_000, 10),
    spanS: number('spanS', 1e-4, 1200, 2.4),
    unit: page['unit'] === 'm/s2' ? 'm/s2' : 'g_n',
    signTurned: page['signTurned'] === true,
    lines,
    shownS: Number.isNaN(shownS) ? null : shownS,
  };
}

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most = Number.POSITIVE_INFINITY,
): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new RangeError(`more than ${most} bytes`);
    }
    parts.push(value);
  }
  const all = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

function toAddress(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromAddress(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
