import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { SectionFindings } from "../findings/section-findings.tsx";
import { DataTable } from "../harnesses/data-table.tsx";
import { SheetLinks } from "../sheets/sheet-links.tsx";
import { usePick, useWords } from "../words.tsx";
import { boardAddress } from "./address.ts";
import { Places } from "./places.tsx";

type Kind = ViewEntry<"boardRegister">;

/** Places that are named in a row; a kind may be there a dozen times. */
const SHOWN_PLACES = 3;

/** Every kind of board with its revision, places, count and purpose. */
export function RegisterTab({
  register,
  findings,
}: {
  readonly register: Entries<"boardRegister">;
  readonly findings: Entries<"boardFindings">;
}) {
  const words = useWords();
  const own = words.boards;
  const pick = usePick();
  const { bookId } = useDesk();
  const kinds = [...register.values()];
  const tables = (
    <p className="way-links">
      {(["board_types", "boards", "placements", "tests"] as const).map((table) => (
        <Link key={table} href={`/b/${bookId}/tables/${table}`}>
          {words.tableNames.tables[table]}
        </Link>
      ))}
    </p>
  );
  if (kinds.length === 0)
    return (
      <>
        <h2>{words.shell.sections.boards}</h2>
        <p>{own.empty}</p>
        {tables}
      </>
    );
  const boards = kinds.reduce((sum, kind) => sum + kind.boards.length, 0);
  const joints = kinds.reduce((sum, kind) => sum + kind.boards.length * kind.joints, 0);
  const name = (kind: Kind): string => pick(kind.label, kind.labelZh) || kind.typeId;
  const placeText = (kind: Kind): string =>
    kind.boards.map((board) => pick(board.label, board.labelZh) || board.id).join(", ");
  return (
    <>
      <h2>{own.registerTitle}</h2>
      <p className="dim">{own.registerAbout(kinds.length, boards, joints)}</p>
      <DataTable
        caption={own.registerTitle}
        rows={kinds}
        rowKey={(kind) => kind.typeId}
        columns={[
          {
            key: "kind",
            header: own.kind,
            value: name,
            cell: (kind) => (
              <>
                <Link href={boardAddress(bookId, kind.typeId)}>{name(kind)}</Link>
                <small>{kind.typeId}</small>
              </>
            ),
          },
          { key: "revision", header: own.revision, value: (kind) => kind.revision },
          { key: "count", header: own.count, value: (kind) => kind.boards.length, align: "end" },
          {
            key: "place",
            header: own.place,
            value: placeText,
            cell: (kind) => <Places boards={kind.boards} most={SHOWN_PLACES} />,
          },
          {
            key: "purpose",
            header: own.purpose,
            value: (kind) => pick(kind.purposes.en, kind.purposes.zh),
            minor: true,
          },
          { key: "comes", header: own.comes, value: (kind) => own.comesHow[kind.comes], minor: true },
          {
            key: "parts",
            header: own.parts,
            value: (kind) => kind.placements,
            cell: (kind) => (kind.placements === 0 ? "–" : kind.placements),
            align: "end",
            minor: true,
          },
          {
            key: "joints",
            header: own.joints,
            value: (kind) => kind.joints,
            cell: (kind) => (kind.joints === 0 ? "–" : kind.joints),
            align: "end",
            minor: true,
          },
          {
            key: "tests",
            header: own.tests,
            value: (kind) => kind.tests,
            cell: (kind) =>
              kind.tests === 0 ? <span className="amber-text">{own.noTests}</span> : kind.tests,
            align: "end",
            minor: true,
          },
        ]}
      />
      {tables}
      <SheetLinks title={own.print} kinds={["board-register", "stuffing-guide", "board-kit", "board-test"]} />
      <h3>{own.findings}</h3>
      <SectionFindings findings={findings} none={own.noFindings} />
    </>
  );
}
