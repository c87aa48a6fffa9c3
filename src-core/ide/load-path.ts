import { showValue } from '../assess/show.ts';
import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';
import type { DayNumber } from '../model/day.ts';
import type { Declaration } from '../model/scope.ts';
import type { Project } from '../project.ts';
import { symbolKindOf, type SymbolKind } from './document-symbols.ts';
import { thingAt } from './references.ts';
import { blockSummary } from './summary.ts';
import { assessedOf, fileSpanOf, viewing, type FileSpan, type Viewing } from './viewing.ts';

/** A thing that loads pass through. */
export interface LoadedThing {
  readonly name: string;
  readonly kind: SymbolKind;
  readonly detail: string;
  readonly whole: FileSpan;
  readonly named: FileSpan;
}

/** A neighbour on a load path, with the places in the asking thing's or the neighbour's file that join them. */
export interface LoadStep {
  readonly thing: LoadedThing;
  readonly joins: readonly FileSpan[];
}

function thingOf(view: Viewing, declared: Declaration): LoadedThing | undefined {
  const named = fileSpanOf(view, declared.place);
  const whole = fileSpanOf(view, declared.kind === 'piece' || declared.kind === 'point' ? (declared.statement?.place ?? declared.place) : declared.block.place);
  if (named === undefined || whole === undefined) return undefined;
  const piece = declared.kind === 'piece' || declared.kind === 'point';
  return { name: declared.name, kind: piece ? 'part' : symbolKindOf(declared.kind), detail: piece ? `${declared.kind} of ${declared.block.name ?? 'a block'}` : `${declared.kind} · ${blockSummary(view, declared.block)}`, whole, named };
}

export function loadedThingAt(project: Project, path: string, offset: number, day: DayNumber): LoadedThing | undefined {
  const thing = thingAt(project, path, offset, day);
  return thing === undefined ? undefined : thingOf(thing.view, thing.declared);
}

interface Join {
  readonly from: Declaration;
  readonly to: Declaration;
  readonly place: FileSpan;
  readonly load: string;
}

/** Every pair of things of which the first loads the second: winch and line, and the links of each route in order. */
function* joins(view: Viewing): Generator<Join> {
  const { reader } = view.assessing;
  for (const winch of reader.blocks('winch')) {
    const assessed = assessedOf(view, winch);
    if (assessed.kind !== 'winch' || assessed.carries === undefined || assessed.piece === undefined || winch.name === undefined) continue;
    const [from, to] = [reader.find(winch.name, ['winch']), reader.find(assessed.piece.name, ['line', 'piece'])];
    const place = fileSpanOf(view, assessed.carries.place);
    if (from !== undefined && to !== undefined && place !== undefined) yield { from, to, place, load: showValue(assessed.greatestPull) };
  }
  for (const block of reader.blocks('chain')) {
    const chain = assessedOf(view, block);
    if (chain.kind === 'chain') yield* alongChain(view, chain);
  }
}

function* alongChain(view: Viewing, chain: AssessedChain): Generator<Join> {
  for (const { links } of chain.routes) {
    let before: AssessedLink | undefined;
    for (const link of links) {
      const place = fileSpanOf(view, link.place);
      // Gear by its size has no name to lead to: the load goes through it to the next.
      if (link.declaration === undefined) continue;
      if (before?.declaration !== undefined && place !== undefined && before.declaration !== link.declaration) yield { from: before.declaration, to: link.declaration, place, load: showValue(chain.load) };
      before = link;
    }
  }
}

function steps(project: Project, path: string, offset: number, day: DayNumber, side: 'from' | 'to'): LoadStep[] {
  const view = viewing(project, path, day);
  const thing = thingAt(project, path, offset, day);
  if (view === undefined || thing === undefined) return [];
  const same = (a: Declaration, b: Declaration): boolean => a.place.chunk === b.place.chunk && a.place.start === b.place.start;
  const found = new Map<string, { thing: LoadedThing; joins: FileSpan[] }>();
  for (const join of joins(view)) {
    if (!same(join[side === 'from' ? 'to' : 'from'], thing.declared)) continue;
    const other = thingOf(view, join[side]);
    if (other === undefined) continue;
    const key = `${other.named.path}:${other.named.start}`;
    const known = found.get(key) ?? { thing: { ...other, detail: `load ${join.load} · ${other.detail}` }, joins: [] };
    known.joins.push(join.place);
    found.set(key, known);
  }
  return [...found.values()];
}

/** What loads the thing under the cursor, one step back along the path of the load. */
export const loadedBy = (project: Project, path: string, offset: number, day: DayNumber): LoadStep[] => steps(project, path, offset, day, 'from');

/** What the thing under the cursor loads. */
export const loads = (project: Project, path: string, offset: number, day: DayNumber): LoadStep[] => steps(project, path, offset, day, 'to');

