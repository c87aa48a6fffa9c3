import { execFileSync } from 'node:child_process';
import { world } from './world.ts';

/** A world under version control, with a real git that reads no configuration but its own. */
export function repository(files: Readonly<Record<string, string | Uint8Array>>) {
  const made = world(files);
  const git = (...words: string[]): string =>
    execFileSync('git', words, {
      cwd: made.folder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { PATH: process.env['PATH'], HOME: made.folder, GIT_CONFIG_NOSYSTEM: '1', GIT_AUTHOR_NAME: 'crew', GIT_AUTHOR_EMAIL: 'crew@example.org', GIT_COMMITTER_NAME: 'crew', GIT_COMMITTER_EMAIL: 'crew@example.org', GIT_AUTHOR_DATE: '2026-06-01T12:00:00Z', GIT_COMMITTER_DATE: '2026-06-01T12:00:00Z' },
    });
  const commit = (): void => {
    git('add', '-A');
    git('commit', '-qm', 'as it was');
  };
  git('init', '-q', '-b', 'trunk');
  commit();
  return { ...made, git, commit };
}
