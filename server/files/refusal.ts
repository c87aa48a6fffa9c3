/** Something that a command cannot do: one line that says what, and one that helps. */
export class Refusal extends Error {
  readonly help: string | undefined;

  constructor(message: string, help?: string) {
    super(message);
    this.name = 'Refusal';
    this.help = help;
  }
}
