import { Button } from "@mantine/core";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useFaultText } from "../tables/use-fault-text.ts";
import { useWords } from "../words.tsx";
import { faultAddress } from "./address.ts";
import { SeverityText } from "./severity-text.tsx";

const FIRST = 20;

/** What cannot be read in the tables, each with the cell to mend. */
export function FaultList({ faults }: { readonly faults: readonly ViewEntry<"faults">[] }) {
  const words = useWords();
  const { checks } = words;
  const { bookId } = useDesk();
  const faultText = useFaultText();
  const [most, setMost] = useState(FIRST);
  return (
    <section className="finding-group" data-severity="error" data-rule="faults">
      <header>
        <h3>
          <SeverityText severity="error" /> {checks.faultsTitle} <span className="dim">{faults.length}</span>
        </h3>
        <dl>
          <dt>{checks.why}</dt>
          <dd>{checks.faultsWhy}</dd>
          <dt>{checks.todo}</dt>
          <dd>{checks.faultsTodo}</dd>
        </dl>
      </header>
      <ul>
        {faults.slice(0, most).map((fault, i) => {
          const address = faultAddress(bookId, fault);
          return (
            // Faults have no ids, and the list is made anew as a whole.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <li className="finding" key={i}>
              <span />
              <div className="words">
                <b>
                  <FaultPlace fault={fault} />
                  {fault.value !== null && ` ${checks.fault.has(fault.value)}`}
                </b>
                {". "}
                {faultText(fault)}
                {fault.nearest !== null && <> {checks.fault.nearest(fault.nearest)}</>}
                {address !== null && (
                  <div className="places">
                    <Link href={address}>{checks.fault.open}</Link>
                  </div>
                )}
              </div>
            </li>
          );
        })}
      </ul>
      {faults.length > most && (
        <Button variant="subtle" onClick={() => setMost(most + 100)}>
          {checks.more(Math.min(100, faults.length - most))}
        </Button>
      )}
    </section>
  );
}

function FaultPlace({ fault }: { readonly fault: ViewEntry<"faults"> }) {
  const words = useWords().checks.fault;
  if (fault.row === null) return fault.column === null ? fault.file : `${fault.file}, ${fault.column}`;
  return fault.column === null
    ? words.row(fault.file, fault.row)
    : words.cell(fault.file, fault.row, fault.column);
}
