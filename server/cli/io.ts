/** What a command may touch of the world besides files. Tests hand in their own. */
export interface Io {
  readonly cwd: string;
  /** Writes to standard output and standard error. */
  out(text: string): void;
  err(text: string): void;
  /** Writes what a program reads, each character as it is; undefined where a person looks on. */
  toProgram?(text: string): void;
  /** The local calendar day, `2026-06-22`. */
  today(): string;
  /** True when headings may be set in bold. */
  readonly styled: boolean;
  /** Characters in a line of the terminal; undefined when it is none. */
  readonly width: number | undefined;
  /** The file that a worker thread of this program starts with; undefined where there are none. */
  readonly program?: string | undefined;
  /** Shows how far we are, in place of what it showed before; undefined where nobody watches. */
  progress?(text: string): void;
}

export { Refusal } from '../files/refusal.ts';

/** The codes that every command ends with. */
export const exit = { nothingFound: 0, found: 1, couldNot: 2 } as const;
export type ExitCode = (typeof exit)[keyof typeof exit];

const bold = ['\u001b[1m', '\u001b[22m'] as const;
export const strongFor = (io: { readonly styled: boolean }): ((text: string) => string) => (io.styled ? (text) => bold[0] + text + bold[1] : (text) => text);
