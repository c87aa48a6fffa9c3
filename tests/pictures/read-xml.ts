/** An element as it was read. */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: (Element | string)[];
}

const nameStart = /[A-Za-z_]/;
const entities: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };

function unescaped(text: string): string {
  if (/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/.test(text) || /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/.test(text)) throw new Error('a character that XML cannot carry');
  return text.replace(/&[^;]*;?/g, (e) => {
    const found = entities[e];
    if (found === undefined) throw new Error(`entity ${e}`);
    return found;
  });
}

/** Reads one element the strict way, and nothing else: no comment, no declaration, no processing instruction. */
export function readXml(text: string): Element {
  let at = 0;
  const fail = (says: string): never => {
    throw new Error(`${says} at ${at}: ${text.slice(Math.max(0, at - 20), at + 30)}`);
  };
  const word = (): string => {
    const match = /^[A-Za-z_][\w:.-]*/.exec(text.slice(at, at + 100));
    if (match === null) return fail('no name');
    at += match[0].length;
    return match[0];
  };
  const element = (): Element => {
    if (text[at] !== '<' || !nameStart.test(text[at + 1] ?? '')) fail('no element');
    at++;
    const name = word();
    const attributes = new Map<string, string>();
    while (text[at] === ' ') {
      at++;
      const key = word();
      if (!text.startsWith('="', at)) fail('no value');
      const end = text.indexOf('"', at + 2);
      const value = text.slice(at + 2, end);
      if (end < 0 || value.includes('<')) fail('open value');
      if (attributes.has(key)) fail('attribute twice');
      attributes.set(key, unescaped(value));
      at = end + 1;
    }
    if (text.startsWith('/>', at)) {
      at += 2;
      return { name, attributes, children: [] };
    }
    if (text[at] !== '>') fail('tag not closed');
    at++;
    const children: (Element | string)[] = [];
    for (;;) {
      const next = text.indexOf('<', at);
      if (next < 0) fail(`no end of ${name}`);
      if (next > at) {
        const said = text.slice(at, next);
        if (said.includes(']]>')) fail(']]>');
        children.push(unescaped(said));
      }
      at = next;
      if (text.startsWith(`</${name}>`, at)) {
        at += name.length + 3;
        return { name, attributes, children };
      }
      if (text.startsWith('</', at)) fail(`end in ${name}`);
      children.push(element());
    }
  };
  const root = element();
  if (at !== text.length) fail('something behind the root');
  return root;
}

export function* allElements(element: Element): Generator<Element> {
  yield element;
  for (const child of element.children) if (typeof child !== 'string') yield* allElements(child);
}

export const textOf = (element: Element): string => element.children.map((c) => (typeof c === 'string' ? c : textOf(c))).join('');
