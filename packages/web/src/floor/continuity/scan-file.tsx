import { formatAdapter, type TestBench } from "@pinwright/engine";
import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import { TaskFoot } from "../tasks/task-foot.tsx";
import { type KeptAdapter, keepAdapter, keptAdapter } from "./adapter.ts";
import { readScan, type ScanReading } from "./scan.ts";
import { useScanTrouble } from "./scan-text.ts";

type Read = Extract<ScanReading, { kind: "read" }>;

/** Takes a scan that a tester kept as a file, and the list of the adapter that the harness is plugged into. */
export function ScanFile({
  bench,
  unit,
  read,
  back,
}: {
  readonly bench: TestBench;
  readonly unit: string;
  readonly read: (reading: Read) => void;
  readonly back: () => void;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.tester;
  const troubleOf = useScanTrouble(unit);
  const [text, setText] = useState("");
  const [trouble, setTrouble] = useState<readonly string[]>([]);
  const take = (content: string): void => {
    const reading = readScan(content, bench, keptAdapter(bench.harnessId)?.text ?? null, unit);
    setTrouble(troubleOf(reading));
    if (reading.kind === "read") read(reading);
  };
  return (
    <>
      <div className="floor-body floor-scan-file">
        <h1>{floorMeasure.ways.file}</h1>
        <p className="dim">{floorMeasure.ways.fileHint}</p>
        <label className="floor-field">
          {own.choose}
          <input
            type="file"
            accept=".txt,.scan,text/plain"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              if (file === undefined) return;
              void file.text().then((content) => {
                setText(content);
                take(content);
              });
            }}
          />
        </label>
        <label className="floor-field">
          {own.paste}
          <textarea
            value={text}
            rows={4}
            spellCheck={false}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <Faults lines={trouble} />
        <AdapterList bench={bench} />
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" onClick={back}>
          {floor.back}
        </button>
        <button type="button" className="floor-main" disabled={text.trim() === ""} onClick={() => take(text)}>
          {own.read}
        </button>
      </TaskFoot>
    </>
  );
}

/** What keeps a scan from being used, a line each. */
export function Faults({ lines }: { readonly lines: readonly string[] }) {
  const [first, ...rest] = lines;
  if (first === undefined) return null;
  return (
    <div role="alert" className="error-text">
      <p>{first}</p>
      {rest.length > 0 && (
        <ul>
          {rest.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Which point of the tester goes to which place: the usual list, or one that this tablet was given. */
export function AdapterList({ bench }: { readonly bench: TestBench }) {
  const own = useWords().floorMeasure.tester;
  const { harnessId, places } = bench;
  const [adapter, setAdapter] = useState(() => keptAdapter(harnessId));
  const put = (next: KeptAdapter | null): void => {
    keepAdapter(harnessId, next);
    setAdapter(next);
  };
  return (
    <details className="floor-file">
      <summary>
        {own.adapter}: {adapter === null ? own.adapterUsual(places.length) : own.adapterOwn(adapter.name)}
      </summary>
      <p>
        <a
          className="floor-plain"
          download={`${harnessId}.adapter.csv`}
          href={`data:text/csv;charset=utf-8,${encodeURIComponent(formatAdapter(bench))}`}
        >
          {own.adapterSave}
        </a>
      </p>
      <label className="floor-field">
        {own.adapterTake}
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file !== undefined) void file.text().then((text) => put({ name: file.name, text }));
          }}
        />
      </label>
      {adapter !== null && (
        <button type="button" className="floor-plain" onClick={() => put(null)}>
          {own.adapterBack}
        </button>
      )}
    </details>
  );
}
