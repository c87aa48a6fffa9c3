import type { AssessedGear } from './assess-gear.ts';
import type { Assessed } from './assessing.ts';
import { chainRows } from './sheet-chain.ts';
import { writtenRows } from './sheet-facts.ts';
import { lineRows, repairRows } from './sheet-line.ts';
import { anchorRows, kitRows, pullRows, vehicleRows } from './sheet-plans.ts';
import { SheetRows, type SheetSection } from './sheet-rows.ts';
import { winchRows } from './sheet-winch.ts';

/** Everything that is known of a block, and everything that is not, each with how it came about. */
export function sheetOf(assessed: Assessed): readonly SheetSection[] {
  const rows = new SheetRows();
  switch (assessed.kind) {
    case 'line':
      lineRows(rows, assessed);
      break;
    case 'winch':
      winchRows(rows, assessed);
      break;
    case 'gear':
      gearRows(rows, assessed);
      break;
    case 'chain':
      chainRows(rows, assessed);
      break;
    case 'repair':
      repairRows(rows, assessed);
      break;
    case 'vehicle':
      vehicleRows(rows, assessed);
      break;
    case 'anchor':
      anchorRows(rows, assessed);
      break;
    case 'pull':
      pullRows(rows, assessed);
      break;
    case 'kit':
      kitRows(rows, assessed);
      break;
    default:
      writtenRows(rows, assessed.block);
  }
  return rows.done();
}

const limitFrom: Record<AssessedGear['limitFrom'], string | undefined> = {
  written: undefined,
  table: 'by the published table for its size',
  'breaking strength': 'by the breaking strength and the design factor',
  none: undefined,
};

function gearRows(rows: SheetRows, gear: AssessedGear): void {
  writtenRows(rows, gear.block, new Set(['wll', 'breaking']));
  rows.add('working load limit', gear.limit, { id: 'limit', says: limitFrom[gear.limitFrom] });
  if (gear.workingLimit !== gear.limit) rows.add('working load limit as loaded', gear.workingLimit, { id: 'working-limit' });
  rows.add('breaking strength', gear.breakingStrength, { id: 'breaking', says: gear.breakingWritten ? undefined : 'by the working load limit and the design factor' });
  if (gear.tableLimit !== undefined && gear.limitFrom !== 'table') rows.add('working load limit in its table', gear.tableLimit, { id: 'table-limit' });
}
