import { Button } from "@mantine/core";
import type { ImportResult } from "@pinwright/contract";
import { useState } from "react";
import { useFaultText } from "../tables/use-fault-text.ts";
import { useWords } from "../words.tsx";

const FIRST = 50;

/** Faults of a file as it was read: where, what, and what was expected. */
export function FaultTable({ faults }: { readonly faults: ImportResult["faults"] }) {
  const { start, checks } = useWords();
  const faultText = useFaultText();
  const [most, setMost] = useState(FIRST);
  if (faults.length === 0) return null;
  return (
    <>
      <ul className="fault-table">
        {faults.slice(0, most).map((fault, i) => (
          // Faults have no ids, and the list never changes.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <li key={i}>
            <b>
              {[fault.file, fault.row === null ? "" : start.fault.row(fault.row), fault.column ?? ""]
                .filter((part) => part !== "")
                .join(", ")}
            </b>{" "}
            {fault.value !== null && start.fault.found(fault.value)}
            {" – "}
            {faultText(fault)}
            {fault.nearest !== null && ` ${checks.fault.nearest(fault.nearest)}`}
          </li>
        ))}
      </ul>
      {faults.length > most && (
        <Button variant="subtle" size="compact-sm" onClick={() => setMost(most + 500)}>
          {checks.more(faults.length - most)}
        </Button>
      )}
    </>
  );
}
