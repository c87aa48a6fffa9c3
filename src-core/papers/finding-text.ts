import type { Finding } from '../assess/finding.ts';
import { nameOnOneLine } from './clean-text.ts';
import type { Locate } from './locate.ts';
import { wrapIndented } from './wrap-text.ts';

/** A finding as lines of text: the first stands alone, the others say why, what helps, and on whose word. */
export function findingText(finding: Finding, locate: Locate, width = 100, strong: (text: string) => string = (text) => text): string[] {
  const at = locate(finding.place);
  const where = at === undefined ? '' : `${nameOnOneLine(at.file)}:${at.line}:${at.column} `;
  const lines = [strong(`${where}${finding.severity}[${finding.code}]`) + ` ${finding.message}`];
  const more = (head: string, text: string | undefined): void => {
    if (text !== undefined && text !== '') lines.push(...wrapIndented(text, width, `    ${head}: `, ' '.repeat(6)));
  };
  more('why', finding.why);
  more('help', finding.help);
  more('source', finding.source);
  for (const { place, message } of finding.related) {
    const spot = locate(place);
    if (spot !== undefined) lines.push(`    see ${nameOnOneLine(spot.file)}:${spot.line}:${spot.column} ${message}`);
  }
  return lines;
}
