import type { PrintState, Release, SheetCode } from "@pinwright/contract";
import { afterOf } from "@pinwright/words";
import { useEffect, useState } from "react";
import { call, Refused } from "../../api/call.ts";

/** What the server knows of a print. */
export interface FoundPrint {
  readonly code: SheetCode;
  /** Null: there is no such book here. */
  readonly state: PrintState | null;
  /** Releases of the book, the newest first. */
  readonly releases: readonly Release[];
}

export interface LookedUp {
  readonly found: FoundPrint | null;
  readonly failed: unknown;
}

const isUnknown = (error: unknown): boolean =>
  error instanceof Refused && ["not-found", "bad-request"].includes(error.problem.code);

/** A change note or a retrofit kit: no release holds it, it tells of one. */
export const isOfChange = (sheet: string): boolean => /^machine\.(?:change-note|retrofit-kit)-/u.test(sheet);

/** A sheet of a change holds as long as the revision that it leads to is the newest. */
const ofChange = ({ revision }: SheetCode, state: PrintState): PrintState => ({
  ...state,
  is:
    state.newest === null || afterOf(revision) !== null
      ? "draft"
      : state.newest.name === revision
        ? "current"
        : "superseded",
});

async function lookUp(code: SheetCode): Promise<FoundPrint> {
  const { machine: book, sheet, hash: print } = code;
  try {
    const [state, releases] = await Promise.all([
      call("printState", { parts: { book, sheet, print } }),
      call("releases", { parts: { book } }),
    ]);
    return { code, state: isOfChange(sheet) ? ofChange(code, state) : state, releases };
  } catch (error) {
    if (isUnknown(error)) return { code, state: null, releases: [] };
    throw error;
  }
}

/** Looks a print up by its code; null asks nothing. */
export function usePrint(code: SheetCode | null): LookedUp {
  const [looked, setLooked] = useState<LookedUp>({ found: null, failed: null });
  const { machine = "", revision = "", sheet = "", hash = "" } = code ?? {};
  useEffect(() => {
    let wanted = true;
    setLooked({ found: null, failed: null });
    if (machine === "") return;
    lookUp({ machine, revision, sheet, hash }).then(
      (found) => wanted && setLooked({ found, failed: null }),
      (failed: unknown) => wanted && setLooked({ found: null, failed }),
    );
    return () => {
      wanted = false;
    };
  }, [machine, revision, sheet, hash]);
  return looked;
}
