import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { SectionFindings } from "../findings/section-findings.tsx";
import { partAddress } from "../parts/address.ts";
import { SheetLinks } from "../sheets/sheet-links.tsx";
import { usePick, useWords } from "../words.tsx";
import { tabAddress } from "./address.ts";
import { Kit } from "./kit.tsx";
import { Places } from "./places.tsx";
import { Stuffing } from "./stuffing.tsx";
import { TestTable } from "./test-table.tsx";

/** One kind of board: what it is for, how it is stuffed, its kit, its tests and where it is. */
export function BoardPage({
  typeId,
  kind,
  findings,
}: {
  readonly typeId: string;
  readonly kind: ViewEntry<"boardRegister"> | undefined;
  readonly findings: Entries<"boardFindings">;
}) {
  const words = useWords();
  const own = words.boards;
  const pick = usePick();
  const { bookId } = useDesk();
  const face = useOne("boardPlacements", { typeId });
  const tests = useView("boardTests", null);
  const back = (
    <p>
      <Link href={tabAddress(bookId, "register")}>{own.toRegister}</Link>
    </p>
  );
  if (kind === undefined)
    return (
      <>
        <h2>{own.noSuchKind(typeId)}</h2>
        {back}
      </>
    );
  if (face === undefined || tests === null) return <p className="dim">{words.common.loading}</p>;
  const name = pick(kind.label, kind.labelZh) || typeId;
  const ofKind = [...tests.values()].filter((test) => test.typeId === typeId);
  const about = new Map([...findings].filter(([, { finding }]) => finding.subjects.includes(typeId)));
  const toTable = (table: "placements" | "board_types" | "tests") => (
    <Link
      href={`/b/${bookId}/tables/${table}${table === "board_types" ? `?id=${encodeURIComponent(typeId)}` : ""}`}
    >
      {words.tableNames.tables[table]}
    </Link>
  );
  return (
    <>
      {back}
      <h2>
        {name} <small className="dim">{typeId}</small>
      </h2>
      {kind.purposes.en !== "" && <p>{pick(kind.purposes.en, kind.purposes.zh)}</p>}
      <dl className="plan-figures">
        <Figure name={own.revision} text={kind.revision} />
        <Figure name={own.count} text={String(kind.boards.length)} />
        <Figure name={own.parts} text={String(kind.placements)} />
        <Figure name={own.joints} text={String(kind.joints)} />
        <Figure name={own.size} text={own.sizeOf(kind.widthMm, kind.depthMm, kind.heightMm)} />
        <Figure name={own.comes} text={own.comesHow[kind.comes]} />
      </dl>
      <p className="way-links">
        {toTable("board_types")} {toTable("placements")}
        {[
          { name: own.barePart, id: kind.barePartId },
          { name: own.stuffedPart, id: kind.stuffedPartId },
        ].map(
          (part) =>
            part.id !== null && (
              <Link key={part.name} href={partAddress(bookId, part.id)}>
                {part.name}: {part.id}
              </Link>
            ),
        )}
      </p>
      {about.size > 0 && (
        <>
          <h3>{own.findings}</h3>
          <SectionFindings findings={about} none={own.noFindings} />
        </>
      )}
      {face.parts.length === 0 ? (
        <p className="dim">{kind.comes === "bought" ? own.comesReady : own.noPlacements}</p>
      ) : (
        <>
          <Stuffing typeId={typeId} name={name} face={face} />
          <p className="caution">{own.caution}</p>
          <Kit typeId={typeId} />
        </>
      )}
      <h3>{own.boardParts.tests}</h3>
      {ofKind.length === 0 ? (
        <p>
          {own.noBoardTests} {toTable("tests")}
        </p>
      ) : (
        <TestTable caption="" tests={ofKind} />
      )}
      <h3>{own.boardParts.places}</h3>
      <Places boards={kind.boards} most={12} />
      <SheetLinks
        title={own.print}
        kinds={face.parts.length === 0 ? ["board-test"] : ["stuffing-guide", "board-kit", "board-test"]}
      />
    </>
  );
}

function Figure({ name, text }: { readonly name: string; readonly text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <b>{text}</b>
      </dd>
    </div>
  );
}
