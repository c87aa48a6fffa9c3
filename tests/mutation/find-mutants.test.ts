import { stripTypeScriptTypes } from 'node:module';
import { Script } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { readEquivalents } from './equivalent-mutants.ts';
import { findMutants } from './find-mutants.ts';
import { MutantSwitch, RunsOn } from './mutant-switch.ts';

/** The value of an expression as it is, and with each of its changes. */
function withEach(expression: string): Record<string, unknown> {
  const { code, mutants } = findMutants(`const value: unknown = ${expression};`, 'x.ts', 1);
  const mutantSwitch = new MutantSwitch(mutants.length);
  const run = new Script(`(function (${MutantSwitch.names.join(', ')}) { ${stripTypeScriptTypes(code)} return value; })`).runInThisContext() as (...functions: unknown[]) => unknown;
  const valueWith = (id: number): unknown => {
    mutantSwitch.active = id;
    return run(...mutantSwitch.functions);
  };
  return { 'as it is': valueWith(0), ...Object.fromEntries(mutants.map(({ id, change }) => [change, valueWith(id)])) };
}

describe('an expression and its changes', () => {
  test('arithmetic', () => expect(withEach('6 / 2')).toEqual({ 'as it is': 3, '6 / 2 → *': 12, '6 → 7': 3.5, '6 → 0': 0, '2 → 3': 2, '2 → 0': Infinity }));
  test('comparisons: the boundary, and the opposite', () => expect(withEach('0 < 1')).toEqual({ 'as it is': true, '0 < 1 → <=': true, '0 < 1 → >=': false, '0 → 1': false, '1 → 2': true, '1 → 0': false }));
  test('and, or', () => expect(withEach('true && false')).toEqual({ 'as it is': false, 'true && false → ||': true, 'true → false': false, 'false → true': true }));
  test('conditions', () => expect(withEach('Boolean(NaN) ? "a" : "b"')).toEqual({ 'as it is': 'b', 'Boolean(NaN) → !(Boolean(NaN))': 'a' }));
  test('a condition whose opposite is among its own changes has it once', () => expect(Object.keys(withEach('"a" === "b" ? "c" : "d"'))).toEqual(['as it is', '"a" === "b" → !==']));
  test('min and max, ceil and floor', () => {
    expect(withEach('Math.min(...[3, 5].slice())')).toMatchObject({ 'as it is': 3, 'Math.min → Math.max': 5 });
    expect(withEach('Math.ceil(Number("1.5"))')).toEqual({ 'as it is': 2, 'Math.ceil → Math.floor': 1 });
  });
  test('some and every, low and high', () => {
    expect(withEach('["", "a"].some(Boolean)')).toEqual({ 'as it is': true, '.some → .every': false });
    expect(withEach('({ low: "l", high: "h" }).low')).toEqual({ 'as it is': 'l', '.low → .high': 'h' });
    expect(withEach('["up"]')).toEqual({ 'as it is': ['up'], "'up' → 'down'": ['down'] });
  });
  test('not and minus', () => expect(withEach('[!Number.isNaN(NaN), -Number("2")]')).toMatchObject({ '!Number.isNaN(NaN) → Number.isNaN(NaN)': [true, -2], '-Number("2") → Number("2")': [false, 2] }));
  test('what stands behind `and` is not worked out when it is not asked for', () => {
    expect(withEach('String(false) === "true" && ["ran"]')).toEqual({ 'as it is': false, 'String(false) === "true" && ["ran"] → ||': ['ran'], 'String(false) === "true" → !==': ['ran'], 'false → true': ['ran'] });
    const { code } = findMutants('ran(false) && ran(true);', 'x.ts', 1);
    const ran: unknown[] = [];
    (new Script(`(function (ran, ${MutantSwitch.names.join(', ')}) { ${code} })`).runInThisContext() as (...functions: unknown[]) => unknown)((value: unknown) => (ran.push(value), value), ...new MutantSwitch(9).functions);
    expect(ran).toEqual([false]);
  });
});

test.each(['import { a } from "./1.ts";', 'type A = 1 | "up";', 'const a: 5 | true = f();', 'f("up to here");', 'f({ means: a + 1, why: `${1 + 2}`, worked: [1] });', 'f(`${1 + 2}`);', 'f("a" + b);', 'const { a } = f();'])('nothing is changed in %s', (text) => {
  expect(findMutants(text, 'x.ts', 1)).toEqual({ code: text, mutants: [] });
});

test('a mutant knows its line', () => expect(findMutants('f();\n  g(2);\n', 'x.ts', 7).mutants[0]).toEqual({ id: 7, site: 7, file: 'x.ts', line: 2, change: '2 → 3', text: 'g(2);' }));

test.each(['for (;;) {}', 'for (;;);', 'while (true) f();', 'do { f(); } while (true)', 'do f(); while (true)'])('%s is stopped', (loop) => {
  const { code } = findMutants(loop, 'x.ts');
  const mutantSwitch = new MutantSwitch(0);
  mutantSwitch.mostTicks = 1000;
  const run = new Script(`(function (f, ${MutantSwitch.names.join(', ')}) { ${code} })`).runInThisContext() as (...functions: unknown[]) => unknown;
  expect(() => run(() => undefined, ...mutantSwitch.functions)).toThrow(RunsOn);
});

test('every mutant that is listed as changing nothing says why', async () => {
  const listed = await readEquivalents();
  expect(listed.length).toBeGreaterThan(0);
  expect(new Set(listed.map(({ file, line, change }) => `${file} ${line} ${change}`)).size).toBe(listed.length);
});
