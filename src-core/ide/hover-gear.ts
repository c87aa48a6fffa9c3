import type { AssessedGear } from '../assess/assess-gear.ts';
import { show } from '../assess/show.ts';
import { isUnknown, type Value } from '../mechanics/derivation.ts';
import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { quantityOf } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { standardGravity } from '../units/unit-table.ts';
import { answerOf, notKnown, type Answer } from './answer.ts';
import { measureText } from './measure-text.ts';
import { assessedOf, type Viewing } from './viewing.ts';

/** On whose word a limit rests. */
export function limitFrom(gear: AssessedGear): string {
  switch (gear.limitFrom) {
    case 'written':
      return 'its marking';
    case 'table':
      return 'the table of its standard';
    case 'breaking strength':
      return `its breaking strength over a design factor of ${isUnknown(gear.designFactor) ? 'unknown size' : show(gear.designFactor)}`;
    case 'none':
      return 'nothing yet';
  }
}

/** `63.7 kN (6.5 t)`: a limit as force and as mass. */
export function forceAndMass(value: Value): string {
  if (isUnknown(value)) return 'not known';
  const force = printAmount(value.amount, 'force', { careful: 'down' });
  const mass = printAmount({ low: value.amount.low / standardGravity, high: value.amount.high / standardGravity }, 'mass', { careful: 'down' });
  return `${force} (the weight of ${mass})`;
}

export function hoverGearName(gear: AssessedGear): Answer {
  const { workingLimit, limit } = gear;
  if (isUnknown(workingLimit)) return notKnown(`working limit of ${gear.name}`, workingLimit.unknown);
  const side = workingLimit === limit || isUnknown(limit) ? [] : [`${show(limit)} in line, less for the side load`];
  const breaking = isUnknown(gear.breakingStrength) ? [] : [`Breaking strength ${show(gear.breakingStrength)}${gear.breakingWritten ? '' : ', by the design factor'}`];
  const derivation = workingLimit.origin.from === 'derived' ? workingLimit.origin.derivation : undefined;
  return { lead: `${gear.name}: working limit ${forceAndMass(workingLimit)}`, after: `given by ${limitFrom(gear)}`, lines: [...side, ...breaking], derivation, ...(gear.breakingWritten ? {} : { restsOn: [gear.breakingStrength] }) };
}

export function hoverGear(view: Viewing, block: BoundBlock, statement: BoundStatement): Answer | undefined {
  const gear = assessedOf(view, block);
  if (gear.kind !== 'gear') return undefined;
  const { head } = statement.definition;
  if (head === 'wll' || head === 'breaking') {
    const written = quantityOf(statement.values, head);
    if (written === undefined) return undefined;
    const text = measureText(written);
    const table = head === 'wll' && gear.tableLimit !== undefined && !isUnknown(gear.tableLimit) ? [`The table of its standard gives ${show(gear.tableLimit)} for this size.`] : [];
    const other = head === 'wll' ? gear.breakingStrength : gear.workingLimit;
    const says = isUnknown(other) ? [] : [head === 'wll' ? `Breaking strength ${show(other)}${gear.breakingWritten ? '' : ', by the design factor'}` : `Working limit ${show(other)}, given by ${limitFrom(gear)}`];
    return { lead: text.lead, after: text.also === undefined ? undefined : `= ${text.also}`, lines: [...table, ...says], restsOn: [other] };
  }
  if (head === 'load-from') return answerOf(gear.workingLimit, 'working limit as it is loaded');
  if (head === 'made-to' || head === 'body') {
    if (gear.tableLimit !== undefined) return answerOf(gear.tableLimit, 'working limit by the table of its standard');
    return undefined;
  }
  if (head === 'marking') return hoverGearName(gear);
  return undefined;
}

/** The weight that a mass has, for values that are masses. */
export const weightText = (mass_kg: number): string => printAmount(exactly(mass_kg * standardGravity), 'force', { careful: 'up' });
