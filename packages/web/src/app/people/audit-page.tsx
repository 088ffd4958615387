import { Button } from "@mantine/core";
import type { AuditEntry } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useMay } from "../session/session.tsx";
import { useSpeech } from "../words.tsx";
import { isHere } from "./here.ts";
import "./people.css";

const PAGE = 100;

/** Who did what to accounts, sessions, books and back-ups. */
export default function AuditPage() {
  const { words, language } = useSpeech();
  const { audit, ownerOnly, failed } = words.people;
  const isOwner = useMay("owner");
  const [entries, setEntries] = useState<readonly AuditEntry[] | null>(null);
  const [isAll, setIsAll] = useState(false);
  const [wrong, setWrong] = useState("");
  const load = useCallback(async (before: number | null) => {
    try {
      const query = before === null ? { limit: PAGE } : { before, limit: PAGE };
      const found = await call("audit", { parts: {}, query });
      setEntries((known) => (before === null ? found : [...(known ?? []), ...found]));
      setIsAll(found.length < PAGE);
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
    }
  }, []);
  useEffect(() => {
    if (isOwner) void load(null);
  }, [isOwner, load]);
  if (!isOwner) return <p className="page">{ownerOnly}</p>;
  const when = new Intl.DateTimeFormat(language, {
    dateStyle: "medium",
    timeStyle: "medium",
    hourCycle: "h23",
  });
  const actions: Readonly<Record<string, string>> = audit.actions;
  return (
    <div className="people">
      <h2>{audit.title}</h2>
      <p className="dim">{audit.about}</p>
      {wrong !== "" && <p className="error-text">{failed(wrong)}</p>}
      {entries?.length === 0 && <p>{audit.none}</p>}
      <div className="people-scroll">
        <table className="people-table">
          <thead>
            <tr>
              <th scope="col">{audit.columns.at}</th>
              <th scope="col">{audit.columns.who}</th>
              <th scope="col">{audit.columns.what}</th>
              <th scope="col">{audit.columns.detail}</th>
              <th scope="col">{audit.columns.from}</th>
            </tr>
          </thead>
          <tbody>
            {(entries ?? []).map((entry) => (
              <tr key={entry.no}>
                <td>{when.format(new Date(entry.at))}</td>
                <td>{entry.personName}</td>
                <td>{actions[entry.action] ?? entry.action}</td>
                <td>{entry.detail}</td>
                <td>{isHere(entry.from) ? audit.here : entry.from}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {entries !== null && !isAll && (
        <Button variant="subtle" onClick={() => void load(entries.at(-1)?.no ?? null)}>
          {audit.more}
        </Button>
      )}
    </div>
  );
}
