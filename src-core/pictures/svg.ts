/** Elements that a picture may hold: none of them runs anything or fetches anything. */
type ElementName = 'svg' | 'title' | 'desc' | 'style' | 'defs' | 'pattern' | 'g' | 'rect' | 'line' | 'path' | 'circle' | 'text' | 'tspan';

/** Attributes that a picture may carry: no event, no address, no style that a strict page would refuse. */
type AttributeName =
  | 'id' | 'class' | 'role' | 'lang' | 'aria-labelledby' | 'aria-hidden' | 'xmlns' | 'viewBox' | 'width' | 'height' | 'x' | 'y' | 'dx' | 'dy' | 'x1' | 'y1' | 'x2' | 'y2' | 'cx' | 'cy' | 'r' | 'rx' | 'd'
  | 'fill' | 'text-anchor' | 'patternUnits' | 'patternTransform' | 'transform';

export type Attributes = Readonly<Partial<Record<AttributeName, string | number>>>;

/** A part of a picture that is not yet text. Strings among the children are text and get escaped. */
export interface Part {
  readonly name: ElementName;
  readonly attributes: Attributes;
  readonly children: readonly (Part | string)[];
}

export const part = (name: ElementName, attributes: Attributes, ...children: readonly (Part | string)[]): Part => ({ name, attributes, children });

/** A coordinate: a tenth of a unit is finer than any screen shows here, and fewer digits make a smaller file. */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate of a picture is ${value}`);
  const text = value.toFixed(1).replace(/\.0$/, '');
  return text === '-0' ? '0' : text;
}

// Characters that XML 1.0 cannot carry at all, halves of surrogate pairs included, and controls that no text needs.
const unprintable = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;
// Embeddings and overrides reorder whatever follows them; an isolate, which `own` sets, does not.
const reordering = /[\u061C\u200E\u200F\u202A-\u202E]/g;
const markup: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** The one way text gets into a picture, between tags or inside an attribute. */
export const escaped = (text: string): string =>
  text.replace(reordering, '').replace(unprintable, '\uFFFD').replace(/[\t\n\r\u2028\u2029]+/g, ' ').replace(/[&<>"']/g, (c) => markup[c]!);

const rightToLeft = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;
const anyBidi = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/g;

/** Words that the user wrote: they cannot turn round what stands beside them, whichever way they are read. */
export function own(text: string): string {
  const clean = text.replace(anyBidi, '').replace(unprintable, '\uFFFD').replace(/\s+/g, ' ').trim();
  return rightToLeft.test(clean) ? `\u2068${clean}\u2069` : clean;
}

/** A sentence of ours that holds the user's names between backticks. */
export const ownInside = (says: string): string => says.replace(/`([^`]*)`/g, (_, name: string) => `\`${own(name)}\``).replace(unprintable, '\uFFFD');

/** Stands in identities for what makes them those of one picture. */
export const stemPlace = 'lw-@';

export function render(node: Part, stem: string = stemPlace): string {
  let out = `<${node.name}`;
  for (const [name, value] of Object.entries(node.attributes)) out += ` ${name}="${typeof value === 'number' ? coordinate(value) : escaped(value.replaceAll(stemPlace, stem))}"`;
  if (node.children.length === 0) return out + '/>';
  out += '>';
  for (const child of node.children) out += typeof child === 'string' ? (node.name === 'style' ? child : escaped(child)) : render(child, stem);
  return `${out}</${node.name}>`;
}
