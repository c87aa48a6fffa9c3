import { cleanText, runsRightToLeft } from './clean-text.ts';

const quotation = /“[^”]*”|[^“”]+|[“”]/g;
// Isolates are written as references: the characters themselves are what careless readers warn about.
const [isolate, end] = ['&#8296;', '&#8297;'] as const;

// Everything that begins something in Markdown or in the HTML that it lets through, and what renderers turn into links and mentions.
const special = /[\\`*_{}[\]<>#|~!@$^=]|&(?=[a-z#])|:\/\/|\b(?=www\.)/gi;

// A sign before a name or a number calls somebody or something in some places; apart from it, it calls nobody.
const noJoin = '&#8203;';

const escaped = (text: string): string =>
  cleanText(text)
    .replace(special, (c) => (c === '&' ? '&amp;' : c === '<' ? '&lt;' : c === '>' ? '&gt;' : c === '://' ? ':&#47;&#47;' : c === '' ? noJoin : c === '@' || c === '#' ? `\\${c}${noJoin}` : `\\${c}`))
    // A line must not begin like a list, a rule or a heading underline.
    .replace(/^(\s*)([-+])(?=\s|$|-)/, '$1\\$2')
    .replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2');

/** The one way plain text gets into Markdown, a table's cell included. */
export const escapeMarkdown = (text: string): string =>
  runsRightToLeft(text) ? (cleanText(text).match(quotation) ?? []).map((t) => (runsRightToLeft(t) ? isolate + escaped(t) + end : escaped(t))).join('') : escaped(text);

/** A code span. Inside one only the pipe has a meaning, in a table's cell; a backtick gets a longer fence. */
export function codeSpan(text: string): string {
  const clean = cleanText(text).replaceAll('|', '\\|');
  const fence = clean.includes('`') ? '``' : '`';
  return clean.includes('``') ? escapeMarkdown(text) : `${fence}${fence.length > 1 ? ' ' : ''}${clean}${fence.length > 1 ? ' ' : ''}${fence}`;
}
