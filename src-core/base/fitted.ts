const none: readonly never[] = [];

/** The same list without the room that a list keeps for what may come: for lists that stay, of which there are many. */
export const fitted = <T>(list: readonly T[]): readonly T[] => (list.length === 0 ? none : list.slice());
