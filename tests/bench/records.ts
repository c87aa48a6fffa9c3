import { randomFrom } from '../support/rig-text.ts';

export type Field =
  | { readonly key: string; readonly type: 'number'; readonly least: number; readonly most: number; readonly unit: string; readonly from: number; readonly to: number }
  | { readonly key: string; readonly type: 'word'; readonly words: readonly string[]; readonly pick?: readonly string[] }
  | { readonly key: string; readonly type: 'name'; readonly of: string }
  | { readonly key: string; readonly type: 'date'; readonly day: string };

const number = (key: string, from: number, to: number, unit: string, least: number, most: number): Field => ({ key, type: 'number', from, to, unit, least, most });
const word = (key: string, pick: string, ...others: readonly string[]): Field => ({ key, type: 'word', words: [pick, ...others], pick: [pick] });
const name = (key: string, of: string): Field => ({ key, type: 'name', of });
const date = (key: string, day: string): Field => ({ key, type: 'date', day });

/** What every language of the comparison describes: the same things with the same names, numbers, words and references. */
export const kinds: Readonly<Record<string, readonly Field[]>> = {
  vehicle: [number('mass', 2300, 2399, 'kg', 1, 9999)],
  line: [
    word('material', 'HMPE', 'polyester', 'nylon', 'aramid', 'wire'), number('strands', 12, 12, '', 3, 48), number('diameter', 10, 10, 'mm', 1, 100), number('length', 25, 27, 'm', 1, 900), number('breaking', 92, 98, 'kN', 1, 900),
    word('inboard', 'lug', 'eye', 'hook', 'bare', 'knot'), word('stored', 'covered', 'outdoors', 'indoors'), date('fitted', '2026-05-02'), date('inspected', '2026-05-02'), date('spooled', '2026-05-02'), date('washed', '2026-05-18'),
  ],
  winch: [
    name('on', 'vehicle'), number('rated', 22, 25, 'kN', 1, 900), number('barrel', 70, 70, 'mm', 1, 900), number('width', 240, 240, 'mm', 1, 900), number('flange', 180, 180, 'mm', 1, 900), number('keep', 10, 10, 'wraps', 1, 99),
    name('carries', 'line'), word('fairlead', 'hawse', 'roller'), word('brake', 'outside', 'in-drum'),
  ],
  shackle: [word('form', 'bow', 'dee'), number('body', 19, 19, 'mm', 1, 300), number('pin', 22, 22, 'mm', 1, 300), number('wll', 4.7, 4.7, 't', 0.1, 90), word('marking', 'legible', 'faded', 'none')],
  strap: [word('kind', 'static', 'kinetic'), number('length', 3, 6, 'm', 1, 90), number('width', 75, 75, 'mm', 1, 900), number('wll', 5, 5, 't', 0.1, 90), word('hitch', 'basket', 'straight', 'choker')],
  anchor: [word('kind', 'tree', 'rock', 'vehicle'), number('holding', 40, 48, 'kN', 1, 900)],
  chain: [name('line', 'line'), name('shackle', 'shackle'), name('strap', 'strap'), name('anchor', 'anchor'), number('out', 16, 18, 'm', 0, 900)],
};

export interface RecordField {
  readonly field: Field;
  readonly value: string;
}
export interface BenchRecord {
  readonly kind: string;
  readonly name: string;
  readonly fields: readonly RecordField[];
}

export interface RecordOptions {
  readonly prefix?: string;
  /** An anchor of another file that every chain ends at. */
  readonly sharedAnchor?: string;
}

/** Records as long as their lines fit. */
export function records(lines: number, linesOf: (kind: string) => number, seed: number, { prefix = '', sharedAnchor }: RecordOptions = {}): BenchRecord[] {
  const random = randomFrom(seed);
  const made: BenchRecord[] = [];
  let used = 0;
  for (let i = 0; ; i++) {
    for (const [kind, fields] of Object.entries(kinds)) {
      used += linesOf(kind);
      if (used > lines) return made;
      const valueOf = (field: Field): string => {
        if (field.type === 'word') return (field.pick ?? field.words)[0]!;
        if (field.type === 'date') return field.day;
        if (field.type === 'name') return kind === 'chain' && field.of === 'anchor' && sharedAnchor !== undefined ? sharedAnchor : `${prefix}${field.of}-${i}`;
        return Number.isInteger(field.from) ? String(field.from + Math.floor(random() * (field.to - field.from + 1))) : String(field.from);
      };
      made.push({ kind, name: `${prefix}${kind}-${i}`, fields: fields.map((field) => ({ field, value: valueOf(field) })) });
    }
  }
}
