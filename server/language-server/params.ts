/** The objects of a list that somebody sent; whatever else stands in it is passed over. */
export const recordsIn = (list: unknown): Readonly<Record<string, unknown>>[] => (Array.isArray(list) ? list.filter((item): item is Record<string, unknown> => typeof item === 'object' && item !== null) : []);

/** Why the folders of a workspace make no sense; undefined when they do, or when there are none. */
export function wrongFolders(folders: unknown): string | undefined {
  if (folders === undefined || folders === null) return undefined;
  return Array.isArray(folders) && recordsIn(folders).filter(({ uri }) => typeof uri === 'string').length === folders.length ? undefined : '`workspaceFolders` is a list of objects with a `uri`';
}
