import { locateIn } from '../../src-core/papers/locate.ts';
import { logbook, logbookDocument } from '../../src-core/papers/logbook.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { subjectOf, writePaper } from './paper.ts';
import { plainJson } from './plain-text.ts';

/** Tells a line's life, entry by entry. */
export function printLogbook(words: Words, io: Io): ExitCode {
  const { subject, judged } = subjectOf(words, io, 'logbook LINE FILE', 'line');
  if (judged.assessed.kind !== 'line') throw new Refusal('this is not a line');
  const locate = locateIn([...subject.root.files.values()].map((f) => f.file), (path) => (path === subject.path ? subject.file : path));
  if (words.option('format') === 'json') io.out(plainJson(logbook(subject, judged.assessed, locate)));
  else writePaper(logbookDocument(subject, judged.assessed, locate), words, io);
  return exit.nothingFound;
}
