import { expect, test } from 'vitest';
import { codeActions } from '../../src-core/ide/code-actions.ts';
import { furtherReading } from '../../src-core/ide/reference-link.ts';
import { cursorIn, day, line, winch } from './cursor.ts';

const offered = (fixture: string): string[] => {
  const { project, path, offset } = cursorIn(fixture);
  return codeActions(project, path, { start: offset, end: offset }, day).filter((a) => a.kind === 'rewrite').map((a) => {
    const [edit] = a.edits;
    expect(a.title.replace('about ', '')).toBe(`Write it as ${edit!.text}`);
    return `${project.file(path)!.text.slice(edit!.start, edit!.end)} -> ${a.title.replace('Write it as ', '')}`;
  });
};

// The factors are exact by definition: NIST SP 811 (2008), app. B.
test.each([
  ['line a {\n  length  3$00 m\n}\n', ['30 m -> about 98.425 ft']],
  ['line a {\n  length  22 ft$0 6 in\n}\n', ['22 ft 6 in -> 6.858 m']],
  ['line a {\n  diameter  1$00 mm\n}\n', ['10 mm -> about 0.3937 in']],
  ['line a {\n  diameter  3/8$0 in\n}\n', ['3/8 in -> 9.525 mm']],
  // A strength is rounded down, a load up.
  ['line a {\n  breaking  20,00$00 lbf\n}\n', ['20,000 lbf -> about 88.96 kN']],
  ['line a {\n  breaking  2,00$01 lbf\n}\n', ['2,001 lbf -> about 8.9 kN']],
  ['line a {\n  2026-01-01  pulled  2,00$01 lbf\n}\n', ['2,001 lbf -> about 8.901 kN']],
  ['vehicle a {\n  mass  2,65$00 kg\n}\n', ['2,650 kg -> about 5,842 lb']],
  ['shackle a {\n  wll  4.7$0 t\n}\n', ['4.7 t -> about 10,361 lb', '4.7 t -> about 5.18 short-ton']],
  ['line a {\n  2026-01-01  damage  cut 1 strand at 8.4$0 m from inboard\n}\n', ['8.4 m -> about 27.559 ft']],
  ['line a {\n  outboard  eye bury 7$02 d\n}\n', []],
  ['line a {\n  mater$0ial  HMPE\n}\n', []],
])('%j', (fixture, expected) => {
  expect(offered(fixture)).toEqual(expected);
});

test('a length keeps its value within half a millimetre', () => {
  for (let n = 1; n < 400; n++) {
    for (const [unit, factor] of [['mm', 1], ['cm', 10], ['m', 1000], ['in', 25.4], ['ft', 304.8]] as const) {
      const text = `line a {\n  length  ${n * 0.37} ${unit}\n}\n`;
      const [action] = codeActions(cursorIn(`$0${text}`).project, 'a.rig', { start: 20, end: 20 }, day).filter((a) => a.kind === 'rewrite');
      const [number, to] = action!.edits[0]!.text.split(' ');
      const after = Number(number!.replaceAll(',', '')) * ({ in: 25.4, ft: 304.8, mm: 1, m: 1000 } as Record<string, number>)[to!]!;
      expect(Math.abs(after - n * 0.37 * factor), `${text}${number} ${to}`).toBeLessThanOrEqual(0.5);
    }
  }
});

test('what is judged otherwise in fewer digits is written with more, or not at all', () => {
  const shackle = 'shackle bow-19 {\n  form     bow\n  body     19 mm\n  pin      2$02 mm\n  wll      4.7 t\n  made-to  AS-2741\n}\n';
  expect(offered(shackle)).toEqual([]);
  expect(offered(shackle.replace('made-to  AS-2741', ''))).toEqual(['22 mm -> about 0.8661 in']);
});

test('an offer leaves the project as it was', () => {
  const { project, path, offset } = cursorIn(`${winch.replace('23', '2$03')}${line}}\n`);
  const [file, judged] = [project.file(path), project.judge(path, day)];
  const found = project.findings(path, day);
  expect(codeActions(project, path, { start: offset, end: offset }, day).map((a) => a.title)).toEqual(['Write it as about 9.05512 in']);
  expect([project.file(path), project.judge(path, day)]).toEqual([file, judged]);
  expect(project.findings(path, day)).toEqual(found);
});

test('what stands at a place is told of further on', () => {
  const at = (fixture: string) => {
    const { project, path, offset } = cursorIn(fixture);
    return furtherReading(project, path, offset, day);
  };
  expect(at('line a {\n  mater$0ial  HMPE\n}\n').section).toBe('line-material');
  expect(at('line a {\n  2026-01-01  dam$0age  melt at 8.4 m from inboard\n}\n')).toEqual({ section: 'line-entry-damage', rules: ['damage-left-in-service'] });
  expect(at('winch $0w {\n}\n').section).toBe('winch');
  expect(at('# nothing$0\n')).toEqual({ section: undefined, rules: [] });
});
