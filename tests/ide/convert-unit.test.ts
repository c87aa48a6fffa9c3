import { expect, test } from 'vitest';
import { codeActions } from '../../src-core/ide/code-actions.ts';
import { furtherReading } from '../../src-core/ide/reference-link.ts';
import { cursorIn, day } from './cursor.ts';

const offered = (fixture: string): string[] => {
  const { project, path, offset } = cursorIn(fixture);
  return codeActions(project, path, { start: offset, end: offset }, day).filter((a) => a.kind === 'rewrite').map((a) => {
    const [edit] = a.edits;
    return `${project.file(path)!.text.slice(edit!.start, edit!.end)} -> ${edit!.text}`;
  });
};

// The factors are exact by definition: NIST SP 811 (2008), app. B.
test.each([
  ['line a {\n  length  3$00 m\n}\n', ['30 m -> 98.42519685 ft']],
  ['line a {\n  length  22 ft$0 6 in\n}\n', ['22 ft 6 in -> 6.858 m']],
  ['line a {\n  breaking  20,00$00 lbf\n}\n', ['20,000 lbf -> 88.96443231 kN']],
  ['shackle a {\n  wll  4.7$0 t\n}\n', ['4.7 t -> 10361.72632 lb', '4.7 t -> 5.180863161 short-ton']],
  ['line a {\n  2026-01-01  damage  cut 1 strand at 8.4$0 m from inboard\n}\n', ['8.4 m -> 27.55905512 ft']],
  ['line a {\n  outboard  eye bury 7$02 d\n}\n', []],
  ['line a {\n  mater$0ial  HMPE\n}\n', []],
])('%j', (fixture, expected) => {
  expect(offered(fixture)).toEqual(expected);
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
