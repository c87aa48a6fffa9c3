import { writtenSystem } from '../../src-core/assess/show.ts';
import { didYouMean } from '../../src-core/base/did-you-mean.ts';
import '../../src-core/mechanics/all.ts';
import { calculations, type Calculation } from '../../src-core/mechanics/define-calculation.ts';
import { isUnknown, type Value } from '../../src-core/mechanics/derivation.ts';
import { derivationToJson, printDerivation } from '../../src-core/mechanics/explain.ts';
import { exampleInput } from '../../src-core/mechanics/example-input.ts';
import { readInput, typedSymbol } from '../../src-core/mechanics/read-input.ts';
import { wrapIndented } from '../../src-core/papers/wrap-text.ts';
import { printSource } from '../../src-core/trade/source.ts';
import { dimensions, kinds } from '../../src-core/units/dimension.ts';
import { exit, Refusal, strongFor, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { plainJson } from './plain-text.ts';

/** Lists the calculations, shows one, or makes it. */
export function compute(words: Words, io: Io): ExitCode {
  const [name, ...inputs] = words.rest;
  const json = words.option('format') === 'json';
  const all = [...calculations().values()].sort((a, b) => (a.calculationName < b.calculationName ? -1 : 1));
  if (name === undefined) {
    // JSON: { version, calculations: [{ name, means, symbol, kind, unit, formula, inputs: [{ symbol, typed, meaning, kind, unit, example }] }] }
    if (json) io.out(plainJson({ version: 1, calculations: all.map(calculationJson) }));
    else io.out([...all.map((c) => `${c.calculationName}  ${symbolsOf(c).map(typedSymbol).join(' ')}\n    ${c.means}`), '', 'linewright compute NAME shows one; linewright compute NAME SYMBOL=VALUE ... makes it.', ''].join('\n'));
    return exit.nothingFound;
  }
  const calculation = calculations().get(name);
  if (calculation === undefined) {
    const near = didYouMean(name, all.map((c) => c.calculationName));
    throw new Refusal(`\`${name}\` is not a calculation`, near === undefined ? 'linewright compute lists them' : `did you mean ${near}?`);
  }
  if (inputs.length === 0 && symbolsOf(calculation).length > 0) {
    io.out(json ? plainJson({ version: 1, calculations: [calculationJson(calculation)] }) : calculationText(calculation, strongFor(io)).join('\n') + '\n');
    return exit.nothingFound;
  }
  const result = calculation(inputsOf(calculation, inputs));
  if (isUnknown(result)) throw new Refusal(`${calculation.means} is not known: ${result.unknown.says}`, result.unknown.help);
  const system = writtenSystem(result);
  // JSON: { version, derivation: DerivationJson }
  io.out(json ? plainJson({ version: 1, derivation: derivationToJson(result, { system }) }) : printDerivation(result, { system }).join('\n') + '\n');
  return exit.nothingFound;
}

const symbolsOf = (calculation: Calculation): string[] => Object.keys(calculation.symbols);
const unitOf = (kind: keyof typeof kinds): string => dimensions[kinds[kind].dimension].si;

/** One letter is as near to every other letter: a short symbol is only taken for one that begins like it, and only where there is no other. */
function nearSymbol(written: string, typed: ReadonlyMap<string, string>): string | undefined {
  if (written.length > 2) return didYouMean(written, typed.keys());
  const lower = written.toLowerCase();
  const near = new Set([...typed].filter(([name]) => name.toLowerCase().startsWith(lower) || lower.startsWith(name.toLowerCase())).map(([, symbol]) => symbol));
  return near.size === 1 ? typedSymbol([...near][0]!) : undefined;
}

function inputsOf(calculation: Calculation, words: readonly string[]): Record<string, Value> {
  const symbols = symbolsOf(calculation);
  const typed = new Map<string, string>(symbols.flatMap((s): [string, string][] => [[s, s], [typedSymbol(s), s]]));
  const values: Record<string, Value> = {};
  for (const word of words) {
    const equals = word.indexOf('=');
    if (equals < 1) throw new Refusal(`\`${word}\` is not of the form SYMBOL=VALUE`, 'a value with spaces stands in quotes: d="3/8 in"');
    const symbol = typed.get(word.slice(0, equals));
    if (symbol === undefined) {
      const near = nearSymbol(word.slice(0, equals), typed);
      throw new Refusal(`\`${word.slice(0, equals)}\` is not a symbol of ${calculation.calculationName}`, near === undefined ? `its symbols are ${symbols.map(typedSymbol).join(', ')}` : `did you mean ${near}?`);
    }
    if (values[symbol] !== undefined) throw new Refusal(`${typedSymbol(symbol)} is given twice`);
    const given = readInput(typedSymbol(symbol), calculation.symbols[symbol]!, word.slice(equals + 1));
    if (typeof given === 'string') throw new Refusal(given);
    values[symbol] = given;
  }
  const missing = symbols.filter((s) => values[s] === undefined);
  if (missing.length > 0) throw new Refusal(`${calculation.calculationName} lacks ${missing.map((s) => `${typedSymbol(s)} (${calculation.symbols[s]!.meaning})`).join(', ')}`, `write it like ${missing.map((s) => `${typedSymbol(s)}="${exampleInput(calculation.symbols[s]!)}"`).join(' ')}`);
  return values;
}

function calculationText(calculation: Calculation, strong: (text: string) => string): string[] {
  const symbols = Object.entries(calculation.symbols);
  const width = Math.max(0, ...symbols.map(([s]) => typedSymbol(s).length));
  return [
    `${strong(calculation.calculationName)}: ${calculation.means}`,
    `  formula: ${calculation.formula}`,
    ...symbols.map(([symbol, definition]) => `  with ${typedSymbol(symbol).padEnd(width)}  ${definition.meaning}, such as ${exampleInput(definition)}`),
    ...(calculation.assumptions ?? []).flatMap((a) => wrapIndented(a, 96, '  holds when: ', '    ')),
    ...calculation.sources.flatMap((s) => wrapIndented(printSource(s), 96, '  source: ', '    ')),
    ...calculation.worked.slice(0, 1).map(({ inputs, expected }) => `  example: linewright compute ${calculation.calculationName} ${Object.entries(inputs).map(([s, v]) => `${typedSymbol(s)}="${v}"`).join(' ')}  gives ${expected}`),
  ];
}

const calculationJson = (calculation: Calculation) => ({
  name: calculation.calculationName,
  means: calculation.means,
  symbol: calculation.symbol,
  kind: calculation.kind,
  unit: unitOf(calculation.kind),
  formula: calculation.formula,
  inputs: Object.entries(calculation.symbols).map(([symbol, { meaning, kind }]) => ({ symbol, typed: typedSymbol(symbol), meaning, kind, unit: unitOf(kind), example: exampleInput({ meaning, kind }) })),
});
