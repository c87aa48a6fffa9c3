import type { Finding, Severity } from '../assess/finding.ts';
import { cleanText } from './clean-text.ts';
import type { Locate } from './locate.ts';

type Command = 'error' | 'warning' | 'notice';
const commands: Record<Severity, Command> = { error: 'error', warning: 'warning', information: 'notice', hint: 'notice' };

/** A step shows no more than so many of each kind: the rest would be dropped without a word. */
const mostOfAKind = 10;

export const data = (text: string): string => text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');

export interface Annotation {
  readonly command: Command;
  readonly line: string;
}

/** A workflow command that shows one finding beside the lines of a change. */
export function githubAnnotation(finding: Finding, locate: Locate): Annotation {
  const command = commands[finding.severity];
  const at = locate(finding.place);
  const where = at === undefined ? '' : `file=${property(at.file)},line=${at.line},endLine=${at.endLine},${at.line === at.endLine ? `col=${at.column},endColumn=${at.endColumn},` : ''}`;
  const help = finding.help === '' ? '' : `\nhelp: ${cleanText(finding.help)}`;
  return { command, line: `::${command} ${where}title=${property(finding.code)}::${data(cleanText(finding.message) + help)}` };
}

/** Collects annotations, no more of each kind than are shown, and counts the rest. */
export class Annotations {
  readonly #kinds: Readonly<Record<Command, { all: number; readonly lines: string[] }>> = { error: { all: 0, lines: [] }, warning: { all: 0, lines: [] }, notice: { all: 0, lines: [] } };

  add({ command, line }: Annotation): void {
    const kind = this.#kinds[command];
    if (kind.all++ < mostOfAKind) kind.lines.push(line);
  }

  /** Worst first. */
  lines(): string[] {
    return (['error', 'warning', 'notice'] as const).flatMap((command) => {
      const { all, lines } = this.#kinds[command];
      if (all <= mostOfAKind) return lines;
      return [...lines.slice(0, mostOfAKind - 1), `::${command} title=linewright::and ${all - mostOfAKind + 1} more of this kind: linewright check shows all`];
    });
  }
}

/** Workflow commands that show findings beside the lines of a change, worst first in each kind. */
export function githubAnnotations(found: readonly { readonly finding: Finding; readonly locate: Locate }[]): string[] {
  const annotations = new Annotations();
  for (const { finding, locate } of found) annotations.add(githubAnnotation(finding, locate));
  return annotations.lines();
}
