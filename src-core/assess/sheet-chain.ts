import { isUnknown, mostOf, unknown, type Cause, type Value } from '../mechanics/derivation.ts';
import type { AssessedChain, AssessedLink } from './assess-chain.ts';
import type { SheetRows } from './sheet-rows.ts';

/** A figure that may be less than it says, for a reason: it is no more than that. */
export const inDoubt = (value: Value, doubt: Cause | undefined): Value => (doubt === undefined || isUnknown(value) ? value : unknown(doubt, mostOf(value)));

/** What loads a chain, and what each link takes. */
export function chainRows(rows: SheetRows, chain: AssessedChain): void {
  rows.add('load', isUnknown(chain.load) ? chain.load : { ...chain.load, kind: 'load' }, { says: chain.loadSays });
  rows.words('carried out first', chain.repair?.name, { id: 'after' });
  const links = new Map<string, AssessedLink>();
  for (const route of chain.routes) for (const link of route.links) if (!links.has(link.name)) links.set(link.name, link);
  const weakest = (id: string, label: string, figure: 'workingLimit' | 'breaking', link: AssessedLink | undefined): void => {
    // A link that is not known may be weaker than the weakest of the known ones, and that is said with it.
    const open = [...links.values()].filter((l) => isUnknown(l[figure]) && l.name !== link?.name);
    const doubt: Cause | undefined = open[0] === undefined ? undefined : { key: `open links of ${chain.name} ${figure}`, says: `what ${open.map((l) => `\`${l.name}\``).join(', ')} may bear is not given`, help: 'the least of the others is that much', place: open[0].place };
    if (link !== undefined) rows.add(label, inDoubt(link[figure], link.doubt ?? doubt), { id, says: link.name, place: link.place });
  };
  weakest('weakest-by-limit', 'least working limit', 'workingLimit', chain.weakestByLimit);
  weakest('weakest-by-breaking', 'least breaking strength', 'breaking', chain.weakestByBreaking);
  rows.section('links', '', 'table');
  for (const link of links.values()) {
    const more = { group: link.name, place: link.place };
    rows.add('working limit', inDoubt(link.workingLimit, link.doubt), { ...more, says: link.limitSays });
    rows.add('breaking strength', inDoubt(link.breaking, link.doubt), { ...more, id: 'breaking' });
  }
}
