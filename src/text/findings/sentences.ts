/**
 * Sentences of one area, by finding code. `{name}` is replaced by the value of that name.
 * A sentence says what was found, what was expected and what to do, in the reader's words; no code words.
 */
export type Sentences = Readonly<Record<string, string>>;
