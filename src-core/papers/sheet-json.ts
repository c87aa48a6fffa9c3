import { writtenSystem } from '../assess/show.ts';
import { isUnknown, restsOnAssumption, type Cause, type Derivation, type Given, type Value } from '../mechanics/derivation.ts';
import { numbersPutIn, showGiven } from '../mechanics/explain.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';
import { printSource, type Source } from '../trade/source.ts';
import type { Amount } from '../units/amount.ts';
import { dimensions, kinds } from '../units/dimension.ts';
import { blockSheet } from './block-sheet.ts';
import type { Locate, Location } from './locate.ts';
import { showOnSheet } from './show-row.ts';

/** An SI number, or the two ends between which it lies. */
export type NumberJson = number | { readonly low: number; readonly high: number };

export interface CauseJson {
  readonly says: string;
  readonly help: string;
  readonly at?: Location;
}

export interface SourceJson {
  readonly key: string;
  /** Read in the document, quoted by another, from memory, common practice, our own choice, or mechanics. */
  readonly trust: Source['trust'];
  readonly says: string;
}

export interface OriginJson {
  /** Written in a file, assumed for want of a written value, derived, or part of the method. */
  readonly origin: Given['origin']['from'];
  /** Where it is written. */
  readonly at?: Location;
  /** How an assumed value is replaced. */
  readonly replace?: string;
  readonly source?: SourceJson;
  /** Index into `steps`: how a derived value came about. */
  readonly step?: number;
}

export interface InputJson extends OriginJson {
  readonly symbol: string;
  readonly name: string;
  readonly value: NumberJson;
  readonly unit: string;
  readonly display: string;
}

/** One calculation that was made: anybody can repeat it by hand, or with `linewright compute`. */
export interface StepJson {
  readonly calculation: string;
  readonly symbol: string;
  readonly name: string;
  readonly value: NumberJson;
  readonly unit: string;
  readonly formula: string;
  /** The formula with numbers in the place of symbols. */
  readonly numbers: string;
  readonly inputs: readonly InputJson[];
  readonly sources: readonly SourceJson[];
  readonly assumptions: readonly string[];
  readonly notes: readonly string[];
}

export interface ValueJson extends Partial<OriginJson> {
  readonly block: string;
  /** Unique in its block, the same from one day to the next. */
  readonly id: string;
  readonly name: string;
  /** SI; null for words, and where the value is not known. */
  readonly value: NumberJson | null;
  readonly unit: string | null;
  readonly kind: string | null;
  readonly display: string | null;
  readonly says?: string;
  /** Why the value is not known. */
  readonly cause?: CauseJson;
  /** What a value that is not known is at most, where that is known (SI, in `unit`). */
  readonly atMost?: number;
  readonly formula: string | null;
  readonly inputs: readonly InputJson[];
  readonly sources: readonly SourceJson[];
  /** True when it was assumed, or rests on something that was. */
  readonly assumed: boolean;
}

/** What `linewright sheet FILE --format json` prints. `version` changes when a reader of it would have to. */
export interface SheetJson {
  readonly version: 1;
  readonly file: string;
  readonly day: string;
  readonly blocks: readonly {
    readonly block: string;
    readonly at?: Location;
    readonly checks: { readonly made: number; readonly failed: number; readonly notJudged: readonly (CauseJson & { readonly checks: number })[] };
  }[];
  readonly values: readonly ValueJson[];
  readonly steps: readonly StepJson[];
}

const numberOf = ({ low, high }: Amount): NumberJson => (low === high ? low : { low, high });
const unitOf = (kind: Given['kind']): string => dimensions[kinds[kind].dimension].si;
const sourceOf = (source: Source): SourceJson => ({ key: source.key, trust: source.trust, says: printSource(source) });

