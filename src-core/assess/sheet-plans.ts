import { asGiven, isUnknown, type Derivation, type Value } from '../mechanics/derivation.ts';
import { exactly } from '../units/amount.ts';
import type { AssessedAnchor } from './assess-anchor.ts';
import type { AssessedKit } from './assess-kit.ts';
import type { AssessedPull } from './assess-pull.ts';
import type { AssessedVehicle } from './assess-vehicle.ts';
import { fadesAt } from './least-line-out.ts';
import { inDoubt } from './sheet-chain.ts';
import { writtenRows } from './sheet-facts.ts';
import type { SheetRows } from './sheet-rows.ts';

export function vehicleRows(rows: SheetRows, vehicle: AssessedVehicle): void {
  writtenRows(rows, vehicle.block);
  rows.add('weight', asGiven(vehicle.weight));
  rows.add('holds as an anchor, every wheel braked', asGiven(vehicle.holds), { id: 'holds' });
}

const holdingSays: Record<AssessedAnchor['holdingFrom'], string | undefined> = { written: undefined, vehicle: 'a braked vehicle', table: 'by the published table', none: undefined };

export function anchorRows(rows: SheetRows, anchor: AssessedAnchor): void {
  writtenRows(rows, anchor.block, new Set(['holding']));
  rows.add('holding power', anchor.holding, { says: holdingSays[anchor.holdingFrom] });
  if (anchor.log !== undefined) rows.add('holding power of its face', asGiven(anchor.log.holdingPower), { id: 'face-holding' });
}

const derived = (derivation: Derivation): Value => asGiven(derivation);

/** What a pull needs, what the winch gives, and what everything in between carries against what it may. */
export function pullRows(rows: SheetRows, pull: AssessedPull): void {
  const { resistance, rigging, reach } = pull;
  writtenRows(rows, pull.block, new Set(['reach', 'people', 'resistance', 'stretch']));
  rows.section('what it takes', 'needs');
  rows.add('weight of the load', resistance.weight, { id: 'weight' });
  if (!resistance.measured) {
    rows.add('ground', resistance.ground);
    rows.add('slope', resistance.slope);
    rows.add('mire', resistance.mire);
    rows.add('wheels that drag', resistance.drag, { id: 'drag' });
  }
  rows.add('resistance in all', resistance.total, { id: 'resistance' });
  rows.add('line pull over resistance', rigging.advantage, { id: 'advantage', says: rigging.plan === undefined && rigging.blocks.length > 0 ? 'parts of the line taken as parallel: the pull is the best case, block loads are the highest' : undefined });
  rows.add('line pull needed', pull.needed, { id: 'line-pull', says: pull.incomplete === undefined ? undefined : 'or more: not everything is known' });

  rows.section('what the winch gives', 'winch');
  rows.add('reach', reach.reach);
  rows.add('bridged by extensions and straps', reach.bridged, { id: 'bridged' });
  rows.add('line out when it begins', reach.lineOut, { id: 'line-out' });
  rows.add('layer in use', pull.layer, { id: 'layer' });
  rows.add('line pull on it', pull.available, { id: 'available' });
  const fades = fadesAt(pull);
  if (fades !== undefined) rows.add('enough with at least so much out', fades, { id: 'enough-out', says: 'the drum fills as the line comes in' });

  if (pull.tensions.length > 0) rows.section('tension in the line', 'tension');
  pull.tensions.forEach((tension, i) => rows.add(`part ${i + 1}${i === 0 ? ', at the winch' : ''}`, tension, { id: `part-${i + 1}` }));

  rows.section('what it loads', 'loads', 'table');
  for (const { name, load, limit, limitSays, place, sort, link } of pull.loaded) {
    rows.add('load', load, { group: name, place });
    rows.add('limit', sort === 'line' ? inDoubt(limit, link?.doubt) : limit, { group: name, place, says: limitSays });
  }

  rows.section('who stands where', 'people');
  rows.add('everybody else keeps off, at least', asGiven(pull.standOff), { id: 'stand-off' });
  if (pull.people !== undefined) rows.add('written', pull.people, { id: 'written' });
  if (pull.energy !== undefined) rows.add('energy stored in the line', asGiven(pull.energy), { id: 'energy' });

  if (isUnknown(pull.army)) return;
  rows.section('the army\'s estimate beside it', 'army');
  const { partsFirst, rounds, answer } = pull.army;
  rows.add('parts of line', { ...derived(partsFirst), amount: exactly(answer.parts) } as Value, { id: 'parts', says: rounds.length === 1 ? undefined : `after ${rounds.length} rounds: with fewer the fall line force is above the winch` });
  rows.add('resistance of the tackle', derived(answer.tackleResistance), { id: 'tackle' });
  rows.add('fall line force', derived(answer.fallLineForce), { id: 'fall-line' });
}

export function kitRows(rows: SheetRows, kit: AssessedKit): void {
  writtenRows(rows, kit.block);
  for (const { name, needs } of kit.plans) {
    rows.section(`what ${name} takes`, name);
    for (const need of needs) rows.words(need.says, need.has === true ? 'in the bag' : need.has === false ? 'not in the bag' : `not judged: ${need.has.says}`, { id: need.says });
  }
}
