import { isMarkdownPath, mayHoldRig, rigFences, rigTextOf, type RigFence } from '../../src-core/ide/markdown-fences.ts';
import type { DayNumber } from '../../src-core/model/day.ts';
import type { Edit } from '../../src-core/syntax/chunk.ts';
import { Project } from '../../src-core/project.ts';
import type { FolderFiles, OpenFolder } from './folder-files.ts';
import { addressKey, parentOf, pathIn, readAddress, schemeOf, uriIn, type Address } from './uris.ts';

/** A folder with its files. A document that lies in no open folder has its own, which is the folder that it lies in. */
export class Folder {
  readonly uri: string | undefined;
  readonly address: Address | undefined;
  readonly project = new Project();
  readonly files: FolderFiles | undefined;
  /** Open documents by their path. */
  readonly open = new Map<string, OpenDocument>();
  /** Findings are told for its documents; not for the old side of a comparison. */
  readonly judged: boolean;
  /** Part of the workspace, and not only the home of one document. */
  readonly whole: boolean;
  #day: DayNumber | undefined;
  loading: Promise<void> | undefined;
  listed: Promise<void> | undefined;
  /** It holds more rigs than are read. */
  isCut = false;

  constructor(uri: string | undefined, files: FolderFiles | undefined, { judged, whole }: { judged: boolean; whole: boolean }) {
    this.uri = uri;
    this.address = uri === undefined ? undefined : readAddress(uri);
    this.files = files;
    this.judged = judged;
    this.whole = whole;
  }

  /** Judging goes on on this day: what was worked out for another one is let go. True when the day is another one. */
  turnTo(day: DayNumber): boolean {
    if (this.#day === day) return false;
    const turned = this.#day !== undefined;
    this.#day = day;
    if (turned) this.project.keepOnly(day);
    return turned;
  }

  /** The address of one of its files: as the editor spells it when it is open. */
  uriOf(path: string): string {
    return this.open.get(path)?.uri ?? (this.uri === undefined ? path : uriIn(this.uri, path));
  }
}

export interface OpenDocument {
  readonly uri: string;
  readonly path: string;
  readonly folder: Folder;
  version: number;
  /** The text of a Markdown document, of which only the fences are read. */
  markdown: string | undefined;
  fences: readonly RigFence[] | undefined;
}

/** What a file is read as: a Markdown file is the rig of its fences. */
const rigOf = (path: string, text: string): string => (isMarkdownPath(path) ? rigTextOf(text) : text);

/** Files are read in batches of this many, so that requests are answered between them. */
const batch = 64;

/** Reads files in batches; what cannot be read is passed over. */
async function readEach(files: FolderFiles, paths: readonly string[], take: (path: string, text: string) => void): Promise<void> {
  for (let at = 0; at < paths.length; at += batch) {
    const found = await Promise.all(paths.slice(at, at + batch).map(async (path) => ({ path, text: await files.read(path) })));
    for (const { path, text } of found) if ('text' in text) take(path, text.text);
    await new Promise<void>((done) => void setTimeout(done, 0));
  }
}

/** One text for all spellings of a folder's address. */
function folderKey(uri: string): string {
  const address = readAddress(uri);
  return address === undefined ? uri : addressKey({ ...address, path: address.path.replace(/(?<=.)\/$/, '') });
}

function liesIn(uri: string, other: string): boolean {
  const [inner, outer] = [readAddress(uri), readAddress(other)];
  return uri !== other && inner !== undefined && outer !== undefined && pathIn(outer, inner) !== undefined;
}

/** The open folders and documents, and the files that they use. */
export class Workspace {
  readonly folders: Folder[] = [];
  /** Every folder that the editor named, those in others too. */
  readonly #named = new Map<string, string>();
  readonly #documents = new Map<string, OpenDocument>();
  /** The same by their addresses as the editor spells them, which it nearly always does alike. */
  readonly #spelled = new Map<string, OpenDocument>();
  readonly #openFolder: OpenFolder;
  readonly #reading = new Set<Promise<unknown>>();

