import { stepCard } from '../../src-core/papers/step-card.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { subjectOf, writePaper } from './paper.ts';

/** Writes the step card of a repair. */
export function card(words: Words, io: Io): ExitCode {
  const { subject, judged } = subjectOf(words, io, 'card REPAIR FILE', 'repair');
  const { assessed, block } = judged;
  if (assessed.kind !== 'repair') throw new Refusal(`the line that \`${block.name ?? 'the repair'}\` is on is not known`, 'declare it as a `line`');
  writePaper(stepCard(subject, assessed), words, io);
  return exit.nothingFound;
}
