import { Button, NativeSelect, TextInput } from "@mantine/core";
import { type FormEvent, useId, useMemo, useState } from "react";
import { call } from "../../../api/call.ts";
import { useView } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { useAsked } from "../use-asked.ts";
import { isAsked, queryOf, type TraceField, type TraceQuery } from "./trace-query.ts";

interface Offer {
  readonly value: string;
  readonly label: string;
}

/** What is looked for; whatever is filled in must all hold. */
export function TraceForm({
  query,
  find,
}: {
  readonly query: TraceQuery;
  readonly find: (query: TraceQuery) => void;
}) {
  const { benchTrace: own, benchUnits } = useWords();
  const pick = usePick();
  const names = useView("benchNames", null);
  const types = useView("floorTypes", null);
  const people = useAsked("people", (signal) => call("personNames", { parts: {}, signal }), "once");
  const instruments = useAsked("instruments", (signal) => call("instruments", { parts: {}, signal }), "once");
  const [typed, setTyped] = useState(query);
  const parts = useMemo(
    () =>
      [...(names ?? [])].flatMap(([key, { id, label, labelZh }]) =>
        key.startsWith("part ") ? [{ value: id, label: pick(label, labelZh) }] : [],
      ),
    [names, pick],
  );
  const set = (field: TraceField, value: string): void => setTyped({ ...typed, [field]: value });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    find(typed);
  };
  const text = (field: TraceField, offers: readonly Offer[] = []) => (
    <Offered label={own[field]} value={typed[field]} offers={offers} set={(value) => set(field, value)} />
  );
  return (
    <search>
      <form onSubmit={submit}>
        <div className="bench-fields">
          {text("part", parts)}
          {text("lot")}
          <NativeSelect
            label={own.type}
            value={typed.type}
            data={[
              { value: "", label: benchUnits.all },
              ...[...(types?.values() ?? [])].map(({ id, label, labelZh, what }) => ({
                value: id,
                label: `${pick(label, labelZh) || id} (${benchUnits.oneKind[what]})`,
              })),
            ]}
            onChange={(event) => set("type", event.currentTarget.value)}
          />
          {text("revision")}
          <NativeSelect
            label={own.person}
            value={typed.person}
            data={[
              { value: "", label: own.anyone },
              ...(people.answer ?? []).map(({ id, name }) => ({ value: id, label: name })),
            ]}
            onChange={(event) => set("person", event.currentTarget.value)}
          />
          {text(
            "instrument",
            (instruments.answer ?? []).map(({ id, label }) => ({ value: id, label })),
          )}
          <TextInput
            type="date"
            label={own.from}
            value={typed.from}
            onChange={(event) => set("from", event.currentTarget.value)}
          />
          <TextInput
            type="date"
            label={own.to}
            value={typed.to}
            onChange={(event) => set("to", event.currentTarget.value)}
          />
        </div>
        <div className="bench-buttons">
          <Button type="submit" disabled={!isAsked(typed)}>
            {own.find}
          </Button>
          {isAsked(query) && (
            <Button variant="default" onClick={() => find(queryOf(new URLSearchParams()))}>
              {own.clear}
            </Button>
          )}
        </div>
      </form>
    </search>
  );
}

/** A text with what is known to choose from; anything else can be typed. */
function Offered({
  label,
  value,
  offers,
  set,
}: {
  readonly label: string;
  readonly value: string;
  readonly offers: readonly Offer[];
  readonly set: (value: string) => void;
}) {
  const list = useId();
  return (
    <>
      <TextInput
        label={label}
        value={value}
        list={offers.length === 0 ? undefined : list}
        onChange={(event) => set(event.currentTarget.value)}
      />
      {offers.length > 0 && (
        <datalist id={list}>
          {offers.map((offer) => (
            <option key={offer.value} value={offer.value}>
              {offer.label}
            </option>
          ))}
        </datalist>
      )}
    </>
  );
}
