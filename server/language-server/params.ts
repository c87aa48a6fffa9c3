/** The objects of a list that somebody sent; whatever else stands in it is passed over. */
export const recordsIn = (list: unknown): Readonly<Record<string, unknown>>[] => (Array.isArray(list) ? list.filter((item): item is Record<string, unknown> => typeof item === 'object' && item !== null) : []);
