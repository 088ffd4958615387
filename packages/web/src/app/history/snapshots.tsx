import { Button, TextInput } from "@mantine/core";
import { pathTo, type Snapshot } from "@pinwright/contract";
import { type FormEvent, useCallback, useEffect, useState } from "react";
import { call, Refused } from "../../api/call.ts";
import { useMay, useSession } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { useSpeech, useWords } from "../words.tsx";
import { useChangeNo } from "./use-history.ts";

/** Named states of a book: make one, export one, bring one back. */
export function Snapshots({ of }: { readonly of: string }) {
  const { words, language } = useSpeech();
  const { history } = words;
  const { status } = useSession();
  const changeNo = useChangeNo(of);
  const trouble = useTrouble();
  const mayEdit = useMay("designer");
  const [snapshots, setSnapshots] = useState<readonly Snapshot[]>([]);
  const [name, setName] = useState("");
  const [said, setSaid] = useState("");
  const load = useCallback(
    () => call("snapshots", { parts: { book: of } }).then(setSnapshots, () => undefined),
    [of],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: others may name a state, most likely after a change
  useEffect(() => void load(), [load, changeNo]);
  const failed = (error: unknown) => {
    const code = error instanceof Refused ? error.problem.code : null;
    setSaid(code === "taken" ? history.snapshots.taken : trouble(error));
  };
  const make = async (event: FormEvent) => {
    event.preventDefault();
    try {
      await call("addSnapshot", { parts: { book: of }, body: { name: name.trim() }, token: status.token });
      setName("");
      setSaid("");
      await load();
    } catch (error) {
      failed(error);
    }
  };
  const restore = async (snapshot: Snapshot) => {
    try {
      const result = await call("restoreSnapshot", {
        parts: { book: of, snapshot: snapshot.id },
        body: { id: crypto.randomUUID() },
        token: status.token,
      });
      setSaid(history.snapshots.restored(snapshot.name, result.added + result.changed + result.removed));
    } catch (error) {
      failed(error);
    }
  };
  const when = new Intl.DateTimeFormat(language, {
    dateStyle: "medium",
    timeStyle: "short",
    hourCycle: "h23",
  });
  return (
    <aside>
      <h3>{history.snapshots.title}</h3>
      <p className="dim">{history.snapshots.about}</p>
      {mayEdit && (
        <form onSubmit={(event) => void make(event)} style={{ display: "flex", gap: 8, alignItems: "end" }}>
          <TextInput
            label={history.snapshots.name}
            value={name}
            maxLength={120}
            required
            style={{ flex: 1 }}
            onChange={(event) => setName(event.currentTarget.value)}
          />
          <Button type="submit" variant="default" disabled={name.trim() === ""}>
            {history.snapshots.make}
          </Button>
        </form>
      )}
      <p role="status" style={{ minHeight: 20, margin: "4px 0" }}>
        {said}
      </p>
      {snapshots.length === 0 && <p className="dim">{history.snapshots.none}</p>}
      {snapshots.map((snapshot) => (
        <div className="snapshot" key={snapshot.id}>
          <b>{snapshot.name}</b>
          <div className="dim">
            {history.snapshots.at(snapshot.changeNo, snapshot.personName, when.format(new Date(snapshot.at)))}
          </div>
          <div className="finding-actions">
            {mayEdit && (
              <Button variant="default" size="compact-sm" onClick={() => void restore(snapshot)}>
                {history.snapshots.restore}
              </Button>
            )}
            <ExportLinks of={of} snapshot={snapshot.id} />
          </div>
        </div>
      ))}
      <h3>{history.export.title}</h3>
      <p style={{ margin: "0 0 4px" }}>{history.export.now}</p>
      <div className="export-links">
        <ExportLinks of={of} />
      </div>
    </aside>
  );
}

function ExportLinks({ of, snapshot }: { readonly of: string; readonly snapshot?: string }) {
  const words = useWords().history.export;
  return (["zip", "xlsx"] as const).map((format) => (
    <a
      key={format}
      download
      href={pathTo("exportBook", { book: of }, { format, ...(snapshot === undefined ? {} : { snapshot }) })}
    >
      {words[format]}
    </a>
  ));
}
