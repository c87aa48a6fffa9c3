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

/**
 * Every place of a piece that is to be cut out. Cut strands near each other are said once: by the entry around which the most of them are, of several by the last. What was not
 * measured is said by another rule, and says nothing for others.
 */
export function* damageToCutOut(piece: AssessedPiece): Generator<AssessedDamage> {
  // A count that cannot be is said by itself.
  const isCounted = ({ fact }: AssessedDamage): boolean => isUnknown(piece.line.strands) || fact.strands === undefined || fact.strands <= piece.line.strands.amount.low;
  const out = piece.damages.filter((damage) => damage.remedy === 'cut-out' && damage.notMeasured === undefined && isCounted(damage));
  const withOthers = out.filter(({ fact, zone }) => countsAsCut(fact.kind) && zone.filter(({ kind }) => countsAsCut(kind)).length > 1);
  const covered = new Set<unknown>();
  const said = new Set<AssessedDamage>();
  for (const damage of [...withOthers].reverse().sort((a, b) => b.strands - a.strands)) {
    if (covered.has(damage.fact)) continue;
    said.add(damage);
    for (const fact of damage.zone) covered.add(fact);
  }
  const grouped = new Set(withOthers);
  for (const damage of out) if (!grouped.has(damage) || said.has(damage)) yield damage;
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
