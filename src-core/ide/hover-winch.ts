import type { AssessedWinch } from '../assess/assess-winch.ts';
import { statementOf } from '../assess/facts.ts';
import { show, showValue } from '../assess/show.ts';
import { asGiven, isUnknown, type Value } from '../mechanics/derivation.ts';
import { quantityOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { between } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { writtenSystem } from '../assess/show.ts';
import { writtenValue } from '../assess/facts.ts';
import { answerOf, notKnown, type Answer, type Table } from './answer.ts';
import { measureText } from './measure-text.ts';
import { assessedOf, type Viewing } from './viewing.ts';

/** Line out that a pull or a chain of this scope plans for the winch; the first that says so. */
function plannedOut(view: Viewing, winch: AssessedWinch): { value: Value; by: string } | undefined {
  const { reader } = view.assessing;
  for (const pull of reader.blocks('pull')) {
    const assessed = assessedOf(view, pull);
    // A pull after a repair has another line on the drum, and another drum table with it.
    if (assessed.kind !== 'pull' || assessed.winch?.block !== winch.block || assessed.line !== winch.piece) continue;
    if (!isUnknown(assessed.reach.lineOut)) return { value: assessed.reach.lineOut, by: assessed.name };
  }
  for (const chain of reader.blocks('chain')) {
    const out = statementOf(chain, 'out');
    const q = out === undefined ? undefined : quantityOf(out.values, 'out');
    if (q === undefined) continue;
    const assessed = assessedOf(view, chain);
    if (assessed.kind === 'chain' && assessed.winch?.block === winch.block) return { value: writtenValue(q), by: assessed.name };
  }
  return undefined;
}

/** The layers from the barrel outward: how much line leaves each, and what the winch pulls from it. */
export function layersTable(winch: AssessedWinch): Table | undefined {
  const { drum } = winch;
  if (isUnknown(drum) || drum.rows.length === 0) return undefined;
  const system = isUnknown(winch.ratedPull) ? 'metric' : writtenSystem(winch.ratedPull);
  const total = isUnknown(winch.length) ? undefined : winch.length.amount.high;
  const rows = drum.rows.map((row, i) => {
    const through = isUnknown(row.lengthThrough) ? undefined : row.lengthThrough.amount.high;
    const below = i === 0 ? 0 : (() => { const before = drum.rows[i - 1]!.lengthThrough; return isUnknown(before) ? undefined : before.amount.high; })();
    const out = total === undefined || through === undefined || below === undefined ? 'not known' : printAmount(between(row.partial ? 0 : Math.max(0, total - through), Math.max(0, total - below)), 'length', { system });
    return [`${row.layer}${row.partial ? ', not full' : ''}`, out, showValue(asGiven(row.pull))];
  });
  return { head: ['layer', 'line out', 'line pull'], rows: rows.reverse() };
}

const usableText = (winch: AssessedWinch): string => {
  if (isUnknown(winch.usable)) return `usable length is not judged, because ${winch.usable.unknown.says}`;
  const kept = isUnknown(winch.keptLength) ? '' : ` (${showValue(asGiven(winch.keptLength))})`;
  return `${showValue(asGiven(winch.usable))} usable, ${showValue(winch.keep)} wraps kept${kept}${winch.keepWritten ? '' : ', assumed'}`;
};

/** What the line on the drum comes to: layers, pulls, and how much of it can be used. */
export function hoverDrum(view: Viewing, winch: AssessedWinch): Answer {
  if (isUnknown(winch.drum)) return { ...notKnown('what this winch pulls on each layer', winch.drum.unknown), lines: [usableText(winch)] };
  const layers = winch.drum.rows.length;
  const planned = plannedOut(view, winch);
  const at = planned === undefined ? undefined : winch.at(planned.value);
  const rated = showValue(winch.ratedPull);
  const restsOn = [asGiven(winch.usable), asGiven(winch.drum.pullOnFirstLayer), asGiven(winch.drum.rows.at(-1)!.pull)];
  const table = layersTable(winch);
  if (at !== undefined && !isUnknown(at.layer) && !isUnknown(at.pull)) {
    return { lead: `layer ${showValue(asGiven(at.layer))} of ${layers} when ${showValue(planned!.value)} is out: ${showValue(asGiven(at.pull))} of the rated ${rated}; ${usableText(winch)}`, after: `(line out by \`${planned!.by}\`)`, table, restsOn };
  }
  const last = winch.drum.rows.at(-1)!.pull;
  const first = winch.drum.rows[0]!.pull;
  const beyond = at !== undefined && isUnknown(at.layer) ? [`With ${showValue(planned!.value)} out, by \`${planned!.by}\`: not judged, because ${at.layer.unknown.says}.`] : [];
  return { lead: `${showValue(asGiven(first))} on layer 1, ${showValue(asGiven(last))} on layer ${layers} of ${layers}, of the rated ${rated}; ${usableText(winch)}`, lines: beyond, table, restsOn };
}

export const winchSummary = (winch: AssessedWinch): string => {
  const pulls = isUnknown(winch.drum) ? `rated ${showValue(winch.ratedPull)}` : `${showValue(asGiven(winch.drum.rows.at(-1)!.pull))} to ${showValue(asGiven(winch.drum.rows[0]!.pull))}`;
  return isUnknown(winch.usable) ? pulls : `${pulls} · ${showValue(asGiven(winch.usable))} usable`;
};

export function hoverWinch(view: Viewing, block: BoundBlock, statement: BoundStatement): Answer | undefined {
  const winch = assessedOf(view, block);
  if (winch.kind !== 'winch') return undefined;
  switch (statement.definition.head) {
    case 'carries':
      return hoverDrum(view, winch);
    case 'rated': {
      const written = quantityOf(statement.values, 'pull');
      if (written === undefined) return undefined;
      const text = measureText(written);
      const layer = isUnknown(winch.ratedLayer) ? '' : ` on layer ${show(winch.ratedLayer)}${winch.ratedLayer.origin.from === 'assumed' ? ', assumed' : ''}`;
      return { lead: `${text.lead} rated${layer}`, after: text.also === undefined ? undefined : `= ${text.also}`, table: layersTable(winch), restsOn: isUnknown(winch.drum) ? [] : [asGiven(winch.drum.rows.at(-1)!.pull)] };
    }
    case 'keep':
      return isUnknown(winch.keptLength) ? notKnown('the line that the kept wraps take', winch.keptLength.unknown) : answerOf(asGiven(winch.keptLength), `of line stays on the drum; practice asks for ${showValue(winch.keepNeeded)} wraps`, { restsOn: [winch.keepNeeded] });
    case 'flange':
      return isUnknown(winch.capacity) ? notKnown('the line that fits', winch.capacity.unknown) : answerOf(asGiven(winch.capacity), `fits below the flange with its freeboard, on ${showValue(asGiven(winch.layersThatFit))} layers; ${showValue(winch.length)} is on it`);
    case 'barrel':
      return isUnknown(winch.outermostLayer) ? undefined : { ...answerOf(asGiven(winch.firstLayerPull), 'on the first layer'), lines: [`the line fills ${showValue(asGiven(winch.outermostLayer))} layers`] };
    case 'width':
      return isUnknown(winch.drum) ? undefined : answerOf(asGiven(winch.drum.wrapsPerLayer), 'wraps on each layer');
    default:
      return undefined;
  }
}
