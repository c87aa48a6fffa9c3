import type { Span } from '../base/span.ts';
import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import { show, showValue } from '../assess/show.ts';
import type { Project, RigFile } from '../project.ts';
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

export function documentSymbols(project: Project, path: string, day: DayNumber): DocumentSymbol[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  const symbols: DocumentSymbol[] = [];
  for (const chunk of view.file.bound) {
    for (const block of chunk.blocks) {
      symbols.push({
        name: block.name ?? block.definition.head,
        kind: symbolKindOf(block.definition.head),
        detail: `${block.definition.head} · ${blockSummary(view, block)}`,
        whole: view.file.spanOf(block.place)!,
        nameSpan: view.file.spanOf(block.namePlace)!,
        children: block.statements.flatMap((s) => childOf(view, view.file, block, s)),
      });
    }
  }
  return symbols;
}

/** Entries, plans and parts with names; plain facts would only repeat the text. */
function childOf(view: Viewing, file: RigFile, block: BoundBlock, statement: BoundStatement): DocumentSymbol[] {
  const { head } = statement.definition;
  const whole = file.spanOf(statement.place)!;
  const text = file.text.slice(whole.start, whole.end).replace(/\s+/g, ' ');
  const child = (name: string, kind: SymbolKind, detail: string): DocumentSymbol[] => [{ name, kind, detail, whole, nameSpan: whole, children: [] }];
  if (statement.day !== undefined) return child(`${printDay(statement.day)} ${head}`, 'entry', statementDetail(view, block, statement) ?? text.slice(text.indexOf(head) + head.length).trim());
  if (block.definition.head === 'repair') return child(text, 'part', statementDetail(view, block, statement) ?? '');
  if (head === 'outboard' || head === 'inboard') return child(head, 'part', statementDetail(view, block, statement) ?? text.slice(head.length).trim());
  const named = statement.values.get('name');
  if (named?.type === 'new-name') return child(named.name, 'part', text);
  if (statement.values.has('route')) return child(text, 'part', '');
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
