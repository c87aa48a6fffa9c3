import { inspectionSheet } from '../../src-core/papers/inspection-sheet.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { subjectOf, writePaper } from './paper.ts';

/** Writes the sheet that an inspection is filled in on by hand. */
export function inspect(words: Words, io: Io): ExitCode {
  const { subject, judged } = subjectOf(words, io, 'inspect LINE FILE', 'line');
  if (judged.assessed.kind !== 'line') throw new Refusal('this is not a line');
  writePaper(inspectionSheet(subject, judged.assessed), words, io);
  return exit.nothingFound;
}
