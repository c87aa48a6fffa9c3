import type { Finding } from '../assess/finding.ts';
import type { BoundQuantity } from '../model/bound.ts';
import type { Edit } from '../syntax/chunk.ts';
import { kinds, type Kind } from '../units/dimension.ts';
import { printNumber } from '../units/print.ts';
import { fromSI, units, type Unit } from '../units/unit-table.ts';
import type { CodeAction } from './code-actions.ts';
import type { Viewing } from './viewing.ts';
import type { ReadonlyValues } from '../model/values.ts';

/** Units that a length, a load and so on are commonly turned into, from the other system of units. */
const twins: Readonly<Record<string, readonly string[]>> = {
  mm: ['in'], cm: ['in'], m: ['ft'], km: ['ft'], in: ['mm'], ft: ['m'], yd: ['m'],
  g: ['lb'], kg: ['lb'], t: ['lb', 'short-ton'], lb: ['kg'], 'short-ton': ['t'], 'long-ton': ['t'],
  N: ['lbf'], daN: ['lbf'], kN: ['lbf'], kgf: ['lbf', 'kN'], lbf: ['kN'], kip: ['kN'],
  'm/s': ['ft/min'], 'm/min': ['ft/min'], 'ft/min': ['m/min'], degC: ['degF'], degF: ['degC'],
  m2: ['ft2'], ft2: ['m2'],
};

const unitOf = (symbol: string): Unit => units.find((u) => u.symbol === symbol)!;

function* quantitiesIn(values: ReadonlyValues): Generator<BoundQuantity> {
  for (const value of values.all()) {
    if (value.type === 'quantity') yield value;
    else if (value.type === 'station') {
      yield value.from.distance;
      if (value.to !== undefined) yield value.to.distance;
    }
  }
}

/** No tape shows less, and no gauge that people read more digits. */
const halfMillimetre_m = 0.0005;
const leastDigits = 4;
/** Nobody wants to read more. */
const mostDigits = 7;

/**
 * A value in another unit as far as anybody can measure it: a length within half a millimetre, all else to so many digits. A
 * strength is not rounded up, and a load not down. `exact` is false where the text says another value than the one that stood there.
 */
function written(si: number, kind: Kind, unit: Unit, significant: number): { readonly text: string; readonly exact: boolean } {
  const value = fromSI(si, unit);
  const digits = significant - 1 - (value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))));
  // A number of so many decimals is off by half of its last one at the most.
  const fine = unit.dimension === 'length' ? Math.ceil(-Math.log10((2 * halfMillimetre_m) / unit.factor)) : 0;
  const decimals = Math.max(0, digits, fine);
  const { dimension, careful } = kinds[kind];
  const number = printNumber(value, dimension === 'force' && kind !== 'line pull' ? careful : 'nearest', decimals).replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '');
  return { text: `${number} ${unit.symbol}`, exact: Math.abs(Number(number.replaceAll(',', '')) - value) <= 1e-12 * Math.abs(value) };
}

/** Whether the same is found after an edit as before it, in whatever units it is said. */
function judgedAlike(view: Viewing, edit: Edit): boolean {
  const codesOf = (findings: Iterable<Finding>): string => [...findings].map(({ severity, code }) => `${severity} ${code}`).sort().join('\n');
  const { root } = view.root;
  const before = [...view.project.judge(root, view.day).files.values()].flatMap(({ findings }) => findings);
  return codesOf(before) === codesOf(view.project.foundIf(root, view.path, edit, view.day));
}

/** The quantity at an offset, said in the units of the other system. */
export function convertUnit(view: Viewing, offset: number): CodeAction[] {
  const here = view.file.chunkAt(offset);
  const bound = here === undefined ? undefined : view.file.bound.find((c) => c.chunk === here.chunk);
  if (here === undefined || bound === undefined) return [];
  for (const block of bound.blocks) {
    for (const values of [block.header, ...block.statements.map((s) => s.values)]) {
      for (const quantity of quantitiesIn(values)) {
        const { place, unit } = quantity;
        if (quantity.inDiameters === true || here.at < place.start || place.end < here.at) continue;
        const span = view.file.spanOf(place);
        if (span === undefined) continue;
        const si = quantity.mass ?? quantity.value;
        return (twins[unit.symbol] ?? []).filter((symbol) => unitOf(symbol).dimension === unit.dimension).flatMap((symbol): CodeAction[] => {
          for (let digits = leastDigits; digits <= mostDigits; digits++) {
            const { text, exact } = written(si, quantity.kind, unitOf(symbol), digits);
            if (judgedAlike(view, { ...span, text })) return [{ title: `Write it as ${exact ? '' : 'about '}${text}`, kind: 'rewrite', edits: [{ path: view.path, ...span, text }] }];
          }
          return [];
        });
      }
    }
  }
  return [];
}