  /** Folders of single documents, as long as one of these is open. */
  readonly #homes = new Set<Folder>();

  constructor(openFolder: OpenFolder) {
    this.#openFolder = openFolder;
  }

  addFolder(uri: string): void {
    const key = folderKey(uri);
    if (this.#named.has(key)) return;
    this.#named.set(key, uri);
    this.#settle();
  }

  removeFolder(uri: string): void {
    if (this.#named.delete(folderKey(uri))) this.#settle();
  }

  /** A folder that lies in another one is a part of it: each file is read once, and everything that uses it sees the same text. */
  #settle(): void {
    const named = [...this.#named.values()];
    const outer = named.filter((uri) => !named.some((other) => liesIn(uri, other)));
    const before = [...this.folders];
    this.folders.splice(0, before.length, ...outer.map((uri) => before.find((f) => f.uri === uri) ?? new Folder(uri, this.#openFolder(uri), { judged: true, whole: true })));
    this.#rehome();
  }

  get documents(): Iterable<OpenDocument> {
    return this.#documents.values();
  }

  /** Every folder that holds something: those of the workspace, and those of single documents. */
  get places(): Set<Folder> {
    return new Set([...this.folders, ...[...this.#documents.values()].map((d) => d.folder)]);
  }

  document(uri: string): OpenDocument | undefined {
    const spelled = this.#spelled.get(uri);
    if (spelled !== undefined) return spelled;
    const address = readAddress(uri);
    return address === undefined ? undefined : this.#documents.get(addressKey(address));
  }

  /** The folder and path that an address means, open or not. */
  locate(uri: string): { readonly folder: Folder; readonly path: string } | undefined {
    const open = this.document(uri);
    if (open !== undefined) return open;
    const address = readAddress(uri);
    for (const folder of this.folders) {
      const path = folder.address === undefined || address === undefined ? undefined : pathIn(folder.address, address);
      if (path !== undefined) return { folder, path };
    }
    return undefined;
  }

  openDocument(uri: string, version: number, text: string, isMarkdown = false): OpenDocument | undefined {
    const address = readAddress(uri);
    if (address === undefined) return undefined;
    const home = this.locate(uri) ?? this.#homeOf(uri, address);
    const document: OpenDocument = { uri, path: home.path, folder: home.folder, version, markdown: isMarkdown || isMarkdownPath(home.path) ? text : undefined, fences: undefined };
    const key = addressKey(address);
    this.#spelled.delete(this.#documents.get(key)?.uri ?? uri);
    this.#documents.set(key, document);
    this.#spelled.set(uri, document);
    home.folder.open.set(home.path, document);
    if (!home.folder.whole) this.#homes.add(home.folder);
    this.setText(document, text);
    return document;
  }

  setText(document: OpenDocument, text: string): void {
    if (document.markdown !== undefined) {
      document.markdown = text;
      document.fences = rigFences(text);
    }
    document.folder.project.set(document.path, document.fences === undefined ? text : rigTextOf(text, document.fences));
    this.#tellAround(document);
  }

  /** Homes of single documents that lie around another document: what they use of it is what the editor holds. */
  #around({ uri, folder }: OpenDocument): { readonly folder: Folder; readonly path: string }[] {
    if (this.#homes.size === 0) return [];
    const address = readAddress(uri)!;
    return [...this.#homes].flatMap((home) => {
      const path = home === folder || home.address === undefined ? undefined : pathIn(home.address, address);
      return path === undefined ? [] : [{ folder: home, path }];
    });
  }

  #tellAround(document: OpenDocument): void {
    for (const { folder, path } of this.#around(document)) if (folder.project.file(path) !== undefined || folder.project.retry(path)) folder.project.set(path, document.folder.project.file(document.path)!.text);
  }

  /** The text of a file that is open in another place than this folder. */
  #heldElsewhere(folder: Folder, path: string): string | undefined {
    const document = folder.whole || folder.uri === undefined ? undefined : this.document(uriIn(folder.uri, path));
    return document?.folder.project.file(document.path)?.text;
  }

  /** A document in no folder: its neighbours may be used, nothing above them. */
  #homeOf(uri: string, address: Address): { folder: Folder; path: string } {
    const scheme = schemeOf(address);
    const parent = scheme === 'file' ? parentOf(uri) : undefined;
    if (parent === undefined) return { folder: new Folder(undefined, undefined, { judged: scheme === 'untitled' || scheme === 'file', whole: false }), path: address.path.split('/').at(-1) || 'untitled.rig' };
    for (const home of this.#homes) if (home.uri === parent.folder) return { folder: home, path: parent.name };
    return { folder: new Folder(parent.folder, this.#openFolder(parent.folder), { judged: true, whole: false }), path: parent.name };
  }

  /** Documents move with the folders: what was alone may now lie in a folder, or the other way round. */
  #rehome(): void {
    for (const [key, document] of [...this.#documents]) {
      const text = document.markdown ?? document.folder.project.file(document.path)?.text ?? '';
      this.#leave(document);
      this.#documents.delete(key);
      this.#spelled.delete(document.uri);
      this.openDocument(document.uri, document.version, text, document.markdown !== undefined);
    }
  }

  #leave({ folder, path }: OpenDocument): void {
    folder.open.delete(path);
    if (folder.open.size === 0) this.#homes.delete(folder);
  }

  edit(document: OpenDocument, edit: Edit): void {
    const { markdown } = document;
    if (markdown !== undefined) return this.setText(document, markdown.slice(0, edit.start) + edit.text + markdown.slice(edit.end));
    document.folder.project.edit(document.path, edit);
    this.#tellAround(document);
  }

  /** What the editor no longer holds is what lies in the file again, or nothing. */
  closeDocument(uri: string): Promise<void> {
    const document = this.document(uri);
    if (document === undefined) return Promise.resolve();
    const { folder, path } = document;
    const around = this.#around(document).filter((other) => other.folder.project.file(other.path) !== undefined);
    this.#documents.delete(addressKey(readAddress(uri)!));
    this.#spelled.delete(document.uri);
    this.#leave(document);
    // A Markdown file counts while it is open; nothing in it is looked for otherwise.
    if (folder.files !== undefined && document.markdown === undefined) around.push({ folder, path });
    else folder.project.remove(path);
    return around.length === 0 ? Promise.resolve() : this.#before(Promise.all(around.map((each) => this.#reread(each.folder, each.path))).then(() => undefined));
  }

  /** Reading that later questions wait for: they must not be answered from what was. */
  #before<T>(reading: Promise<T>): Promise<T> {
    const done = (): void => void this.#reading.delete(reading);
    this.#reading.add(reading);
    reading.then(done, done);
    return reading;
  }

  async #reread(folder: Folder, path: string): Promise<void> {
    const found = await folder.files?.read(path);
    if (folder.open.has(path)) return;
    const held = this.#heldElsewhere(folder, path);
    if (held !== undefined) folder.project.set(path, held);
    else if (found !== undefined && 'text' in found) folder.project.set(path, rigOf(path, found.text));
    else folder.project.remove(path);
  }

  /** Resolves when every used file is read, or known not to be there. */
  async ready(folder: Folder): Promise<void> {
    while (this.#reading.size > 0) await Promise.allSettled([...this.#reading]);
    await this.#loaded(folder);
  }

  async #loaded(folder: Folder): Promise<void> {
    while (folder.loading !== undefined || folder.project.wanted().length > 0) {
      folder.loading ??= this.#loadWanted(folder).finally(() => (folder.loading = undefined));
      await folder.loading;
    }
  }

  async #loadWanted(folder: Folder): Promise<void> {
    const { project, files } = folder;
    for (let wanted = project.wanted(); wanted.length > 0; wanted = project.wanted()) {
      const found = await Promise.all(wanted.map(async (path) => ({ path, text: files === undefined ? ({ absent: 'missing' } as const) : await files.read(path) })));
      for (const { path, text } of found) {
        if (folder.open.has(path)) continue;
        const held = this.#heldElsewhere(folder, path);
        if (held !== undefined) project.set(path, held);
        else if ('text' in text) project.set(path, rigOf(path, text.text));
        else project.setAbsent(path, text.absent);
      }
    }
  }

  /** Reads every rig of a workspace folder once, so that a file is seen from all that use it. */
  listAll(folder: Folder): Promise<void> {
    if (!folder.whole || folder.files === undefined) return Promise.resolve();
    folder.listed ??= this.#listAll(folder, folder.files);
    return folder.listed;
  }

  async #listAll(folder: Folder, files: FolderFiles): Promise<void> {
    const { paths, isCut } = await files.list('rigs');
    folder.isCut = isCut;
    const unread = paths.filter((path) => folder.project.file(path) === undefined);
    await readEach(files, unread, (path, text) => {
      if (!folder.open.has(path)) folder.project.set(path, text);
    });
    await this.#loaded(folder);
  }

  /**
   * Does something that concerns everybody who uses a file: with every rig read, and with the Markdown documents that are not open, which
   * count only for as long. `isCut` says that there are more than were read.
   */
  async withAll<T>(folder: Folder, work: (isCut: boolean) => T): Promise<T> {
    await this.listAll(folder);
    const documents = new Map<string, string>();
    let { isCut } = folder;
    if (folder.whole && folder.files !== undefined) {
      const listed = await folder.files.list('documents');
      isCut ||= listed.isCut;
      await readEach(folder.files, listed.paths.filter((path) => !folder.open.has(path)), (path, text) => {
        if (mayHoldRig(text)) documents.set(path, rigTextOf(text));
      });
    }
    const { project } = folder;
    const added = [...documents].filter(([path]) => project.file(path) === undefined);
    for (const [path, text] of added) project.set(path, text);
    try {
      return work(isCut);
    } finally {
      for (const [path] of added) project.remove(path);
    }
  }

  async #isFolder({ files }: Folder, path: string): Promise<boolean> {
    const found = await files?.read(path);
    return found !== undefined && 'absent' in found && found.absent === 'a-folder';
  }

  /** Files that changed under the editor. True when one of them mattered. */
  changed(changes: readonly { readonly uri: string; readonly gone: boolean }[]): Promise<boolean> {
    return this.#before(this.#takeChanges(changes));
  }

  async #takeChanges(changes: readonly { readonly uri: string; readonly gone: boolean }[]): Promise<boolean> {
    let mattered = false;
    for (const { uri, gone } of changes) {
      const found = this.locate(uri);
      if (found === undefined || found.folder.open.has(found.path)) continue;
      const { folder, path } = found;
      if (gone) {
        for (const known of [...folder.project.paths]) if ((known === path || known.startsWith(`${path}/`)) && !folder.open.has(known)) folder.project.remove(known);
        mattered = true;
        continue;
      }
      const known = folder.project.file(path) !== undefined;
      if (folder.project.retry(path)) mattered = true;
      const isRig = path.endsWith('.rig');
      if (!known && !isRig && folder.listed !== undefined && (await this.#isFolder(folder, path))) {
        // It brings what lies in it.
        folder.listed = undefined;
        await this.listAll(folder);
        mattered = true;
        continue;
      }
      if (!known && !(isRig && folder.listed !== undefined) && !folder.project.wanted().includes(path)) continue;
      await this.#reread(folder, path);
      mattered = true;
    }
    for (const folder of this.folders) await this.#loaded(folder);
    return mattered;
  }
}
