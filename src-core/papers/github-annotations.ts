import type { Finding, Severity } from '../assess/finding.ts';
import { cleanText } from './clean-text.ts';
import type { Locate } from './locate.ts';

type Command = 'error' | 'warning' | 'notice';
const commands: Record<Severity, Command> = { error: 'error', warning: 'warning', information: 'notice', hint: 'notice' };

/** A step shows no more than so many of each kind: the rest would be dropped without a word. */
const mostOfAKind = 10;

const data = (text: string): string => text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');

/** Workflow commands that show findings beside the lines of a change, worst first in each kind. */
export function githubAnnotations(found: readonly { readonly finding: Finding; readonly locate: Locate }[]): string[] {
  const lines: string[] = [];
  for (const command of ['error', 'warning', 'notice'] as const) {
    const all = found.filter(({ finding }) => commands[finding.severity] === command);
    const shown = all.length > mostOfAKind ? mostOfAKind - 1 : all.length;
    for (const { finding, locate } of all.slice(0, shown)) {
      const at = locate(finding.place);
      const where = at === undefined ? '' : `file=${property(cleanText(at.file))},line=${at.line},endLine=${at.endLine},${at.line === at.endLine ? `col=${at.column},endColumn=${at.endColumn},` : ''}`;
      const help = finding.help === '' ? '' : `\nhelp: ${cleanText(finding.help)}`;
      lines.push(`::${command} ${where}title=${property(finding.code)}::${data(cleanText(finding.message) + help)}`);
    }
    if (shown < all.length) lines.push(`::${command} title=linewright::and ${all.length - shown} more of this kind: linewright check shows all`);
  }
  return lines;
}
