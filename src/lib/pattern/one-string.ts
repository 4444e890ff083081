/**
 * The same text as one string for good. What is put together from others hangs together in engines until it is looked into, and is
 * compared letter by letter; text that was the key of a table once is the same string wherever it is met. For names that are kept.
 */
export const oneString = (text: string): string => Object.keys({ [text]: 0 })[0]!;
