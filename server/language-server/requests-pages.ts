import type { CancellationToken } from 'vscode-languageserver';
import { checkWorkspaceRequest, explainRequest, rulesRequest, sheetRequest, stageRequest, type CheckWorkspaceResult, type ExplainResult, type RulesResult, type SheetResult } from '../../client/protocol.ts';
import { explainCode, ruleList } from '../../src-core/ide/explain-code.ts';
import { stages, stageText } from '../../src-core/ide/stages.ts';
import { printDay } from '../../src-core/model/day.ts';
import { sheetText } from '../../src-core/papers/sheet-text.ts';
import { Breath } from './breath.ts';
import type { LanguageServer } from './language-server.ts';
import type { Answer } from './requests.ts';

export const pages: Readonly<Record<string, Answer>> = {
  async [sheetRequest](server: LanguageServer, params: { readonly uri?: unknown }, token: CancellationToken): Promise<SheetResult> {
    const of = await server.subject({ textDocument: { uri: params?.uri } }, token);
    if (of === undefined) return { text: 'This rig is not open, and no folder holds it.\n' };
    const { project } = of.folder;
    const root = project.rootsOf(of.path)[0] ?? of.path;
    return { text: sheetText(project.judge(root, of.day), of.path, { file: of.path, day: printDay(of.day) }) };
  },

  async [stageRequest](server: LanguageServer, params: { readonly uri?: unknown; readonly stage?: unknown }, token: CancellationToken): Promise<SheetResult> {
    const of = await server.subject({ textDocument: { uri: params?.uri } }, token);
    const stage = stages.find((s) => s === params?.stage);
    return { text: of === undefined || stage === undefined ? 'This rig is not open, and no folder holds it.\n' : stageText(of.file, stage) };
  },

  [explainRequest]: (_server: LanguageServer, params: { readonly code?: unknown }): ExplainResult => ({ markdown: explainCode(typeof params?.code === 'string' ? params.code : '') }),

  [rulesRequest]: (): RulesResult => ({ rules: ruleList() }),

  async [checkWorkspaceRequest](server: LanguageServer): Promise<CheckWorkspaceResult> {
    const count = { files: 0, errors: 0, warnings: 0, others: 0, isCut: false };
    const breath = new Breath();
    for (const folder of server.workspace.places) {
      if (!folder.judged) continue;
      await server.workspace.listAll(folder);
      await server.workspace.ready(folder);
      count.isCut ||= folder.isCut;
      const day = await server.settings.day(folder.uri);
      for (const path of folder.project.paths) {
        await breath.taken();
        count.files++;
        for (const { severity } of folder.project.findings(path, day)) count[severity === 'error' ? 'errors' : severity === 'warning' ? 'warnings' : 'others']++;
      }
    }
    server.diagnostics.changed();
    return count;
  },
};
