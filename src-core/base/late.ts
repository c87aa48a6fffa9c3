/** Made for the first who asks. A pattern of all the world's letters takes a millisecond to read, and most files hold plain ones alone. */
export function late<T extends object>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}
