/** Cells as spreadsheets exchange them: rows of texts. */
export type Block = readonly (readonly string[])[];

/**
 * Where a quoted cell that opens at `start` ends: the place after its closing quote. Null when the quote is part
 * of the text: it is never closed, something follows it, or nothing inside needed quoting.
 */
function quotedEnd(text: string, start: number): number | null {
  let needed = false;
  for (let i = start + 1; i < text.length; i++) {
    const char = text[i];
    if (char === "\t" || char === "\n") needed = true;
    if (char !== '"') continue;
    if (text[i + 1] === '"') {
      needed = true;
      i++;
      continue;
    }
    const after = text[i + 1];
    const closes = after === undefined || after === "\t" || after === "\n";
    return closes && needed ? i + 1 : null;
  }
  return null;
}

/**
 * Reads what a spreadsheet puts on the clipboard: cells between tabs, rows between line breaks, a cell with
 * either of them in double quotes with its own quotes doubled. One line break at the end belongs to the last
 * row. A quote at the start of a cell that needs none is a plain character, as spreadsheets write it.
 */
export function parseTsv(given: string): Block {
  const text = given.replace(/\r\n?/g, "\n");
  if (text === "") return [];
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  for (;;) {
    const quoted = text[at] === '"' ? quotedEnd(text, at) : null;
    if (quoted !== null) {
      row.push(text.slice(at + 1, quoted - 1).replaceAll('""', '"'));
      at = quoted;
    } else {
      let end = at;
      while (end < text.length && text[end] !== "\t" && text[end] !== "\n") end++;
      row.push(text.slice(at, end));
      at = end;
    }
    if (text[at] === "\t") {
      at++;
      continue;
    }
    rows.push(row);
    row = [];
    at++;
    if (at >= text.length) return rows;
  }
}

const quote = (cell: string): string => (/[\t\n\r]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Writes a block for the clipboard, so that a spreadsheet, and `parseTsv`, reads the same cells. */
export function writeTsv(block: Block): string {
  const text = block.map((row) => row.map(quote).join("\t")).join("\n");
  return text === "" || text.endsWith("\n") ? `${text}\n` : text;
}
