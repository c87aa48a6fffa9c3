import { cleanText, runsRightToLeft } from './clean-text.ts';

const markup: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', '\'': '&#39;' };

/** The one way text gets into HTML, between tags or inside an attribute. */
export const escapeHtml = (text: string): string => cleanText(text).replace(/[&<>"']/g, (c) => markup[c]!);

// A quotation is isolated as a whole, so that the figure behind it stays behind it.
const quotation = /“[^”]*”|[^“”]+|[“”]/g;

/** The same, with what runs from right to left kept to itself. */
export const isolatedHtml = (text: string): string =>
  runsRightToLeft(text) ? (cleanText(text).match(quotation) ?? []).map((t) => (runsRightToLeft(t) ? `<bdi>${escapeHtml(t)}</bdi>` : escapeHtml(t))).join('') : escapeHtml(text);
