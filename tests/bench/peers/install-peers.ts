import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { jsonSchema, langiumGrammar, langiumLimits } from '../languages.ts';

/** What the peers are, by exact version, so that figures of two days can be compared. */
const packages = {
  'yaml-language-server': '2.0.0',
  'vscode-langservers-extracted': '4.10.0',
  langium: '4.4.0',
  'langium-cli': '4.4.0',
  'vscode-languageserver': '10.1.2',
  esbuild: '0.28.2',
};

export interface Peers {
  readonly modules: string;
  readonly schemaUri: string;
  /** The bundled server; undefined when it could not be built. */
  readonly langium: string | undefined;
}

/** Puts the peers into a folder outside of the project, once. They are no dependency of ours. */
export function installPeers(folder: string): Peers {
  mkdirSync(folder, { recursive: true });
  const wanted = `${JSON.stringify({ private: true, dependencies: packages }, null, 2)}\n`;
  const listed = join(folder, 'package.json');
  if (!existsSync(join(folder, 'node_modules')) || readFileSync(listed, 'utf8') !== wanted) {
    console.log(`installing the peers into ${folder}`);
    writeFileSync(listed, wanted);
    execFileSync('npm', ['install', '--no-audit', '--no-fund', '--ignore-scripts', '--loglevel=error'], { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
  }
  const schema = join(folder, 'rig.schema.json');
  writeFileSync(schema, JSON.stringify(jsonSchema()));
  return { modules: join(folder, 'node_modules'), schemaUri: pathToFileURL(schema).href, langium: buildLangium(folder) };
}

function buildLangium(folder: string): string | undefined {
  const source = join(dirname(fileURLToPath(import.meta.url)), 'langium-server.mjs');
  const inputs = [readFileSync(source, 'utf8'), langiumGrammar(), JSON.stringify(langiumLimits()), JSON.stringify(packages)].join('\n');
  const home = join(folder, 'langium', createHash('sha256').update(inputs).digest('hex').slice(0, 12));
  const built = join(home, 'server.cjs');
  if (existsSync(built)) return built;
  mkdirSync(home, { recursive: true });
  writeFileSync(join(home, 'rig.langium'), langiumGrammar());
  writeFileSync(join(home, 'limits.json'), JSON.stringify(langiumLimits()));
  copyFileSync(source, join(home, 'server.mjs'));
  writeFileSync(join(home, 'langium-config.json'), JSON.stringify({ projectName: 'Riglang', languages: [{ id: 'riglang', grammar: 'rig.langium', fileExtensions: ['.riglang'] }], out: 'generated', mode: 'production', importExtension: '.js' }));
  const run = (script: string, ...words: string[]): void => void execFileSync(process.execPath, [join(folder, 'node_modules', script), ...words], { cwd: home, stdio: ['ignore', 'ignore', 'inherit'] });
  try {
    run('langium-cli/bin/langium.js', 'generate');
    run('esbuild/bin/esbuild', 'server.mjs', '--bundle', '--minify', '--platform=node', '--format=cjs', '--outfile=server.cjs', '--log-level=warning');
    return built;
  } catch (error) {
    console.log(`the Langium server could not be built: ${error instanceof Error ? error.message.split('\n')[0]! : String(error)}`);
    return undefined;
  }
}
