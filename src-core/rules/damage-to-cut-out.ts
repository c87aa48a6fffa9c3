import type { AssessedDamage, AssessedPiece } from '../assess/assess-line.ts';
import { show } from '../assess/show.ts';
import { damageName, damagePlace } from '../assess/damage-place.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';

const countsAsCut = (kind: string): boolean => kind === 'cut' || kind === 'pulled';

/** Every place of a piece that is to be cut out, each said by its last entry. What was not measured is said by another rule. */
export function* damageToCutOut(piece: AssessedPiece): Generator<AssessedDamage> {
  for (const damage of piece.damages) {
    if (damage.remedy !== 'cut-out' || damage.notMeasured !== undefined) continue;
    // A count that cannot be is said by itself.
    if (!isUnknown(piece.line.strands) && damage.fact.strands !== undefined && piece.line.strands.amount.low < damage.fact.strands) continue;
    const cuts = countsAsCut(damage.fact.kind) ? damage.zone.filter((fact) => countsAsCut(fact.kind)) : [];
    if (cuts.length < 2 || cuts.at(-1) === damage.fact) yield damage;
  }
}

/** What is there, beside the limit it reaches. */
export function damageAndLimit(damage: AssessedDamage, piece: AssessedPiece): string {
  const { fact, strands } = damage;
  const { practice } = piece.line;
  if (countsAsCut(fact.kind)) {
    const limit = practice.number('cut-strands-limit', 'low');
    const there = fact.strands === strands ? damageName(damage, piece) : `${strands} cut strands near each other at ${damagePlace(damage)} on \`${piece.name}\``;
    return `${there}, ${limit < strands ? 'above' : 'at'} the limit of ${limit},`;
  }
  const worn = practice.value('abrasion-retire');
  if (fact.share === undefined || isUnknown(worn)) return damageName(damage, piece);
  return `${damageName(damage, piece)}, ${isAbove(fact.share.value, worn.amount.low) ? 'above' : 'at'} the limit of ${show(worn)},`;
}

export function damageSource(damage: AssessedDamage): string {
  const { kind } = damage.fact;
  if (countsAsCut(kind)) return printSource(sources['practice-cut-strands']);
  if (kind === 'abrasion') return printSource(sources['ci-2001-04']);
  return 'CI 2001-04, inspection of fibre rope, as quoted in inspection guides: glazed, melted, kinked or brittle fibre is cut out or retired';
}

/** `is` or `are`, as the damage reads. */
export const verbOf = (damage: AssessedDamage): string => (countsAsCut(damage.fact.kind) && damage.strands !== 1 ? 'are' : 'is');
