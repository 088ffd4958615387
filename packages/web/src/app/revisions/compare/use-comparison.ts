import { useEffect, useState, useSyncExternalStore } from "react";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { useTrouble } from "../../trouble.ts";
import { useSpeech } from "../../words.tsx";
import { DRAFT } from "../address.ts";
import { keptFacts } from "./kept-facts.ts";

type Compared = AskAnswer<"comparison">;

interface Comparing {
  readonly comparison: Compared | null;
  readonly working: boolean;
  readonly failed: string;
}

const START: Comparing = { comparison: null, working: true, failed: "" };

/**
 * Compares a release with another or with the draft, and again when the draft is another.
 * @param draftFacts facts of the draft with its sheets, as JSON; null: not composed
 */
export function useComparison(from: string, to: string, draftFacts: string | null): Comparing {
  const desk = useDesk();
  const trouble = useTrouble();
  const { language } = useSpeech();
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const [state, setState] = useState<Comparing>(START);
  const of = to === DRAFT && draftFacts === null ? changeNo : 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the draft is compared again whenever it is another
  useEffect(() => {
    let wanted = true;
    setState((before) => ({ ...before, working: true, failed: "" }));
    const after = to === DRAFT ? Promise.resolve(draftFacts) : keptFacts(desk.bookId, to);
    Promise.all([keptFacts(desk.bookId, from), after])
      .then(([was, is]) => desk.ask("comparison", { before: was, after: is, language }))
      .then(
        (comparison) => wanted && setState({ comparison, working: false, failed: "" }),
        (error: unknown) => wanted && setState({ comparison: null, working: false, failed: trouble(error) }),
      );
    return () => {
      wanted = false;
    };
  }, [desk, from, to, draftFacts, of, language, trouble]);
  return state;
}
