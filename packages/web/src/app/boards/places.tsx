import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";

/** Where boards of a kind are, each leading to the drawing; the rest when asked for. */
export function Places({
  boards,
  most,
}: {
  readonly boards: ViewEntry<"boardRegister">["boards"];
  readonly most: number;
}) {
  const words = useWords();
  const own = words.boards;
  const pick = usePick();
  const { bookId } = useDesk();
  const [all, setAll] = useState(false);
  const shown = all || boards.length <= most + 1 ? boards : boards.slice(0, most);
  return (
    <ul className="board-places">
      {shown.map((board) => (
        <li key={board.id}>
          <Link
            href={`/b/${bookId}/layout/${encodeURIComponent(board.panelId)}/${board.side}?id=${encodeURIComponent(board.id)}`}
            title={board.id}
          >
            {pick(board.label, board.labelZh) || board.id}
          </Link>
          <small>
            {[
              pick(board.panel, board.panelZh) || board.panelId,
              words.common.side[board.side],
              ...(board.address === null ? [] : [own.address(board.address)]),
            ].join(", ")}
          </small>
        </li>
      ))}
      {shown.length < boards.length && (
        <li>
          <button type="button" className="link-button" onClick={() => setAll(true)}>
            {own.more(boards.length - shown.length)}
          </button>
        </li>
      )}
    </ul>
  );
}
