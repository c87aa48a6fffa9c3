import * as vscode from 'vscode';

const type = 'linewright';

interface CheckTask extends vscode.TaskDefinition {
  readonly type: typeof type;
  /** Files or folders, from the workspace folder. */
  readonly paths?: readonly string[];
  readonly asOf?: string;
  readonly level?: string;
}

/** `linewright check` as a task: the command line that comes with the extension, run by the editor's own Node. */
export function addCheckTask(context: vscode.ExtensionContext): void {
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'linewright.cjs').fsPath;
  const taskOf = (definition: CheckTask, scope: vscode.WorkspaceFolder | vscode.TaskScope.Workspace): vscode.Task => {
    const { paths = ['.'], asOf, level } = definition;
    const words = [program, 'check', ...(asOf === undefined ? [] : ['--on', asOf]), ...(level === undefined ? [] : ['--level', level]), '--', ...paths];
    const run = new vscode.ProcessExecution(process.execPath, words, { env: { ELECTRON_RUN_AS_NODE: '1' } });
    const task = new vscode.Task(definition, scope, vscode.l10n.t('check'), type, run, '$linewright');
    task.group = vscode.TaskGroup.Test;
    return task;
  };
  context.subscriptions.push(
    vscode.tasks.registerTaskProvider(type, {
      provideTasks: () => (vscode.workspace.workspaceFolders ?? []).map((folder) => taskOf({ type }, folder)),
      resolveTask: (task) => taskOf(task.definition as CheckTask, typeof task.scope === 'object' ? task.scope : vscode.TaskScope.Workspace),
    }),
  );
}
