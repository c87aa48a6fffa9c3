import type { Place } from '../base/span.ts';
import type { NameKind } from '../vocabulary/shape.ts';
import { nameOf, newNameOf, type BoundBlock, type BoundChunk, type BoundStatement } from './bound.ts';
import { NearNames } from './near-names.ts';

/** Something that a name stands for. */
export interface Declaration {
  readonly kind: NameKind;
  readonly name: string;
  readonly place: Place;
  /** The block that declares it: itself, the line or repair that keeps a piece, or the vehicle that has a point. */
  readonly block: BoundBlock;
  readonly statement?: BoundStatement;
}

// A name is its own key, since no name has a colon in it; every other key has one.
const carrierKey = (line: string): string => `carrier:${line}`;
const throughKey = (chain: string): string => `through:${chain}`;
/** What is declared under a name, whatever it says about it. */
const kindsKey = (name: string): string => `kinds:${name}`;
const practiceKey = ':practice';
/** Under this key stands one object that changes whenever a name comes or goes. */
const namesKey = ':names';
const isName = (key: string): boolean => !key.includes(':');
const headKeys = new Map<string, string>();

function headKey(head: string): string {
  let key = headKeys.get(head);
  if (key === undefined) headKeys.set(head, (key = `head:${head}`));
  return key;
}

/** Whether what was asked for is answered by a block, among others. */
export function isAskedFor({ name, definition: { head } }: BoundBlock, asked: readonly string[]): boolean {
  return (name !== undefined && asked.includes(name)) || asked.includes(headKey(head)) || (head === 'practice' && asked.includes(practiceKey));
}

/** Tells what a chunk adds to the scope, under the keys it can be looked up by. */
function eachContribution(chunk: BoundChunk, add: (key: string, item: object) => void): void {
  const declare = (declaration: Declaration): void => add(declaration.name, declaration);
  for (const block of chunk.blocks) {
    const { head } = block.definition;
    add(headKey(head), block);
    if (block.name !== undefined) declare({ kind: head, name: block.name, place: block.namePlace, block });
    if (head === 'practice') add(practiceKey, block);
    if (head === 'line' || head === 'repair') {
      for (const statement of block.statements) {
        const kept = newNameOf(statement.values, 'keep');
        if (kept !== undefined) declare({ kind: 'piece', name: kept.name, place: kept.place, block, statement });
      }
    }
    const through = head === 'pull' ? nameOf(block.header, 'chain') : undefined;
    if (through !== undefined) add(throughKey(through.name), block);
    const carries = head === 'winch' ? block.firsts.get('carries') : undefined;
    const line = carries === undefined ? undefined : nameOf(carries.values, 'line');
    if (line !== undefined) add(carrierKey(line.name), block);
  }
}

interface Part {
  readonly chunk: BoundChunk;
  items: object[];
}

const nothing: readonly never[] = [];

/**
 * The names, practice and cross-references that count together: a file and everything it uses. Chunks come and go as
 * the text changes; whoever asked for a key that changed is told.
 */
export class Scope {
  readonly #parts = new Map<string, Part[]>();
  readonly #lists = new Map<string, readonly object[]>();
  #names: readonly object[] = [{}];
  #near: NearNames | undefined;
  /** Where a chunk stands among all: set by the owner before chunks are added. */
  readonly #order: (chunk: BoundChunk) => number;

  constructor(order: (chunk: BoundChunk) => number) {
    this.#order = order;
  }

