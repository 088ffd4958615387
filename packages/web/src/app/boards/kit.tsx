import { Link } from "wouter";
import { CountField } from "../book/count-field.tsx";
import { useDesk, useOne } from "../book/desk.tsx";
import { useAnswer } from "../book/use-answer.ts";
import { useAskedCount } from "../book/use-asked-count.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { partAddress } from "../parts/address.ts";
import { usePick, useWords } from "../words.tsx";

const USUAL_BOARDS = 40;
const MOST_BOARDS = 10_000;

/** What is laid out for a batch of boards of a kind. */
export function Kit({ typeId }: { readonly typeId: string }) {
  const own = useWords().boards;
  const pick = usePick();
  const { bookId } = useDesk();
  const [boards, setBoards] = useAskedCount("boards", USUAL_BOARDS, MOST_BOARDS);
  const basis = useOne("solderBasis", null);
  const { answer: kit, failed, isCurrent } = useAnswer("boardKitFor", { typeId, boards }, basis ?? null);
  const title = own.kitTitle(boards);
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      <div className="question">
        <CountField label={own.kitFor} value={boards} most={MOST_BOARDS} onCount={setBoards} />
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {kit != null && (
        <div className={isCurrent ? "" : "stale"}>
          <DataTable
            caption={title}
            rows={kit.lines}
            rowKey={(line) => line.partId}
            columns={[
              {
                key: "box",
                header: own.boxNo,
                value: (line) => line.box,
                cell: (line) => (line.box === 0 ? own.bareBox : line.box),
                align: "end",
              },
              {
                key: "part",
                header: own.part,
                value: (line) => pick(line.labels.en, line.labels.zh) || line.partId,
                cell: (line) => (
                  <>
                    <Link href={partAddress(bookId, line.partId)}>
                      {pick(line.labels.en, line.labels.zh) || line.partId}
                    </Link>
                    {line.value !== "" && !pick(line.labels.en, line.labels.zh).includes(line.value) && (
                      <small>{line.value}</small>
                    )}
                  </>
                ),
              },
              {
                key: "references",
                header: own.reference,
                value: (line) => line.references.join(" "),
                minor: true,
              },
              { key: "each", header: own.each, value: (line) => line.perBoard, align: "end", minor: true },
              { key: "needed", header: own.needed, value: (line) => line.needed, align: "end", minor: true },
              { key: "extra", header: own.extra, value: (line) => line.extra, align: "end", minor: true },
              {
                key: "total",
                header: own.total,
                value: (line) => line.total,
                cell: (line) => <b>{line.total}</b>,
                align: "end",
              },
              {
                key: "packs",
                header: own.packs,
                value: (line) =>
                  line.pack === null ? own.noPack : own.packOf(line.pack.packs, line.pack.size),
                cell: (line) =>
                  line.pack === null ? (
                    <span className="dim">{own.noPack}</span>
                  ) : (
                    own.packOf(line.pack.packs, line.pack.size)
                  ),
                align: "end",
                minor: true,
              },
            ]}
          />
        </div>
      )}
    </section>
  );
}
