import { Button } from "@mantine/core";
import type { ImportResult } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { FaultTable } from "../start/fault-table.tsx";
import { refusalText } from "../start/refusal-text.ts";
import { useWords } from "../words.tsx";

/** Makes the open book what a file says, after a rehearsal that tells what would change. */
export function BookImport({ file }: { readonly file: File }) {
  const words = useWords();
  const { book: text, bring } = words.imports;
  const desk = useDesk();
  const { status } = useSession();
  const [would, setWould] = useState<ImportResult | null>(null);
  const [done, setDone] = useState(false);
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<unknown>(null);
  const { token } = status;
  const { bookId } = desk;
  useEffect(() => {
    let wanted = true;
    const parts = { book: bookId };
    void call("importInto", { parts, query: { name: file.name, rehearse: "true" }, file, token }).then(
      (result) => wanted && setWould(result),
      (error: unknown) => wanted && setRefused(error),
    );
    return () => {
      wanted = false;
    };
  }, [bookId, file, token]);

  const take = async (): Promise<void> => {
    setBusy(true);
    try {
      await call("importInto", { parts: { book: bookId }, query: { name: file.name }, file, token });
      setDone(true);
    } catch (error) {
      setRefused(error);
    }
    setBusy(false);
  };
  if (refused !== null) return <p className="error-text">{refusalText(words, refused)}</p>;
  if (would === null) return <p className="dim">{bring.reading}</p>;
  if (would.book === null)
    return (
      <>
        <p className="error-text">{bring.unreadable}</p>
        <FaultTable faults={would.faults} />
      </>
    );
  const { added, changed, removed, files, faults } = would;
  const nothing = added + changed + removed + files === 0;
  return (
    <div className="imports-result">
      {nothing ? (
        <p>{text.nothing}</p>
      ) : (
        <>
          <p>{text.would}</p>
          <ul className="imports-sums">
            {added > 0 && <li>{text.added(added)}</li>}
            {changed > 0 && <li>{text.changed(changed)}</li>}
            {removed > 0 && <li>{text.removed(removed)}</li>}
            {files > 0 && <li>{text.files(files)}</li>}
          </ul>
        </>
      )}
      {faults.length === 0 ? (
        <p>{text.sound}</p>
      ) : (
        <>
          <p className="amber-text">{text.faults(faults.length)}</p>
          <FaultTable faults={faults} />
        </>
      )}
      {!nothing && !done && (
        <Button loading={busy} onClick={() => void take()}>
          {text.take}
        </Button>
      )}
      <p role="status">{done ? text.done : ""}</p>
    </div>
  );
}
