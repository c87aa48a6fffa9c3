import { printAmount } from '../units/print.ts';
import { unitNamed, type Unit } from '../units/unit-table.ts';
import { damageWords, type AssessedDamage, type AssessedPiece } from './assess-line.ts';

/** Positions along a line are read in metres or feet, whatever small unit one was measured in. */
export const positionUnit = (unit: Unit): Unit => unitNamed(unit.system === 'us' ? 'ft' : 'm')!;

/** Where a damage lies as the piece lies now, in metres or feet as it was written: `8.4 m from inboard`. */
export function damagePlace(damage: AssessedDamage): string {
  if (damage.from === undefined || damage.to === undefined) return 'a place that cannot be told';
  const station = damage.fact.statement.values.get('station');
  const unit = station?.type === 'station' && station.from.distance.inDiameters !== true ? positionUnit(station.from.distance.unit) : unitNamed('m');
  return `${printAmount({ low: damage.from.low, high: damage.to.high }, 'length', { unit })} from inboard`;
}

/** A damage as a finding begins: `2 cut strands at 8.4 m from inboard on \`main\``. */
export const damageName = (damage: AssessedDamage, piece: AssessedPiece): string => `${damageWords(damage.fact)} at ${damagePlace(damage)} on \`${piece.name}\``;
