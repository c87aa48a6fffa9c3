// Controls, halves of surrogate pairs and non-characters: no paper can carry them.
const unprintable = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\uFEFF\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;
// Marks that reorder what follows them. Text that runs from right to left does so by its letters, without them.
const reordering = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/g;

/** The text on one line, without characters that a reader obeys instead of seeing. */
export const cleanText = (text: string): string => text.replace(reordering, '').replace(unprintable, '\uFFFD').replace(/[\t\n\r\u2028\u2029]+/g, ' ');

/** A name of a file on one line, with its line breaks and tabs spelt out. */
export const nameOnOneLine = (path: string): string => path.replace(/[\t\n\r]/g, (c) => `\\x0${c.charCodeAt(0).toString(16)}`);

const rightToLeft = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/** True for text that would turn round the numbers and signs beside it. */
export const runsRightToLeft = (text: string): boolean => rightToLeft.test(text);
