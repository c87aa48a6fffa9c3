import { didYouMean } from '../../src-core/base/did-you-mean.ts';
import { hoverAt } from '../../src-core/ide/hover.ts';
import { counted } from '../../src-core/papers/block-sheet.ts';
import { findingText } from '../../src-core/papers/finding-text.ts';
import { locateIn } from '../../src-core/papers/locate.ts';
import { setAsideText } from '../../src-core/papers/rule-page.ts';
import { wrapIndented } from '../../src-core/papers/wrap-text.ts';
import { ruleNamed, rules } from '../../src-core/rules/all.ts';
import type { Rule } from '../../src-core/rules/rule.ts';
import { dayOf } from './day-of.ts';
import { exit, Refusal, strongFor, type ExitCode, type Io } from './io.ts';
import { markdownToText } from './markdown-to-text.ts';
import { openOne } from './open-one.ts';
import type { Words } from './options.ts';

/** Explains a rule by its name, or a line of a rig: what its numbers come to, and what is found on it. */
export function explain(words: Words, io: Io): ExitCode {
  const [what] = words.rest;
  if (what === undefined || words.rest.length > 1) throw new Refusal('this takes the name of a rule, or a line of a file: linewright explain CODE, linewright explain FILE:LINE');
  const rule = ruleNamed(what);
  if (rule !== undefined) {
    const idle = ['on', 'root'].find((name) => words.option(name) !== undefined);
    if (idle !== undefined) throw new Refusal(`--${idle} says nothing about a rule`, 'it goes with a line of a file: linewright explain FILE:LINE');
    io.out(ruleText(rule, strongFor(io)).join('\n') + '\n');
    return exit.nothingFound;
  }
  const line = /^(.+?):(\d{1,9})(?::(\d{1,9}))?$/.exec(what);
  if (line === null) {
    const near = didYouMean(what, rules.map((r) => r.name));
    throw new Refusal(`\`${what}\` is not the name of a rule`, near === undefined ? 'linewright rules lists them; a line of a file is written FILE:LINE' : `did you mean ${near}?`);
  }
  return explainLine(words, io, { file: line[1]!, line: Number(line[2]), column: line[3] === undefined ? undefined : Number(line[3]) });
}

function ruleText(rule: Rule, strong: (text: string) => string): string[] {
  const part = (head: string, text: string): string[] => wrapIndented(text, 96, `  ${head}: `, '    ');
  const example = (text: string): string[] => text.trimEnd().split('\n').map((line) => `    ${line}`.trimEnd());
  return [
    `${strong(rule.name)} (${rule.severity})`,
    '',
    ...wrapIndented(rule.summary, 96, '  ', '  '),
    ...part('why', rule.why),
    ...part('source', rule.source),
    ...wrapIndented(setAsideText(rule).replaceAll('`', ''), 96, '  ', '    '),
    '',
    '  Found in',
    '',
    ...example(rule.bad),
    '',
    '  Not found in',
    '',
    ...example(rule.good),
  ];
}

function explainLine(words: Words, io: Io, at: { readonly file: string; readonly line: number; readonly column: number | undefined }): ExitCode {
  const { day } = dayOf(words, io);
  const { project, path, called } = openOne(words, io, 'explain FILE:LINE', at.file);
  const file = project.file(path)!;
  const { lines } = file;
  if (at.line < 1 || lines.lineCount < at.line) throw new Refusal(`${called(path)} has ${counted(lines.lineCount, 'line')}`);
  const [start, end] = [lines.lineStart(at.line - 1), lines.lineEnd(at.line - 1)];
  const offsets = at.column === undefined ? wordStarts(file.text, start, end) : [lines.offset(at.line - 1, at.column - 1)];
  io.out(`${file.text.slice(start, end).trim()}\n`);
  const told = new Set<string>();
  for (const offset of offsets) {
    const hover = hoverAt(project, path, offset, day);
    // Words of one splice share its answer, and each adds a line about itself: the answer is told once.
    const answer = hover?.markdown.split('\n\n')[0];
    if (hover === undefined || answer === undefined || told.has(answer)) continue;
    told.add(answer);
    io.out(`\n${strongFor(io)(file.text.slice(hover.span.start, hover.span.end))}\n${markdownToText(hover.markdown, 96).map((l) => `  ${l}`.trimEnd()).join('\n')}\n`);
  }
  const locate = locateIn([...project.paths].map((p) => project.file(p)!), called);
  const found = project.findings(path, day).filter((finding) => {
    const span = file.spanOf(finding.place)!;
    return span.start <= end && start <= span.end && lines.lineColumn(span.start).line === at.line - 1;
  });
  if (found.length > 0) io.out('\n');
  for (const finding of found) io.out(findingText(finding, locate, io.width, strongFor(io)).join('\n') + '\n');
  if (told.size === 0 && found.length === 0) io.out('\nNothing is known about this line.\n');
  return exit.nothingFound;
}

/** Offsets of the words and numbers of a line. */
function wordStarts(text: string, start: number, end: number): number[] {
  return [...text.slice(start, end).matchAll(/"[^"]*"?|#.*|[^\s"#]+/g)].map((match) => start + match.index);
}
