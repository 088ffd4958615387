import { Button } from "@mantine/core";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import { offcutsOf, stockAfter } from "./cut-rows.ts";
import type { Cutting } from "./use-cutting.ts";

/** Says that the sheets have been cut: those that were used leave the stock, the offcuts come in. One undo takes it back. */
export function KeepOffcuts({
  done,
  stock,
  onKept,
}: {
  readonly done: ReadonlyMap<string, Cutting>;
  readonly stock: ViewEntry<"cuttingBasis">["stock"];
  /** Hears how many offcuts were put into stock. */
  readonly onKept: (count: number) => void;
}) {
  const words = useWords();
  const own = words.panels;
  const desk = useDesk();
  const trouble = useTrouble();
  const mayEdit = useMay("lead");
  const [failed, setFailed] = useState("");
  const plans = [...done.values()];
  const count = plans.flatMap(offcutsOf).reduce((sum, one) => sum + one.count, 0);
  const sheets = plans.flatMap((plan) => plan.sheets).reduce((sum, { copies }) => sum + copies, 0);
  if (sheets === 0 || !mayEdit) return null;
  const keep = (): void => {
    setFailed("");
    desk.edit(own.keepNote(count, sheets), { kind: "put", ...stockAfter(stock, plans) }).then(
      () => onKept(count),
      (error: unknown) => setFailed(trouble(error)),
    );
  };
  return (
    <section className="keep-offcuts" aria-label={own.keepTitle}>
      <h3>{own.keepTitle}</h3>
      <p className="dim">{own.keepAbout}</p>
      <p>
        <Button variant="default" onClick={keep}>
          {count === 0 ? own.takeDo : own.keepDo(count)}
        </Button>{" "}
        <Link href={`/b/${desk.bookId}/tables/stock_sheets`}>{words.tableNames.tables.stock_sheets}</Link>
      </p>
      {failed !== "" && <p className="error-text">{failed}</p>}
    </section>
  );
}
