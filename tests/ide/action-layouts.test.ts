import { expect, test } from 'vitest';
import { codeActions, type CodeAction } from '../../src-core/ide/code-actions.ts';
import { fenceAt, rigFences, rigTextOf, textInFence } from '../../src-core/ide/markdown-fences.ts';
import { Project } from '../../src-core/project.ts';
import { formatFile } from '../../src-core/syntax/format.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { day } from './cursor.ts';

const blocks = [
  'line a {\n  material  HMPE\n}',
  'line bare {\n}',
  'line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d\n  2026-05-02  fitted\n  2026-06-21  damage     cut 2 strands at 8.4 m from inboard\n}',
  'winch w {\n  carries  a\n}',
  'winch v {\n  rated    42 kN\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  carries  main\n}',
  '# What we mean to do.\nrepair field-fix on main {\n  cut     at 7.6 m from inboard\n  splice  outboard eye thimble tube bury 46 d taper 24 d temporary\n}',
  'shackle bow {\n  wll  6.5 t\n}',
  'shackle other {\n  body  22 mm\n}',
  'chain reach after field-fix {\n  main outboard -> bow\n}',
  'chain loose {\n  bow -> other\n}',
  'pull p with v through reach {\n  load  plover\n}',
  'pull q with v',
  'vehicle plover {\n}',
  'practice {\n  severity  link-above-limit hint\n}',
];

const layouts: Readonly<Record<string, (text: string) => string>> = {
  'as formatted': (t) => t,
  'beside the braces': (t) => t.replace(/\{\n\s*/g, '{ ').replace(/\n\}/g, ' }'),
  'beside the opening brace': (t) => t.replace(/\{\n\s*/g, '{'),
  'beside the closing brace': (t) => t.replace(/\n\}/g, '}  # the end'),
  'block beside block': (t) => t.replace(/\}\n\n(?!#)/g, '} '),
  'with comments': (t) => t.replace(/(\{|[a-z0-9])\n/g, '$1 # so it is\n'),
  indented: (t) => t.replace(/^(?=.)/gm, '\t'),
  'without a last line break': (t) => t.trimEnd(),
};
const breaks: Readonly<Record<string, (text: string) => string>> = { LF: (t) => t, CRLF: (t) => t.replaceAll('\n', '\r\n'), CR: (t) => t.replaceAll('\n', '\r') };
const prefixed = (prefix: string, text: string): string => text.replace(/^/gm, prefix);
const around: Readonly<Record<string, (text: string) => string>> = {
  'a file': (t) => t,
  'a fence': (t) => `Before.\n\n\`\`\`rig\n${t.trimEnd()}\n\`\`\`\n\nAfter.\n`,
  'a list': (t) => `- Before.\n\n${prefixed('  ', `\`\`\`rig\n${t.trimEnd()}\n\`\`\``)}\n\nAfter.\n`,
  'a numbered list': (t) => `1. \`\`\`rig\n${prefixed('   ', `${t.trimEnd()}\n\`\`\``)}\n\nAfter.\n`,
  'a quotation': (t) => `Before.\n\n${prefixed('> ', `\`\`\`rig\n${t.trimEnd()}\n\`\`\``)}\n\nAfter.\n`,
  'a list in a quotation': (t) => `${prefixed('> ', `- Before.\n\n${prefixed('  ', `\`\`\`rig\n${t.trimEnd()}\n\`\`\``)}`)}\n\nAfter.\n`,
};

interface Document {
  readonly written: string;
  readonly project: Project;
  readonly fences: ReturnType<typeof rigFences> | undefined;
}

function read(written: string, inDocument: boolean): Document {
  const fences = inDocument ? rigFences(written) : undefined;
  const project = new Project();
  project.set('a.rig', fences === undefined ? written : rigTextOf(written, fences));
  return { written, project, fences };
}

