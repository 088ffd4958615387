import { Checkbox, NumberInput } from "@mantine/core";
import { Link } from "wouter";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { boardAddress } from "./address.ts";

const MOST_BOARDS = 100_000;

/** The kinds of board of a session with their counts, each to be left out or counted otherwise. */
export function SessionTable({
  kinds,
  counts,
  usual,
  setCount,
  setAll,
  bathTypeIds,
  register,
}: {
  readonly kinds: AskAnswer<"soldering">["kinds"];
  readonly counts: ReadonlyMap<string, number>;
  /** What so many machines have. */
  readonly usual: ReadonlyMap<string, number>;
  /** null: as many as the machines have. */
  readonly setCount: (typeId: string, count: number | null) => void;
  /** Every kind as often as the machines have it, or none. */
  readonly setAll: (all: boolean) => void;
  /** Kinds that go into the bath when it is lit. */
  readonly bathTypeIds: readonly string[];
  readonly register: Entries<"boardRegister">;
}) {
  const { boards: words, prints } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const places = new Map([...register.keys()].map((typeId, i) => [typeId, i]));
  const inOrder = (a: { readonly typeId: string }, b: { readonly typeId: string }): number =>
    (places.get(a.typeId) ?? 0) - (places.get(b.typeId) ?? 0);
  return (
    <DrawingScroll>
      <p className="times-head">
        {(["all", "none"] as const).map((which) => (
          <button key={which} type="button" className="link-button" onClick={() => setAll(which === "all")}>
            {prints[which]}
          </button>
        ))}
      </p>
      <table className="plain session-table">
        <caption className="visually-hidden">{words.session}</caption>
        <thead>
          <tr>
            <th scope="col">{words.kind}</th>
            <th scope="col">{words.boardCount}</th>
            <th scope="col">{words.way}</th>
            <th scope="col" className="end">
              {words.alone}
            </th>
          </tr>
        </thead>
        <tbody>
          {kinds.toSorted(inOrder).map(({ typeId, aloneFrom }) => {
            const kind = register.get(typeId);
            const name = kind === undefined ? typeId : pick(kind.label, kind.labelZh) || typeId;
            const count = counts.get(typeId) ?? 0;
            return (
              <tr key={typeId} className={count === 0 ? "dim" : ""}>
                <th scope="row">
                  <span className="session-kind">
                    <Checkbox
                      aria-label={name}
                      checked={count > 0}
                      onChange={(event) => setCount(typeId, event.currentTarget.checked ? null : 0)}
                    />
                    <Link href={boardAddress(bookId, typeId)}>{name}</Link>
                  </span>
                </th>
                <td>
                  <NumberInput
                    aria-label={words.countOf(name)}
                    min={0}
                    max={MOST_BOARDS}
                    allowDecimal={false}
                    value={count}
                    onChange={(value) => {
                      const next = Math.round(Number(value));
                      if (value === "" || !(next >= 0 && next <= MOST_BOARDS) || next === count) return;
                      setCount(typeId, next === usual.get(typeId) ? null : next);
                    }}
                  />
                </td>
                <td>{count === 0 ? "–" : bathTypeIds.includes(typeId) ? words.inBath : words.byHand}</td>
                <td className="end">{aloneFrom === null ? words.never : words.boardsOf(aloneFrom)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </DrawingScroll>
  );
}
