import { Button, TextInput } from "@mantine/core";
import { IconHandMove } from "@tabler/icons-react";
import { useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { useMay, useSession } from "../session/session.tsx";
import { mmText } from "../wiring/number-text.ts";
import { useWords } from "../words.tsx";
import { PaperView } from "./paper-view.tsx";
import { PegOverlay, useNodeName } from "./peg-overlay.tsx";
import { usePegHand } from "./use-peg-hand.ts";
import { useSheet } from "./use-sheet.ts";
import "./pinboard.css";

type Node = ViewEntry<"pinboard">["nodes"][number];

/** The pinboard as it prints; its pegs and holders can be moved by hand. */
export function PinboardTab({ harnessId }: { readonly harnessId: string }) {
  const words = useWords().harnesses.pinboard;
  const mayMove = useMay("lead");
  const hand = usePegHand(harnessId);
  const figures = useView("harness", harnessId)?.get("");
  const wires = useView("harnessWires", harnessId);
  const board = useView("pinboard", harnessId)?.get("");
  const { sheet, stale } = useSheet(harnessId, "pinboard", [board, wires, figures?.label]);
  const [adjusting, setAdjusting] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  const [page] = sheet?.pages ?? [];
  if (page === undefined || figures === undefined) return <p className="dim">{words.drawing}</p>;
  const view =
    figures.board.kind === "unfolded"
      ? words.unfolded
      : figures.board.side === "under"
        ? words.planarUnder
        : words.planar;
  return (
    <div className="pinboard-tab">
      <PaperView
        label={words.view}
        widthMm={page.widthMm}
        heightMm={page.heightMm}
        svg={page.svg}
        anchor={adjusting && sheet?.origin ? { x: sheet.origin.xMm, y: sheet.origin.yMm } : null}
        faint={hand.tried !== null || (adjusting && stale)}
        tools={
          <>
            {mayMove && (
              <Button
                variant={adjusting ? "filled" : "default"}
                aria-pressed={adjusting}
                leftSection={<IconHandMove size={18} />}
                onClick={() => setAdjusting(!adjusting)}
              >
                {adjusting ? words.adjustDone : words.adjust}
              </Button>
            )}
            <span className="dim" role="status">
              {stale
                ? words.drawing
                : `${words.size(mmText(figures.board.widthMm), mmText(figures.board.heightMm))} · ${view}`}
            </span>
          </>
        }
      >
        {adjusting && sheet?.origin ? (
          <PegOverlay origin={sheet.origin} hand={hand} chosen={chosen} onChoose={setChosen} />
        ) : undefined}
      </PaperView>
      {adjusting && (
        <PegPanel
          harnessId={harnessId}
          nodes={hand.shape?.nodes ?? []}
          chosen={chosen}
          onChoose={setChosen}
          troubles={hand.tried?.troubles ?? null}
          letGo={hand.letGo}
        />
      )}
    </div>
  );
}

function PegPanel({
  harnessId,
  nodes,
  chosen,
  onChoose,
  troubles,
  letGo,
}: {
  readonly harnessId: string;
  readonly nodes: readonly Node[];
  readonly chosen: string | null;
  readonly onChoose: (nodeId: string) => void;
  readonly troubles: number | null;
  /** Ends what the hand was about to do. */
  readonly letGo: () => void;
}) {
  const words = useWords().harnesses.pinboard;
  const nameOf = useNodeName();
  const desk = useDesk();
  const node = nodes.find((one) => one.id === chosen);
  const pinned = nodes.filter((one) => one.pinned !== null);
  const free = async (nodeId: string | null, note: string) => {
    letGo();
    const changes = await desk.ask("unpinPegs", { harnessId, nodeId });
    await desk.edit(note, { kind: "changes", changes });
  };
  return (
    <aside className="peg-panel" aria-label={words.adjust}>
      <p className="dim">{words.adjustHint}</p>
      {node !== undefined && (
        <section>
          <h3>{nameOf(node)}</h3>
          <p>
            {words.place(mmText(node.at.xMm), mmText(node.at.yMm))}
            {troubles !== null && (
              <span className={troubles > 0 ? "amber-text" : "dim"}> · {words.troubles(troubles)}</span>
            )}
          </p>
          {node.pinned !== null && (
            <>
              <p className="dim">
                {words.pinned} {node.pinned.by !== "" && words.pinnedBy(node.pinned.by)}
              </p>
              <Reason key={`${node.id} ${node.pinned.reason}`} harnessId={harnessId} node={node} />
              <Button
                variant="default"
                fullWidth
                onClick={() => void free(node.id, words.freed(nameOf(node)))}
              >
                {words.freePeg}
              </Button>
            </>
          )}
        </section>
      )}
      <section>
        <h3>{words.pinned}</h3>
        {pinned.length === 0 && <p className="dim">{words.pinnedNone}</p>}
        <ul>
          {pinned.map((one) => (
            <li key={one.id}>
              <button type="button" aria-pressed={one.id === chosen} onClick={() => onChoose(one.id)}>
                {nameOf(one)}
                {one.pinned !== null && one.pinned.reason !== "" && (
                  <small className="dim">{one.pinned.reason}</small>
                )}
              </button>
            </li>
          ))}
        </ul>
        {pinned.length > 0 && (
          <Button variant="default" fullWidth onClick={() => void free(null, words.freedAll(harnessId))}>
            {words.freeAll}
          </Button>
        )}
      </section>
    </aside>
  );
}

/** Why a peg stands where a person put it. */
function Reason({ harnessId, node }: { readonly harnessId: string; readonly node: Node }) {
  const words = useWords().harnesses.pinboard;
  const nameOf = useNodeName();
  const desk = useDesk();
  const { status } = useSession();
  const before = node.pinned?.reason ?? "";
  const [reason, setReason] = useState(before);
  const keep = async () => {
    if (reason.trim() === before) return;
    const move = { harnessId, nodeId: node.id, xMm: node.at.xMm, yMm: node.at.yMm };
    const by = node.pinned?.by || (status.person?.name ?? "local");
    const changes = await desk.ask("pinPeg", { move, by, reason: reason.trim() });
    await desk.edit(words.reasoned(nameOf(node)), { kind: "changes", changes });
  };
  return (
    <TextInput
      label={words.reason}
      value={reason}
      maxLength={300}
      onChange={(event) => setReason(event.currentTarget.value)}
      onBlur={() => void keep()}
      onKeyDown={(event) => event.key === "Enter" && void keep()}
    />
  );
}
