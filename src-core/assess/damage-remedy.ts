import { isWire } from '../model/line-make.ts';
import type { DamageFact } from '../model/line-state.ts';
import { damageWords } from './damage-words.ts';
import type { LineFacts } from './line-facts.ts';
import { strandLimit } from './strand-limit.ts';

/** What to do about a damage: the trade's four answers, the mildest first. */
export type Remedy = 'clean' | 'derate' | 'cut-out' | 'retire';

/** What a damage entry leaves out, so that its remedy is the careful one. */
export function notWritten(fact: DamageFact): string | undefined {
  if (fact.kind === 'cut' && fact.strands === undefined) return 'how many strands are cut';
  if (fact.kind === 'pulled' && fact.strands === undefined) return 'how many strands are pulled';
  if (fact.kind === 'abrasion' && fact.share === undefined && fact.severity === undefined) return 'how much of the strand volume is gone';
  if (fact.kind === 'glaze' && fact.state === undefined) return 'whether the glaze turns soft on flexing';
  return undefined;
}

export function remedyFor(facts: LineFacts, fact: DamageFact, strands: number): { remedy: Remedy; because: string } {
  const { limit, ofFew } = strandLimit(facts);
  const worn = facts.practice.number('abrasion-retire', 'low');
  const many = `${strands === 1 ? '1 cut strand reaches' : `${strands} cut strands within one bury length reach`} the limit of ${limit}${ofFew === undefined ? '' : ` of ${ofFew}`}`;
  switch (fact.kind) {
    case 'cut':
      if (fact.strands === undefined && strands < limit) return { remedy: 'cut-out', because: 'how many strands are cut is not written' };
      return strands >= limit ? { remedy: 'cut-out', because: many } : { remedy: 'derate', because: strands === 1 ? 'a single cut strand lowers the strength there' : 'cut strands lower the strength there' };
    case 'pulled':
      return strands >= limit ? { remedy: 'cut-out', because: many } : { remedy: 'clean', because: 'a pulled strand is worked back into the braid; until then it is counted as cut' };
    case 'abrasion':
      if (fact.severity === 'heavy') return { remedy: 'cut-out', because: 'a quarter or more of the strand volume may be gone' };
      if (fact.share !== undefined) return fact.share.value >= worn * (1 - 1e-9) ? { remedy: 'cut-out', because: 'the share of strand volume that is gone reaches the limit' } : { remedy: 'derate', because: 'worn strands lower the strength there' };
      if (fact.severity === 'light') return { remedy: 'derate', because: 'worn strands lower the strength there' };
      if (fact.severity === 'moderate') return { remedy: 'derate', because: 'worn strands lower the strength there' };
      return { remedy: 'cut-out', because: 'how much of the strand volume is gone is not written' };
    case 'glaze':
      return fact.state === 'soft' ? { remedy: 'derate', because: 'glazed fibre that turns soft on flexing is counted like light wear' } : { remedy: 'cut-out', because: fact.state === 'hard' ? 'glazed fibre that stays hard has been melted together' : 'whether the glaze turns soft on flexing is not written' };
    case 'melt':
      return { remedy: 'cut-out', because: 'melted fibre does not carry' };
    case 'kink':
      return { remedy: 'cut-out', because: 'a kink that stays has moved the strands for good' };
    case 'broken-wires':
      return { remedy: 'cut-out', because: 'so many broken wires take wire rope out of service there' };
    case 'rust':
      return { remedy: 'cut-out', because: 'what rust has left inside wire rope cannot be seen' };
    case 'birdcage':
      return { remedy: 'cut-out', because: 'strands that stand out do not carry with the others any more' };
    case 'flattened':
      if (isWire(facts.block)) return { remedy: 'cut-out', because: 'crushed wire is not worked round again' };
      return { remedy: 'clean', because: 'flattened line is worked round again' };
    case 'brittle':
      return { remedy: 'retire', because: 'discoloured and brittle fibre is not damaged in one place only' };
    default:
      return { remedy: 'retire', because: 'what a stain has done to the fibre cannot be seen' };
  }
}

/** Kinds of damage whose strength nobody measures. */
const neverMeasured: ReadonlySet<string> = new Set(['melt', 'brittle', 'stain', 'kink', 'broken-wires', 'rust', 'birdcage', 'unknown']);

/** Why nobody can say what a damage leaves, where nobody can. */
export function notMeasured(fact: DamageFact): string | undefined {
  if (fact.kind === 'cut' || fact.kind === 'pulled') return fact.strands === undefined ? `how many strands are ${fact.kind} is not written` : undefined;
  const isKnown = fact.kind === 'abrasion' ? (fact.share !== undefined && (fact.severity !== 'heavy' || fact.share.value >= 0.25 * (1 - 1e-9))) || fact.severity === 'light' || fact.severity === 'moderate' : fact.kind === 'glaze' ? fact.state === 'soft' : !neverMeasured.has(fact.kind);
  return isKnown ? undefined : `how much strength ${damageWords(fact)} leaves is not measured`;
}
