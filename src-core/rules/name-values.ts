import type { BoundBlock, BoundLink, BoundStatement } from '../model/bound.ts';
import type { Place } from '../base/span.ts';
import { gearHeads } from '../assess/assess-gear.ts';
import type { NameKind } from '../vocabulary/shape.ts';

/** A name that is used somewhere, with what it may stand for. */
export interface UsedName {
  readonly name: string;
  readonly place: Place;
  readonly of: readonly NameKind[];
}

/** Everything that can be a link of a route. */
export const linkKinds: readonly NameKind[] = ['line', 'piece', ...gearHeads, 'anchor', 'vehicle', 'thimble'];

/** Pieces that a logbook or a repair speaks of are checked by the replay, which knows which of them are left. */
const isReplayed = (block: BoundBlock, statement: BoundStatement): boolean => block.definition.head === 'repair' || statement.day !== undefined;

const named = (link: BoundLink): UsedName[] => (link.link === 'name' ? [{ name: link.name, place: link.namePlace, of: linkKinds }] : []);

/** Every name of something else that a block uses. */
export function usedNames(block: BoundBlock): UsedName[] {
  const used: UsedName[] = [];
  for (const value of block.header.all()) if (value.type === 'name') used.push(value);
  for (const statement of block.statements) {
    for (const value of statement.values.all()) {
      if (value.type === 'name' && !isReplayed(block, statement)) used.push(value);
      if (value.type === 'route') used.push(...value.links.flatMap(named));
    }
  }
  return used;
}

/** `a line`, `an anchor`; a list as `a line, a piece or an anchor`. */
export const aKind = (kind: NameKind): string => `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
export const oneOf = (kinds: readonly NameKind[]): string => {
  const all = kinds.map(aKind);
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} or ${all.at(-1)!}`;
};
