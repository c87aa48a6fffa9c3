import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src-core/assess/finding.ts';
import type { BoundChunk } from '../../src-core/model/bound.ts';
import { applyAllowances } from '../../src-core/rules/allowances.ts';
import { findingsIn, judgeText } from '../support/judge-text.ts';

/** A chunk of ten lines of ten characters each, the line break counted, with an allowance for what stands on one of them. */
function tenLines(allowed: number | undefined, code = 'taper-missing') {
  const chunk = { text: '123456789\n'.repeat(10) };
  const allowances = allowed === undefined ? [] : [{ code, reason: 'a reason', place: { chunk, start: 0, end: 1 }, target: allowed * 10 + 2 }];
  const finding = (start: number, of = 'taper-missing'): Finding => ({ code: of, severity: 'warning', place: { chunk, start, end: start }, message: `at ${start}`, why: undefined, help: '', source: undefined, related: [], fixes: [] });
  const left = (...findings: readonly Finding[]): string[] => applyAllowances([{ chunk, allowances } as unknown as BoundChunk], findings, true).map((f) => (f.code === 'taper-missing' ? f.message : f.code));
  return { finding, left };
}

describe('what an allowance sets aside', () => {
  test('everything of its rule on its line, from the statement to the end of the line, and nothing beside it', () => {
    const { finding, left } = tenLines(4);
    expect(left(...[41, 42, 45, 49, 50, 52].map((start) => finding(start)))).toEqual(['at 41', 'at 50', 'at 52']);
  });

  test('whatever order the findings come in', () => {
    const { finding, left } = tenLines(4);
    expect(left(...[95, 82, 71, 65, 52, 45, 32, 21, 15, 2].map((start) => finding(start)))).toEqual(['at 95', 'at 82', 'at 71', 'at 65', 'at 52', 'at 32', 'at 21', 'at 15', 'at 2']);
  });

  test.each([0, 1, 2, 3, 4, 5, 6, 7, 8, 9])('on line %i of ten', (line) => {
    const { finding, left } = tenLines(line);
    const starts = [5, 15, 25, 35, 45, 55, 65, 75, 85, 95];
    expect(left(...starts.map((start) => finding(start)))).toEqual(starts.filter((start) => start !== line * 10 + 5).map((start) => `at ${start}`));
  });

  test('nothing of another rule: then the comment itself is said', () => {
    const { finding, left } = tenLines(4);
    expect(left(finding(45, 'taper-too-short'))).toEqual(['taper-too-short', 'unused-allowance']);
  });

  test('no rating, not even one that is shown as a warning: the finding stays and the attempt is said', () => {
    const { finding, left } = tenLines(4, 'line-weaker-than-winch');
    expect(left(finding(45, 'line-weaker-than-winch'))).toEqual(['line-weaker-than-winch', 'cannot-be-set-aside']);
  });

  test('no error, though its rule may be set aside where it warns', () => {
    const { finding, left } = tenLines(4, 'bury-too-short');
    expect(left(finding(45, 'bury-too-short'))).toEqual([]);
    expect(left({ ...finding(45, 'bury-too-short'), severity: 'error' })).toEqual(['bury-too-short', 'cannot-be-set-aside']);
  });
});

describe('errors stay whatever the reason', () => {
  const line = (outboard: string, entry: string): string => `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  outboard  ${outboard}\n  ${entry}\n}\n`;
  const eye = 'eye thimble tube bury 72 d taper 24 d';
  test.each([
    ['damage-left-in-service', line(eye, '2026-06-20 damage cut 5 strands at 12 m from inboard')],
    ['bad-date', line(eye, '2026-02-30 damage cut 5 strands at 12 m from inboard')],
    ['line-to-retire', line(eye, '2026-06-20 damage brittle at 12 m from inboard')],
    ['unknown-statement', line(eye, 'colour red')],
    ['bare-number', line(eye, '2026-06-20 damage cut 1 strand at 12 from inboard')],
    ['bury-too-short', line('eye thimble tube bury 46 cm taper 24 d', '2026-06-20 inspected "ok"')],
  ])('%s', (code, text) => {
    const before = findingsIn(text).filter((f) => f.code === code);
    expect(before.map((f) => f.severity)).toEqual(['error']);
    const at = before[0]!.line - 1;
    const lines = text.split('\n');
    const after = findingsIn([...lines.slice(0, at), `  # allow ${code}: the maker looked at it`, ...lines.slice(at)].join('\n'));
    expect(after.map((f) => f.code)).toEqual(expect.arrayContaining([code, 'cannot-be-set-aside']));
    // Nor does the shop lower it.
    const shop = findingsIn(`practice {\n  severity  ${code} off\n}\n${text}`);
    expect(shop.filter((f) => f.code === code).map((f) => f.severity)).toEqual(['error']);
    expect(shop.map((f) => f.message)).toContain(`\`${code}\` is an error and stays one`);
  });
});

test('what is not known is set aside at its place, and not everywhere at once', () => {
  const pull = 'pull out {\n  load  1 t\n}\n';
  const codes = (text: string): string[] => findingsIn(text).filter((f) => f.code === 'missing-fact').map((f) => f.severity);
  expect(codes(pull)).toContain('information');
  expect(codes(`practice {\n  severity  missing-fact off\n}\n${pull}`)).toEqual(codes(pull));
  expect(findingsIn(`practice {\n  severity  missing-fact off\n}\n${pull}`).map((f) => f.message)).toContain('`missing-fact` says what is not known and stays information');
  // It may be raised.
  expect(new Set(codes(`practice {\n  severity  missing-fact warning\n}\n${pull}`))).toEqual(new Set(['warning']));
});

test('the second of two comments for one finding has nothing left to set aside', () => {
  const text = `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  breaking  92 kN
  2026-05-02 fitted
  # allow taper-too-short: maker's own splice
  # allow taper-too-short: once more
  outboard  eye thimble tube bury 72 d taper 15 d
  strands   12
  stored    covered
}
`;
  expect(judgeText(text)).toEqual(['8:3 warning[unused-allowance]: nothing is found here that `taper-too-short` could set aside']);
});
