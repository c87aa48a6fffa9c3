import type { Span } from '../base/span.ts';
import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import { show, showValue } from '../assess/show.ts';
import type { Project } from '../project.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';
import { endOf } from './hover-splice.ts';
import { blockSummary } from './summary.ts';
import { assessedOf, viewing, type Viewing } from './viewing.ts';

export type SymbolKind = 'vehicle' | 'winch' | 'line' | 'gear' | 'anchor' | 'plan' | 'practice' | 'entry' | 'part';

export interface DocumentSymbol {
  readonly name: string;
  readonly kind: SymbolKind;
  /** The number that somebody would ask for first. */
  readonly detail: string;
  readonly whole: Span;
  readonly nameSpan: Span;
  readonly children: readonly DocumentSymbol[];
}

export function symbolKindOf(head: string): SymbolKind {
  switch (head) {
    case 'vehicle':
    case 'winch':
    case 'line':
    case 'anchor':
    case 'practice':
      return head;
    case 'repair':
    case 'chain':
    case 'pull':
      return 'plan';
    default:
      return 'gear';
  }
}

/** What was made of a block, with places counted from the start of its chunk: it holds for as long as the block is judged the same. */
const madeOf = new WeakMap<JudgedBlock, DocumentSymbol>();

export function documentSymbols(project: Project, path: string, day: DayNumber): DocumentSymbol[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  const symbols: DocumentSymbol[] = [];
  for (const { chunk, blocks } of view.file.bound) {
    for (const block of blocks) {
      const judged = view.root.judgedBlock(block);
      let symbol = judged === undefined ? undefined : madeOf.get(judged);
      if (symbol === undefined) {
        symbol = symbolOf(view, block, chunk.text);
        if (judged !== undefined) madeOf.set(judged, symbol);
      }
      symbols.push(movedBy(symbol, view.file.offsetOf(chunk)!));
    }
  }
  return symbols;
}

const moved = ({ start, end }: Span, by: number): Span => ({ start: start + by, end: end + by });

const movedBy = (symbol: DocumentSymbol, by: number): DocumentSymbol => ({
  name: symbol.name,
  kind: symbol.kind,
  detail: symbol.detail,
  whole: moved(symbol.whole, by),
  nameSpan: moved(symbol.nameSpan, by),
  children: symbol.children.map((child) => movedBy(child, by)),
});

const symbolOf = (view: Viewing, block: BoundBlock, chunkText: string): DocumentSymbol => ({
  name: block.name ?? block.definition.head,
  kind: symbolKindOf(block.definition.head),
  detail: `${block.definition.head} · ${blockSummary(view, block)}`,
  whole: block.place,
  nameSpan: block.namePlace,
  children: block.statements.flatMap((s) => childOf(view, block, s, chunkText)),
});

/** Entries, plans and parts with names; plain facts would only repeat the text. */
function childOf(view: Viewing, block: BoundBlock, statement: BoundStatement, chunkText: string): DocumentSymbol[] {
  const { head } = statement.definition;
  const { start, end } = statement.place;
  const text = (): string => chunkText.slice(start, end).replace(/\s+/g, ' ');
  const behind = (word: string): string => text().slice(text().indexOf(word) + word.length).trim();
  const child = (name: string, kind: SymbolKind, detail: string): DocumentSymbol[] => [{ name, kind, detail, whole: { start, end }, nameSpan: { start, end }, children: [] }];
  if (statement.day !== undefined) return child(`${printDay(statement.day)} ${head}`, 'entry', statementDetail(view, block, statement) ?? behind(head));
  if (block.definition.head === 'repair') return child(text(), 'part', statementDetail(view, block, statement) ?? '');
  if (head === 'outboard' || head === 'inboard') return child(head, 'part', statementDetail(view, block, statement) ?? behind(head));
  const named = statement.values.get('name');
  if (named?.type === 'new-name') return child(named.name, 'part', text());
  if (statement.values.has('route')) return child(text(), 'part', '');
  return [];
}

/** The derived number of a damage or a splice. */
export function statementDetail(view: Viewing, block: BoundBlock, statement: BoundStatement): string | undefined {
  const assessed = assessedOf(view, block);
  const line = assessed.kind === 'line' ? assessed : assessed.kind === 'repair' ? assessed.after : undefined;
  if (line === undefined) return undefined;
  if (statement.definition.head === 'damage') {
    for (const piece of line.pieces.values()) {
      for (const damage of piece.damages) {
        if (damage.fact.statement !== statement) continue;
        return isUnknown(damage.strength) ? 'strength there not judged' : `${show(damage.strength)} left there`;
      }
    }
    return 'cut out since';
  }
  const end = endOf(line, statement);
  if (end === undefined) return undefined;
  const { buryIn_d, needed_d } = end.buried;
  if (isUnknown(buryIn_d) || isUnknown(needed_d)) return undefined;
  return `bury ${showValue({ amount: buryIn_d.amount, kind: buryIn_d.kind, origin: { from: 'derived', derivation: buryIn_d } })} of ${show(needed_d, { careful: 'up' })}`;
}
