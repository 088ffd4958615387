import { Button, Select } from "@mantine/core";
import { useState } from "react";
import { Link, useLocation } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { WiringLink } from "../links.tsx";
import { LadderDrawing } from "./ladder-drawing.tsx";
import { foldedAtFirst } from "./ladder-rows.ts";
import { TabEmpty, TabHead } from "./tab-head.tsx";
import { useCurrents } from "./use-currents.ts";

type Ladder = ViewEntry<"electricLadder">;

/** The ladder of a net or supply: every point from the supply to each load and back, with its volts. */
export function LadderTab({ id }: { readonly id: string | null }) {
  const { electric: words, common } = useWords();
  const pick = usePick();
  const [, go] = useLocation();
  const address = useCurrents();
  const supplies = useView("electricSupplies", null);
  const nets = useView("nets", null);
  const ladders = useView("electricLadder", id ?? "");
  if (supplies === null || nets === null) return <p className="dim">{common.loading}</p>;
  if (supplies.size === 0) return <TabEmpty tab="supplies" table="supplies" />;
  const named = (one: {
    readonly id: string;
    readonly label: { readonly en: string; readonly zh: string };
  }) => ({
    value: one.id,
    label: [one.id, pick(one.label.en, one.label.zh)].filter(Boolean).join(" · "),
  });
  return (
    <>
      <TabHead tab="ladder" />
      <Select
        label={words.ladder.choose}
        searchable
        limit={60}
        maw={420}
        value={id}
        data={[
          { group: words.tabs.supplies, items: [...supplies.values()].map(named) },
          { group: words.col.net, items: [...nets.values()].map(named) },
        ]}
        onChange={(value) => value !== null && go(address("ladder", value))}
      />
      {id === null && <p className="dim">{words.empty.ladder}</p>}
      {id !== null && ladders === null && <p className="dim">{common.loading}</p>}
      {id !== null && ladders?.size === 0 && <p>{words.ladder.none}</p>}
      {[...(ladders ?? [])].map(([supplyId, ladder]) => (
        <OneLadder key={`${id} ${supplyId}`} netId={nets.has(id ?? "") ? id : null} ladder={ladder} />
      ))}
    </>
  );
}

function OneLadder({ netId, ladder }: { readonly netId: string | null; readonly ladder: Ladder }) {
  const words = useWords().electric;
  const pick = usePick();
  const address = useCurrents();
  const { supply, out, back } = ladder;
  const name = pick(supply.label.en, supply.label.zh) || supply.id;
  return (
    <section>
      <h3>
        <Link href={address("supplies", supply.id)}>{name}</Link>{" "}
        <span className="dim">{words.ladder.loads(out[0]?.below ?? 0)}</span>
        {netId !== null && (
          <>
            {" · "}
            {words.col.net} <WiringLink id={netId} />
          </>
        )}
      </h3>
      <p className="dim">{words.ladder.hint}</p>
      <Tree title={words.ladder.out} name={name} points={out} isBack={false} />
      <Tree title={words.ladder.back} name={name} points={back} isBack />
    </section>
  );
}

function Tree({
  title,
  name,
  points,
  isBack,
}: {
  readonly title: string;
  readonly name: string;
  readonly points: Ladder["out"];
  readonly isBack: boolean;
}) {
  const words = useWords().electric;
  const [folded, setFolded] = useState(() => foldedAtFirst(points));
  const toggle = (point: number) =>
    setFolded(new Set(folded.has(point) ? [...folded].filter((one) => one !== point) : [...folded, point]));
  return (
    <>
      <h4>
        {title}{" "}
        {folded.size > 0 && (
          <Button variant="subtle" size="compact-sm" onClick={() => setFolded(new Set())}>
            {words.ladder.unfoldAll}
          </Button>
        )}
      </h4>
      <LadderDrawing
        label={`${words.ladder.drawing(name)}: ${title}`}
        points={points}
        folded={folded}
        toggle={toggle}
        isBack={isBack}
      />
    </>
  );
}
