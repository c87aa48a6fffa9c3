/**
 * Characters that a terminal obeys instead of showing, and those that turn the order of text around: a rig file, its
 * name or an argument may hold any of them, and must not write over what we say.
 */
const obeyed = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;

const code = (character: string): string => character.charCodeAt(0).toString(16);

/** The text with such characters spelt out: `\x1b`. Our own bold is let through where it was asked for. */
export function plainText(text: string, styled = false): string {
  if (!styled) return text.replace(obeyed, (c) => `\\x${code(c).padStart(2, '0')}`);
  return text.split(/(\u001b\[1m|\u001b\[22m)/).map((part, i) => (i % 2 === 1 ? part : plainText(part))).join('');
}

/** JSON with a line break at its end; such characters stand as escapes, which mean the same. */
export const plainJson = (value: unknown): string => JSON.stringify(value, undefined, 2).replace(obeyed, (c) => `\\u${code(c).padStart(4, '0')}`) + '\n';