/** The sheet of a file as data: every value with how it came about. */
export function sheetJson(blocks: readonly JudgedBlock[], { file, day, locate }: { readonly file: string; readonly day: string; readonly locate: Locate }): SheetJson {
  const steps = new Steps(locate);
  const cause = ({ says, help, place }: Cause): CauseJson => {
    const at = place === undefined ? undefined : locate(place);
    return { says, help, ...(at === undefined ? {} : { at }) };
  };
  const sheets = blocks.map(blockSheet);
  const values = sheets.flatMap(({ title, sections }) =>
    sections.flatMap(({ rows }) =>
      rows.map(({ id, group, label, value, says }): ValueJson => {
        const named = { block: title, id, name: group === undefined ? label : `${group}: ${label}` };
        const words = says === undefined ? {} : { says };
        const nothing = { value: null, unit: null, kind: null, formula: null, inputs: [], sources: [], assumed: false };
        if (value === undefined) return { ...named, ...nothing, display: null, ...words };
        if (isUnknown(value)) return { ...named, ...nothing, display: showOnSheet(value), ...words, cause: cause(value.unknown), ...(value.atMost === undefined ? {} : { atMost: value.atMost.amount.high, unit: unitOf(value.atMost.kind), kind: value.atMost.kind }) };
        return { ...named, value: numberOf(value.amount), unit: unitOf(value.kind), kind: value.kind, display: showOnSheet(value), ...words, ...steps.origin(value), ...steps.derivation(value), assumed: restsOnAssumption(value) };
      }),
    ),
  );
  return {
    version: 1,
    file,
    day,
    blocks: sheets.map(({ title, block, checks }) => {
      const at = locate(block.headPlace);
      return { block: title, ...(at === undefined ? {} : { at }), checks: { made: checks.made, failed: checks.failed, notJudged: checks.notJudged.map((w) => ({ ...cause(w.cause), checks: w.checks })) } };
    }),
    values,
    steps: steps.list,
  };
}

/** The calculations behind all values, each once, those that others rest on first. */
class Steps {
  readonly list: StepJson[] = [];
  readonly #byDerivation = new Map<Derivation, number>();
  readonly #byText = new Map<string, number>();
  readonly #locate: Locate;

  constructor(locate: Locate) {
    this.#locate = locate;
  }

  origin({ origin }: Given): OriginJson {
    switch (origin.from) {
      case 'written': {
        const at = this.#locate(origin.place);
        return { origin: 'written', ...(at === undefined ? {} : { at }) };
      }
      case 'assumed':
        return { origin: 'assumed', replace: origin.means, source: sourceOf(origin.source) };
      case 'constant':
        return { origin: 'constant', source: sourceOf(origin.source) };
      case 'derived':
        return { origin: 'derived', step: this.#step(origin.derivation) };
    }
  }

  derivation(value: Extract<Value, Given>): Pick<ValueJson, 'formula' | 'inputs' | 'sources'> {
    const { origin } = value;
    if (origin.from === 'derived') {
      const { formula, inputs, sources } = this.list[this.#step(origin.derivation)]!;
      return { formula, inputs, sources };
    }
    return { formula: null, inputs: [], sources: origin.from === 'written' ? [] : [sourceOf(origin.source)] };
  }

  #step(derivation: Derivation): number {
    const known = this.#byDerivation.get(derivation);
    if (known !== undefined) return known;
    const system = writtenSystem(derivation);
    const step: StepJson = {
      calculation: derivation.calculation,
      symbol: derivation.symbol,
      name: derivation.means,
      value: numberOf(derivation.amount),
      unit: unitOf(derivation.kind),
      formula: derivation.formula,
      numbers: numbersPutIn(derivation, { system }),
      inputs: derivation.inputs.map(({ symbol, meaning, given }) => ({ symbol, name: meaning, value: numberOf(given.amount), unit: unitOf(given.kind), display: showGiven(given, system), ...this.origin(given) })),
      sources: derivation.sources.map(sourceOf),
      assumptions: derivation.assumptions,
      notes: derivation.notes,
    };
    // The same calculation from the same inputs is made for several blocks: it is one step.
    const text = JSON.stringify(step);
    let index = this.#byText.get(text);
    if (index === undefined) {
      index = this.list.push(step) - 1;
      this.#byText.set(text, index);
    }
    this.#byDerivation.set(derivation, index);
    return index;
  }
}
