import type { BoundQuantity, BoundValue } from '../model/bound.ts';
import { fromSI, units, type Unit } from '../units/unit-table.ts';
import type { CodeAction } from './code-actions.ts';
import type { Viewing } from './viewing.ts';

/** Units that a length, a load and so on are commonly turned into, from the other system of units. */
const twins: Readonly<Record<string, readonly string[]>> = {
  mm: ['in'], cm: ['in'], m: ['ft'], km: ['ft'], in: ['mm'], ft: ['m'], yd: ['m'],
  g: ['lb'], kg: ['lb'], t: ['lb', 'short-ton'], lb: ['kg'], 'short-ton': ['t'], 'long-ton': ['t'],
  N: ['lbf'], daN: ['lbf'], kN: ['lbf'], kgf: ['lbf', 'kN'], lbf: ['kN'], kip: ['kN'],
  'm/s': ['ft/min'], 'm/min': ['ft/min'], 'ft/min': ['m/min'], degC: ['degF'], degF: ['degC'],
  m2: ['ft2'], ft2: ['m2'],
};

const unitOf = (symbol: string): Unit => units.find((u) => u.symbol === symbol)!;

function* quantitiesIn(values: ReadonlyMap<string, BoundValue>): Generator<BoundQuantity> {
  for (const value of values.values()) {
    if (value.type === 'quantity') yield value;
    else if (value.type === 'station') {
      yield value.from.distance;
      if (value.to !== undefined) yield value.to.distance;
    }
  }
}

/** The quantity at an offset, said in the units of the other system, to ten digits: nothing that is shown can turn round by it. */
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
        return (twins[unit.symbol] ?? []).filter((symbol) => unitOf(symbol).dimension === unit.dimension).map((symbol) => {
          const text = `${Number(fromSI(si, unitOf(symbol)).toPrecision(10))} ${symbol}`;
          return { title: `Write it as ${text}`, kind: 'rewrite', edits: [{ path: view.path, ...span, text }] };
        });
      }
    }
  }
  return [];
}
