import type { CancellationToken, Connection, Diagnostic, DocumentDiagnosticReport, WorkspaceDiagnosticReport, WorkspaceDocumentDiagnosticReport } from 'vscode-languageserver';
import type { DayNumber } from '../../src-core/model/day.ts';
import type { MostAtWork, RigFile } from '../../src-core/project.ts';
import type { ClientSkills } from './capabilities.ts';
import type { Positions } from './positions.ts';
import type { Settings } from './settings.ts';
import { Breath, rest } from './breath.ts';
import { toDiagnostic } from './to-diagnostic.ts';
import type { Folder, Workspace } from './workspace.ts';

/** After a judgement that took long, the next one waits this many times as long, so that typing stays ahead. */
const restAfterWork = 2;
const longestRest_ms = 300;
/** A line that is being typed is not spoken of before the typing has rested this long. */
const typingRest_ms = 700;

/**
 * So many blocks that nobody has judged yet are judged before anything is told of their files: more than a person has on the screen. Of what is
 * more than that, the text is answered for at once; what its blocks come to is told when they are judged.
 */
const firstBlocks = 64;
/** So many of the others are judged at a time: no longer than somebody waits for an answer without seeing it. */
const blocksAtOnce = 16;
/**
 * What so many chunks came to is kept at hand, at some 4 kB for each: of files that somebody works on some hundreds, of others a few dozen, since what
 * goes soon costs nearly nothing. Of all the rest only what was found, and nothing of what waits to be judged.
 */
const mostAtWork: MostAtWork = { begun: 1024, told: 256, edited: 2048, latest: 16 };
/** Files that are opened within this time come together. */
const together_ms = 100;

const nothing: WorkspaceDiagnosticReport = { items: [] };

interface Told {
  readonly resultId: string;
  readonly text: string;
}

/** The same finding, though its numbers and columns change with every key. */
const keyOf = (d: Diagnostic): string => `${String(d.code)} ${d.range.start.line}`;

/** Tells findings: as answers to a client that asks for them, on its own to one that does not; never both. */
export class Diagnostics {
  readonly #connection: Connection;
  readonly #workspace: Workspace;
  readonly #settings: Settings;
  readonly #positions: Positions;
  readonly #skills: ClientSkills;
  readonly #told = new Map<string, Told>();
  readonly #published = new Map<string, string>();
  /** What each document was last said to lack. */
  readonly #known = new Map<string, ReadonlySet<string>>();
  readonly #waiting = new Set<() => void>();
  #lastId = 0;
  #changes = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** The line that somebody types on. */
  #typing: { readonly uri: string; readonly line: number } | undefined;
  #rest: ReturnType<typeof setTimeout> | undefined;
  /** Documents whose last answer left something out because of the typing. */
  readonly #heldBack = new Set<string>();
  #lastWork_ms = 0;
  /** Roots of which only the text was answered for. */
  readonly #owed = new Map<Folder, Set<string>>();
  #paying: Promise<void> | undefined;
  /** Blocks judged for the files that came last, and when. */
  #judgedFirst = 0;
  #judgedAt = 0;
  #publishing: Promise<void> = Promise.resolve();
  /** Files that were answered for to the end: from then on they always are, whatever day or root they are judged in. */
  readonly #whole = new Set<string>();
  #stopped = false;

  constructor(connection: Connection, workspace: Workspace, settings: Settings, positions: Positions, skills: ClientSkills) {
    this.#connection = connection;
    this.#workspace = workspace;
    this.#settings = settings;
    this.#positions = positions;
    this.#skills = skills;
  }

  /** Findings of one file, those of every root that takes it in. With `soon`, at first only those of the text when its blocks take long; who asks is told when there is more. */
  async of(folder: Folder, path: string, soon = false): Promise<Diagnostic[]> {
    const { project } = folder;
    const day = await this.#today(folder);
    if (!folder.judged) return [];
    const uri = folder.uriOf(path);
    const owes = soon && !this.#whole.has(uri) && this.#owes(folder, path, day);
    if (soon && !owes) this.#whole.add(uri);
    if (!owes && project.rootsOf(path).length > 1) {
      await this.#judgeAll(folder, project.rootsOf(path), day);
      await this.#workspace.ready(folder);
    }
    const file = project.file(path);
    if (file === undefined) return [];
    const needs = {
      file,
      *others(): Generator<RigFile> {
        for (const root of project.rootsOf(path)) for (const other of project.filesOf(root)) yield project.file(other)!;
      },
      positions: this.#positions,
      skills: this.#skills,
      uriOf: (p: string) => folder.uriOf(p),
    };
    const findings = owes ? project.foundSoFar(path, day) : project.findings(path, day);
    const diagnostics = findings.flatMap((finding) => toDiagnostic(finding, needs) ?? []);
    project.rest(mostAtWork);
    return diagnostics;
  }

