import { Button } from "@mantine/core";
import { IconDownload } from "@tabler/icons-react";
import { useMemo, useState } from "react";
import { useMay } from "../../session/session.tsx";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { stateOf } from "../units/hold.ts";
import { UnitList } from "../units/unit-list.tsx";
import { CallBack } from "./call-back.tsx";
import { type Concerned, canRecall, csvText, type TraceQuery } from "./trace-query.ts";

/** Units that are concerned: how many, which, as a file, and the way to call them back. */
export function TraceResult({
  query,
  concerned,
}: {
  readonly query: TraceQuery;
  readonly concerned: readonly Concerned[];
}) {
  const { benchTrace: own } = useWords();
  const mayRecall = useMay("lead");
  const [isCalling, setCalling] = useState(false);
  const known = useMemo(() => concerned.flatMap(({ summary }) => summary ?? []), [concerned]);
  const direct = useMemo(
    () => new Set(concerned.filter(({ isDirect }) => isDirect).map(({ unit }) => unit)),
    [concerned],
  );
  const elsewhere = concerned.filter(({ summary }) => summary === undefined);
  const released = known.filter(({ releasedAt }) => releasedAt !== null).length;
  return (
    <section>
      <div className="bench-head">
        <p role="status">
          {concerned.length === 0 ? (
            own.none
          ) : (
            <>
              <b>{own.found(concerned.length, direct.size)}</b>{" "}
              {own.shipped(released, known.length - released)}
            </>
          )}
        </p>
        {concerned.length > 0 && <CsvButton concerned={concerned} />}
        {mayRecall && canRecall(query) && !isCalling && (
          <Button variant="default" onClick={() => setCalling(true)}>
            {own.recall.open}
          </Button>
        )}
      </div>
      {mayRecall && !canRecall(query) && concerned.length > 0 && <p className="dim">{own.recall.cannot}</p>}
      {isCalling && <CallBack query={query} close={() => setCalling(false)} />}
      {known.length > 0 && (
        <div className="trace-list" style={{ height: `min(50vh, ${(known.length + 1) * 48}px)` }}>
          <UnitList
            units={known}
            extra={{ header: own.how, of: ({ unit }) => (direct.has(unit) ? own.direct : own.around) }}
          />
        </div>
      )}
      {elsewhere.length > 0 && <p>{own.elsewhere(elsewhere.map(({ unit }) => unit).join(", "))}</p>}
    </section>
  );
}

function CsvButton({ concerned }: { readonly concerned: readonly Concerned[] }) {
  const { benchTrace: own, benchUnits } = useWords();
  const names = useNames();
  const save = (): void => {
    const header = [
      ...[benchUnits.unit, own.how, benchUnits.kind, own.type, own.revision, benchUnits.run],
      ...[benchUnits.state, benchUnits.stage, benchUnits.site, benchUnits.within, own.released],
    ];
    const rows = concerned.map(({ unit, isDirect, summary }) => [
      unit,
      isDirect ? own.direct : own.around,
      ...(summary === undefined
        ? []
        : [
            ...[benchUnits.oneKind[summary.what], names.type(summary.what, summary.type)],
            ...[summary.revision, names.run(summary.run), benchUnits.states[stateOf(summary)]],
            ...[names.stage(summary.stage), names.site(summary.site)],
            ...[summary.within?.unit ?? "", summary.releasedAt ?? ""],
          ]),
    ]);
    // With the mark that lets a spreadsheet read Chinese.
    const file = new Blob([`\uFEFF${csvText([header, ...rows])}`], { type: "text/csv;charset=utf-8" });
    const address = URL.createObjectURL(file);
    const link = document.createElement("a");
    link.href = address;
    link.download = `${own.csvName}.csv`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 1_000);
  };
  return (
    <Button variant="default" leftSection={<IconDownload size={16} />} onClick={save}>
      {own.csv}
    </Button>
  );
}
