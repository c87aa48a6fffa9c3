import { sheetOf } from '../assess/sheet.ts';
import type { SheetSection } from '../assess/sheet-rows.ts';
import type { Cause } from '../mechanics/derivation.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';

/** Checks that wait for one and the same fact. */
export interface WaitingChecks {
  readonly cause: Cause;
  readonly checks: number;
}

export interface CheckCounts {
  readonly made: number;
  readonly failed: number;
  readonly notJudged: readonly WaitingChecks[];
}

/** What one block comes to, ready for paper. */
export interface BlockSheet {
  /** As the file calls it: `winch bow-winch`. */
  readonly title: string;
  readonly block: BoundBlock;
  readonly sections: readonly SheetSection[];
  readonly checks: CheckCounts;
}

export function blockSheet(judged: JudgedBlock): BlockSheet {
  const { block } = judged;
  const waiting = new Map<string, WaitingChecks>();
  for (const { cause } of judged.notJudged) waiting.set(cause.key, { cause, checks: (waiting.get(cause.key)?.checks ?? 0) + 1 });
  return {
    title: block.name === undefined ? block.definition.head : `${block.definition.head} ${block.name}`,
    block,
    sections: sheetOf(judged.assessed),
    checks: { made: judged.made, failed: judged.failed, notJudged: [...waiting.values()] },
  };
}

export const counted = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`;

/** Never says more than what was judged. */
export function sayChecks({ made, failed, notJudged }: CheckCounts): string {
  const waiting = notJudged.reduce((sum, w) => sum + w.checks, 0);
  if (made === 0 && waiting === 0) return 'no checks are made on this block';
  const parts = [`${counted(made, 'check')} made`, `${made - failed} within the limit given by its source`];
  if (failed > 0) parts.push(`${failed} not`);
  return `${parts.join(', ')}${waiting > 0 ? `; ${waiting} not judged` : ''}`;
}
