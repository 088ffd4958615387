import { useCallback } from "react";
import { Link, useSearchParams } from "wouter";
import { WithFinder } from "../../../service-page/with-finder.tsx";
import { useDesk } from "../../book/desk.tsx";
import { useSpeech } from "../../words.tsx";
import { serviceAddress } from "../address.ts";
import { type Asked, useFaultFile } from "./use-fault-file.ts";
import { WhichMachine } from "./which-machine.tsx";
import "./faults-tab.css";

const newWorker = (): Worker =>
  new Worker(new URL("../../../service-page/page/finder.worker.ts", import.meta.url), { type: "module" });

/** Fault finding: of the book as it stands, of a release, or of one machine by its serial number. */
export default function FaultsTab() {
  const { language, words } = useSpeech();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const asked: Asked = { release: params.get("release"), unit: params.get("unit") };
  const state = useFaultFile(asked);
  const faults = words.serviceFaults;
  const thing = useCallback(
    (id: string, text: string) => (
      <Link href={`${serviceAddress(bookId, "thing")}/${encodeURIComponent(id)}`} className="ff-thing">
        {text}
      </Link>
    ),
    [bookId],
  );
  return (
    <div className="currents-body faults-tab">
      <WhichMachine
        asked={asked}
        choose={({ release, unit }) =>
          setParams({
            ...(release === null ? {} : { release }),
            ...(unit === null ? {} : { unit }),
          })
        }
      />
      {state.at === "loading" && <p role="status">{faults.gettingFile}</p>}
      {state.at === "failed" && <p role="alert">{faults.failed(state.why)}</p>}
      {state.at === "here" && (
        <WithFinder file={state.file} language={language} newWorker={newWorker} thing={thing} />
      )}
    </div>
  );
}
