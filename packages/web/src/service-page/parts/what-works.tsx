import type { FaultSession, Seen } from "@pinwright/engine";
import { useId, useMemo, useState } from "react";
import { useFaults } from "../host.ts";
import { GROUPS, type Group, type NamedFunction } from "../names.ts";
import { FunctionRow } from "./function-row.tsx";
import { LetterMode } from "./letter-mode.tsx";
import { PanelMaps } from "./panel-maps.tsx";

interface Props {
  readonly session: FaultSession;
  readonly say: (seen: Readonly<Record<string, Seen | null>>) => void;
}

type Way = "list" | "map" | "letter";
const WAYS: readonly Way[] = ["list", "map", "letter"];

/** What works and what does not: in a list, on a map, or from a letter. */
export function WhatWorks({ session, say }: Props) {
  const { words, names } = useFaults();
  const [way, setWay] = useState<Way>("list");
  const said = names.functions.filter(({ id }) => session.seen[id] !== undefined).length;
  const rest = names.functions.filter(({ id }) => session.seen[id] === undefined);
  return (
    <section className="ff-section" id="ff-say" aria-labelledby="ff-say-title">
      <h2 id="ff-say-title">{words.title}</h2>
      <p className="ff-dim">{words.intro}</p>
      <div className="ff-ways">
        {WAYS.map((one) => (
          <button key={one} type="button" aria-pressed={one === way} onClick={() => setWay(one)}>
            {words[one]}
          </button>
        ))}
        <span className="ff-count">{words.counts(said, names.functions.length)}</span>
      </div>
      {way === "list" && <FunctionList session={session} say={say} />}
      {way === "map" && <PanelMaps session={session} say={say} />}
      {way === "letter" && <LetterMode say={say} />}
      <p>
        <button
          type="button"
          className="ff-wide"
          disabled={rest.length === 0}
          onClick={() => say(Object.fromEntries(rest.map(({ id }) => [id, "works" as const])))}
        >
          {words.restWorks}
        </button>
      </p>
    </section>
  );
}

const matches = (one: NamedFunction, search: string): boolean =>
  search === "" || String(one.number) === search || one.name.toLowerCase().includes(search);

function FunctionList({ session, say }: Props) {
  const { words, names } = useFaults();
  const [search, setSearch] = useState("");
  const id = useId();
  const asked = search.trim().toLowerCase();
  const groups = useMemo(
    () =>
      GROUPS.map((group) => ({
        group,
        all: names.functions.filter((one) => one.group === group).toSorted(byNumber),
      })).filter(({ all }) => all.length > 0),
    [names],
  );
  const shown = groups.map(({ group, all }) => ({
    group,
    all,
    some: all.filter((one) => matches(one, asked)),
  }));
  return (
    <>
      <label className="ff-search" htmlFor={id}>
        <span>{words.search}</span>
        <input id={id} type="search" value={search} onChange={(event) => setSearch(event.target.value)} />
      </label>
      {shown.every(({ some }) => some.length === 0) && <p>{words.noMatch}</p>}
      {shown.map(
        ({ group, all, some }) =>
          some.length > 0 && (
            <details key={group} open={asked !== "" || groups.length === 1 || undefined} className="ff-group">
              <summary>
                {words.groups[group]} <small>{words.counts(saidOf(all, session), all.length)}</small>
              </summary>
              <RestWorks group={group} all={all} session={session} say={say} />
              <ul>
                {some.map((one) => (
                  <FunctionRow key={one.id} one={one} seen={session.seen[one.id] ?? null} say={say} />
                ))}
              </ul>
            </details>
          ),
      )}
    </>
  );
}

/** By number, then by name; what has none last. */
const byNumber = (p: NamedFunction, q: NamedFunction): number =>
  (p.number ?? Number.POSITIVE_INFINITY) - (q.number ?? Number.POSITIVE_INFINITY) ||
  p.name.localeCompare(q.name);

const saidOf = (all: readonly NamedFunction[], session: FaultSession): number =>
  all.filter(({ id }) => session.seen[id] !== undefined).length;

function RestWorks({
  group,
  all,
  session,
  say,
}: Props & { readonly group: Group; readonly all: readonly NamedFunction[] }) {
  const { words } = useFaults();
  const rest = all.filter(({ id }) => session.seen[id] === undefined);
  if (rest.length === 0) return null;
  return (
    <button
      type="button"
      onClick={() => say(Object.fromEntries(rest.map(({ id }) => [id, "works" as const])))}
    >
      {words.restWorksIn(words.groups[group])}
    </button>
  );
}
