import type { AssessedDamage, AssessedPiece } from '../assess/assess-line.ts';
import { show } from '../assess/show.ts';
import { damageName, damagePlace } from '../assess/damage-place.ts';
import { isAbove } from '../base/compare.ts';
import { strandLimit } from '../assess/strand-limit.ts';
import { isUnknown, type Given } from '../mechanics/derivation.ts';
import { isWire } from '../model/line-make.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';

const wireKinds: ReadonlySet<string> = new Set(['broken-wires', 'rust', 'birdcage']);
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

/** Damage with the cut strands that count as one place with it. */
export const damageThere = (damage: AssessedDamage, piece: AssessedPiece): string =>
  !countsAsCut(damage.fact.kind) || damage.fact.strands === damage.strands ? damageName(damage, piece) : `${damage.strands} cut strands near each other at ${damagePlace(damage)} on \`${piece.name}\``;

/** What is there, beside the limit it reaches. */
export function damageAndLimit(damage: AssessedDamage, piece: AssessedPiece): string {
  const { fact, strands } = damage;
  const { practice } = piece.line;
  if (damage.together !== undefined) return `${damageName(damage, piece)}, with what is near it ${damage.together} of the strands, no less than the limit of ${show(practice.value('abrasion-retire') as Given)},`;
  if (countsAsCut(fact.kind)) {
    const { limit, ofFew } = strandLimit(piece.line);
    return `${damageThere(damage, piece)}, ${limit < strands ? 'above' : 'at'} the limit of ${limit}${ofFew === undefined ? '' : ` for a line of ${ofFew}`},`;
  }
  const worn = practice.value('abrasion-retire');
  if (fact.share === undefined || isUnknown(worn)) return damageName(damage, piece);
  return `${damageName(damage, piece)}, ${isAbove(fact.share.value, worn.amount.low) ? 'above' : 'at'} the limit of ${show(worn)},`;
}

export function damageSource(damage: AssessedDamage, { line }: AssessedPiece): string {
  const { kind } = damage.fact;
  if (damage.together !== undefined) return `${printSource(sources['ci-2001-04'])}; cut strands are added to it by our own careful choice`;
  if (countsAsCut(kind)) return printSource(strandLimit(line).source);
  if (kind === 'abrasion') return printSource(sources['ci-2001-04']);
  if (wireKinds.has(kind) || isWire(line.block)) return printSource(sources['29-cfr-1926-1413-structure']);
  return 'CI 2001-04, inspection of fibre rope, as quoted in inspection guides: glazed, melted, kinked or brittle fibre is cut out or retired';
}

/** `is` or `are`, as the damage reads. */
export const verbOf = (damage: AssessedDamage): string => ((countsAsCut(damage.fact.kind) && damage.strands !== 1) || ['broken-wires', 'birdcage'].includes(damage.fact.kind) ? 'are' : 'is');
