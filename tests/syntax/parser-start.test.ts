import { createToken, EmbeddedActionsParser } from 'chevrotain';
import { expect, test } from 'vitest';

// The parser ends the recording of its grammar in its own way, sooner than the library does. The library must ask it to.
test('the library ends its recording by a method of the parser', () => {
  let ended = 0;
  class Small extends EmbeddedActionsParser {
    constructor() {
      super([createToken({ name: 'Word', pattern: /a/ })], { skipValidations: true });
      this.performSelfAnalysis();
    }

    protected disableRecording(): void {
      ended++;
      const library = EmbeddedActionsParser.prototype as unknown as { disableRecording(this: Small): void };
      library.disableRecording.call(this);
    }
  }
  expect(new Small()).toBeDefined();
  expect(ended).toBe(1);
});
