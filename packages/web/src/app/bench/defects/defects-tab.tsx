import { NativeSelect } from "@mantine/core";
import { type KeptDefect, UNIT_KINDS } from "@pinwright/contract";
import { useMemo } from "react";
import { useSearchParams } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { useAsked } from "../use-asked.ts";
import { DefectList } from "./defect-list.tsx";
import { inOrder, keyOf, PARETO_BYS, type ParetoBy } from "./keys.ts";
import { Pareto } from "./pareto.tsx";
import { PlaceMap } from "./place-map.tsx";
import { ProblemOfDefects } from "./problem-of-defects.tsx";
import { SPANS, type Span, spanQuery } from "./span.ts";
import { useKeyName } from "./use-key-name.ts";
import { Yields } from "./yields.tsx";
import "./defects.css";

/** What went wrong, how often and where, and how much comes through at the first try. */
export default function DefectsTab() {
  const { benchQuality: own, benchUnits } = useWords();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const span: Span = SPANS.find((one) => one === params.get("time")) ?? "month";
  const kind = UNIT_KINDS.find((one) => one === params.get("kind")) ?? "";
  const by: ParetoBy = PARETO_BYS.find((one) => one === params.get("by")) ?? "what";
  const only = params.get("only");
  const put = (changed: Readonly<Record<string, string | null>>): void =>
    setParams(
      (before) => {
        const next = new URLSearchParams(before);
        for (const [name, value] of Object.entries(changed))
          if (value === null || value === "") next.delete(name);
          else next.set(name, value);
        return next;
      },
      { replace: true },
    );
  const query = { book: bookId, ...spanQuery(span, Date.now()) };
  const key = JSON.stringify(query);
  const defects = useAsked(`defects ${key}`, (signal) => call("defects", { parts: {}, query, signal }));
  const passes = useAsked(`passes ${key}`, (signal) => call("passes", { parts: {}, query, signal }));
  const ofKind = useMemo(
    () => (defects.answer?.defects ?? []).filter(({ what }) => kind === "" || what === kind),
    [defects.answer, kind],
  );
  return (
    <div className="currents-body quality">
      <h2>{own.defects.title}</h2>
      <p>{own.defects.about}</p>
      <search className="quality-fields">
        <NativeSelect
          label={own.span}
          value={span}
          data={SPANS.map((value) => ({ value, label: own.spans[value] }))}
          onChange={(event) => put({ time: event.currentTarget.value })}
        />
        <NativeSelect
          label={own.kind}
          value={kind}
          data={[
            { value: "", label: own.allKinds },
            ...UNIT_KINDS.map((value) => ({ value, label: benchUnits.kinds[value] })),
          ]}
          onChange={(event) => put({ kind: event.currentTarget.value, only: null })}
        />
      </search>
      <Failure asked={defects} />
      {defects.answer !== undefined && (
        <>
          <Found
            all={defects.answer.all}
            asked={defects.answer.defects.length}
            defects={ofKind}
            isAll={span === "all" && kind === ""}
            only={only === null ? null : { by, key: only }}
            showAll={() => put({ only: null })}
          />
          {ofKind.length > 0 && (
            <>
              <Pareto
                defects={ofKind}
                by={by}
                setBy={(to) => put({ by: to, only: null })}
                only={only}
                pick={(to) => put({ by, only: to })}
              />
              <PlaceMap defects={ofKind} />
            </>
          )}
        </>
      )}
      <Failure asked={passes} />
      {passes.answer !== undefined && <Yields passes={passes.answer} kind={kind} defects={ofKind.length} />}
    </div>
  );
}

/** Why the server did not answer, with the way to ask again. */
function Failure({ asked }: { readonly asked: { readonly failed: string; readonly again: () => void } }) {
  const { common } = useWords();
  if (asked.failed === "") return null;
  return (
    <p className="error-text" role="alert">
      {asked.failed}{" "}
      <button type="button" className="link-button" onClick={asked.again}>
        {common.retry}
      </button>
    </p>
  );
}

/** The defects, those of one bar of the Pareto if one was picked. */
function Found({
  all,
  asked,
  defects,
  isAll,
  only,
  showAll,
}: {
  readonly all: number;
  readonly asked: number;
  readonly defects: readonly KeptDefect[];
  /** Whether there is no defect at all if there is none here. */
  readonly isAll: boolean;
  readonly only: { readonly by: ParetoBy; readonly key: string } | null;
  readonly showAll: () => void;
}) {
  const { defects: own } = useWords().benchQuality;
  const nameOf = useKeyName();
  const shown = useMemo(
    () => inOrder(defects.filter((one) => only === null || keyOf(one, only.by) === only.key)),
    [defects, only],
  );
  if (defects.length === 0)
    return isAll ? (
      <p>
        {own.empty} {own.emptyHow}
      </p>
    ) : (
      <p>{own.none}</p>
    );
  const open = shown.filter(({ mended }) => mended === null).length;
  return (
    <>
      <p role="status">
        {own.counts(open, shown.length - open)}
        {only !== null && (
          <>
            {" · "}
            {own.only(nameOf(only.by, only.key))}{" "}
            <button type="button" className="link-button" onClick={showAll}>
              {own.showAll}
            </button>
          </>
        )}
      </p>
      {all > asked && <p className="amber-text">{own.some(asked, all)}</p>}
      <ProblemOfDefects defects={shown} name={only === null ? "" : nameOf(only.by, only.key)} />
      <DefectList defects={shown} />
    </>
  );
}
