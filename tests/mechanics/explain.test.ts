import { expect, test } from 'vitest';
import '../../src-core/mechanics/all.ts';
import { buryNeeded } from '../../src-core/mechanics/bury-needed.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { asGiven, isUnknown, type Derived, type Given } from '../../src-core/mechanics/derivation.ts';
import { allSources, derivationToJson, numbersPutIn, printDerivation, stepsOf } from '../../src-core/mechanics/explain.ts';
import { formulaPieces } from '../../src-core/mechanics/put-numbers-in.ts';
import { pullByLayer } from '../../src-core/mechanics/pull-by-layer.ts';
import { pullOnFirstLayer } from '../../src-core/mechanics/pull-on-first-layer.ts';
import { readInput, typedSymbol } from '../../src-core/mechanics/read-input.ts';
import { spliceShortening } from '../../src-core/mechanics/splice-shortening.ts';
import { practiceValue } from '../../src-core/trade/built-in-practice.ts';
import type { Kind } from '../../src-core/units/dimension.ts';

const given = (text: string, kind: Kind): Given => {
  const read = readInput('x', { kind, meaning: 'a value' }, text);
  if (typeof read === 'string') throw new Error(read);
  return read;
};
const known = (derived: Derived) => {
  if (isUnknown(derived)) throw new Error(derived.unknown.says);
  return derived;
};

const bury = practiceValue('bury', 'HMPE')!;
const assumedBury: Given = { amount: bury.amount, kind: bury.kind, origin: { from: 'assumed', source: bury.source, means: 'write `bury HMPE` in a practice block to replace it' } };
const needed = known(buryNeeded({ k: assumedBury, d: given('10 mm', 'diameter') }));
const shortening = known(spliceShortening({ T: asGiven(needed, 'length'), c: given('15 to 25 %', 'needed share') }));

test('a derivation as lines of text', () => {
  expect(printDerivation(shortening)).toEqual([
    'length by which the standing part shortens over the buried tail: s = 127 to 240 mm',
    '  formula: s = X − T = T c / (1 − c)',
    '  numbers: s = X − 720 mm = 720 mm × (15 to 25 %) / (1 − (15 to 25 %)) = 127 to 240 mm',
    '  with T = 720 mm — bury, taper included — derived',
    '  with c = 15 to 25 % — share by which the standing part shortens over the buried tail — written',
    '  assumed: needed bury in diameters, taper included = 72 d — Toss, The Complete Rigger\'s Apprentice, pp. 103-105: bury 72 d in HMPE, 24 d in polyester and nylon hollow braid — write `bury HMPE` in a practice block to replace it',
    '  holds when: the standing part shortens evenly over the buried tail, the tapered part as much as the rest',
    '  source: Toss, The Complete Rigger\'s Apprentice, p. 104: the exit lies 1 1/3 tail lengths from the entry',
    '  source: splicer\'s measurement, the standing part shortens by 15 % over the buried tail',
  ]);
});

test('steps come first and once', () => {
  expect(stepsOf(shortening).map((step) => step.calculation)).toEqual(['bury-needed', 'splice-shortening']);
  expect(printDerivation(shortening, { steps: true })[0]).toBe('needed bury: T_0 = 720 mm');
  expect(allSources(shortening).map((source) => source.key)).toEqual(['toss-104', 'splice-shortening-measured', 'toss-103-105']);
});

test('numbers stand as they were written, and the result errs to the careful side', () => {
  const first = pullOnFirstLayer({ F_r: given('18,173 lbf', 'line pull'), r: given('2', 'count'), B: given('2 1/2 in', 'diameter'), d: given('3/8 in', 'diameter') });
  const third = known(pullByLayer({ F_1: asGiven(first), B: given('2 1/2 in', 'diameter'), d: given('3/8 in', 'diameter'), n: given('3', 'count') }));
  expect(numbersPutIn(known(first), { system: 'us' })).toBe('F_1 = 18,173 lbf × (2.5 in + (2 × 2 − 1) × 0.375 in) / (2.5 in + 0.375 in) = 22,900 lbf');
  expect(numbersPutIn(third, { system: 'us' })).toBe('F_n = 22,900 lbf × (2.5 in + 0.375 in) / (2.5 in + (2 × 3 − 1) × 0.375 in) = 15,000 lbf');
});

