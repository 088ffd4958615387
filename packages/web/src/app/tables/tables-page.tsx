import { ALL_TABLES, MACHINE_TABLE } from "@pinwright/book";
import { lazy, Suspense } from "react";
import { Redirect, useRoute } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { MachineForm } from "./machine-form.tsx";
import { TableChoice } from "./table-choice.tsx";
import { TableList } from "./table-list.tsx";
import { TableView } from "./table-view.tsx";
import "./tables.css";

const ImportsPage = lazy(() => import("../imports/imports-page.tsx"));

/** The table that is opened when none is named. */
const FIRST = "devices";

/** All tables beside the one that is open. */
export default function TablesPage() {
  const words = useWords();
  const desk = useDesk();
  const [, params] = useRoute("/b/:book/tables/:table?");
  const open = params?.table;
  if (open === undefined) return <Redirect to={`/b/${desk.bookId}/tables/${FIRST}`} replace />;
  return (
    <div className="tables">
      <TableList open={open} />
      <div className="tables-open">
        <TableChoice open={open} />
        <Suspense fallback={<p className="page dim">{words.common.loading}</p>}>
          <Open table={open} />
        </Suspense>
      </div>
    </div>
  );
}

function Open({ table }: { readonly table: string }) {
  const words = useWords();
  if (table === "import") return <ImportsPage />;
  if (table === MACHINE_TABLE) return <MachineForm />;
  if (!Object.hasOwn(ALL_TABLES, table)) return <p className="page">{words.tables.notFound(table)}</p>;
  return <TableView key={table} table={table} />;
}
