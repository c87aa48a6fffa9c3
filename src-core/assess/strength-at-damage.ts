import { mostOf, isUnknown, asGiven, noMoreThan, unknown, type Given, type Value } from '../mechanics/derivation.ts';
import type { Place } from '../base/span.ts';
import { cutStrandShare } from '../mechanics/cut-strand-share.ts';
import { strengthAfterAbrasion } from '../mechanics/strength-after-abrasion.ts';
import { strengthAfterCutStrands } from '../mechanics/strength-after-cut-strands.ts';
import { strengthAfterLosses } from '../mechanics/strength-after-losses.ts';
import type { DamageFact } from '../model/line-state.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { notMeasured } from './damage-remedy.ts';
import { writtenValue } from './facts.ts';
import type { LineFacts } from './line-facts.ts';

/** What cut strands and wear in one place take together, where that reaches the limit for wear. */
export function lossTogether({ practice, strands: all }: LineFacts, zone: readonly DamageFact[], strands: number, worn: ReadonlyMap<DamageFact, Value | undefined>): string | undefined {
  const wear = Math.max(0, ...zone.map((fact) => mostOf(worn.get(fact) ?? nothingWorn)?.amount.high ?? 0));
  if (strands === 0 || wear === 0 || isUnknown(all)) return undefined;
  const loss = strands / all.amount.low + wear;
  return loss >= practice.number('abrasion-retire', 'low') * (1 - 1e-9) ? printAmount(exactly(Math.min(1, loss)), 'ratio', { careful: 'up' }) : undefined;
}

const nothingWorn: Value = unknown({ key: 'wear', says: 'no wear is written', help: 'write it' });

const countValue = (n: number, place: Place): Given => ({ amount: exactly(n), kind: 'count', origin: { from: 'written', place } });

/** What damage leaves of a strength, all damage of its zone counted together. */
export function strengthAt(facts: LineFacts, F_b: Value, own: DamageFact, zone: readonly DamageFact[], strands: number, worn: ReadonlyMap<DamageFact, Value | undefined>): Value {
  const order = [own, ...zone.filter((f) => f !== own)];
  let wear: Value | undefined;
  for (const fact of order) {
    const share = worn.get(fact);
    if (share !== undefined && (wear === undefined || (!isUnknown(share) && !isUnknown(wear) && share.amount.high > wear.amount.high))) wear = share;
  }
  const n = countValue(strands, own.place);
  const cut = strands > 0 ? asGiven(strengthAfterCutStrands({ F_b, n, N: facts.strands })) : F_b;
  const rubbed = wear === undefined ? F_b : asGiven(strengthAfterAbrasion({ F_b, a: wear }));
  const left = strands === 0 ? rubbed : wear === undefined ? cut : asGiven(strengthAfterLosses({ F_b, s_1: asGiven(cutStrandShare({ n, N: facts.strands })), s_2: wear }));
  /** Where one loss cannot be told, the others leave no more than they do. */
  const bounded = (value: Value): Value => (isUnknown(value) ? [F_b, cut, rubbed, left].reduce((least, each) => noMoreThan(least, mostOf(each)), value) : value);
  for (const fact of order) {
    const says = notMeasured(fact);
    if (says !== undefined) return bounded(unknown({ key: `damage ${fact.place.start} of ${facts.name}`, says, help: 'cut it out, or write the share of strand volume that is gone where it can be measured', place: fact.place, reported: true }));
  }
  if (!isUnknown(facts.strands) && strands > facts.strands.amount.low) return unknown({ key: `damage ${own.place.start} of ${facts.name}`, says: `as many strands are cut as \`${facts.name}\` has`, help: 'cut it out', place: own.place, reported: true }, mostOf(asGiven(strengthAfterCutStrands({ F_b, n: facts.strands, N: facts.strands }))));
  return bounded(left);
}

export function wornShare(facts: LineFacts, fact: DamageFact): Value | undefined {
  if (fact.kind === 'abrasion') return fact.share !== undefined ? writtenValue(fact.share, 'needed share') : facts.practice.value('abrasion-share', fact.severity);
  if (fact.kind === 'glaze' && fact.state === 'soft') return facts.practice.value('abrasion-share', 'light');
  return undefined;
}
