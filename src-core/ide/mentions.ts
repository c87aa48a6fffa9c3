import type { Place } from '../base/span.ts';
import type { BoundBlock, BoundChunk, BoundStatement } from '../model/bound.ts';
import { vehicleOfAnchor } from '../assess/pull-rigging.ts';
import type { Declaration } from '../model/scope.ts';
import type { NameKind } from '../vocabulary/shape.ts';
import type { Viewing } from './viewing.ts';
import type { ReadonlyValues } from '../model/values.ts';

/** A name where it stands: declared, or used for something declared elsewhere. */
export interface Mention {
  readonly name: string;
  readonly place: Place;
  readonly declares: boolean;
  /** What it may stand for; undefined for a link, which may be anything that is loaded. */
  readonly of: readonly NameKind[] | undefined;
  readonly block: BoundBlock;
  readonly statement: BoundStatement | undefined;
  /** For a recovery point: the name of the vehicle, or of the anchor that it stands as. */
  readonly vehicle?: string;
}

const known = new WeakMap<BoundChunk, readonly Mention[]>();

/** Kinds that a link of a chain may be. */
export const linkKinds: readonly NameKind[] = ['line', 'piece', 'shackle', 'soft-shackle', 'strap', 'block', 'ring', 'hook', 'anchor', 'vehicle', 'thimble'];

export function mentionsIn(chunk: BoundChunk): readonly Mention[] {
  let found = known.get(chunk);
  if (found === undefined) {
    found = [...collect(chunk)];
    known.set(chunk, found);
  }
  return found;
}

function* collect(chunk: BoundChunk): Generator<Mention> {
  for (const block of chunk.blocks) {
    yield* ofValues(block.header, block, undefined);
    for (const statement of block.statements) yield* ofValues(statement.values, block, statement);
  }
}

function* ofValues(values: ReadonlyValues, block: BoundBlock, statement: BoundStatement | undefined): Generator<Mention> {
  for (const value of values.all()) {
    if (value.type === 'new-name') {
      const point = block.definition.head === 'vehicle' && statement !== undefined && block.name !== undefined;
      yield { name: value.name, place: value.place, declares: true, of: undefined, block, statement, ...(point ? { vehicle: block.name } : {}) };
    } else if (value.type === 'name') yield { name: value.name, place: value.place, declares: false, of: value.of, block, statement };
    else if (value.type === 'route') {
      for (const link of value.links) {
        if (link.link !== 'name') continue;
        yield { name: link.name, place: link.namePlace, declares: false, of: undefined, block, statement };
        if (link.part !== undefined && link.part.name !== 'inboard' && link.part.name !== 'outboard') yield { name: link.part.name, place: link.part.place, declares: false, of: ['point'], block, statement, vehicle: link.name };
      }
    }
  }
}

/** A vehicle by its own name or by that of an anchor that it stands as. */
export function vehicleNamed({ assessing: { reader } }: Viewing, name: string): BoundBlock | undefined {
  const found = reader.find(name, ['vehicle', 'anchor']);
  return found?.kind === 'anchor' ? reader.find(vehicleOfAnchor(found.block) ?? '', ['vehicle'])?.block : found?.block;
}

/** The thing that a mention stands for. A recovery point is found through its vehicle. */
export function declarationOf(view: Viewing, mention: Mention): Declaration | undefined {
  const { reader } = view.assessing;
  if (mention.vehicle !== undefined) {
    const vehicle = vehicleNamed(view, mention.vehicle);
    for (const statement of vehicle?.statements ?? []) {
      const named = statement.values.get('name');
      if (statement.definition.head === 'point' && named?.type === 'new-name' && named.name === mention.name) return { kind: 'point', name: mention.name, place: named.place, block: vehicle!, statement };
    }
    return undefined;
  }
  if (mention.declares) return reader.declarations(mention.name).find((d) => d.place.chunk === mention.place.chunk && d.place.start === mention.place.start);
  return reader.find(mention.name, mention.of ?? linkKinds);
}

export const mentionAt = (chunk: BoundChunk, at: number): Mention | undefined => mentionsIn(chunk).find((m) => m.place.start <= at && at <= m.place.end);
