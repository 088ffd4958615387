import { Button, FileButton } from "@mantine/core";
import type { ImportResult } from "@pinwright/contract";
import { useState } from "react";
import { useLocation } from "wouter";
import { call } from "../../api/call.ts";
import { useSession } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { FaultTable } from "./fault-table.tsx";
import { refusalText } from "./refusal-text.ts";

/** Brings in a book from a file: first what is in it, then the book. */
export function ImportBook() {
  const words = useWords();
  const { start, common } = words;
  const { status } = useSession();
  const [, go] = useLocation();
  const [file, setFile] = useState<File | null>(null);
  const [found, setFound] = useState<ImportResult | null>(null);
  const [wrong, setWrong] = useState("");
  const [busy, setBusy] = useState(false);
  const send = async (chosen: File, rehearse: boolean): Promise<ImportResult | null> => {
    setBusy(true);
    setWrong("");
    try {
      return await call("importBook", {
        parts: {},
        query: { name: chosen.name, rehearse: String(rehearse) },
        file: chosen,
        token: status.token,
      });
    } catch (error) {
      setWrong(refusalText(words, error));
      return null;
    } finally {
      setBusy(false);
    }
  };
  const rehearse = async (chosen: File | null) => {
    if (chosen === null) return;
    setFile(chosen);
    setFound(await send(chosen, true));
  };
  const bringIn = async () => {
    if (file === null) return;
    const made = await send(file, false);
    if (made?.book) go(`/b/${made.book}/${made.faults.length > 0 ? "findings" : "layout"}`);
  };
  const forget = () => {
    setFile(null);
    setFound(null);
    setWrong("");
  };
  return (
    <section>
      <h2>{start.importTitle}</h2>
      <p className="dim">{start.importHint}</p>
      <FileButton accept=".zip,.xlsx" onChange={(chosen) => void rehearse(chosen)}>
        {(props) => (
          <Button variant="default" loading={busy} {...props}>
            {start.choose}
          </Button>
        )}
      </FileButton>
      <p role="status">
        {busy && start.reading} {file !== null && <b>{file.name}</b>}{" "}
        {found !== null && (found.book === null ? start.unreadable : start.becomes(found.book, found.added))}
      </p>
      <p role="alert" className="error-text">
        {wrong}
      </p>
      {found !== null && (
        <>
          <p className={found.faults.length > 0 ? "amber-text" : ""}>
            {found.faults.length === 0 ? start.noFaults : start.faults(found.faults.length)}
          </p>
          <FaultTable faults={found.faults} />
          <div style={{ display: "flex", gap: 8 }}>
            {found.book !== null && (
              <Button loading={busy} onClick={() => void bringIn()}>
                {found.faults.length === 0 ? start.bringIn : start.bringInFaults}
              </Button>
            )}
            <Button variant="default" onClick={forget}>
              {common.cancel}
            </Button>
          </div>
        </>
      )}
    </section>
  );
}
