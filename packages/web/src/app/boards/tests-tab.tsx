import { NativeSelect } from "@mantine/core";
import { Link, useSearchParams } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { SheetLinks } from "../sheets/sheet-links.tsx";
import { usePick, useWords } from "../words.tsx";
import { boardAddress } from "./address.ts";
import { TestTable } from "./test-table.tsx";

/** The tests of all kinds of board, or of one. */
export function TestsTab({ register }: { readonly register: Entries<"boardRegister"> }) {
  const words = useWords();
  const own = words.boards;
  const pick = usePick();
  const { bookId } = useDesk();
  const tests = useView("boardTests", null);
  const [params, setParams] = useSearchParams();
  const wanted = params.get("kind");
  if (tests === null) return <p className="dim">{words.common.loading}</p>;
  const kinds = [...register.values()].filter(({ typeId }) => wanted === null || typeId === wanted);
  const all = [...tests.values()];
  const table = (
    <p className="way-links">
      <Link href={`/b/${bookId}/tables/tests`}>{words.tableNames.tables.tests}</Link>
    </p>
  );
  return (
    <>
      <h2>{own.testsTitle}</h2>
      {register.size === 0 || all.length === 0 ? (
        <p>{own.noTestsAtAll}</p>
      ) : (
        <>
          <p className="dim">{own.testsAbout}</p>
          <div className="question">
            <NativeSelect
              label={own.ofKind}
              value={wanted ?? ""}
              data={[
                { value: "", label: own.allKinds },
                ...[...register.values()].map((kind) => ({
                  value: kind.typeId,
                  label: pick(kind.label, kind.labelZh) || kind.typeId,
                })),
              ]}
              onChange={(event) => {
                const { value } = event.currentTarget;
                setParams(value === "" ? {} : { kind: value }, { replace: true });
              }}
            />
          </div>
          {kinds.map((kind) => {
            const ofKind = all.filter(({ typeId }) => typeId === kind.typeId);
            const name = pick(kind.label, kind.labelZh) || kind.typeId;
            return (
              <section key={kind.typeId} aria-label={name}>
                <h3>
                  <Link href={boardAddress(bookId, kind.typeId)}>{name}</Link>
                </h3>
                {ofKind.length === 0 ? (
                  <p className="amber-text">{own.noBoardTests}</p>
                ) : (
                  <TestTable caption="" tests={ofKind} />
                )}
              </section>
            );
          })}
        </>
      )}
      {table}
      <SheetLinks title={own.print} kinds={["board-test"]} />
    </>
  );
}
