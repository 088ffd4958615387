import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";

/** What a recall speaks of. */
interface RecallOf {
  readonly part: string | null;
  readonly lot: string | null;
  readonly type: string | null;
  readonly revision: string | null;
}

/** What a recall speaks of, in words. */
export function useRecallText(): (recall: RecallOf) => string {
  const { benchTrace } = useWords();
  const own = benchTrace.recall;
  const names = useNames();
  const typeName = (type: string): string => {
    const kinds = ["board", "harness", "mechanism", "machine"] as const;
    return kinds.map((what) => names.type(what, type)).find((name) => name !== type) ?? type;
  };
  return ({ part, lot, type, revision }) =>
    [
      part ? own.namePart(names.part(part)) : "",
      lot ? own.nameLot(lot) : "",
      type ? own.nameType(typeName(type)) : "",
      revision ? own.nameRevision(revision) : "",
    ]
      .filter(Boolean)
      .join(", ");
}
