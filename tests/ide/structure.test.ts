import { expect, test } from 'vitest';
import { documentSymbols, type DocumentSymbol } from '../../src-core/ide/document-symbols.ts';
import { foldingRanges } from '../../src-core/ide/folding-ranges.ts';
import { inlayHints } from '../../src-core/ide/inlay-hints.ts';
import { selectionRanges } from '../../src-core/ide/selection-ranges.ts';
import { semanticTokens } from '../../src-core/ide/semantic-tokens.ts';
import { cursorIn, day, line, winch } from './cursor.ts';

const rig = `$0# the truck's own winch
# and its line
${winch}
${line}
  2025-04-02  fitted
  2026-02-14  pulled  31 kN
  2026-06-21  damage  cut 1 strand at 8.4 m from inboard
}

repair fix on main {
  cut     at 20 m from inboard keep tail
  splice  outboard eye bury 46 cm taper 15 cm temporary
}
`;

const tree = (symbols: readonly DocumentSymbol[], indent = ''): string[] => symbols.flatMap((s) => [`${indent}${s.name} | ${s.detail}`, ...tree(s.children, `${indent}  `)]);

test('the outline shows the number that somebody would ask for first', () => {
  const { project, path } = cursorIn(rig);
  expect(tree(documentSymbols(project, path, day))).toEqual([
    'bow-winch | winch · 23.1 kN to 42 kN · 27.67 m usable',
    'main | line · 30 m · 82.8 to 84.4 kN at its weakest place (outboard end)',
    '  inboard | lug',
    '  outboard | bury 72 d of 72 d',
    '  2025-04-02 fitted | ',
    '  2026-02-14 pulled | 31 kN',
    '  2026-06-21 damage | 84.3 kN left there',
    'fix | repair · leaves main 19.18 to 19.4 m, tail 10 m',
    '  cut at 20 m from inboard keep tail | ',
    '  splice outboard eye bury 46 cm taper 15 cm temporary | bury 46 d of 72 d',
  ]);
});

test('hints stand at the end of their line', () => {
  const { project, path, text } = cursorIn(rig);
  const hints = inlayHints(project, path, { start: 0, end: text().length }, day);
  expect(hints.map((h) => `${text().slice(0, h.at).split('\n').at(-1)!.trim()} > ${h.text}`)).toEqual([
    'keep     10 wraps > 2.33 m of line',
    'carries  main > 23.1 kN to 42 kN · 27.67 m usable',
    'outboard  eye thimble tube bury 72 d taper 24 d > bury 72 d of 72 d',
    '2026-06-21  damage  cut 1 strand at 8.4 m from inboard > 84.3 kN left there',
    'cut     at 20 m from inboard keep tail > main 19.18 to 19.4 m · tail 10 m',
    'splice  outboard eye bury 46 cm taper 15 cm temporary > bury 46 d of 72 d',
  ]);
  expect(inlayHints(project, path, { start: 0, end: 10 }, day)).toEqual([]);
});

test('blocks, comments and logbooks fold', () => {
  const { project, path } = cursorIn(rig);
  expect(foldingRanges(project, path).map(({ from, to, kind }) => `${from + 1}-${to + 1} ${kind}`)).toEqual(['1-2 comment', '3-9 block', '12-23 block', '21-23 logbook', '26-28 block']);
});

test('an open brace folds to where its block ends', () => {
  const { project, path } = cursorIn('line main {\n  length  30 m\n\nstrap s {\n}\n$0');
  expect(foldingRanges(project, path)[0]).toEqual({ from: 0, to: 1, kind: 'block' });
});

test('a selection grows from the word to the file', () => {
  const { project, path, offset, text } = cursorIn(`strap s {\n}\n\n${line.replace('bury 72 d', 'bury $072 d')}}\n`);
  const spans = selectionRanges(project, path, offset).map((s) => text().slice(s.start, s.end));
  expect(spans.slice(0, 4)).toEqual(['72', '72 d', 'bury 72 d', 'outboard  eye thimble tube bury 72 d taper 24 d']);
  expect(spans.at(-2)).toBe(`${line}}`.replace('$0', ''));
  expect(spans.at(-1)).toBe(text());
});

test('every token by the part it plays', () => {
  const { project, path, text } = cursorIn('$0chain reach after fix { # note\n  main outboard -> shackle bow 19 mm -> larch\n}\n');
  expect(semanticTokens(project, path).map((t) => `${text().slice(t.start, t.end)}:${t.type}${t.declares ? '!' : ''}`)).toEqual([
    'chain:block', 'reach:name!', 'after:word', 'fix:name', '# note:comment',
    'main:name', 'outboard:word', '->:arrow', 'shackle:word', 'bow:word', '19:number', 'mm:unit', '->:arrow', 'larch:name',
  ]);
});

test('tokens of a logbook entry', () => {
  const { project, path, text } = cursorIn('$0line m {\n  2026-06-21  heated  70 degC at 8.4 m from inboard "near the drum"\n}\n');
  expect(semanticTokens(project, path).slice(2).map((t) => `${text().slice(t.start, t.end)}:${t.type}`)).toEqual([
    '2026-06-21:date', 'heated:entry', '70:number', 'degC:unit', 'at:word', '8.4:number', 'm:unit', 'from:word', 'inboard:word', '"near the drum":text',
  ]);
});

test('tokens of a stretch are those of the whole that touch it', () => {
  const { project, path, text } = cursorIn(rig);
  const at = text().indexOf('line main');
  const some = semanticTokens(project, path, { start: at, end: at + 9 });
  expect(some.map((t) => text().slice(t.start, t.end))).toEqual(['line', 'main']);
});
