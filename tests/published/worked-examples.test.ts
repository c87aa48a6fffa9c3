import { describe, expect, test } from 'vitest';
import '../../src-core/mechanics/all.ts';
import { checkWorkedExample } from '../../src-core/mechanics/check-worked-example.ts';
import { calculations, type Calculation, type WorkedExample } from '../../src-core/mechanics/define-calculation.ts';

describe.each([...calculations()].map(([name, calculation]) => ({ name, calculation })))('$name', ({ calculation }) => {
  test('has a worked example from outside, or says that none was found', () => {
    if (calculation.worked.length > 0) expect(calculation.noExample).toBeUndefined();
    else expect(calculation.noExample).toMatch(/\w{3}/);
  });
  if (calculation.worked.length > 0) {
    test.each(calculation.worked.map((example) => ({ example, title: example.source.title })))('$title', ({ example }) => {
      const check = checkWorkedExample(calculation, example);
      expect(check.within, `expected ${check.expected}, got ${check.got}, difference ${check.difference}`).toBe(true);
    });
  }
});

test('an example with a wrong number, a missing symbol or a surplus one is not within', () => {
  const calculation = calculations().get('pull-by-layer') as Calculation;
  const example = calculation.worked[1] as WorkedExample;
  expect(checkWorkedExample(calculation, example).within).toBe(true);
  expect(checkWorkedExample(calculation, { ...example, expected: '18,273 lbf' }).within).toBe(false);
  expect(checkWorkedExample(calculation, { ...example, expected: '18,173 mm' }).got).toContain('is a force');
  expect(checkWorkedExample(calculation, { ...example, inputs: { ...example.inputs, q: '1' } }).got).toContain('no q');
  expect(checkWorkedExample(calculation, { ...example, inputs: { F_1: '20,000 lbf' } }).got).toContain('gives no B');
});