  /** The day on which a folder is judged, with all that its files use read. */
  async #today(folder: Folder): Promise<DayNumber> {
    await this.#workspace.ready(folder);
    const day = await this.#settings.day(folder.uri);
    if (folder.turnTo(day)) this.changed();
    return day;
  }

  /** Judges those roots that nobody has judged yet: a file may be used by thousands, which are not held all at once. */
  async #judgeAll(folder: Folder, roots: readonly string[], day: DayNumber): Promise<void> {
    const breath = new Breath();
    for (const root of roots) if (folder.project.firstWork(root, day) > 0) await this.#judgeInSteps(folder, root, breath);
  }

  /** Whether the findings of a file are told in two answers: what its roots come to is judged later, then. */
  #owes(folder: Folder, path: string, day: DayNumber): boolean {
    const { project } = folder;
    if (this.#skills.pullsDiagnostics && !this.#skills.refreshesDiagnostics) return false;
    // Not `performance`, which Node loads for the first who asks.
    const now = Date.now();
    const before = now - this.#judgedAt > together_ms && this.#paying === undefined ? 0 : this.#judgedFirst;
    let blocks = before;
    const roots = project.rootsOf(path);
    for (const root of roots) if (blocks <= firstBlocks) blocks += project.firstWork(root, day);
    if (blocks === before) return false;
    this.#judgedAt = now;
    this.#judgedFirst = before;
    if (blocks <= firstBlocks) {
      this.#judgedFirst = blocks;
      return false;
    }
    const owed = this.#owed.get(folder) ?? new Set<string>();
    this.#owed.set(folder, owed);
    for (const root of roots) owed.add(root);
    this.#paying ??= this.#pay();
    return true;
  }

  /** Judges what was left, and has it told. */
  async #pay(): Promise<void> {
    await rest();
    const breath = new Breath();
    for (const [folder, roots] of this.#owed) {
      for (const root of roots) {
        await this.#judgeInSteps(folder, root, breath);
        roots.delete(root);
        await breath.taken();
      }
      this.#owed.delete(folder);
    }
    // In one step with the last look at what is owed: who owes from now on begins anew.
    this.#paying = undefined;
    this.changed();
  }

  /** Judges a root for the first time, with rests for those who ask meanwhile. What cannot be judged is logged, and keeps nobody from the rest. */
  async #judgeInSteps({ project, uri }: Folder, root: string, breath: Breath): Promise<void> {
    for (let left = 1; left > 0 && !this.#stopped; await breath.taken()) {
      const day = await this.#settings.day(uri);
      try {
        left = project.judgeSome(root, day, blocksAtOnce);
        if (left > 0) continue;
        // Only what was told to the end may be let go.
        project.findings(root, day);
        project.rest(mostAtWork);
      } catch (error) {
        if (!this.#stopped) this.#connection.console.error(String(error));
        return;
      }
    }
  }

  /**
   * The text of an open document changed; only its own reader needs to be told. What a line that is being typed is found to
   * lack is held back until the typing rests; what is mended goes at once. A client that asks for findings is asked to ask again then; one that cannot be asked is told all.
   */
  edited(typing?: { readonly uri: string; readonly line: number }): void {
    const pulls = this.#skills.pullsDiagnostics;
    clearTimeout(this.#rest);
    this.#typing = pulls && !this.#skills.refreshesDiagnostics ? undefined : typing;
    if (this.#typing !== undefined) {
      this.#rest = setTimeout(() => {
        this.#typing = undefined;
        if (!pulls) this.#schedule();
        else if (this.#heldBack.size > 0) this.changed();
      }, typingRest_ms);
    }
    if (pulls) this.#wake();
    else this.#schedule();
  }

  /** Something else changed: settings, files on the disk, what is open. */
  changed(): void {
    if (this.#stopped) return;
    if (!this.#skills.pullsDiagnostics) return this.#schedule();
    if (this.#skills.refreshesDiagnostics) void this.#connection.sendRequest('workspace/diagnostic/refresh').catch(() => undefined);
    this.#wake();
  }

  #wake(): void {
    this.#changes++;
    for (const wake of [...this.#waiting]) wake();
    this.#waiting.clear();
  }

  #schedule(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined;
      // One after the other: what is told last is what is newest.
      this.#publishing = this.#publishing.then(async () => {
        const started = performance.now();
        await this.#publishAll().catch((error: unknown) => this.#connection.console.error(String(error)));
        this.#lastWork_ms = performance.now() - started;
      });
    }, Math.min(longestRest_ms, this.#lastWork_ms * restAfterWork));
  }

  /** Open documents, and the files that are read together with them. */
  async #publishAll(): Promise<void> {
    const due = new Map<string, { folder: Folder; path: string }>();
    for (const document of this.#workspace.documents) {
      const { folder, path } = document;
      await this.#workspace.ready(folder);
      due.set(document.uri, { folder, path });
      if (!folder.judged) continue;
      for (const root of folder.project.rootsOf(path)) for (const other of folder.project.filesOf(root)) if (!folder.open.has(other)) due.set(folder.uriOf(other), { folder, path: other });
    }
    const breath = new Breath();
    for (const uri of [...this.#published.keys()]) {
      if (due.has(uri)) continue;
      this.#published.delete(uri);
      this.#known.delete(uri);
      this.#heldBack.delete(uri);
      await this.#connection.sendDiagnostics({ uri, diagnostics: [] });
    }
    for (const [uri, { folder, path }] of due) {
      await breath.taken();
      const found = await this.of(folder, path, true);
      // Of the text that was just judged: there may be a newer one by now than when this began.
      const version = folder.open.get(path)?.version;
      const diagnostics = this.#withoutTyped(uri, found);
      const text = JSON.stringify([version, diagnostics]);
      // A file that never had a finding is not spoken of, an open one always is: its reader waits for the answer.
      if (this.#published.get(uri) === text || (version === undefined && diagnostics.length === 0 && !this.#published.has(uri))) continue;
      this.#published.set(uri, text);
      await this.#connection.sendDiagnostics({ uri, diagnostics, ...(version !== undefined && this.#skills.diagnosticVersions ? { version } : {}) });
    }
  }

  /** Findings without the new ones of the line that is being typed. */
  #withoutTyped(uri: string, diagnostics: Diagnostic[]): Diagnostic[] {
    const typing = this.#typing;
    const before = this.#known.get(uri) ?? new Set();
    const shown = typing?.uri !== uri ? diagnostics : diagnostics.filter((d) => d.range.start.line !== typing.line || before.has(keyOf(d)));
    this.#known.set(uri, new Set(shown.map(keyOf)));
    if (shown.length < diagnostics.length) this.#heldBack.add(uri);
    else this.#heldBack.delete(uri);
    return shown;
  }

  /** The same findings keep their result's name, so that nothing is sent twice. */
  #report(uri: string, diagnostics: Diagnostic[], before: string | undefined): DocumentDiagnosticReport {
    const text = JSON.stringify(diagnostics);
    let told = this.#told.get(uri);
    if (told?.text !== text) {
      told = { resultId: String(++this.#lastId), text };
      this.#told.set(uri, told);
    }
    return told.resultId === before ? { kind: 'unchanged', resultId: told.resultId } : { kind: 'full', resultId: told.resultId, items: diagnostics };
  }

  async pull(uri: string, before: string | undefined): Promise<DocumentDiagnosticReport> {
    const found = this.#workspace.locate(uri);
    if (found === undefined) return { kind: 'full', items: [] };
    return this.#report(uri, this.#withoutTyped(uri, await this.of(found.folder, found.path, true)), before);
  }

  /** Findings of the files that are not open. Held until there is something new to say, because a client asks again at once. */
  async pullWorkspace(before: ReadonlyMap<string, string>, token: CancellationToken): Promise<WorkspaceDiagnosticReport> {
    for (;;) {
      const seen = this.#changes;
      for (const folder of this.#workspace.folders) await this.#workspace.listAll(folder);
      const items: WorkspaceDocumentDiagnosticReport[] = [];
      const breath = new Breath();
      for (const folder of this.#workspace.folders) {
        for (const path of folder.project.paths) {
          await breath.taken();
          if (token.isCancellationRequested) return nothing;
          if (folder.open.has(path)) continue;
          for (const root of folder.project.rootsOf(path)) await this.#judgeInSteps(folder, root, breath);
          const uri = folder.uriOf(path);
          const report = this.#report(uri, await this.of(folder, path), before.get(uri));
          const isNews = report.kind === 'full' && (report.items.length > 0 || before.has(uri));
          if (isNews) items.push({ ...report, uri, version: null });
        }
      }
      // Said once: not to somebody who has stopped listening.
      if (token.isCancellationRequested) return nothing;
      for (const [uri] of before) {
        const found = this.#workspace.locate(uri);
        if (found !== undefined && found.folder.project.file(found.path) !== undefined) continue;
        if (this.#told.delete(uri)) items.push({ kind: 'full', uri, version: null, items: [] });
      }
      if (items.length > 0 || this.#stopped) return { items };
      if (seen !== this.#changes) continue;
      await new Promise<void>((wake) => {
        this.#waiting.add(wake);
        token.onCancellationRequested(() => {
          this.#waiting.delete(wake);
          wake();
        });
      });
    }
  }

  /** A document is closed: nothing of it is held back. */
  closed(uri: string): void {
    this.#heldBack.delete(uri);
    this.changed();
  }

  stop(): void {
    this.#stopped = true;
    clearTimeout(this.#timer);
    clearTimeout(this.#rest);
    this.#wake();
  }
}
