import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { quantityOf } from '../model/bound.ts';
import type { DamageFact } from '../model/line-state.ts';

/** A damage as the trade says it: `2 cut strands`, `heavy abrasion`. */
export const damageWords = (fact: DamageFact): string => {
  switch (fact.kind) {
    case 'cut':
      return fact.strands === undefined ? 'cut strands' : fact.strands === 1 ? '1 cut strand' : `${fact.strands} cut strands`;
    case 'abrasion':
      if (fact.share !== undefined) return `abrasion of ${printAmount(exactly(fact.share.value), 'ratio', { unit: fact.share.unit })}`;
      return fact.severity === undefined ? 'abrasion' : `${fact.severity} abrasion`;
    case 'glaze':
      return fact.state === undefined ? 'glaze' : `${fact.state} glaze`;
    case 'melt':
      return 'melted fibre';
    case 'pulled':
      return fact.strands === undefined ? 'pulled strands' : fact.strands === 1 ? '1 pulled strand' : `${fact.strands} pulled strands`;
    case 'brittle':
      return 'brittle fibre';
    case 'broken-wires':
      return 'broken wires';
    case 'birdcage':
      return 'strands that stand out';
    case 'flattened':
      return 'flattening';
    case 'heated': {
      const heat = quantityOf(fact.statement.values, 'temperature');
      return heat === undefined ? 'heat' : `heat of ${printAmount(exactly(heat.value), 'temperature', { unit: heat.unit })}`;
    }
    default:
      return fact.kind;
  }
};
