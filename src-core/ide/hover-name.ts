import { quantityOf } from '../model/bound.ts';
import type { Declaration } from '../model/scope.ts';
import type { Answer } from './answer.ts';
import { hoverChainName } from './hover-chain.ts';
import { hoverGearName } from './hover-gear.ts';
import { hoverLineName } from './hover-line.ts';
import { hoverRepairName } from './hover-plan.ts';
import { hoverAnchorName, hoverKitName, hoverPullName, hoverVehicleName } from './hover-pull.ts';
import { hoverDrum } from './hover-winch.ts';
import { measureText } from './measure-text.ts';
import { blockSummary } from './summary.ts';
import { assessedOf, type Viewing } from './viewing.ts';
import type { BoundBlock } from '../model/bound.ts';

/** What a name stands for. `within` is the repair that the reader stands in or comes after, for pieces that it leaves. */
export function hoverDeclared(view: Viewing, declared: Declaration, within: BoundBlock | undefined): Answer {
  if (declared.kind === 'point') {
    const rated = declared.statement === undefined ? undefined : (quantityOf(declared.statement.values, 'rated') ?? quantityOf(declared.statement.values, 'breaking'));
    const text = rated === undefined ? undefined : measureText(rated);
    return { lead: `${declared.name}: recovery point of ${declared.block.name ?? 'a vehicle'}${text === undefined ? ', rating not given' : `, ${text.lead}`}`, after: text?.also === undefined ? undefined : `= ${text.also}` };
  }
  if (declared.kind === 'line' || declared.kind === 'piece') {
    const repair = within ?? (declared.block.definition.head === 'repair' ? declared.block : undefined);
    const repaired = repair === undefined ? undefined : assessedOf(view, repair);
    if (repaired?.kind === 'repair' && repaired.after.pieces.has(declared.name)) {
      return { ...hoverLineName(repaired.after, declared.name), after: `after \`${repaired.name}\`` };
    }
    const line = assessedOf(view, declared.block);
    if (line.kind === 'line') return hoverLineName(line, declared.name);
  }
  const assessed = assessedOf(view, declared.block);
  switch (assessed.kind) {
    case 'gear':
      return hoverGearName(assessed);
    case 'chain':
      return hoverChainName(assessed);
    case 'winch': {
      const drum = hoverDrum(view, assessed);
      return { ...drum, lead: `${assessed.name}: ${drum.lead}` };
    }
    case 'repair':
      return hoverRepairName(assessed);
    case 'pull':
      return hoverPullName(assessed);
    case 'anchor':
      return hoverAnchorName(assessed);
    case 'vehicle':
      return hoverVehicleName(assessed);
    case 'kit':
      return hoverKitName(assessed);
    default:
      return { lead: `${declared.name}: ${declared.kind}`, after: `· ${blockSummary(view, declared.block)}` };
  }
}
