import { pathTo, problemSchema } from "@pinwright/contract";
import { type BuiltRecords, type FaultFile, readFaultFile } from "@pinwright/engine";
import { useEffect, useState, useSyncExternalStore } from "react";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";
import type { DeskClient } from "../../book/desk-client.ts";

/** Machine whose faults are looked for; neither: the book as it stands. */
export interface Asked {
  readonly release: string | null;
  readonly unit: string | null;
}

export type FaultFileState =
  | { readonly at: "loading" }
  | { readonly at: "here"; readonly file: FaultFile }
  | { readonly at: "failed"; readonly why: string };

/** While the book is put together, it is asked again after so long. */
const AGAIN_MS = 300;

/** The fault file of a machine; of the book as it stands a new one after every change. */
export function useFaultFile({ release, unit }: Asked): FaultFileState {
  const desk = useDesk();
  const [state, setState] = useState<FaultFileState>({ at: "loading" });
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const isDraft = release === null && unit === null;
  // A release and a machine that was built stay as they are.
  const change = isDraft ? changeNo : 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another change is another file
  useEffect(() => {
    let wanted = true;
    setState((before) => (before.at === "here" && isDraft ? before : { at: "loading" }));
    const file = isDraft ? draftFile(desk, () => wanted) : keptFile(desk.bookId, { release, unit });
    file.then(
      (found) => wanted && found !== null && setState({ at: "here", file: found }),
      (error: unknown) =>
        wanted && setState({ at: "failed", why: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [desk, release, unit, change]);
  return state;
}

async function draftFile(desk: DeskClient, isWanted: () => boolean): Promise<FaultFile | null> {
  const built = await builtOf(desk.bookId);
  while (isWanted()) {
    const file = desk.sync.state === "loading" ? null : await desk.ask("faultFile", built);
    if (file !== null) return file;
    await new Promise((done) => setTimeout(done, AGAIN_MS));
  }
  return null;
}

/** What was built and what failed on it; when nobody can tell, nothing: then the usual odds hold. */
async function builtOf(book: string): Promise<BuiltRecords> {
  try {
    const [units, { defects }] = await Promise.all([
      call("units", { parts: {}, query: { book } }),
      call("defects", { parts: {}, query: { book } }),
    ]);
    return {
      units: units.map(({ what, type }) => ({ what, type })),
      defects: defects.map(({ what, type, kind, where, mended }) => ({
        ...{ what, type, kind, where },
        cause: mended?.cause ?? "",
      })),
    };
  } catch {
    return { units: [], defects: [] };
  }
}

async function keptFile(book: string, { release, unit }: Asked): Promise<FaultFile> {
  const query = { ...(release === null ? {} : { release }), ...(unit === null ? {} : { unit }) };
  const response = await fetch(pathTo("faultFile", { book }, query), { credentials: "same-origin" });
  const answer: unknown = await response.json().catch(() => null);
  if (response.ok) return readFaultFile(answer);
  const problem = problemSchema.safeParse(answer);
  throw new Error(problem.success ? problem.data.message : `${response.status}`);
}
