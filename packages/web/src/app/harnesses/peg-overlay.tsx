import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useWords } from "../words.tsx";
import { HANDLE } from "./use-pan-zoom.ts";
import type { PegHand } from "./use-peg-hand.ts";

type BoardShape = ViewEntry<"pinboard">;
type BoardNode = BoardShape["nodes"][number];

/** How long the keyboard may pause before a peg that it moved is put down. */
const KEY_REST_MS = 700;
const HANDLE_PROPS = { [HANDLE]: "" };

/** What a peg or holder is called. */
export function useNodeName(): (node: Pick<BoardNode, "id" | "isHolder">) => string {
  const words = useWords().harnesses.pinboard;
  return ({ id, isHolder }) => (isHolder ? words.holder(id.slice("landing:".length)) : words.peg(id));
}

/** Handles on the pegs and holders of a board; while one is carried, the whole board in lines. */
export function PegOverlay({
  origin,
  hand,
  chosen,
  onChoose,
}: {
  /** Lower left corner of the board on the page. */
  readonly origin: { readonly xMm: number; readonly yMm: number };
  readonly hand: PegHand;
  readonly chosen: string | null;
  readonly onChoose: (nodeId: string) => void;
}) {
  const nameOf = useNodeName();
  const words = useWords().harnesses.pinboard;
  const group = useRef<SVGGElement>(null);
  const carried = useRef<string | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  /** Puts down what the keyboard holds; null when it holds nothing. */
  const putDown = useRef<(() => void) | null>(null);
  useEffect(
    () => () => {
      clearTimeout(timer.current);
      putDown.current?.();
    },
    [],
  );
  const { shape } = hand;
  if (shape === undefined) return null;

  const boardPlace = (event: PointerEvent): DOMPoint | null => {
    const matrix = group.current?.getScreenCTM();
    return matrix ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse()) : null;
  };
  const down = (event: PointerEvent, node: BoardNode): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    carried.current = node.id;
    onChoose(node.id);
  };
  const move = (event: PointerEvent): void => {
    const at = boardPlace(event);
    if (carried.current !== null && at !== null) hand.carry(carried.current, at.x, at.y);
  };
  const up = (node: BoardNode): void => {
    if (carried.current === null) return;
    carried.current = null;
    void hand.drop(words.moved(nameOf(node)));
  };
  const pressed = (event: KeyboardEvent, node: BoardNode): void => {
    const step = event.shiftKey ? 10 : 1;
    const by: readonly [number, number] | undefined = (
      { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] } as const
    )[event.key];
    if (event.key === "Escape") hand.letGo();
    if (by === undefined) return;
    event.preventDefault();
    onChoose(node.id);
    hand.carry(node.id, node.at.xMm + by[0], node.at.yMm + by[1]);
    clearTimeout(timer.current);
    putDown.current = () => {
      putDown.current = null;
      void hand.drop(words.moved(nameOf(node)));
    };
    timer.current = setTimeout(() => putDown.current?.(), KEY_REST_MS);
  };

  return (
    <g ref={group} className="pegs" transform={`translate(${origin.xMm} ${origin.yMm}) scale(1 -1)`}>
      {hand.tried !== null && <BoardLines shape={shape} />}
      {shape.nodes
        .filter((node) => node.peg || node.isHolder || node.pinned !== null)
        .map((node) => (
          // biome-ignore lint/a11y/useSemanticElements: a place in a drawing has no element of its own
          <g
            key={node.id}
            {...HANDLE_PROPS}
            role="button"
            tabIndex={0}
            aria-label={`${nameOf(node)}${node.pinned === null ? "" : `, ${words.pinned}`}`}
            aria-pressed={chosen === node.id}
            className="handle"
            data-pinned={node.pinned === null ? undefined : ""}
            transform={`translate(${node.at.xMm} ${node.at.yMm})`}
            onPointerDown={(event) => down(event, node)}
            onPointerMove={move}
            onPointerUp={() => up(node)}
            onPointerCancel={() => {
              carried.current = null;
              hand.letGo();
            }}
            onKeyDown={(event) => pressed(event, node)}
            onFocus={() => onChoose(node.id)}
          >
            <circle className="grasp" />
            <circle className="knob" />
          </g>
        ))}
    </g>
  );
}

function BoardLines({ shape }: { readonly shape: BoardShape }) {
  return (
    <g>
      <rect className="board-edge" width={shape.widthMm} height={shape.heightMm} />
      {shape.branches.map((branch) => (
        <polyline
          key={branch.id}
          className="board-branch"
          strokeWidth={Math.max(1, branch.laidMm)}
          points={branch.line.map((p) => `${p.xMm},${p.yMm}`).join(" ")}
        />
      ))}
      {shape.holders.map((holder) => (
        <rect
          key={holder.landingId}
          className="board-holder"
          x={-holder.depthMm}
          y={-holder.widthMm / 2}
          width={holder.depthMm}
          height={holder.widthMm}
          transform={`translate(${holder.at.xMm} ${holder.at.yMm}) rotate(${holder.towardDeg})`}
        />
      ))}
    </g>
  );
}
