import type { CancellationToken, Connection, InitializeParams } from 'vscode-languageserver';
import { AssessedBlocks } from '../../src-core/assess/assessed-blocks.ts';
import type { LineIndex } from '../../src-core/base/line-index.ts';
import { fenceAt, type RigFence } from '../../src-core/ide/markdown-fences.ts';
import type { RigFile } from '../../src-core/project.ts';
import type { DayNumber } from '../../src-core/model/day.ts';
import { prepareParser } from '../../src-core/syntax/parser.ts';
import { readSkills, typedFormatting, type ClientSkills } from './capabilities.ts';
import { rest } from './breath.ts';
import { clientFiles } from './client-files.ts';
import { Diagnostics } from './diagnostics.ts';
import { foldChanges, type TextChange } from './fold-changes.ts';
import type { OpenFolder } from './folder-files.ts';
import { recordsIn } from './params.ts';
import { isPosition, isRange, Positions } from './positions.ts';
import { Settings } from './settings.ts';
import { Workspace, type Folder, type OpenDocument } from './workspace.ts';

/** An open or used file that a request speaks of, on the day it is judged. */
export interface Subject {
  readonly uri: string;
  readonly folder: Folder;
  readonly path: string;
  readonly file: RigFile;
  readonly day: DayNumber;
  /** The parts that are a rig, when the file is a Markdown document. */
  readonly fences: readonly RigFence[] | undefined;
}

interface TextParams {
  readonly textDocument?: { readonly uri?: unknown; readonly version?: unknown; readonly text?: unknown; readonly languageId?: unknown };
  readonly position?: unknown;
  readonly contentChanges?: unknown;
}

/** The line that somebody types on: all changes stay inside it. */
function typedLine(changes: readonly unknown[]): number | undefined {
  let line: number | undefined;
  for (const change of changes as { range?: unknown; text?: unknown }[]) {
    const range = change?.range;
    if (!isRange(range) || range.start.line !== range.end.line || typeof change.text !== 'string' || /[\r\n]/.test(change.text)) return undefined;
    if (line !== undefined && line !== range.start.line) return undefined;
    line = range.start.line;
  }
  return line;
}

/** Lines of a Markdown document, whose prose the rig has blank: columns count the letters that are really there. */
const linesOver = (lines: LineIndex, markdown: string | undefined): LineIndex =>
  markdown === undefined
    ? lines
    : {
        text: markdown,
        lineCount: lines.lineCount,
        lineColumn: (offset) => lines.lineColumn(offset),
        offset: (line, column) => lines.offset(line, column),
        lineStart: (line) => lines.lineStart(line),
        lineEnd: (line) => lines.lineEnd(line),
      };

/** Everything that is kept between messages. Answers are made in the files beside this one. */
export class LanguageServer {
  readonly connection: Connection;
  readonly skills: ClientSkills;
  readonly positions: Positions;
  readonly workspace: Workspace;
  readonly settings: Settings;
  readonly diagnostics: Diagnostics;

  constructor(connection: Connection, params: InitializeParams, diskFolder: OpenFolder | undefined) {
    this.connection = connection;
    this.skills = readSkills(params);
    this.positions = new Positions(this.skills.encoding);
    const ask = <T>(method: string, given: unknown): Promise<T> => connection.sendRequest(method, given);
    // The disk is nearer; what is on no disk comes through the client, where the client can read it.
    this.workspace = new Workspace((uri) => diskFolder?.(uri) ?? (this.skills.own ? clientFiles(uri, ask) : undefined));
    this.settings = new Settings(this.skills.configuration ? ask : undefined, (text) => connection.console.warn(text));
    this.diagnostics = new Diagnostics(connection, this.workspace, this.settings, this.positions, this.skills);
    const folders = params.workspaceFolders?.map((f) => f.uri) ?? (typeof params.rootUri === 'string' ? [params.rootUri] : []);
    for (const uri of folders) if (typeof uri === 'string') this.workspace.addFolder(uri);
  }

  /** Watches are asked for when the client has said that it is ready. While it reads that, what the first document needs is made. */
  register(): void {
    setTimeout(prepareParser, 0);
    const registrations: { id: string; method: string; registerOptions: object }[] = [
      ...(this.skills.registersWatchers ? [{ id: 'linewright-files', method: 'workspace/didChangeWatchedFiles', registerOptions: { watchers: [{ globPattern: '**/*.rig' }] } }] : []),
      ...(this.skills.registersConfiguration ? [{ id: 'linewright-settings', method: 'workspace/didChangeConfiguration', registerOptions: { section: 'linewright' } }] : []),
    ];
    if (this.skills.registersFormatting) {
      const documentSelector = [{ language: 'rig' }];
      registrations.push(
        { id: 'linewright-format', method: 'textDocument/formatting', registerOptions: { documentSelector } },
        { id: 'linewright-format-range', method: 'textDocument/rangeFormatting', registerOptions: { documentSelector } },
        { id: 'linewright-format-typed', method: 'textDocument/onTypeFormatting', registerOptions: { documentSelector, ...typedFormatting } },
      );
    }
    if (registrations.length > 0) void this.connection.sendRequest('client/registerCapability', { registrations }).catch(() => undefined);
  }

  opened({ textDocument }: TextParams): void {
    const { uri, version, text, languageId } = textDocument ?? {};
    if (typeof uri !== 'string' || typeof text !== 'string') return;
    const document = this.workspace.openDocument(uri, typeof version === 'number' ? version : 0, text, languageId === 'markdown');
    // A document without a rig in it costs nothing.
    if (document === undefined || document.fences?.length === 0) return;
    this.diagnostics.edited();
    void this.#listLater(document.folder);
  }

