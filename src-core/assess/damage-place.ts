import type { Amount } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { unitNamed, type Unit } from '../units/unit-table.ts';
import type { AssessedDamage, AssessedPiece } from './assess-line.ts';
import { damageWords } from './damage-words.ts';

/** Damage, or a place that got hot. */
type PlacedFact = Pick<AssessedDamage, 'fact' | 'from' | 'to'>;

/** Positions along a line are read in metres or feet, whatever small unit one was measured in. */
export const positionUnit = (unit: Unit): Unit => unitNamed(unit.system === 'us' ? 'ft' : 'm')!;

/** A position as the damage's own was written: in metres or in feet. */
export function positionText(damage: PlacedFact, at: Amount): string {
  const station = damage.fact.statement.values.get('station');
  const unit = station?.type === 'station' && station.from.distance.inDiameters !== true ? positionUnit(station.from.distance.unit) : unitNamed('m');
  return printAmount(at, 'length', { unit });
}

/** Where a damage lies as the piece lies now: `8.4 m from inboard`. */
export const damagePlace = (damage: PlacedFact): string =>
  damage.from === undefined || damage.to === undefined ? 'a place that cannot be told' : `${positionText(damage, { low: damage.from.low, high: damage.to.high })} from inboard`;

/** A damage as a finding begins: `2 cut strands at 8.4 m from inboard on \`main\``. */
export const damageName = (damage: PlacedFact, piece: AssessedPiece): string => `${damageWords(damage.fact)} at ${damagePlace(damage)} on \`${piece.name}\``;
