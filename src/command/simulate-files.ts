/** The files of the command `simulate`: what it reads, and what it writes without ever harming what it reads. */
import {
  closeSync,
  constants,
  existsSync,
  fstatSync,
  ftruncateSync,
  openSync,
  readFileSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';

/** Largest file read [bytes]. */
const LARGEST_INPUT = 100e6;

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of the path is no folder',
  EROFS: 'the place is read-only',
  ENOSPC: 'no space is left',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'the links go in a circle',
};

/** Why a file operation failed, in words without the path. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : undefined;
  return (code && (REASONS[code] ?? code)) || (error instanceof Error ? error.message : String(error));
}

/** Reads files and remembers which, so that no output overwrites one. */
export class InputFiles {
  readonly #read = new Set<string>();

  /** Text of a regular file; throws an Error that says in words why not. */
  read(path: string): string {
    try {
      const stat = statSync(path);
      if (stat.isDirectory()) throw new Error('it is a folder');
      if (!stat.isFile()) throw new Error('it is no regular file');
      if (stat.size > LARGEST_INPUT) throw new Error(`it has ${stat.size} bytes, more than ${LARGEST_INPUT}`);
      this.#read.add(identity(stat));
      return readFileSync(path, 'utf8');
    } catch (error) {
      throw new Error(reasonOf(error));
    }
  }

  has(stat: FileStat): boolean {
    return this.#read.has(identity(stat));
  }
}

interface FileStat {
  readonly dev: number;
  readonly ino: number;
}

/** The same for every path and link to one file. */
function identity({ dev, ino }: FileStat): string {
  return `${dev}:${ino}`;
}

/** A file being written. */
export class OutputFile {
  readonly #descriptor: number;

  constructor(descriptor: number) {
    this.#descriptor = descriptor;
  }

  write(text: string): void {
    const bytes = Buffer.from(text);
    for (let done = 0; done < bytes.length; ) done += writeSync(this.#descriptor, bytes, done);
  }

  close(): void {
    closeSync(this.#descriptor);
  }
}

export interface Wanted {
  /** The option that asked for it, e.g. `--out`. */
  readonly option: string;
  readonly path: string;
}

/** All files wanted, emptied and open; or, if one cannot be had, sentences why, and every file as it was. */
export function openOutputs(
  wanted: readonly Wanted[],
  inputs: InputFiles,
): { readonly files: OutputFile[]; readonly refusals: string[] } {
  const refusals: string[] = [];
  const opened: { readonly path: string; readonly descriptor: number; readonly isNew: boolean }[] = [];
  const taken = new Set<string>();
  for (const { option, path } of wanted) {
    const isNew = !existsSync(path);
    try {
      const descriptor = openSync(path, constants.O_WRONLY | constants.O_CREAT, 0o666); // not emptied yet
      opened.push({ path, descriptor, isNew });
      const stat = fstatSync(descriptor);
      if (inputs.has(stat)) throw new Error('the run reads it');
      if (stat.isFile() && taken.has(identity(stat))) throw new Error('another option writes it');
      taken.add(identity(stat));
    } catch (error) {
      refusals.push(
        `${option}: found ${JSON.stringify(path)}, which cannot be written (${reasonOf(error)}); allowed: the path of a file of its own`,
      );
    }
  }
  if (refusals.length > 0) {
    for (const { path, descriptor, isNew } of opened) {
      closeSync(descriptor);
      if (isNew) unlinkSync(path);
    }
    return { files: [], refusals };
  }
  const files = opened.map(({ descriptor }) => {
    if (fstatSync(descriptor).isFile()) ftruncateSync(descriptor);
    return new OutputFile(descriptor);
  });
  return { files, refusals };
}
