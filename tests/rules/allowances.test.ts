import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src-core/assess/finding.ts';
import type { BoundChunk } from '../../src-core/model/bound.ts';
import { applyAllowances } from '../../src-core/rules/allowances.ts';
import { judgeText } from '../support/judge-text.ts';

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

  test('no rating: the finding stays and the attempt is said', () => {
    const { finding, left } = tenLines(4, 'line-weaker-than-winch');
    expect(left(finding(45, 'line-weaker-than-winch'))).toEqual(['line-weaker-than-winch', 'limit-set-aside']);
  });
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
}
`;
  expect(judgeText(text)).toEqual(['8:3 warning[unused-allowance]: nothing is found here that `taper-too-short` could set aside']);
});
