import { NativeSelect, TextInput } from "@mantine/core";
import { UNIT_KINDS, type UnitSummary } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import { useMemo } from "react";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { NONE, type UnitFilter } from "./filter.ts";
import { STATES } from "./hold.ts";

interface Choice {
  readonly value: string;
  readonly label: string;
}

/** What units can be picked out by. */
export function UnitFilters({
  units,
  filter,
  set,
}: {
  readonly units: readonly UnitSummary[];
  readonly filter: UnitFilter;
  readonly set: (filter: UnitFilter) => void;
}) {
  const { benchUnits: own } = useWords();
  const names = useNames();
  const ofKind = useMemo(
    () => units.filter(({ what }) => filter.kind === "" || what === filter.kind),
    [units, filter.kind],
  );
  const types = useMemo(() => {
    const found = new Map(ofKind.map(({ what, type }) => [type, names.type(what, type)]));
    return choices(found);
  }, [ofKind, names]);
  const runs = useMemo(
    () => choices(new Map(units.map(({ run }) => [run, names.run(run)])), own.noRun),
    [units, names, own],
  );
  const sites = useMemo(
    () => choices(new Map(units.map(({ site }) => [site, names.site(site)])), own.noSite),
    [units, names, own],
  );
  const select = (label: string, value: string, all: readonly Choice[], pick: (to: string) => void) => (
    <NativeSelect
      label={label}
      value={value}
      data={[{ value: "", label: own.all }, ...all]}
      onChange={(event) => pick(event.currentTarget.value)}
    />
  );
  return (
    <search className="bench-filters">
      <TextInput
        label={own.search}
        value={filter.text}
        onChange={(event) => set({ ...filter, text: event.currentTarget.value })}
      />
      {select(
        own.kind,
        filter.kind,
        UNIT_KINDS.map((kind) => ({ value: kind, label: own.kinds[kind] })),
        (to) => set({ ...filter, kind: UNIT_KINDS.find((kind) => kind === to) ?? "", type: "" }),
      )}
      {select(own.type, filter.type, types, (type) => set({ ...filter, type }))}
      {select(own.run, filter.run, runs, (run) => set({ ...filter, run }))}
      {select(
        own.state,
        filter.state,
        STATES.map((state) => ({ value: state, label: own.states[state] })),
        (to) => set({ ...filter, state: STATES.find((state) => state === to) ?? "" }),
      )}
      {select(own.site, filter.site, sites, (site) => set({ ...filter, site }))}
    </search>
  );
}

/** Values with their names, by name; the blank one last. */
function choices(found: ReadonlyMap<string, string>, none = ""): readonly Choice[] {
  const named = [...found].filter(([value]) => value !== "");
  return [
    ...named.map(([value, label]) => ({ value, label })).sort((a, b) => compareText(a.label, b.label)),
    ...(found.has("") ? [{ value: NONE, label: none }] : []),
  ];
}
