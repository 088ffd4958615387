/** What the server itself notes of a change set that nobody worded. */
type ServerNote = { readonly what: "example" } | { readonly what: "from"; readonly name: string };

/**
 * A note as a code, for the app says it in the reader's language: `#example`, `#from blank`. A note that a person or
 * the app wrote never begins with `#` and one of these words.
 */
export const noteOf = (note: ServerNote): string =>
  note.what === "example" ? "#example" : `#from ${note.name}`;
