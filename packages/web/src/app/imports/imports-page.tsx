import { SegmentedControl } from "@mantine/core";
import type { ForeignSheet } from "@pinwright/contract";
import { useState } from "react";
import { call, Refused } from "../../api/call.ts";
import { useMay, useSession } from "../session/session.tsx";
import { refusalText } from "../start/refusal-text.ts";
import { useWords } from "../words.tsx";
import { BookImport } from "./book-import.tsx";
import { ExportLinks } from "./export-links.tsx";
import { FileDrop } from "./file-drop.tsx";
import { looksLikeBook } from "./logic/guess-table.ts";
import { RowsImport } from "./rows-import.tsx";
import "./imports.css";

/** A file that was chosen, as far as it is known what is in it. */
interface Chosen {
  readonly file: File;
  /** Null for a file that can only be a book. */
  readonly sheets: readonly ForeignSheet[] | null;
  readonly as: "book" | "rows";
}

/** Bringing a file into the open book, and writing the book out. */
export default function ImportsPage() {
  const words = useWords().imports;
  const may = useMay("designer");
  return (
    <div className="imports">
      <h2>{words.title}</h2>
      <ExportLinks />
      <section className="imports-part">
        <h3>{words.bring.title}</h3>
        <p className="dim">{words.bring.about}</p>
        {may ? <BringIn /> : <p className="amber-text">{words.bring.mayNot}</p>}
      </section>
    </div>
  );
}

function BringIn() {
  const all = useWords();
  const words = all.imports.bring;
  const { status } = useSession();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState("");

  const read = async (file: File): Promise<Chosen> => {
    if (/\.zip$/i.test(file.name)) return { file, sheets: null, as: "book" };
    const sheets = await call("readForeign", {
      parts: {},
      query: { name: file.name },
      file,
      token: status.token,
    });
    const isBook = /\.xlsx$/i.test(file.name) && looksLikeBook(sheets.map((sheet) => sheet.name));
    return { file, sheets, as: isBook ? "book" : "rows" };
  };
  const choose = async (file: File): Promise<void> => {
    setChosen(null);
    if (!/\.(?:zip|xlsx|csv|tsv|txt)$/i.test(file.name)) {
      setFailed(words.wrongType);
      return;
    }
    setBusy(true);
    setFailed("");
    try {
      setChosen(await read(file));
    } catch (error) {
      const unread = error instanceof Refused && error.problem.code === "unreadable";
      setFailed(unread ? words.unreadable : refusalText(all, error));
    }
    setBusy(false);
  };
  return (
    <>
      <FileDrop
        busy={busy}
        label={chosen === null ? words.choose : words.another}
        onFile={(file) => void choose(file)}
      />
      <p role="status" className="error-text imports-failed">
        {failed}
      </p>
      {chosen !== null && (
        <>
          <p>
            <b>{chosen.file.name}</b>
          </p>
          {chosen.sheets !== null && /\.xlsx$/i.test(chosen.file.name) && (
            <SegmentedControl
              aria-label={words.kind}
              value={chosen.as}
              onChange={(as) => setChosen({ ...chosen, as: as === "book" ? "book" : "rows" })}
              data={[
                { value: "book", label: words.asBook },
                { value: "rows", label: words.asRows },
              ]}
            />
          )}
          {chosen.as === "book" || chosen.sheets === null ? (
            <BookImport key={`${chosen.file.name} ${chosen.file.lastModified}`} file={chosen.file} />
          ) : (
            <RowsImport
              key={`${chosen.file.name} ${chosen.file.lastModified}`}
              fileName={chosen.file.name}
              sheets={chosen.sheets}
            />
          )}
        </>
      )}
    </>
  );
}
