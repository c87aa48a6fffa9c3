import { cleanText, nameOnOneLine } from './clean-text.ts';
import type { BlockChange, ChangedLine, ChangedValue, ComparedFinding, Comparison, LostEntry, SideValue } from './compare.ts';
import { counted } from './block-sheet.ts';
import { codeSpan, escapeMarkdown } from './escape-markdown.ts';
import { wrapIndented } from './wrap-text.ts';

/** So many values of one block are shown to people; all of them are in the JSON. */
const mostValues = 24;
const mostLines = 60;

export const shownSide = (side: SideValue | undefined): string => (side === undefined ? 'none' : side.cause === undefined ? `${side.display}${side.assumed ? ' *' : ''}` : `${side.display} (${side.cause})`);

/** How much changed, in one sentence. */
export function saysChanged({ blocks }: Comparison): string {
  const count = (change: ComparedFinding['change']): number => blocks.reduce((n, b) => n + b.findings.filter((f) => f.change === change).length, 0);
  const values = blocks.reduce((n, b) => n + valuesShown(b).length, 0);
  const aside = count('aside');
  const lost = blocks.reduce((n, b) => n + b.lostEntries.length, 0);
  if (blocks.length === 0) return 'Nothing changed.';
  return `${counted(values, 'value')} changed in ${counted(blocks.length, 'block')}; ${counted(count('new'), 'finding')} new, ${count('gone')} gone, ${count('changed')} changed${aside === 0 ? '' : `, ${aside} set aside in writing`}.${lost === 0 ? '' : ` ${lost === 1 ? '1 logbook entry is' : `${lost} logbook entries are`} no longer there as written.`}`;
}

const anyAssumed = ({ blocks }: Comparison): boolean => blocks.some((b) => b.values.some((v) => v.old?.assumed === true || v.new?.assumed === true));
const titleOf = ({ block, change }: BlockChange): string => `${block ?? 'outside of every block'}${change === 'changed' ? '' : `, ${change}`}`;
const lineText = ({ side, text }: ChangedLine): string => `${side === 'old' ? '-' : '+'} ${text}`.trimEnd();

/** Lines that did it; of those that were there before only where nothing came in their place. */
function reasons(because: readonly ChangedLine[]): string {
  const came = because.filter((l) => l.side === 'new');
  return (came.length > 0 ? came : because).map((l) => `${l.file}:${l.line}${l.side === 'old' ? ' (before)' : ''}`).join(', ');
}

const changeWord = ({ change }: ComparedFinding): string => (change === 'aside' ? 'set aside' : change);
const lostText = ({ text, now, file, line }: LostEntry): string => `the logbook no longer says \`${text}\`${now === undefined ? '' : `, but \`${now}\``} (${file}:${line} before)`;

const valuesShown = (block: BlockChange): readonly ChangedValue[] => block.values.filter((v) => v.detail !== true);

export function compareText(comparison: Comparison, { width = 96, strong = (t: string) => t } = {}): string {
  const lines = [strong(`${nameOnOneLine(comparison.old)} and ${nameOnOneLine(comparison.new)}, both judged as of ${comparison.day}`), ''];
  for (const block of comparison.blocks) {
    lines.push(strong(`${titleOf(block)} (${nameOnOneLine(block.file)})`));
    lines.push(...block.lines.slice(0, mostLines).map((l) => `  ${cleanText(lineText(l))}`), ...more(block.lines.length - mostLines, 'line'));
    for (const entry of block.lostEntries) lines.push(...wrapIndented(cleanText(lostText(entry)), width, '  ', '      '));
    const values = valuesShown(block);
    for (const value of values.slice(0, mostValues)) lines.push(...valueLines(value, width));
    lines.push(...more(values.length - mostValues, 'value'));
    for (const f of block.findings) {
      lines.push(...wrapIndented(cleanText(`${changeWord(f)} ${f.severity}[${f.code}] ${f.message}`), width, '  ', '      '));
      if (f.reason !== undefined) lines.push(...wrapIndented(cleanText(`because: ${f.reason}`), width, '      ', '        '));
      if (f.before !== undefined) lines.push(...wrapIndented(cleanText(`before: ${f.before}`), width, '      ', '        '));
    }
    lines.push('');
  }
  lines.push(saysChanged(comparison), ...(anyAssumed(comparison) ? ['* rests on a value that nobody wrote.'] : []), '');
  return lines.join('\n');
}

const more = (n: number, what: string): string[] => (n <= 0 ? [] : [`  and ${counted(n, `more ${what}`)}`]);

function valueLines(value: ChangedValue, width: number): string[] {
  const by = value.because.length === 0 ? '' : ` [${reasons(value.because)}]`;
  return wrapIndented(cleanText(`${value.name}: ${shownSide(value.old)} -> ${shownSide(value.new)}${by}`), width, '    ', '        ');
}

/** For a pull request. */
export function compareMarkdown(comparison: Comparison): string {
  const parts = [`### ${escapeMarkdown(comparison.old)} and ${escapeMarkdown(comparison.new)}`, `${escapeMarkdown(saysChanged(comparison))} Both judged as of ${comparison.day}.`];
  for (const block of comparison.blocks) {
    parts.push(`#### ${codeSpan(block.block ?? 'outside of every block')}${block.change === 'changed' ? '' : `, ${block.change}`} in ${escapeMarkdown(block.file)}`);
    const lost = block.lostEntries.map((entry) => `- **${names(lostText(entry))}**`);
    if (block.findings.length + lost.length > 0) parts.push([...lost, ...block.findings.map((f) => `- **${changeWord(f)} ${f.severity}** ${codeSpan(f.code)}: ${names(f.message)}${f.reason === undefined ? '' : ` (because: ${escapeMarkdown(f.reason)})`}${f.before === undefined ? '' : ` (before: ${names(f.before)})`}`)].join('\n'));
    const values = valuesShown(block);
    if (values.length > 0) {
      const rows = values.slice(0, mostValues).map((v) => `| ${names(v.name)} | ${names(shownSide(v.old))} | ${names(shownSide(v.new))} | ${escapeMarkdown(reasons(v.because))} |`);
      parts.push(['| value | before | after | line |', '| --- | --- | --- | --- |', ...rows].join('\n'), ...(values.length > mostValues ? [`And ${counted(values.length - mostValues, 'more value')}.`] : []));
    }
    if (block.lines.length > 0) parts.push(fenced(block.lines));
  }
  if (anyAssumed(comparison)) parts.push('\\* rests on a value that nobody wrote.');
  return parts.join('\n\n') + '\n';
}

const names = (text: string): string => text.split(/`([^`]+)`/).map((t, i) => (i % 2 === 1 ? codeSpan(t) : escapeMarkdown(t))).join('');

/** Lines as they are, in a fence that none of them can close. */
function fenced(changed: readonly ChangedLine[]): string {
  const lines = changed.slice(0, mostLines).map((l) => cleanText(lineText(l)));
  if (changed.length > mostLines) lines.push(`# and ${counted(changed.length - mostLines, 'more line')}`);
  const longest = Math.max(2, ...lines.flatMap((l) => [...l.matchAll(/`+/g)].map((m) => m[0].length)));
  const fence = '`'.repeat(longest + 1);
  return `${fence}diff\n${lines.join('\n')}\n${fence}`;
}
