import '../mechanics/all.ts';
import { checkWorkedExample, type WorkedCheck } from '../mechanics/check-worked-example.ts';
import { calculations, type Calculation, type SymbolDefinition } from '../mechanics/define-calculation.ts';
import { typedSymbol } from '../mechanics/read-input.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { dimensions, kinds, type Kind } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { contents, page, table } from './reference-text.ts';

const dimensionOf = (kind: Kind) => kinds[kind].dimension;
const unitOf = (kind: Kind): string => dimensions[dimensionOf(kind)].si || 'none';

/** The range in which a symbol may lie, and the one in which its source measured. */
function rangeOf(definition: SymbolDefinition): string {
  const said = (si: number): string => (Math.abs(si) < 1e6 && dimensionOf(definition.kind) === 'count' ? String(si) : printAmount(exactly(si), dimensionOf(definition.kind)));
  const parts = [
    definition.above === undefined ? '' : `above ${said(definition.above)}`,
    definition.min === undefined ? '' : `from ${said(definition.min)}`,
    definition.max === undefined ? '' : `up to ${said(definition.max)}`,
    definition.whole === true ? 'whole' : '',
  ].filter((p) => p !== '');
  const measured = definition.measured === undefined ? '' : `; outside what was measured: ${definition.measured.note}`;
  return (parts.length === 0 ? 'any' : parts.join(', ')) + measured;
}

/** The difference of two results in per cent, as few digits as say something. */
export const differenceText = ({ difference }: Pick<WorkedCheck, 'difference'>): string => (difference === undefined ? 'nothing came out' : difference < 5e-7 ? 'none' : `${(difference * 100).toPrecision(2)} %`);

function exampleBlocks(calculation: Calculation): string[] {
  if (calculation.worked.length === 0) return [`No worked example was found: ${calculation.noExample}.`];
  const rows = calculation.worked.map((example) => {
    const check = checkWorkedExample(calculation, example);
    return [Object.entries(example.inputs).map(([s, v]) => `\`${s} = ${v}\``).join(', '), check.expected, check.got, differenceText(check), printSource(example.source)];
  });
  return ['Worked by somebody else, and by this calculation:', table(['with', 'expected', 'got', 'difference', 'worked in'], rows)];
}

const firstCommand = (calculation: Calculation): string[] => {
  const example = calculation.worked[0];
  if (example === undefined) return [];
  const inputs = Object.entries(example.inputs).map(([symbol, value]) => `${typedSymbol(symbol)}=${/^[\w.%]+$/.test(value) ? value : `"${value}"`}`);
  return [`    linewright compute ${calculation.calculationName} ${inputs.join(' ')}`];
};

function calculationBlocks(calculation: Calculation): string[] {
  const symbols = Object.entries(calculation.symbols);
  return [
    `## ${calculation.calculationName}`,
    `Gives ${calculation.symbol}, the ${calculation.means} (${calculation.kind}, ${unitOf(calculation.kind)}).`.replace('the the ', 'the ').replace(', none)', ')'),
    `    ${calculation.formula}`,
    ...(symbols.length === 0 ? [] : [table(['symbol', 'meaning', 'kind', 'SI unit', 'range'], symbols.map(([symbol, d]) => [`\`${symbol}\``, d.meaning, d.kind, unitOf(d.kind), rangeOf(d)]))]),
    ...((calculation.assumptions ?? []).length === 0 ? [] : [`Holds when: ${calculation.assumptions!.join('; ')}.`]),
    `Sources: ${calculation.sources.map(printSource).join('; ')}.`,
    ...exampleBlocks(calculation),
    ...firstCommand(calculation),
  ];
}

/** Every calculation with its formula, ranges, sources and worked example. */
export function calculationsReference(): string {
  const sorted = [...calculations().values()].sort((a, b) => (a.calculationName < b.calculationName ? -1 : 1));
  const found = sorted.filter((c) => c.worked.length > 0).length;
  return page([
    '# Calculations',
    `${sorted.length} calculations; ${found} have an example that somebody else worked, and the others say why none was found. A value outside its range is refused, never moved into it. A missing value makes the result unknown.`,
    'Inside, every number is SI. `linewright compute NAME SYMBOL=VALUE ...` makes any of them from values with units.',
    contents(sorted.map((c) => c.calculationName)),
    ...sorted.flatMap(calculationBlocks),
  ]);
}
