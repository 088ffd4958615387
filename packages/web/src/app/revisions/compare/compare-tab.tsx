import { NativeSelect } from "@mantine/core";
import { useSyncExternalStore } from "react";
import { Link, useSearchParams } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { DRAFT, revisionsAddress } from "../address.ts";
import { useReleases } from "../use-releases.ts";
import { Compared } from "./compared.tsx";
import "./compare.css";

/** Two revisions side by side: releases, or one and the draft. The address says which. */
export default function CompareTab() {
  const words = useWords();
  const own = words.compareApp;
  const desk = useDesk();
  const { bookId } = desk;
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const { releases } = useReleases();
  const [params, setParams] = useSearchParams();
  if (releases === null || changeNo === 0) return <p className="page dim">{words.common.loading}</p>;
  const newest = releases[0];
  if (newest === undefined)
    return (
      <div className="currents-body">
        <h2>{own.title}</h2>
        <p>{own.noRelease}</p>
        <Link href={revisionsAddress(bookId, "releases")}>{own.toReleases}</Link>
      </div>
    );
  const known = (asked: string | null): string | null =>
    asked === DRAFT || releases.some(({ name }) => name === asked) ? asked : null;
  const to = known(params.get("to")) ?? DRAFT;
  const asked = known(params.get("from"));
  const from = asked === null || asked === DRAFT ? newest.name : asked;
  const choose = (next: { readonly from?: string; readonly to?: string }): void =>
    setParams({ from, to, ...next }, { replace: true });
  const names = releases.map(({ name }) => ({ value: name, label: name }));
  return (
    <div className="currents-body">
      <div className="compare-head">
        <h2>{own.title}</h2>
        <NativeSelect
          label={own.from}
          value={from}
          data={names}
          onChange={(event) => choose({ from: event.currentTarget.value })}
        />
        <NativeSelect
          label={own.to}
          value={to}
          data={[{ value: DRAFT, label: own.draftOf(changeNo) }, ...names]}
          onChange={(event) => choose({ to: event.currentTarget.value })}
        />
      </div>
      {from === to ? <p>{own.same}</p> : <Compared key={`${from} ${to}`} from={from} to={to} />}
    </div>
  );
}
