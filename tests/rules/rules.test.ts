import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { rules } from '../../src-core/rules/all.ts';
import { examplePath, type Rule } from '../../src-core/rules/rule.ts';
import { findingsIn, testDay, type FindingLine } from '../support/judge-text.ts';

const folder = new URL('../../src-core/rules/', import.meta.url);
const judged = (rule: Rule, which: 'bad' | 'good'): FindingLine[] => findingsIn({ ...rule.files, [examplePath]: rule[which] }, rule.exampleDay ?? testDay);
const codes = (found: readonly FindingLine[]): string[] => found.map((f) => f.code);
const spelled = (name: string): string => name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());

/** What no message says: blame, pleading, shouting, or a promise that nobody can keep. */
const unsaid = /!|\bplease\b|\bsafe\b|\bsafely\b|\bOK\b|\bokay\b|\boops\b|\bsorry\b/i;

test('there are rules, and each has a name of its own', () => {
  expect(rules.length).toBeGreaterThan(60);
  expect(new Set(rules.map((r) => r.name)).size).toBe(rules.length);
});

test('the words that no message says are found when they are said', () => {
  expect('please shorten the line').toMatch(unsaid);
  expect('this is safe').toMatch(unsaid);
  expect('within the limit given by the tag').not.toMatch(unsaid);
});

describe.each(rules.map((rule) => [rule.name, rule] as const))('%s', (name, rule) => {
  test('fires once in its bad example', () => {
    expect(codes(judged(rule, 'bad')).filter((code) => code === name)).toEqual([name]);
  });

  test('does not fire in its good example, where nothing else is wrong either', () => {
    const found = judged(rule, 'good');
    expect(codes(found)).not.toContain(name);
    expect(found.filter((f) => f.severity === 'error' || f.severity === 'warning').map((f) => f.code)).toEqual(rule.goodShows ?? []);
  });

  test('has a name that reads, all its texts, and a file of its name', () => {
    expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    // A document may speak of a safe working load; that is its word for a limit.
    for (const text of [rule.summary, rule.why, rule.source.replaceAll('safe working load', 'limit')]) {
      expect(text.trim()).toBe(text);
      expect(text.length).toBeGreaterThan(10);
      expect(text).not.toMatch(unsaid);
    }
    expect(rule.summary).toMatch(/\.$/);
    expect(rule.why).not.toMatch(/\.$/);
    const own = ['missing-fact', 'unused-allowance', 'cannot-be-set-aside'].includes(name) ? undefined : new URL(`${name}.ts`, folder);
    if (own === undefined) return;
    expect(existsSync(own)).toBe(true);
    expect(readFileSync(own, 'utf8')).toContain(`export const ${spelled(name)} = `);
  });

  test('says what it finds in one calm line, and what to do', () => {
    const own = judged(rule, 'bad').filter((f) => f.code === name);
    for (const { message, finding } of own) {
      expect(message).not.toMatch(unsaid);
      expect(message).not.toMatch(/[\r\n]|undefined|NaN|\[object|\s$|\.$/);
      expect(finding.help.length).toBeGreaterThan(5);
      expect(finding.help).not.toMatch(unsaid);
      expect(finding.help).not.toMatch(/undefined|NaN|\[object/);
      expect(finding.why).toBeTruthy();
      expect(finding.source).toBeTruthy();
    }
  });
});
