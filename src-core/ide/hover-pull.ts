import type { AssessedAnchor } from '../assess/assess-anchor.ts';
import type { AssessedKit } from '../assess/assess-kit.ts';
import type { AssessedPull, Loaded } from '../assess/assess-pull.ts';
import type { AssessedVehicle } from '../assess/assess-vehicle.ts';
import { show, showValue } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { asGiven, isUnknown, mostOf, type Value } from '../mechanics/derivation.ts';
import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { answerOf, notKnown, type Answer, type Table } from './answer.ts';
import { forceAndMass } from './hover-gear.ts';
import { assessedOf, type Viewing } from './viewing.ts';

/** What is needed against what the winch pulls, in words that claim no more than the figures. */
function needAndPull({ needed, available, incomplete, layer }: AssessedPull): string {
  const onLayer = isUnknown(layer) ? '' : ` on layer ${show(layer)}`;
  if (isUnknown(needed)) return `line pull needed is not judged${isUnknown(available) ? '' : `; the winch pulls ${show(available)}${onLayer}`}`;
  const atLeast = incomplete === undefined ? '' : ' or more';
  if (isUnknown(available)) return `needs ${show(needed)}${atLeast}; what the winch pulls is not judged`;
  const verdict = isAbove(needed.amount.high, available.amount.low) ? 'above what the winch pulls' : incomplete === undefined ? 'within what the winch pulls' : 'as far as it is known';
  return `needs ${show(needed)}${atLeast} of the ${show(available)}${onLayer}, ${verdict}`;
}

export const pullSummary = needAndPull;

const causeLines = (...values: readonly Value[]): string[] => {
  const found = values.find((v) => isUnknown(v));
  return found !== undefined && isUnknown(found) ? [`Not judged in full because ${found.unknown.says}: ${found.unknown.help}.`] : [];
};

function loadedTable(pull: AssessedPull): Table {
  const verdict = ({ load, limit, doubt }: Loaded): string => {
    const most = mostOf(limit);
    if (isUnknown(load) || most === undefined) return 'not judged';
    if (isAbove(load.amount.high, most.amount.low)) return 'above it';
    return !isUnknown(limit) && doubt === undefined && pull.incomplete === undefined ? 'within it' : 'not judged';
  };
  return { head: ['loaded', 'load', 'limit', ''], rows: pull.loaded.map((l) => [`\`${l.name}\``, showValue(l.load), showValue(l.limit), verdict(l)]) };
}

export function hoverPullName(pull: AssessedPull): Answer {
  const standOff = isUnknown(pull.standOff) ? [] : [`Everybody who does not run the winch stays ${showValue(asGiven(pull.standOff))} off, at least.`];
  return { lead: `${pull.name}: ${needAndPull(pull)}`, lines: [...causeLines(pull.needed, pull.available), ...standOff], table: loadedTable(pull), restsOn: [pull.needed, pull.available] };
}

function resistanceTable({ resistance }: AssessedPull): Table {
  return { head: ['resistance', ''], rows: [['ground', resistance.ground], ['slope', resistance.slope], ['mire', resistance.mire], ['wheels that drag', resistance.drag], ['in all', resistance.total]].map(([what, value]) => [what as string, showValue(value as Value)]) };
}

