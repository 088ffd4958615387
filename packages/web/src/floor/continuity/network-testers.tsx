import type { InstrumentInfo } from "@pinwright/contract";
import type { TestBench } from "@pinwright/engine";
import { IconPlugConnected } from "@tabler/icons-react";
import { useState } from "react";
import { call } from "../../api/call.ts";
import { useSession } from "../../app/session/session.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { type Trouble, useInstrumentTrouble, useServerTrouble } from "../measuring/trouble.ts";
import { useInstruments } from "../measuring/use-instruments.ts";

import { keptAdapter } from "./adapter.ts";
import { readScan, type ScanReading } from "./scan.ts";
import { Faults } from "./scan-file.tsx";
import { useScanTrouble } from "./scan-text.ts";

type Read = Extract<ScanReading, { kind: "read" }>;

/** A scan of a tester on the network: what it read, which instrument it was, and what is noted of it. */
export interface NetworkScan {
  readonly reading: Read;
  readonly instrument: string;
  readonly note: string;
  readonly warning: string;
}

/** Names of what can be in a scan file as the unit; another unit's number is left out of it. */
const NAME = /^[A-Za-z0-9._-]{1,40}$/u;

/** A tile for each tester of this station that the server reaches. */
export function NetworkTesters({
  bench,
  unit,
  read,
}: {
  readonly bench: TestBench;
  readonly unit: string;
  readonly read: (scan: NetworkScan) => void;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.ways;
  const pick = usePick();
  const { status } = useSession();
  const textOf = useInstrumentTrouble();
  const serverText = useServerTrouble();
  const scanTrouble = useScanTrouble(unit);
  const testers = useInstruments().filter(({ kind }) => kind === "continuity");
  const [busy, setBusy] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<Trouble>([]);
  const nameOf = (one: InstrumentInfo): string => pick(one.label, one.labelZh) || one.id;
  const scan = async (one: InstrumentInfo): Promise<void> => {
    setBusy(one.id);
    setTrouble([]);
    const words = floorMeasure.read;
    try {
      const answer = await call("scanTester", {
        parts: { id: one.id },
        body: NAME.test(unit) ? { unit } : {},
        token: status.token,
      });
      if (answer.outcome === "trouble") {
        setTrouble(textOf(answer.trouble, answer.says, nameOf(one)));
        return;
      }
      const reading = readScan(answer.scan, bench, keptAdapter(bench.harnessId)?.text ?? null, unit);
      setTrouble(scanTrouble(reading));
      if (reading.kind !== "read") return;
      const { isOverdue } = answer;
      read({
        reading,
        instrument: one.id,
        note: isOverdue ? words.overdueNote(nameOf(one), one.calibratedUntil, floor.steps.continuity) : "",
        warning: isOverdue ? words.overdue(nameOf(one), one.calibratedUntil) : "",
      });
    } catch (error) {
      setTrouble(serverText(error));
    } finally {
      setBusy(null);
    }
  };
  return (
    <>
      {testers.length > 0 && (
        <div className="floor-tiles floor-testers">
          {testers.map((one) => (
            <button key={one.id} type="button" disabled={busy !== null} onClick={() => void scan(one)}>
              <span>
                <IconPlugConnected size={30} aria-hidden />{" "}
                {busy === one.id ? own.scanning(nameOf(one)) : own.scan(nameOf(one))}
              </span>
            </button>
          ))}
        </div>
      )}
      <Faults lines={trouble} />
    </>
  );
}