  /** Takes chunks out and in; gives the keys whose answer may have changed. */
  update(removed: Iterable<BoundChunk>, added: Iterable<BoundChunk>): Set<string> {
    const changed = new Set<string>();
    const leaving = new Set(removed);
    for (const chunk of leaving) eachContribution(chunk, (key) => changed.add(key));
    const kindsBefore = new Map([...changed].map((key) => [key, this.#kindsOf(key)]));
    const gone = new Set<string>();
    for (const key of changed) {
      const left = this.#parts.get(key)?.filter((p) => !leaving.has(p.chunk)) ?? [];
      if (left.length > 0) this.#parts.set(key, left);
      else if (this.#parts.delete(key)) gone.add(key);
    }
    const come = new Set<string>();
    for (const chunk of added) {
      eachContribution(chunk, (key, item) => {
        const parts = this.#parts.get(key);
        if (parts === undefined) {
          this.#parts.set(key, [{ chunk, items: [item] }]);
          if (!gone.delete(key)) come.add(key);
        } else {
          const last = parts.at(-1)!;
          if (last.chunk === chunk) last.items.push(item);
          else parts.push({ chunk, items: [item] });
        }
        changed.add(key);
      });
    }
    for (const key of changed) this.#lists.delete(key);
    if (this.#near !== undefined) {
      for (const key of gone) if (isName(key)) this.#near.remove(key);
      for (const key of come) if (isName(key)) this.#near.add(key);
    }
    let renamed = false;
    for (const key of [...changed]) {
      if (!isName(key) || (kindsBefore.has(key) && kindsBefore.get(key) === this.#kindsOf(key))) continue;
      changed.add(kindsKey(key));
      renamed = true;
    }
    // A name that stands for something else now is another name for those who look for one of a kind.
    if (renamed) {
      this.#names = [{}];
      changed.add(namesKey);
    }
    return changed;
  }

  /** The kinds that are declared under a name, as text to compare. */
  #kindsOf(key: string): string {
    if (!isName(key)) return '';
    const kinds = new Set<NameKind>();
    for (const { items } of this.#parts.get(key) ?? []) for (const item of items) kinds.add((item as Declaration).kind);
    return [...kinds].sort().join(' ');
  }

  get(key: string): readonly object[] {
    if (key === namesKey) return this.#names;
    const parts = this.#parts.get(key);
    if (parts === undefined) return nothing;
    if (parts.length === 1) return parts[0]!.items;
    let list = this.#lists.get(key);
    if (list === undefined) {
      parts.sort((a, b) => this.#order(a.chunk) - this.#order(b.chunk));
      list = parts.flatMap((p) => p.items);
      this.#lists.set(key, list);
    }
    return list;
  }

  /** The name of these kinds that was most likely meant. */
  nameLike(written: string, kinds: readonly NameKind[]): string | undefined {
    if (this.#near === undefined) {
      this.#near = new NearNames();
      for (const key of this.#parts.keys()) if (isName(key)) this.#near.add(key);
    }
    return this.#near.like(written, (name) => (this.get(name) as readonly Declaration[]).some((d) => kinds.includes(d.kind)));
  }

  /** Every name in scope, for completion. */
  *declarations(): Generator<Declaration> {
    for (const key of this.#parts.keys()) if (isName(key)) yield* this.get(key) as Declaration[];
  }
}

/** Looks things up in a scope and remembers what was asked, so that a result can be kept while the answers stay the same. */
export class Reader {
  readonly scope: Scope;
  /** Keys that were asked for. */
  readonly asked = new Set<string>();

  constructor(scope: Scope) {
    this.scope = scope;
  }

  #ask(key: string): readonly object[] {
    this.asked.add(key);
    return this.scope.get(key);
  }

  /** Notes what had been asked for a result that is used again. */
  askedToo(keys: Iterable<string>): void {
    for (const key of keys) this.asked.add(key);
  }

  declarations(name: string): readonly Declaration[] {
    return this.#ask(name) as readonly Declaration[];
  }

  /** The kinds of what has the name: who asks for no more is not asked again when what they say changes. */
  kindsNamed(name: string): readonly NameKind[] {
    this.asked.add(kindsKey(name));
    return (this.scope.get(name) as readonly Declaration[]).map(({ kind }) => kind);
  }

  /** The first thing of these kinds that has the name. */
  find(name: string, kinds: readonly NameKind[]): Declaration | undefined {
    return this.declarations(name).find((d) => kinds.includes(d.kind));
  }

  winchesCarrying(line: string): readonly BoundBlock[] {
    return this.#ask(carrierKey(line)) as readonly BoundBlock[];
  }

  pullsThrough(chain: string): readonly BoundBlock[] {
    return this.#ask(throughKey(chain)) as readonly BoundBlock[];
  }

  practices(): readonly BoundBlock[] {
    return this.#ask(practiceKey) as readonly BoundBlock[];
  }

  blocks(head: NameKind): readonly BoundBlock[] {
    return this.#ask(headKey(head)) as readonly BoundBlock[];
  }

  /** The name of these kinds that was most likely meant. */
  nameLike(written: string, kinds: readonly NameKind[]): string | undefined {
    this.#ask(namesKey);
    return this.scope.nameLike(written, kinds);
  }

  /** Every name in scope. */
  names(kinds?: readonly NameKind[]): string[] {
    this.#ask(namesKey);
    const names = new Set<string>();
    for (const d of this.scope.declarations()) if (kinds === undefined || kinds.includes(d.kind)) names.add(d.name);
    return [...names];
  }
}