test('a square, a clause behind a comma and a remark behind a semicolon', () => {
  const work = (name: string, inputs: Record<string, string>) => {
    const calculation = calculations().get(name)!;
    return numbersPutIn(known(calculation(Object.fromEntries(Object.entries(calculation.symbols).map(([symbol, { kind }]) => [symbol, given(inputs[symbol]!, kind)])))));
  };
  expect(work('drum-capacity-handbook', { W: '60 mm', h: '41.6687 mm', B: '50 mm', d: '6 mm' })).toBe('L = π × 60 mm × 41.6687 mm × (50 mm + 41.6687 mm) / (6 mm)² = 19.99 m');
  expect(work('rope-used-by-eye', { T: '3 m', E: '200 mm', c: '25 %' })).toBe('U = 3 m + 200 mm / 2 + s = 4.1 m, s = 3 m × 25 % / (1 − 25 %)');
  expect(work('capstan-hold', { μ: '0.3', θ: '360 deg' })).toBe('T₂/T₁ = exp(0.3 × 360 deg) = 6.58');
});

test('a derivation as plain data', () => {
  const json = derivationToJson(shortening, { system: 'us' });
  expect(json.value).toEqual({ low: expect.closeTo(0.127058, 5), high: expect.closeTo(0.24, 12) });
  expect([json.name, json.symbol, json.unit, json.display, json.assumed]).toEqual(['splice-shortening', 's', 'm', '5 to 9.5 in', true]);
  expect(json.inputs).toEqual([
    { symbol: 'T', meaning: 'bury, taper included', value: expect.closeTo(0.72, 12), unit: 'm', display: '28.3 in', origin: 'derived', calculation: 'bury-needed' },
    { symbol: 'c', meaning: 'share by which the standing part shortens over the buried tail', value: { low: 0.15, high: 0.25 }, unit: '', display: '15 to 25 %', origin: 'written' },
  ]);
  const inner = derivationToJson(needed);
  expect(inner.inputs[0]).toMatchObject({ symbol: 'k', value: 72, unit: 'd', origin: 'assumed', source: { key: 'toss-103-105', trust: 'read' } });
  expect(derivationToJson(known(buryNeeded({ k: given('72 d', 'needed diameters'), d: given('10 mm', 'diameter') }))).assumed).toBe(false);
  expect(JSON.stringify(derivationToJson(shortening))).toBe(JSON.stringify(derivationToJson(shortening)));
});

test('an input is read with its own measure', () => {
  const force = { kind: 'line pull', meaning: 'line pull' } as const;
  expect(readInput('F', force, '3 m')).toBe('F (line pull) is a force, such as 42 kN; `3 m` is a length');
  expect(readInput('F', force, '3')).toBe('F (line pull) is a force, such as 42 kN; `3` is a plain number');
  expect(readInput('F', force, '9,500 lb')).toMatchObject({ amount: { low: expect.closeTo(42258.1, 1) }, kind: 'line pull' });
  expect(readInput('η', { kind: 'share', meaning: 'efficiency' }, '0.9')).toMatchObject({ amount: { low: 0.9, high: 0.9 } });
  expect(readInput('F', force, '4 ton')).toContain('can mean');
});

test('every symbol can be typed on any keyboard, and stays one of a kind', () => {
  expect([typedSymbol('μ'), typedSymbol('T₂'), typedSymbol('α₁'), typedSymbol('F_1')]).toEqual(['mu', 'T_2', 'alpha_1', 'F_1']);
  for (const [, calculation] of calculations()) {
    const typed = Object.keys(calculation.symbols).map(typedSymbol);
    expect(new Set(typed).size).toBe(typed.length);
    for (const symbol of typed) expect(symbol).toMatch(/^[\x21-\x7e]+$/);
  }
});

test('formulas are written with letters that are known as such', () => {
  const ofAllLetters = /\s*(\d+(?:\.\d+)?|[\p{L}√][\p{L}0-9_₀-₉]*(?:\.\.[\p{L}0-9]+)?|[^\s])/gu;
  expect(calculations().size).toBeGreaterThan(30);
  for (const { formula } of calculations().values()) expect([...formula.matchAll(formulaPieces)].map(([all]) => all)).toEqual([...formula.matchAll(ofAllLetters)].map(([all]) => all));
});
