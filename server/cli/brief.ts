import { pullBrief } from '../../src-core/papers/pull-brief.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { subjectOf, writePaper } from './paper.ts';

/** Writes the brief of a pull. */
export function brief(words: Words, io: Io): ExitCode {
  const { subject, judged } = subjectOf(words, io, 'brief PULL FILE', 'pull');
  if (judged.assessed.kind !== 'pull') throw new Refusal('this is not a pull');
  writePaper(pullBrief(subject, judged.assessed), words, io);
  return exit.nothingFound;
}