  /** Folders of which the rest is read soon. */
  readonly #listing = new WeakSet<Folder>();

  /** The rest of the workspace is read when the first document has been answered for. */
  async #listLater(folder: Folder): Promise<void> {
    if (!folder.whole || folder.listed !== undefined || this.#listing.has(folder)) return;
    this.#listing.add(folder);
    await this.diagnosticsOfOpen(folder);
    if (folder.listed !== undefined) return;
    const roots = (): string => JSON.stringify([...folder.open.keys()].map((path) => folder.project.rootsOf(path)));
    const before = roots();
    await this.workspace.listAll(folder);
    if (roots() !== before) this.diagnostics.changed();
  }

  async diagnosticsOfOpen(folder: Folder): Promise<void> {
    for (const path of [...folder.open.keys()]) await this.diagnostics.of(folder, path, true);
    await rest();
  }

  edited({ textDocument, contentChanges }: TextParams): void {
    const document = typeof textDocument?.uri === 'string' ? this.workspace.document(textDocument.uri) : undefined;
    if (document === undefined || !Array.isArray(contentChanges)) return;
    // Where a change belongs is not guessed: the text stays what it was, and is not the editor's any more.
    if (recordsIn(contentChanges).some(({ range }) => range !== undefined && !isRange(range))) {
      this.connection.console.error(`textDocument/didChange: a range in ${document.uri} is none; the change is not taken`);
      return;
    }
    const typing = typedLine(contentChanges);
    this.#change(document, contentChanges);
    if (typeof textDocument?.version === 'number') document.version = textDocument.version;
    this.diagnostics.edited(typing === undefined ? undefined : { uri: document.uri, line: typing });
  }

  #change(document: OpenDocument, changes: readonly { readonly range?: unknown; readonly text?: unknown }[]): void {
    const known = document.folder.project.file(document.path);
    const isFoldable = known !== undefined && document.markdown === undefined && this.positions.encoding === 'utf-16' && changes.every((change): change is TextChange => isRange(change?.range) && typeof change.text === 'string');
    const edits = isFoldable ? foldChanges(known, changes) : undefined;
    if (edits !== undefined) return edits.forEach((edit) => this.workspace.edit(document, edit));
    for (const change of changes) {
      const { range, text } = change ?? {};
      if (typeof text !== 'string') continue;
      const file = document.folder.project.file(document.path);
      if (file === undefined || !isRange(range)) this.workspace.setText(document, text);
      else this.workspace.edit(document, { ...this.positions.span(linesOver(file.lines, document.markdown), range), text });
    }
  }

  async closed({ textDocument }: TextParams): Promise<void> {
    if (typeof textDocument?.uri !== 'string') return;
    await this.workspace.closeDocument(textDocument.uri);
    this.diagnostics.closed(textDocument.uri);
  }

  async filesChanged(params: { readonly changes?: unknown }): Promise<void> {
    if (!Array.isArray(params?.changes)) return;
    const changes = (params.changes as { uri?: unknown; type?: unknown }[]).flatMap((c) => (typeof c?.uri === 'string' ? [{ uri: c.uri, gone: c.type === 3 }] : []));
    if (await this.workspace.changed(changes)) {
      this.diagnostics.changed();
      this.#refreshHints();
    }
  }

  settingsChanged(params: { readonly settings?: unknown }): void {
    this.settings.changed(params?.settings);
    this.diagnostics.changed();
    this.#refreshHints();
  }

  foldersChanged(params: { readonly event?: { readonly added?: unknown; readonly removed?: unknown } }): void {
    for (const { uri } of recordsIn(params?.event?.removed)) if (typeof uri === 'string') this.workspace.removeFolder(uri);
    for (const { uri } of recordsIn(params?.event?.added)) if (typeof uri === 'string') this.workspace.addFolder(uri);
    this.diagnostics.changed();
  }

  /** Shows a sentence to the person at the editor. */
  warn(message: string): void {
    void this.connection.sendNotification('window/showMessage', { type: 2, message });
  }

  #refreshHints(): void {
    if (this.skills.refreshesHints) void this.connection.sendRequest('workspace/inlayHint/refresh').catch(() => undefined);
    if (this.skills.refreshesLenses) void this.connection.sendRequest('workspace/codeLens/refresh').catch(() => undefined);
  }

  /** The file that a request speaks of, when it is known and all it uses is read. */
  async subject(params: TextParams, token?: CancellationToken): Promise<Subject | undefined> {
    const uri = params?.textDocument?.uri;
    const found = typeof uri === 'string' ? this.workspace.locate(uri) : undefined;
    if (found === undefined) return undefined;
    await this.workspace.ready(found.folder);
    const day = await this.settings.day(found.folder.uri);
    // Between two answers nobody looks at what was worked out for the last one.
    AssessedBlocks.tidy();
    // Midnight has passed: what other files were told is of yesterday.
    if (found.folder.turnTo(day)) this.diagnostics.changed();
    const file = found.folder.project.file(found.path);
    if (file === undefined || token?.isCancellationRequested === true) return undefined;
    return { uri: uri as string, folder: found.folder, path: found.path, file, day, fences: found.folder.open.get(found.path)?.fences };
  }

  /** The subject with an offset in it; undefined for a position that the file does not have. */
  async point(params: TextParams, token?: CancellationToken): Promise<(Subject & { readonly offset: number }) | undefined> {
    const subject = await this.subject(params, token);
    if (subject === undefined || !isPosition(params.position) || params.position.line >= subject.file.lines.lineCount) return undefined;
    const offset = this.positions.offset(subject.file.lines, params.position);
    if (subject.fences !== undefined && fenceAt(subject.fences, offset) === undefined) return undefined;
    return { ...subject, offset };
  }
}
