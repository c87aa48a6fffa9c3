import { isUnknown, restsOnAssumption } from '../mechanics/derivation.ts';
import { cleanText } from './clean-text.ts';
import type { ComparedFile, ComparedRow } from './compared-side.ts';
import { showOnSheet } from './show-row.ts';

/**
 * A file with what each block comes to written under it. No line numbers and no names of files: two versions of it differ
 * only where the text, a value or a finding does, so that a plain difference of lines shows changed loads.
 */
export function textconv({ lines, blocks, loose }: ComparedFile): string {
  const out: string[] = [];
  const told = (code: string, severity: string, message: string): string => `  ! ${severity}[${code}] ${cleanText(message)}`;
  lines.forEach((line, i) => {
    out.push(line);
    for (const block of blocks.filter((b) => b.lines.last === i + 1)) {
      out.push(...block.rows.flatMap(valueLine), ...block.findings.map(({ finding }) => told(finding.code, finding.severity, finding.message)));
    }
  });
  out.push(...loose.map(({ finding }) => told(finding.code, finding.severity, finding.message)));
  return out.join('\n') + '\n';
}

/** What the text itself says is not said again. */
function valueLine({ name, isMark, row: { value } }: ComparedRow): string[] {
  if (value === undefined || isMark) return [];
  if (isUnknown(value)) return [`  = ${cleanText(name)}: not known, ${cleanText(value.unknown.says)}`];
  return value.origin.from === 'derived' ? [`  = ${cleanText(name)}: ${showOnSheet(value)}${restsOnAssumption(value) ? ' *' : ''}`] : [];
}
