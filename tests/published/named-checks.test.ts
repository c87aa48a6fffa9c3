import { expect, test } from 'vitest';
import { checkNamed, everyCheck, isNamed, namedChecks } from './named-checks.ts';

test.each(namedChecks.map((check) => [`${check.calculation} ${Object.values(check.inputs).join(', ')}: ${check.expected}`, check] as const))('%s', (_, check) => {
  const done = checkNamed(check);
  expect(done.within, `expected ${done.expected}, got ${done.got}, difference ${done.difference} (${check.source.title})`).toBe(true);
});

test('a wrong figure in a series is found', () => {
  for (const check of [namedChecks[3]!, namedChecks[20]!, namedChecks.at(-1)!]) {
    const [number, ...unit] = check.expected.split(' ');
    expect(checkNamed(check).within).toBe(true);
    expect(checkNamed({ ...check, expected: [Number(number) * 1.2, ...unit].join(' ') }).within).toBe(false);
  }
});

test('at least 80 numbers from at least 20 named documents are checked', () => {
  const checks = everyCheck().filter((check) => isNamed(check.source));
  expect(checks.length).toBeGreaterThanOrEqual(80);
  expect(new Set(checks.map((check) => check.source.key)).size).toBeGreaterThanOrEqual(20);
});