export function hoverPull(view: Viewing, block: BoundBlock, statement: BoundStatement): Answer | undefined {
  const pull = assessedOf(view, block);
  if (pull.kind !== 'pull') return undefined;
  const { resistance } = pull;
  switch (statement.definition.head) {
    case 'load':
      return { ...answerOf(resistance.weight, 'weight of what is pulled'), ...(resistance.measured ? {} : { table: resistanceTable(pull) }) };
    case 'surface':
      return answerOf(resistance.ground, 'resistance of the ground');
    case 'grade':
      return answerOf(resistance.slope, 'resistance of the slope');
    case 'mired':
      return answerOf(resistance.mire, 'resistance of the mire');
    case 'dragging':
      return answerOf(resistance.drag, 'resistance of wheels that drag');
    case 'resistance':
      return answerOf(resistance.total, 'resistance in all');
    case 'reach': {
      const { lineOut } = pull.reach;
      if (isUnknown(lineOut)) return notKnown('line out', lineOut.unknown);
      const layer = isUnknown(pull.layer) ? [`The layer is not judged, because ${pull.layer.unknown.says}.`] : [`layer ${show(pull.layer)}: ${showValue(pull.available)}`];
      return { lead: `${show(lineOut)} of line is out when the pull begins`, lines: [...layer, ...(isUnknown(pull.reach.bridged) ? [] : [`${show(pull.reach.bridged)} of the way is bridged by extensions and straps`])], restsOn: [lineOut, pull.available] };
    }
    case 'via': {
      const loaded = pull.loaded.find((l) => l.sort === 'block' && l.place === statement.place) ?? pull.loaded.find((l) => l.sort === 'block' && l.place.chunk === statement.place.chunk && l.place.start === statement.place.start);
      return loaded === undefined ? undefined : { ...answerOf(loaded.load, `load on \`${loaded.name}\`, whose limit is ${showValue(loaded.limit)}`) };
    }
    case 'people':
    case 'stretch':
      return isUnknown(pull.standOff) ? notKnown('the distance to keep', pull.standOff.unknown) : answerOf(asGiven(pull.standOff), 'is the least distance to keep');
    default:
      return undefined;
  }
}

export const anchorSummary = (anchor: AssessedAnchor): string => (isUnknown(anchor.holding) ? `${anchor.form ?? 'anchor'}, holding power not judged` : `${anchor.form ?? 'anchor'}, holds ${show(anchor.holding)}`);

const holdingBy: Readonly<Record<AssessedAnchor['holdingFrom'], string>> = {
  written: 'by what is written of it',
  vehicle: 'by the weight of the vehicle, every wheel braked',
  table: 'by a published table',
  none: '',
};

export function hoverAnchorName(anchor: AssessedAnchor): Answer {
  const { holding } = anchor;
  if (isUnknown(holding)) return notKnown(`holding power of ${anchor.name}`, holding.unknown);
  const derivation = holding.origin.from === 'derived' ? holding.origin.derivation : undefined;
  return { lead: `${anchor.name}: holds ${forceAndMass(holding)}`, after: holdingBy[anchor.holdingFrom], ...(derivation === undefined ? { restsOn: [holding] } : { derivation }) };
}

export function hoverAnchor(view: Viewing, block: BoundBlock, statement: BoundStatement): Answer | undefined {
  const anchor = assessedOf(view, block);
  return anchor.kind !== 'anchor' || statement.definition.head === 'girth' ? undefined : hoverAnchorName(anchor);
}

export const vehicleSummary = (vehicle: AssessedVehicle): string => (isUnknown(vehicle.weight) ? 'mass not given' : `weighs ${showValue(asGiven(vehicle.weight))}`);

export function hoverVehicleName(vehicle: AssessedVehicle): Answer {
  if (isUnknown(vehicle.weight)) return notKnown(`weight of ${vehicle.name}`, vehicle.weight.unknown);
  const holds = isUnknown(vehicle.holds) ? [] : [`Holds ${showValue(asGiven(vehicle.holds))} as an anchor, every wheel braked.`];
  return { lead: `${vehicle.name}: ${showValue(vehicle.mass)}, ${vehicleSummary(vehicle)}`, lines: holds, table: { head: ['recovery point', 'limit'], rows: vehicle.points.map((p) => [`\`${p.name}\``, showValue(p.workingLimit)]) }, restsOn: [asGiven(vehicle.holds)] };
}

export function kitSummary(kit: AssessedKit): string {
  const lacking = kit.plans.flatMap((plan) => plan.needs).filter((need) => need.has === false).length;
  const things = kit.held.length + kit.carried.length;
  return `${things} ${things === 1 ? 'thing' : 'things'}${kit.isFirst && kit.plans.length > 0 ? `, ${lacking === 0 ? 'nothing that the plans ask for is lacking' : `${lacking} lacking for the plans`}` : ''}`;
}

export function hoverKitName(kit: AssessedKit): Answer {
  const rows = kit.plans.flatMap((plan) => plan.needs.map((need) => [`\`${plan.name}\``, need.says, need.has === true ? 'in the bag' : need.has === false ? 'lacking' : `not judged: ${need.has.says}`]));
  return { lead: `${kit.name}: ${kitSummary(kit)}`, table: { head: ['plan', 'needs', ''], rows: rows.sort((a, b) => Number(a[2] === 'in the bag') - Number(b[2] === 'in the bag')) } };
}
