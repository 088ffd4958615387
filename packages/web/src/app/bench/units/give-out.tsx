import { Button, NativeSelect, NumberInput } from "@mantine/core";
import { UNIT_KINDS, type UnitKind } from "@pinwright/contract";
import { type FormEvent, useId, useMemo, useState } from "react";
import { call } from "../../../api/call.ts";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useOne, useView } from "../../book/desk.tsx";
import { useSession } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";
import { usePick, useWords } from "../../words.tsx";
import { LabelSheets } from "../sheets/label-sheets.tsx";

type Option = ViewEntry<"planGround">["options"][number];

/** Most numbers that are given out at once. */
const MOST = 1000;

/** Options that exclude each other; those of no kind stand by themselves. */
function kindsOf(options: readonly Option[]): readonly (readonly [string, readonly Option[]])[] {
  const kinds = new Map<string, Option[]>();
  for (const option of options) {
    const name = option.kind === "" ? option.id : option.kind;
    kinds.set(name, [...(kinds.get(name) ?? []), option]);
  }
  return [...kinds];
}

/**
 * The options that a unit is begun with: none when nothing but the usual was picked, which says just that; else all of
 * them, the usual ones of the other kinds included.
 */
function optionsOf(options: readonly Option[], picked: ReadonlyMap<string, string>): string[] {
  const isPicked = [...picked.values()].some((id) => id !== "");
  if (!isPicked) return [];
  return kindsOf(options).flatMap(([kind, all]) => {
    const id = picked.get(kind) ?? "";
    return id === "" ? all.filter(({ isUsual }) => isUsual).map((option) => option.id) : [id];
  });
}

/** Gives out serial numbers. */
export function GiveOut({
  given,
  close,
}: {
  /** Called when numbers were given out. */
  readonly given: () => void;
  readonly close: () => void;
}) {
  const { benchUnits } = useWords();
  const own = benchUnits.give;
  const pick = usePick();
  const trouble = useTrouble();
  const { bookId } = useDesk();
  const { status } = useSession();
  const types = useView("floorTypes", null);
  const runs = useView("runs", null);
  const ground = useOne("planGround", null);
  const [what, setWhat] = useState<UnitKind>("machine");
  const [asked, setType] = useState("");
  const [run, setRun] = useState("");
  const [count, setCount] = useState(1);
  const [picked, setPicked] = useState<ReadonlyMap<string, string>>(new Map());
  const [isAt, setAt] = useState(false);
  const [said, setSaid] = useState("");
  const [made, setMade] = useState<readonly string[]>([]);
  const [failed, setFailed] = useState("");
  const title = useId();
  const ofKind = useMemo(
    () => [...(types?.values() ?? [])].filter((type) => type.what === what),
    [types, what],
  );
  const type = ofKind.find(({ id }) => id === asked)?.id ?? ofKind[0]?.id ?? "";
  const options = ground?.options ?? [];
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setAt(true);
    setFailed("");
    setSaid("");
    call("addUnits", {
      parts: {},
      body: {
        ...{ book: bookId, what, type, count, options: optionsOf(options, picked) },
        ...(run === "" ? {} : { run }),
      },
      token: status.token,
    })
      .then(
        (units) => {
          const [first, last] = [units[0]?.unit ?? "", units.at(-1)?.unit ?? ""];
          setSaid(own.given(first, last, units.length));
          setMade(units.map(({ unit }) => unit));
          given();
        },
        (error: unknown) => setFailed(trouble(error)),
      )
      .finally(() => setAt(false));
  };
  return (
    <form className="bench-form" onSubmit={submit} aria-labelledby={title}>
      <h3 id={title}>{own.title}</h3>
      <div className="bench-fields">
        <NativeSelect
          label={own.what}
          value={what}
          data={UNIT_KINDS.map((kind) => ({ value: kind, label: benchUnits.oneKind[kind] }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            setWhat(UNIT_KINDS.find((kind) => kind === value) ?? "machine");
          }}
        />
        <NativeSelect
          label={benchUnits.type}
          value={type}
          data={ofKind.map(({ id, label, labelZh }) => ({ value: id, label: pick(label, labelZh) || id }))}
          onChange={(event) => setType(event.currentTarget.value)}
        />
        <NativeSelect
          label={benchUnits.run}
          value={run}
          data={[
            { value: "", label: own.noRun },
            ...[...(runs?.values() ?? [])]
              .filter(({ isOfBook, state }) => isOfBook && state !== "done")
              .map(({ id, label, labelZh }) => ({ value: id, label: pick(label, labelZh) || id })),
          ]}
          onChange={(event) => setRun(event.currentTarget.value)}
        />
        {kindsOf(options).map(([kind, all]) => (
          <NativeSelect
            key={kind}
            label={`${own.options}: ${kind}`}
            value={picked.get(kind) ?? ""}
            data={[
              { value: "", label: `(${own.usual})` },
              ...all.map((option) => ({
                value: option.id,
                label: `${pick(option.label, option.labelZh) || option.id}${option.isUsual ? ` (${own.usual})` : ""}`,
              })),
            ]}
            onChange={(event) => setPicked(new Map([...picked, [kind, event.currentTarget.value]]))}
          />
        ))}
        <NumberInput
          label={own.count}
          min={1}
          max={MOST}
          allowDecimal={false}
          value={count}
          onChange={(to) => setCount(Number(to))}
        />
      </div>
      {types !== null && ofKind.length === 0 && <p>{own.noType}</p>}
      <p className="dim">{own.onceOnly}</p>
      <div className="bench-buttons">
        <Button type="submit" loading={isAt} disabled={type === "" || !(count >= 1 && count <= MOST)}>
          {own.do(count)}
        </Button>
        <Button variant="default" onClick={close}>
          {own.close}
        </Button>
        <span role="status">{said}</span>
      </div>
      {made.length > 0 && <LabelSheets book={bookId} units={made} />}
      {failed !== "" && <p className="error-text">{failed}</p>}
    </form>
  );
}
