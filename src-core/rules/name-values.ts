import type { BoundBlock } from '../model/bound.ts';
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

/** Every name of something else that a block uses. */
export const usedNames = (block: BoundBlock): readonly UsedName[] => block.uses.map(({ name, place, of }) => ({ name, place, of: of === 'link' ? linkKinds : of }));

/** `a line`, `an anchor`; a list as `a line, a piece or an anchor`. */
export const aKind = (kind: NameKind): string => `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
export const oneOf = (kinds: readonly NameKind[]): string => {
  const all = kinds.map(aKind);
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} or ${all.at(-1)!}`;
};