/** As the server writes it. */
function applied({ written, fences }: Document, { edits }: CodeAction): string {
  let text = written;
  for (const edit of [...edits].sort((a, b) => b.start - a.start)) {
    const fence = fenceAt(fences ?? [], edit.start);
    const atLineStart = edit.start === 0 || /[\r\n]/.test(written[edit.start - 1]!);
    text = text.slice(0, edit.start) + (fence === undefined ? edit.text : textInFence(edit.text, fence, atLineStart)) + text.slice(edit.end);
  }
  return text;
}

const names = ({ project }: Document): string[] => project.file('a.rig')!.bound.flatMap((c) => c.blocks.map((b) => `${b.definition.head} ${b.name ?? ''}`)).filter((n) => !n.startsWith('repair'));
const heads = ({ project }: Document): number => project.file('a.rig')!.bound.reduce((n, c) => n + c.blocks.reduce((m, b) => m + b.statements.length, 0), 0);
const unread = ({ project }: Document): string[] => project.file('a.rig')!.bound.flatMap((c) => [...c.chunk.tree.problems.map((p) => p.code), ...c.problems.map((p) => p.code)]).filter((code) => ['unclosed-brace', 'stray-brace', 'unclosed-quote', 'stray-character', 'unknown-statement', 'unknown-block', 'unexpected-value', 'unexpected-block'].includes(code));
const prose = (text: string): string[] => text.split(/\r\n|\n|\r/).filter((l) => /Before|After|```/.test(l));

function actionsOf({ project }: Document): CodeAction[] {
  const { length } = project.file('a.rig')!;
  const found = new Map<string, CodeAction>();
  for (let at = 0; at <= length; at++) for (const action of codeActions(project, 'a.rig', { start: at, end: at }, day)) if (action.disabled === undefined) found.set(JSON.stringify([action.title, action.edits]), action);
  return [...found.values()];
}

const cases = Object.keys(layouts).flatMap((layout) => Object.keys(around).flatMap((place) => (place === 'a file' ? Object.keys(breaks) : ['LF']).map((lineBreak) => [layout, place, lineBreak] as const)));

test.each(cases)('%s in %s with %s: every action leaves a text that is read as before', (layout, place, lineBreak) => {
  const document = read(breaks[lineBreak]!(around[place]!(layouts[layout]!(blocks.join('\n\n') + '\n'))), place !== 'a file');
  expect(names(document).length).toBe(blocks.length - 1);
  expect(unread(document)).toEqual([]);
  const actions = actionsOf(document);
  const titles = actions.map((a) => a.title);
  for (const title of ['Add `breaking`, to be filled in', 'Add `with`, to be filled in', 'Add `load`, to be filled in', 'Plan a repair that cuts the damage out', 'Write `field-fix` into the logbook of `main` as done on 2026-06-22', 'Set `bury-too-short` aside here, with a reason', 'Remove the line']) expect(titles).toContain(title);
  for (const action of actions) {
    const text = applied(document, action);
    const after = read(text, place !== 'a file');
    const said = `${action.title}\n${text}`;
    expect([names(after), unread(after), prose(text)], said).toEqual([names(document), [], prose(document.written)]);
    if (action.kind === 'stub') expect(heads(after), said).toBe(heads(document) + 1);
    if (lineBreak !== 'LF') expect(new Set(text.match(/\r\n|\n|\r/g)), said).toEqual(new Set(document.written.match(/\r\n|\n|\r/g)));
  }
});

test.each(Object.keys(around))('in %s what is written is laid out as the formatter would', (place) => {
  const document = read(around[place]!(blocks.filter((b) => !/^(?:line (?:a|bare)|winch w|pull|practice)\b/.test(b)).join('\n\n') + '\n'), place !== 'a file');
  const actions = actionsOf(document).filter((a) => a.title.includes('logbook') || a.title.includes('Plan a repair'));
  expect(actions.map((a) => a.kind).sort()).toEqual(['fix', 'rewrite']);
  for (const action of actions) {
    const text = applied(document, action);
    const [fence] = place === 'a file' ? [] : rigFences(text);
    const rig = fence === undefined ? text : text.slice(fence.content.start, fence.content.end).split('\n').map((l) => l.slice(fence.prefix.length)).join('\n');
    expect(rig).toBe(formatFile(rig, topHeads));
  }
});
