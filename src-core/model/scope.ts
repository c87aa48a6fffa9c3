import type { Place } from '../base/span.ts';
import type { NameKind } from '../vocabulary/shape.ts';
import { nameOf, newNameOf, type BoundBlock, type BoundChunk, type BoundStatement } from './bound.ts';

/** Something that a name stands for. */
export interface Declaration {
  readonly kind: NameKind;
  readonly name: string;
  readonly place: Place;
  /** The block that declares it: itself, the line or repair that keeps a piece, or the vehicle that has a point. */
  readonly block: BoundBlock;
  readonly statement?: BoundStatement;
}

/** What a chunk adds to the scope, under the keys it can be looked up by. */
interface Contribution {
  readonly key: string;
  readonly item: object;
}

const contributions = new WeakMap<BoundChunk, readonly Contribution[]>();

const nameKey = (name: string): string => `name:${name}`;
const carrierKey = (line: string): string => `carrier:${line}`;
const practiceKey = 'practice';
const headKey = (head: string): string => `head:${head}`;

function contributionsOf(chunk: BoundChunk): readonly Contribution[] {
  let list = contributions.get(chunk);
  if (list !== undefined) return list;
  const made: Contribution[] = [];
  const declare = (declaration: Declaration): void => {
    made.push({ key: nameKey(declaration.name), item: declaration });
  };
  for (const block of chunk.blocks) {
    const { head } = block.definition;
    made.push({ key: headKey(head), item: block });
    if (block.name !== undefined) declare({ kind: head, name: block.name, place: block.namePlace, block });
    if (head === 'practice') made.push({ key: practiceKey, item: block });
    for (const statement of block.statements) {
      const kept = newNameOf(statement.values, 'keep');
      if (kept !== undefined) declare({ kind: 'piece', name: kept.name, place: kept.place, block, statement });
      if (head === 'winch' && statement.definition.head === 'carries') {
        const line = nameOf(statement.values, 'line');
        if (line !== undefined) made.push({ key: carrierKey(line.name), item: block });
      }
    }
  }
  list = made;
  contributions.set(chunk, list);
  return list;
}

const nothing: readonly never[] = [];

/** The names, practice and cross-references that count together: a file and everything it uses. */
export class Scope {
  readonly #index = new Map<string, object[]>();

  constructor(chunks: Iterable<BoundChunk>) {
    for (const chunk of chunks) {
      for (const { key, item } of contributionsOf(chunk)) {
        const list = this.#index.get(key);
        if (list === undefined) this.#index.set(key, [item]);
        else list.push(item);
      }
    }
  }

  get(key: string): readonly object[] {
    return this.#index.get(key) ?? nothing;
  }

  /** Every name in scope, for completion and did-you-mean. */
  *declarations(): Generator<Declaration> {
    for (const [key, items] of this.#index) if (key.startsWith('name:')) yield* items as Declaration[];
  }
}

/** Looks things up in a scope and remembers what was asked, so that a result can be kept while the answers stay the same. */
export class Reader {
  readonly scope: Scope;
  readonly asked = new Map<string, readonly object[]>();

  constructor(scope: Scope) {
    this.scope = scope;
  }

  #ask(key: string): readonly object[] {
    const answer = this.scope.get(key);
    this.asked.set(key, answer);
    return answer;
  }

  declarations(name: string): readonly Declaration[] {
    return this.#ask(nameKey(name)) as readonly Declaration[];
  }

  /** The first thing of these kinds that has the name. */
  find(name: string, kinds: readonly NameKind[]): Declaration | undefined {
    return this.declarations(name).find((d) => kinds.includes(d.kind));
  }

  winchesCarrying(line: string): readonly BoundBlock[] {
    return this.#ask(carrierKey(line)) as readonly BoundBlock[];
  }

  practices(): readonly BoundBlock[] {
    return this.#ask(practiceKey) as readonly BoundBlock[];
  }

  blocks(head: NameKind): readonly BoundBlock[] {
    return this.#ask(headKey(head)) as readonly BoundBlock[];
  }

  /** Every name in scope. Only for the help of a message that is shown anyway: it is not remembered. */
  names(kinds?: readonly NameKind[]): string[] {
    const names = new Set<string>();
    for (const d of this.scope.declarations()) if (kinds === undefined || kinds.includes(d.kind)) names.add(d.name);
    return [...names];
  }

  /** Takes over what a kept result had asked. */
  recall(asked: ReadonlyMap<string, readonly object[]>): void {
    for (const [key, answer] of asked) this.asked.set(key, answer);
  }
}

/** True when the scope still answers as it did. */
export function stillAnswers(scope: Scope, asked: ReadonlyMap<string, readonly object[]>): boolean {
  for (const [key, before] of asked) {
    const now = scope.get(key);
    if (now === before) continue;
    if (now.length !== before.length) return false;
    for (let i = 0; i < now.length; i++) if (now[i] !== before[i]) return false;
  }
  return true;
}
