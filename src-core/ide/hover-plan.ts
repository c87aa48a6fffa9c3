import type { AssessedRepair } from '../assess/assessing.ts';
import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { quantityOf, wordOf } from '../model/bound.ts';
import { showAmount } from '../mechanics/explain.ts';
import { practiceValue } from '../trade/built-in-practice.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { kinds } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import type { Answer } from './answer.ts';
import { weightText } from './hover-gear.ts';
import { hoverEndStatement, piecesTable } from './hover-line.ts';
import { measureText } from './measure-text.ts';
import { assessedOf, type Viewing } from './viewing.ts';

export function hoverRepairName(repair: AssessedRepair): Answer {
  const pieces = [...repair.after.pieces.values()];
  return { lead: `${repair.name}: leaves ${pieces.length === 1 ? '1 piece' : `${pieces.length} pieces`} of \`${repair.before.facts.name}\``, after: ', if it is carried out as written', table: piecesTable(repair.after), restsOn: pieces.map((p) => p.strength) };
}

export function hoverRepair(view: Viewing, block: BoundBlock, statement: BoundStatement, key: string | undefined): Answer | undefined {
  const repair = assessedOf(view, block);
  if (repair.kind !== 'repair') return undefined;
  if (statement.definition.head === 'splice' || statement.definition.head === 'join') return hoverEndStatement(view, repair.after, statement, key);
  return { ...hoverRepairName(repair), lead: 'the repair leaves', after: 'when all its steps are done:' };
}

export function hoverVehicle(statement: BoundStatement): Answer | undefined {
  const mass = quantityOf(statement.values, 'mass');
  if (mass !== undefined && statement.definition.head === 'mass') {
    const text = measureText(mass);
    return { lead: `${text.lead} weighs ${weightText(mass.value)}`, after: text.also === undefined ? undefined : `= ${text.also}`, lines: ['Weight is mass by standard gravity, 9.80665 m/s².'] };
  }
  return undefined;
}

/** A value of the shop's practice beside the built-in one that it replaces. */
export function hoverPractice(statement: BoundStatement): Answer | undefined {
  const key = statement.definition.head;
  const holdsFor = wordOf(statement.values, 'material') ?? wordOf(statement.values, 'gear');
  const builtIn = practiceValue(key, holdsFor);
  let written: string | undefined;
  for (const value of statement.values.all()) {
    if (value.type === 'quantity') written = value.kind === 'needed count' ? showAmount(exactly(value.value), 'count') : printAmount(exactly(value.value), value.inDiameters ? 'diameters' : kinds[value.kind].dimension, { unit: value.unit });
    if (value.type === 'count') written = String(value.count);
  }
  if (written === undefined) return undefined;
  if (builtIn === undefined) return { lead: written, after: `${holdsFor === undefined ? '' : `for ${holdsFor} `}by this practice; nothing is built in for it` };
  const before = show({ amount: builtIn.amount, kind: builtIn.kind, origin: { from: 'constant', source: builtIn.source } });
  return { lead: `${written} by this practice`, after: `· replaces the built-in ${before}: ${builtIn.means}`, sources: [`${printSource(builtIn.source)} (for the built-in value)`] };
}

/** The built-in or written practice that a material brings with it. */
export function hoverMaterial(view: Viewing, material: string, meaning: string): Answer {
  const { practice } = view.assessing;
  const rows: string[][] = [];
  const values = [];
  for (const [key, what] of [['bury', 'bury needed'], ['taper', 'taper needed'], ['keep-wraps', 'wraps kept'], ['heat-limit', 'loses strength from']] as const) {
    const value = practice.value(key, material);
    if (isUnknown(value)) continue;
    rows.push([what, show(value), value.origin.from === 'assumed' ? 'assumed' : 'written']);
    values.push(value);
  }
  return { lead: material, after: `· ${meaning}`, table: { head: ['practice', '', 'from'], rows }, ...(rows.length === 0 ? {} : { sources: values.flatMap((v) => (v.origin.from === 'assumed' ? [printSource(v.origin.source)] : [])) }) };
}
