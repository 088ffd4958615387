import { Button } from "@mantine/core";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { screwsAddress } from "../screws/use-screws-place.ts";
import { usePick, useWords } from "../words.tsx";
import type { Stage } from "./actions.ts";
import type { Side } from "./scene.ts";

type About = ViewEntry<"layoutAbout">;

/** Table of what is no thing on the drawing but has a row. */
const TABLES: Readonly<Record<string, string>> = { panel: "panels", net: "nets", harness: "harnesses" };
/** Kinds that Wiring tells of: what wires end on, and the wires themselves. */
const WIRED: ReadonlySet<string> = new Set(["item", "point", "landing", "net", "wire"]);

/** Where else the selected thing is looked at: in the other sections, and on the other sides that its wires run on. */
export function Elsewhere({
  about,
  table,
  stage,
  go,
}: {
  readonly about: About;
  /** Table of its row, when it is a thing on the drawing. */
  readonly table: string | null;
  readonly stage: Stage;
  readonly go: (panelId: string, side: Side, ids: readonly string[]) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const panels = useView("layoutPanels", null);
  const own = words.layout.chosen;
  const { id, kind } = about;
  const inTable = table ?? TABLES[kind] ?? null;
  const hasWires = about.wires.length > 0 || about.points.length > 0;
  const sides = about.runsOn.filter(({ panelId, side }) => panelId !== stage.panelId || side !== stage.side);
  const nameOf = (panelId: string, side: Side): string => {
    const panel = panels?.get(panelId);
    return `${panel === undefined ? panelId : pick(panel.label, panel.labelZh) || panelId}, ${words.common.side[side]}`;
  };
  return (
    <div className="elsewhere">
      {hasWires && WIRED.has(kind) && (
        <Link href={addressOf(bookId, { kind: "wire", id })}>{own.inWiring}</Link>
      )}
      {about.itemKind === "fastener" && (
        <Link href={screwsAddress(bookId, { screwId: id })}>{own.inScrews}</Link>
      )}
      {inTable !== null && (
        <Link href={`/b/${bookId}/tables/${inTable}?id=${encodeURIComponent(id)}`}>{own.inTable}</Link>
      )}
      {about.findings.length > 0 && (
        <Link href={`/b/${bookId}/findings?id=${encodeURIComponent(id)}`}>{own.inFindings}</Link>
      )}
      {sides.length > 0 && (
        <p>
          {own.runsOn}{" "}
          {sides.map(({ panelId, side }) => (
            <Button
              key={`${panelId} ${side}`}
              size="compact-sm"
              variant="subtle"
              onClick={() => go(panelId, side, [id])}
            >
              {nameOf(panelId, side)}
            </Button>
          ))}
        </p>
      )}
    </div>
  );
}
