import type { UnitState } from "@pinwright/engine";
import { IconArrowLeft } from "@tabler/icons-react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { benchAddress, unitAddress } from "../address.ts";
import { useNames } from "../names.tsx";
import { LabelSheets } from "../sheets/label-sheets.tsx";
import { UnitSheets } from "../sheets/unit-sheets.tsx";
import { UnitDefects } from "./unit-defects.tsx";
import { UnitGate } from "./unit-gate.tsx";
import { UnitHead } from "./unit-head.tsx";
import { UnitMade } from "./unit-made.tsx";
import { UnitProblems } from "./unit-problems.tsx";
import { UnitReadings } from "./unit-readings.tsx";
import { UnitRecord } from "./unit-record.tsx";
import { UnitSteps } from "./unit-steps.tsx";
import { UnitTree } from "./unit-tree.tsx";
import { type KnownUnit, useUnit } from "./use-unit.ts";
import "./unit.css";

/** Everything that was recorded of one unit. */
export function UnitPage({ unit }: { readonly unit: string }) {
  const { common, benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const { known, failed } = useUnit(unit);
  return (
    <div className="currents-body">
      <Link className="currents-back" href={benchAddress(bookId, "units")}>
        <IconArrowLeft size={16} aria-hidden /> {own.all}
      </Link>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {known === undefined ? (
        <>
          <h2>{unit}</h2>
          {failed === "" && <p className="dim">{common.loading}</p>}
        </>
      ) : known.state === undefined ? (
        <>
          <h2>{unit}</h2>
          <p>{own.noSuch(unit)}</p>
        </>
      ) : (
        <Known state={known.state} known={known} />
      )}
    </div>
  );
}

function Known({ state, known }: { readonly state: UnitState; readonly known: KnownUnit }) {
  const { benchUnit: own, benchUnits } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const { begun, unit } = state;
  return (
    <>
      <h2>
        {unit}{" "}
        {begun !== null && (
          <small className="dim">
            {names.type(begun.what, begun.type)} · {benchUnits.oneKind[begun.what]}
          </small>
        )}
      </h2>
      {begun === null && <p className="error-text">{own.notBegun(unit)}</p>}
      {begun !== null && begun.book !== bookId && (
        <p>
          {own.otherBook(begun.book)} <Link href={unitAddress(begun.book, unit)}>{own.openThere}</Link>
        </p>
      )}
      <div className="unit-columns">
        <div>
          {begun !== null && <UnitHead state={state} begun={begun} />}
          {begun !== null && (
            <>
              <UnitSheets unit={unit} isMachine={begun.what === "machine"} />
              <LabelSheets book={begun.book} units={[unit]} />
            </>
          )}
        </div>
        <div>{begun !== null && <UnitGate state={state} />}</div>
      </div>
      <div className="unit-columns">
        <div>
          <UnitDefects state={state} />
          {begun !== null && <UnitProblems unit={unit} begun={begun} />}
          <UnitTree known={known} state={state} />
          <UnitMade state={state} />
        </div>
        <div>
          <UnitReadings state={state} />
          <UnitSteps state={state} />
        </div>
      </div>
      <UnitRecord unit={unit} known={known} />
    </>
  );
}
