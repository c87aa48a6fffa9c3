import { didYouMean } from '../../src-core/base/did-you-mean.ts';
import type { PaperDocument } from '../../src-core/papers/document.ts';
import { documentHtml } from '../../src-core/papers/document-html.ts';
import { documentMarkdown } from '../../src-core/papers/document-markdown.ts';
import { documentText } from '../../src-core/papers/document-text.ts';
import { blocksOf, type PaperSubject } from '../../src-core/papers/paper-subject.ts';
import type { JudgedBlock } from '../../src-core/rules/judge-block.ts';
import { dayOf } from './day-of.ts';
import { Refusal, strongFor, type Io } from './io.ts';
import { openOne } from './open-one.ts';
import type { Words } from './options.ts';

/** Opens the rig that a paper is made from. */
export function openSubject(words: Words, io: Io, usage: string, file: string | undefined): PaperSubject {
  const { day, text } = dayOf(words, io);
  const { project, path, called } = openOne(words, io, usage, file);
  return { root: project.judge(path, day), path, file: called(path), day: text };
}

/** Reads `NAME FILE`, and finds the block of that name. */
export function subjectOf(words: Words, io: Io, usage: string, head: string): { readonly subject: PaperSubject; readonly judged: JudgedBlock } {
  const [name, file, ...more] = words.rest;
  if (name === undefined || file === undefined || more.length > 0) throw new Refusal(`this takes a name and a file: linewright ${usage}`);
  const subject = openSubject({ ...words, rest: [file] }, io, usage, file);
  const blocks = blocksOf(subject, head);
  const judged = blocks.find(({ block }) => block.name === name);
  if (judged !== undefined) return { subject, judged };
  const owner = head === 'line' ? blocks.find(({ assessed }) => assessed.kind === 'line' && assessed.pieces.has(name)) : undefined;
  if (owner !== undefined) throw new Refusal(`\`${name}\` is a piece of the line \`${owner.block.name ?? ''}\``, `its part stands in: linewright ${usage.split(' ')[0]} ${owner.block.name ?? ''} ${file}`);
  const names = blocks.flatMap(({ block }) => block.name ?? []);
  const near = didYouMean(name, names);
  throw new Refusal(`${subject.file} has no ${head} \`${name}\``, near !== undefined ? `did you mean ${near}?` : names.length === 0 ? undefined : `it has ${names.join(', ')}`);
}

/** Writes a paper in the format that was asked for. */
export function writePaper(document: PaperDocument, words: Words, io: Io): void {
  const format = words.option('format') ?? 'text';
  io.out(format === 'html' ? documentHtml(document) : format === 'markdown' ? documentMarkdown(document) : documentText(document, { width: io.width ?? 96, strong: strongFor(io) }));
}
