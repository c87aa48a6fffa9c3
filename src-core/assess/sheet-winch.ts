import { asGiven, isUnknown, type Value } from '../mechanics/derivation.ts';
import { constantOf } from '../mechanics/drum-table.ts';
import { lineWoundInRun } from '../mechanics/line-wound-in-run.ts';
import type { AssessedWinch } from './assess-winch.ts';
import { statementOf } from './facts.ts';
import { writtenRows } from './sheet-facts.ts';
import type { SheetRows } from './sheet-rows.ts';

const own = new Set(['rated', 'barrel', 'width', 'flange', 'keep', 'carries']);

/** The drum and what it does with the line on it. */
export function winchRows(rows: SheetRows, winch: AssessedWinch): void {
  const at = (head: string) => ({ place: statementOf(winch.block, head)?.place });
  rows.add('rated line pull', winch.ratedPull, { id: 'rated-pull', ...at('rated') });
  rows.add('rated on layer', winch.ratedLayer, { id: 'rated-layer', ...at('rated') });
  rows.add('greatest line pull', winch.greatestPull, { id: 'greatest-pull' });
  rows.add('barrel diameter', winch.barrel, { id: 'barrel', ...at('barrel') });
  rows.add('drum width', winch.width, { id: 'width', ...at('width') });
  rows.add('flange diameter', winch.flange, { id: 'flange', ...at('flange') });
  writtenRows(rows, winch.block, own);
  rows.section('the line on the drum');
  rows.words('line', winch.piece?.name, { id: 'line', ...at('carries') });
  rows.add('line diameter', winch.diameter);
  rows.add('line length', winch.length);
  rows.add('wraps on a full layer', asGiven(isUnknown(winch.drum) ? winch.drum : winch.drum.wrapsPerLayer), { id: 'wraps-per-layer' });
  rows.add('wraps of the whole line', asGiven(isUnknown(winch.drum) ? winch.drum : winch.drum.wrapsOnDrum), { id: 'wraps-on-drum' });
  rows.add('wraps kept', winch.keep, { id: 'keep', ...at('keep') });
  if (winch.keepWritten) rows.add('wraps to keep, at least', winch.keepNeeded, { id: 'keep-needed' });
  rows.add('line in the kept wraps', asGiven(winch.keptLength), { id: 'kept-length' });
  rows.add('line that may be run out', asGiven(winch.usable), { id: 'usable-length' });
  rows.add('layers that fit below the flange', asGiven(winch.layersThatFit), { id: 'layers-that-fit' });
  rows.add('line that fits below the flange', asGiven(winch.capacity), { id: 'capacity' });
  rows.add('outermost layer', asGiven(winch.outermostLayer), { id: 'outermost-layer' });
  rows.add('freeboard above it', asGiven(winch.freeboard), { id: 'freeboard' });
  const out = winch.at(asLength(asGiven(winch.usable)));
  rows.add('layer with all usable line out', asGiven(out.layer), { id: 'layer-at-usable-length' });
  rows.add('pull with all usable line out', asGiven(out.pull), { id: 'pull-at-usable-length' });
  if (isUnknown(winch.drum)) return;
  rows.section('by layer, the first on the barrel', '', 'table');
  for (const row of winch.drum.rows) {
    const group = `layer ${row.layer}${row.partial ? ', partial' : ''}`;
    const of = (id: string) => ({ group, id });
    rows.add('line on it', asGiven(row.lengthOnLayer), of('length'));
    // On the last layer the line ends before the layer does.
    rows.add('line up to it', row.partial && !isUnknown(winch.length) ? winch.length : asGiven(row.lengthThrough), of('length-through'));
    rows.add('line pull', asGiven(row.pull), of('pull'));
    const layer = constantOf(row.layer, 'count');
    if (winch.speedOn === undefined) continue;
    const speed = asGiven(winch.speedOn(layer));
    rows.add('line speed', speed, of('speed'));
    if (winch.runTime !== undefined) rows.add('line in one run', asGiven(lineWoundInRun({ v: speed, τ: winch.runTime })), of('run'));
  }
}

/** Line that may be run out, run out: the same length, asked as a length and no more as a limit. */
const asLength = (value: Value): Value => (isUnknown(value) ? value : { ...value, kind: 'length' });
