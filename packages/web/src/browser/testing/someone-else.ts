import { type BookRows, bookRowsSchema, ROUTES, statusSchema, TOKEN_HEADER } from "@pinwright/contract";

/** Someone else at the same server, who works without a browser. */
export interface SomeoneElse {
  readonly rows: (book: string) => Promise<BookRows>;
  /** Puts a text into a cell of a row, which is found by its id; a row that is not there is made. */
  readonly put: (book: string, table: string, id: string, column: string, text: string) => Promise<void>;
}

/** Joins at a server that has no accounts yet. */
export async function someoneElse(address: string): Promise<SomeoneElse> {
  const asked = await fetch(new URL(ROUTES.status.path, address));
  const cookie = asked.headers.get("set-cookie")?.split(";")[0] ?? "";
  const { token } = statusSchema.parse(await asked.json());
  const rows = async (book: string): Promise<BookRows> => {
    const response = await fetch(new URL(`/api/books/${book}/rows`, address), { headers: { cookie } });
    return bookRowsSchema.parse(await response.json());
  };
  const put = async (
    book: string,
    table: string,
    id: string,
    column: string,
    text: string,
  ): Promise<void> => {
    const known = Object.entries((await rows(book)).tables[table] ?? {});
    const [row = "made", cells = {}] = known.find(([, own]) => own.id === id) ?? [];
    const wanted = { ...("#" in cells ? {} : { "#": "a0", id }), [column]: text };
    const changes = Object.entries(wanted).map(([name, to]) => ({
      table,
      row,
      column: name,
      from: cells[name] ?? "",
      to,
    }));
    const response = await fetch(new URL(`/api/books/${book}/changes`, address), {
      method: "POST",
      headers: { "content-type": "application/json", cookie, [TOKEN_HEADER]: token ?? "" },
      body: JSON.stringify({ id: crypto.randomUUID(), note: `Put ${text}`, changes }),
    });
    if (!response.ok) throw new Error(await response.text());
  };
  return { rows, put };
}
