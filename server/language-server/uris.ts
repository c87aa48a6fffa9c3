/** A document address taken apart. `path` is decoded; two spellings of one address give the same parts. */
export interface Address {
  /** `file://`, `untitled:`, `vscode-vfs://github`: everything before the path. */
  readonly root: string;
  readonly path: string;
}

const shape = /^([A-Za-z][A-Za-z0-9+.-]*):(?:\/\/([^/?#]*))?([^?#]*)(.*)$/s;

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Undefined for what is no address at all. A query stays with the root: `git:` documents differ by nothing else. */
export function readAddress(uri: string): Address | undefined {
  const match = uri.length > 8000 ? null : shape.exec(uri);
  if (match === null) return undefined;
  const [, scheme, authority, path, rest] = match;
  const decoded = decode(path!).replace(/^\/([A-Za-z]):/, (_, drive: string) => `/${drive.toLowerCase()}:`);
  if (scheme!.toLowerCase() === 'file') return { root: `file://${(authority ?? '').toLowerCase() === 'localhost' ? '' : decode(authority ?? '')}${rest!}`, path: decoded.replace(/\/(?:\.?\/)+/g, '/') };
  return { root: `${scheme!.toLowerCase()}:${authority === undefined ? '' : `//${decode(authority)}`}${rest!}`, path: decoded };
}

export const schemeOf = ({ root }: Address): string => root.slice(0, root.indexOf(':'));

/** One text for all spellings of an address. */
export const addressKey = ({ root, path }: Address): string => `${root}\n${path}`;

/** The path of a document from a folder, or undefined when it lies elsewhere. */
export function pathIn(folder: Address, document: Address): string | undefined {
  if (folder.root !== document.root) return undefined;
  const base = folder.path.endsWith('/') ? folder.path : `${folder.path}/`;
  return document.path.startsWith(base) && document.path.length > base.length ? document.path.slice(base.length) : undefined;
}

/** The address of a path in a folder, as text. */
export const uriIn = (folderUri: string, path: string): string => `${folderUri.replace(/\/$/, '')}/${path.split('/').map(encodeURIComponent).join('/')}`;

/** The folder that holds a document, as text, and the document's name in it. */
export function parentOf(uri: string): { readonly folder: string; readonly name: string } | undefined {
  const clean = uri.replace(/[?#].*$/s, '');
  const slash = clean.lastIndexOf('/');
  if (slash < 0 || slash === clean.length - 1) return undefined;
  return { folder: clean.slice(0, slash), name: decode(clean.slice(slash + 1)) };
}
